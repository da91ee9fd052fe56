/** What the rules look at, made of the bench's facts, its state and its scenario. */
import type { RulesVersion } from '../base/engine.ts';
import type { BenchState } from '../bench/benchState.ts';
import type { Facts } from '../bench/facts.ts';
import type { BenchSetup } from '../bench/setup.ts';
import { findingFits } from '../bench/witness.ts';
import { asksDiagnosis } from '../scenario/diagnosis.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { judgeDiagnosis } from './diagnosis.ts';
import type { Evidence } from './lines.ts';
import type { SheetAsks, Subjects } from './rules/rule.ts';

/** The set-up as it stands, beside the sheet of the response that it stands for. */
export function setUpEvidence(facts: Facts, sheet: SheetAsks): Evidence {
  const of = facts.biases.length;
  return { bench: [{ ...facts, sheet }], biasLine: facts.biases.map((bias) => ({ ...bias, of })) };
}

export function proofEvidence({ proofs }: Pick<BenchState, 'proofs'>, scenario: Scenario): Evidence {
  return { proof: scenario.proofs.map((proof) => ({ proof, ...proofs[proof] })) };
}

/** What the learner said beside what there was to be seen. */
export function findingEvidence(setup: BenchSetup, state: BenchState, rules: RulesVersion): Evidence {
  return {
    finding: setup.scenario.proofs.map((proof) => ({
      proof,
      fits: findingFits(setup, state, proof, rules),
      atSeconds: state.proofs[proof].finding?.atSeconds ?? state.proofs[proof].doneAtSeconds,
    })),
  };
}

/** What the learner said at signing had been wrong. */
export function diagnosisEvidence(setup: BenchSetup, { diagnosis }: Pick<BenchState, 'diagnosis'>): Evidence {
  if (!asksDiagnosis(setup.scenario)) return {};
  return { diagnosis: [{ ...judgeDiagnosis(setup, diagnosis), atSeconds: diagnosis?.atSeconds ?? null }] };
}

/** What happened during the work, and what it took. */
export function conductEvidence(
  { incidents, turnsMade }: Pick<BenchState, 'incidents' | 'turnsMade'>,
  seconds: number,
  { par }: Pick<Scenario, 'par'>,
  where: Pick<Subjects['mishaps'], 'partsMayFail' | 'onMains'>,
): Evidence {
  return { mishaps: [{ incidents, ...where }], effort: [{ turns: turnsMade, seconds, par }] };
}
