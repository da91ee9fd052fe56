/** Peaking: slugs of narrow circuits that stand far off are each turned for the most at the middle, one after the other, before any curve is fitted. */
import { axisOf, readVolts } from './eyes.ts';
import type { Hands } from './hands.ts';
import type { Turner } from './turner.ts';

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
