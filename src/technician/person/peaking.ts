/** Peaking: slugs of narrow circuits that stand far off are each turned for the most at the middle, one after the other, before any curve is fitted. */
import { type AtBench, isNarrow, slugsOf, standFor } from './atWork.ts';
import { PASSES, shareOnTube, turnUp } from './deadStage.ts';
import { axisOf, readVolts } from './eyes.ts';
import { type Hands, set } from './hands.ts';
import type { PrintedResponse } from './sheet.ts';
import type { Turner } from './turner.ts';
import type { AloneStep } from './withNotebook.ts';

const STEPS = [1, 0.5, 0.25] as const;
const MOST_MOVES = 6;
/** The least rise of height that an eye trusts. */
const SEEN = 1.02;

export function peakUp(hands: Hands, turner: Turner, hz: number, slugs: readonly string[]): void {
  const axis = axisOf(hands);
  const height = (): number => Math.abs(readVolts(hands, [hz], axis)[0]!);
  for (const step of STEPS) {
    for (const slug of slugs) {
      let now = height();
      for (const way of [1, -1]) {
        const before = now;
        for (let moves = 0; moves < MOST_MOVES; moves++) {
          const made = turner.turn(slug, way * step);
          const then = height();
          if (made !== 0 && then > SEEN * now) now = then;
          else {
            turner.turn(slug, -made);
            break;
          }
        }
        if (now > before) break;
      }
    }
  }
}

/** A narrow set of which next to nothing comes through, though it is not dead, has its circuits far apart: they are peaked from the detector back, the source turned up, before anything is made of the curve. */
export function peakFaint(bench: AtBench, main: PrintedResponse, steps: readonly AloneStep[]): void {
  const { hands, sheet, turner } = bench;
  if (!isNarrow(main) || shareOnTube(hands, standFor(bench, main)) > PASSES) return;
  const done = new Set<string>();
  const peak = (slugs: readonly string[], at?: string): void => {
    const curve = standFor(bench, main, at);
    hands.note({ kind: 'follows', slugs });
    if (shareOnTube(hands, curve) <= PASSES) turnUp(hands);
    peakUp(hands, turner, main.setUp.centreHz, slugs);
    set(hands, 'levelDb', curve.levelDb);
    for (const slug of slugs) done.add(slug);
  };
  for (const { slugs, at } of steps) peak(slugs, at);
  const front = slugsOf(sheet, main).map(({ id }) => id);
  peak(front.filter((id) => !done.has(id)));
}
