/** Lines of one block by itself, made by the shipped rows. */
import type { BenchState, Incident } from '../../src/bench/benchState.ts';
import type { DraftLine } from '../../src/grading/draft.ts';
import { conductEvidence, proofEvidence } from '../../src/grading/evidence.ts';
import { linesOf } from '../../src/grading/lines.ts';
import { RULES } from '../../src/grading/rules/rules.ts';
import { offersParts } from '../../src/scenario/diagnosis.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';

export function proofLines(state: BenchState, scenario: Scenario): readonly DraftLine[] {
  return linesOf(RULES, proofEvidence(state, scenario));
}

export function careLines(incidents: readonly Incident[], scenario: Scenario, onMains = true): readonly DraftLine[] {
  const where = { partsMayFail: offersParts(scenario), onMains };
  return linesOf(RULES, conductEvidence({ incidents, turnsMade: 0 }, 0, scenario, where)).filter(
    (line) => line.block === 'care',
  );
}

export function economyLines(turnsMade: number, seconds: number, par: Scenario['par']): readonly DraftLine[] {
  const evidence = conductEvidence(
    { incidents: [], turnsMade },
    seconds,
    { par },
    { partsMayFail: false, onMains: false },
  );
  return linesOf(RULES, evidence).filter((line) => line.block === 'economy');
}
