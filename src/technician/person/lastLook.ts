/** A last look before the proofs of a job that nobody says a word about. */
import { type AtBench, notchesInSight, slugsOf, standFor, timeToProve } from './atWork.ts';
import type { PrintedResponse } from './sheet.ts';
import { bringInside, worstDemand } from './toLimits.ts';
import { bringNotch } from './traps.ts';
import { wantedNotch } from './withNotebook.ts';

/** So near a limit an eye may be wrong about the side of it. */
const NEAR_LIMIT = 0.7;

/** Notches back where they belong, and no demand so near its limit that the eye may be wrong. */
export function lastLook(bench: AtBench, main: PrintedResponse): void {
  const { hands, sheet, turner } = bench;
  const own = slugsOf(sheet, main);
  const notches = notchesInSight(bench, main);
  // A set without traps has few slugs, and the notebook has left them as well as they can be read.
  if (notches.length === 0) return;
  const rest = own.filter((slug) => !notches.includes(slug)).map(({ id }) => id);
  const curve = standFor(bench, main);
  const setNotches = (): void => {
    for (const trap of notches) {
      if (timeToProve(bench)) bringNotch(hands, turner, wantedNotch(main, trap, own), curve, true);
    }
  };
  setNotches();
  if (!timeToProve(bench) || worstDemand(hands, main, curve) < NEAR_LIMIT) return;
  bringInside(hands, turner, main, curve, rest, () => timeToProve(bench));
  setNotches();
}
