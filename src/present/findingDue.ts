/**
 * When the card that asks what was seen may come by itself. Whoever looks for the phase or the level moves the same knobs as a proof does, long before there is
 * anything to prove: while no slug has been touched, nothing is asked until the bench is set up and the set aligned. A slug that moves undoes the proof in any
 * case. A sealed run says nothing of how the work stands, so there the card always comes, but it comes folded while by what the learner has done and ticked himself the set-up is not over. Pure.
 */
import type { Facts } from '../bench/facts.ts';
import type { SessionView } from '../session/phase.ts';

export function findingDue(
  { done, ticked }: Pick<SessionView, 'done' | 'ticked'>,
  { slugsTouched }: Pick<Facts, 'slugsTouched'>,
): boolean {
  if (ticked !== null || slugsTouched > 0) return true;
  return done.safe && done.connect && done.setUp && done.align;
}

/** Sealed: the bar of the card comes, and not the card, while no slug has been touched and the learner has not ticked the set-up. */
export function findingComesFolded(
  { done, ticked }: Pick<SessionView, 'done' | 'ticked'>,
  { slugsTouched }: Pick<Facts, 'slugsTouched'>,
): boolean {
  return ticked !== null && slugsTouched === 0 && !done.setUp;
}
