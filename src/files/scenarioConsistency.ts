/** What must hold inside a scenario file beyond its shape. */
import type { Problem } from '../base/result.ts';
import { parIsKnown } from '../scenario/par.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { complainOfRepeats, complaints, type Path } from './complaints.ts';
import { asFarAsKnown, picked } from './known.ts';
import { shown } from './schemaProblems.ts';
import { scenarioTranslations } from './translationConsistency.ts';

export function scenarioConsistency(scenario: Scenario, file: string): Problem[] {
  const { problems, complain } = complaints(file);
  asFarAsKnown(() => {
    const { response, truth, proofs, care, economy } = scenario.weights;
    const sum = response + truth + proofs + care + economy;
    if (Math.abs(sum - 100) > 1e-9) complain(['weights'], ['weightsSum', sum], ['weightsWanted']);
  });
  const lists: readonly (readonly [Path, () => readonly string[]])[] = [
    [['proofs'], () => scenario.proofs],
    [['start', 'prepared'], () => scenario.start.prepared],
    [['responses'], () => scenario.responses ?? []],
    [['recommendedAfter'], () => scenario.recommendedAfter],
  ];
  for (const [path, list] of lists) {
    const texts = picked(list, (text) => text);
    complainOfRepeats(texts, (i) => [...path, i], complain);
  }
  asFarAsKnown(() => {
    const { weights, proofs } = scenario;
    if (proofs.length === 0 && weights.proofs > 0) complain(['weights', 'proofs'], shown(weights.proofs), ['noProof']);
  });
  asFarAsKnown(() => {
    const { id, recommendedAfter } = scenario;
    const at = recommendedAfter.indexOf(id);
    if (at >= 0) complain(['recommendedAfter', at], ['named', id], ['otherScenarios']);
  });
  asFarAsKnown(() => {
    const { sealed, aids } = scenario;
    if (sealed && (aids.hints || aids.toleranceMarks)) complain(['aids'], ['aidsSealed'], ['bothFalse']);
  });
  asFarAsKnown(() => {
    const { dealsFaults, sealed, set } = scenario;
    if (dealsFaults === true && !(sealed && set !== undefined))
      complain(['dealsFaults'], shown(true), ['onlySealedWithSet']);
  });
  asFarAsKnown(() => {
    if (scenario.aids.hints && scenario.hints.length === 0) complain(['hints'], ['noHints'], ['someHint']);
  });
  asFarAsKnown(() => {
    const { par, timeLimitSeconds } = scenario;
    if (parIsKnown(scenario) && timeLimitSeconds !== null && timeLimitSeconds < par.seconds)
      complain(['timeLimitSeconds'], shown(timeLimitSeconds, 'seconds'), ['atLeastPar', par.seconds]);
  });
  scenarioTranslations(scenario, complain);
  return problems;
}
