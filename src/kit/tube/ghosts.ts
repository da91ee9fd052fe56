/**
 * The last two settled curves: they show which way the curve is walking while a slug is turned.
 * A knob that moves the picture makes them untrue, so it drops them.
 */
import type { BeamPoints } from '../../bench/display.ts';
import { r1 } from '../theme/ink.ts';

export interface Ghosts {
  /** the older first; path data in divisions times 100, y down */
  readonly paths: readonly string[];
  readonly shown: boolean;
  /** the curve that stands still now */
  readonly settled: string | null;
  readonly turnsMade: number;
}

export const NO_GHOSTS: Ghosts = { paths: [], shown: false, settled: null, turnsMade: 0 };
const KEPT = 2;

/** The picture changed. `turnsMade` tells whether a slug did it. */
export function ghostsAfterChange(ghosts: Ghosts, turnsMade: number): Ghosts {
  if (turnsMade === ghosts.turnsMade)
    return ghosts.paths.length === 0 && ghosts.settled === null ? ghosts : { ...NO_GHOSTS, turnsMade };
  const paths = ghosts.settled === null ? ghosts.paths : [...ghosts.paths, ghosts.settled].slice(-KEPT);
  return { paths, shown: true, settled: null, turnsMade };
}

/** The picture has come to rest: the ghosts may fade, and this curve is the next one to be kept. */
export function ghostsAtRest(ghosts: Ghosts, settled: string): Ghosts {
  return { ...ghosts, shown: false, settled };
}

/**
 * The forward trace (the first half of the points) as a line. Each place is a mean over a dozen points:
 * the pips' fine wiggle goes, the curve stays.
 */
export function ghostPath({ data, count }: BeamPoints): string {
  let d = '';
  let pen = false;
  for (let from = 0; from + STRIDE <= count / 2; from += STRIDE) {
    let x = 0;
    let y = 0;
    let lit = true;
    for (let i = from; i < from + STRIDE; i++) {
      x += data[i * 3]!;
      y += data[i * 3 + 1]!;
      if (data[i * 3 + 2] === 0) lit = false;
    }
    if (lit) d += `${pen ? 'L' : 'M'}${r1((x / STRIDE) * 100)} ${r1((-y / STRIDE) * 100)}`;
    pen = lit;
  }
  return d;
}

const STRIDE = 12;
