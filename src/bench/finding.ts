/**
 * Findings: what the learner says was seen while a proof was made. The bench holds how it stood half way through the act and after it (proofs.ts); what the tube
 * showed then is worked out from that (witness.ts). Nothing here looks at the answer.
 */
import { seededRandom } from '../base/random.ts';
import { ANSWERS, type FindingAnswer, type SeenAnswer } from '../scenario/findingAnswer.ts';
import type { ProofId } from '../scenario/proofId.ts';
import type { Applied } from './benchEvent.ts';
import { type BenchState, NO_PROOFS } from './benchState.ts';
import { mostSaid } from './mostSaid.ts';
import { done, refused } from './outcome.ts';
import type { BenchSetup } from './setup.ts';

export function stateFinding(
  { scenario }: BenchSetup,
  state: BenchState,
  proof: ProofId,
  answer: FindingAnswer,
  figure: number | null,
): Applied {
  const watch = state.proofs[proof];
  if (!watch.done) return refused('nothingProved');
  const withWatch = (next: BenchState['proofs'][ProofId]): Applied =>
    done({ ...state, proofs: { ...state.proofs, [proof]: next } });
  if (answer === 'again') return withWatch(NO_PROOFS[proof]);
  if (answer !== 'notLooked' && !(ANSWERS[proof] as readonly string[]).includes(answer))
    return refused('valueOutOfRange');
  if (figure !== null && !Number.isFinite(figure)) return refused('valueOutOfRange');
  const said = watch.finding?.said ?? 0;
  if (said >= mostSaid(scenario)) return refused('alreadySaid');
  const kept = figure === null ? null : figure + 0;
  return withWatch({ ...watch, finding: { answer, figure: kept, atSeconds: state.seconds, said: said + 1 } });
}

/** The order in which the choices are offered: seeded by the run, so that a place tells nothing. */
export function choicesOffered(setup: BenchSetup, state: BenchState, proof: ProofId): readonly SeenAnswer[] {
  const random = seededRandom(chanceOf(setup, state));
  return [...ANSWERS[proof]]
    .map((answer) => ({ answer, at: random() }))
    .sort((a, b) => a.at - b.at)
    .map(({ answer }) => answer);
}

/** Of this bench as it was left, whatever the clock says. */
export function chanceOf({ scenario }: BenchSetup, { turnsMade }: BenchState): number {
  return scenario.seed + Math.round(64 * turnsMade);
}
