/** What must hold inside a scenario file beyond its shape. */
import type { Problem } from '../base/result.ts';
import { parIsKnown } from '../scenario/par.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { complainOfRepeats, complaints } from './complaints.ts';
import { shown } from './schemaProblems.ts';
import { scenarioTranslations } from './translationConsistency.ts';

export function scenarioConsistency(scenario: Scenario, file: string): Problem[] {
  const { problems, complain } = complaints(file);
  const { weights, proofs, start, aids, recommendedAfter, par, timeLimitSeconds } = scenario;
  const sum = weights.response + weights.truth + weights.proofs + weights.care + weights.economy;
  if (Math.abs(sum - 100) > 1e-9) complain(['weights'], ['weightsSum', sum], ['weightsWanted']);
  complainOfRepeats(proofs, (i) => ['proofs', i], complain);
  complainOfRepeats(start.prepared, (i) => ['start', 'prepared', i], complain);
  complainOfRepeats(scenario.responses ?? [], (i) => ['responses', i], complain);
  complainOfRepeats(recommendedAfter, (i) => ['recommendedAfter', i], complain);
  if (proofs.length === 0 && weights.proofs > 0) {
    complain(['weights', 'proofs'], shown(weights.proofs), ['noProof']);
  }
  if (recommendedAfter.includes(scenario.id))
    complain(['recommendedAfter'], ['named', scenario.id], ['otherScenarios']);
  if (scenario.sealed && (aids.hints || aids.toleranceMarks)) {
    complain(['aids'], ['aidsSealed'], ['bothFalse']);
  }
  if (aids.hints && scenario.hints.length === 0) complain(['hints'], ['noHints'], ['someHint']);
  if (parIsKnown(scenario) && timeLimitSeconds !== null && timeLimitSeconds < par.seconds) {
    complain(['timeLimitSeconds'], shown(timeLimitSeconds, 'seconds'), ['atLeastPar', par.seconds]);
  }
  scenarioTranslations(scenario, complain);
  return problems;
}
