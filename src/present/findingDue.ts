/**
 * When the card that asks what was seen may come by itself. Whoever looks for the phase or the level moves the same knobs as a proof does, long before there is
 * anything to prove: until the bench is set up, and while no slug has been touched of a set that is not aligned, nothing is asked. A slug that moves undoes the
 * proof in any case. A sealed run says nothing of how the work stands, so there the card always comes. Pure.
 */
import type { Facts } from '../bench/facts.ts';
import type { SessionView } from '../session/phase.ts';

export function findingDue(
  { done, ticked }: Pick<SessionView, 'done' | 'ticked'>,
  { slugsTouched }: Pick<Facts, 'slugsTouched'>,
): boolean {
  if (ticked !== null) return true;
  return done.safe && done.connect && done.setUp && (done.align || slugsTouched > 0);
}
