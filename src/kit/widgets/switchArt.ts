/** The switch as ink: the circuit symbol itself, a brass blade from a pivot to one of its positions. Pivot at (0, 0), y down. */
import { C, pol, r1, rr, shadow } from '../theme/ink.ts';

export interface SwitchShape {
  readonly width: number;
  readonly height: number;
  /** pivot from the top left of the plate */
  readonly px: number;
  readonly py: number;
  /** blade length from the pivot to the positions' centres */
  readonly reach: number;
  /** degrees of each position, 0 = up */
  readonly angles: readonly number[];
}

/** Beyond every edge of a plate. */
const FAR = 400;

/** Two positions: 84 x 46 with the words in the lower corners. Three or four: a wider plate with a word at each position. */
export function switchShape(positions: number, width?: number): SwitchShape {
  if (positions === 2) {
    const w = width ?? 84;
    return { width: w, height: 46, px: w / 2, py: 36, reach: 29, angles: [-40.8, 40.8] };
  }
  if (positions === 3)
    return { width: width ?? 132, height: 58, px: (width ?? 132) / 2, py: 49, reach: 24, angles: [-58, 0, 58] };
  return { width: width ?? 132, height: 62, px: (width ?? 132) / 2, py: 52, reach: 27, angles: [-72, -24, 24, 72] };
}

/**
 * Where a press means position `at`: the sector between the lines that halve the angles to its neighbours, as place and
 * clip path of its unseen control in a box that overhangs the plate by `over` pixels on every side. Positions stand closer
 * together than a column each would be wide, so that columns would give a position's own stud to its neighbour. The middle
 * of each control lies in its own sector, for what presses the middle of a thing.
 */
export function positionSector(
  { width, px, py, reach, angles }: SwitchShape,
  at: number,
  over: number,
): { readonly left: string; readonly width: string; readonly clipPath: string } {
  const whole = width + 2 * over;
  const [first, last] = [at === 0, at === angles.length - 1];
  const stud = pol(px, py, reach, angles[at]!)[0] + over;
  const half = Math.min(stud, whole - stud);
  const left = first ? 0 : last ? px + over : stud - half;
  const wide = first ? px + over : last ? whole - left : 2 * half;
  const from = first ? -180 : (angles[at - 1]! + angles[at]!) / 2;
  const to = last ? 180 : (angles[at]! + angles[at + 1]!) / 2;
  const pivot = [px + over - left, py + over] as const;
  const ends = [0, 0.25, 0.5, 0.75, 1].map((part) => pol(...pivot, FAR, from + part * (to - from)));
  const clipPath = `polygon(${[pivot, ...ends].map(([x, y]) => `${r1(x)}px ${r1(y)}px`).join(', ')})`;
  return { left: `${r1(left)}px`, width: `${r1(wide)}px`, clipPath };
}

export function switchStill({ width: w, height: h, px, py, reach, angles }: SwitchShape): string {
  const plate = rr(0, 0, w, h, 3);
  const positions = angles
    .map((a) => {
      const [x, y] = pol(px, py, reach, a);
      return `<circle cx="${r1(x)}" cy="${r1(y)}" r="4.6" fill="${C.sheet}" stroke="${C.ink}" stroke-width="1.2"/>`;
    })
    .join('');
  return (
    shadow(0, 0, w, h, { s: 3.5, gap: 2.6, sw: 0.7, op: 0.55 }) +
    `<path class="brass-ring" d="${rr(-5.5, -5.5, w + 11, h + 11, 6)}" fill="${C.brass}" stroke="${C.ink}"/>` +
    `<path d="${plate}" fill="${C.sheet}" stroke="${C.ink}" stroke-width="1.3"/>${positions}`
  );
}

/** Blade pointing up with the rust contact under its tip; the caller turns it by the position's angle. */
export function blade(reach: number): string {
  const tip = r1(1 - reach);
  return (
    `<circle cy="${-reach}" r="4.6" fill="${C.rust}" stroke="${C.ink}" stroke-width="1.2"/>` +
    `<path d="M0 0V${tip}" stroke="${C.ink}" stroke-width="6.4" stroke-linecap="round"/>` +
    `<path d="M0 0V${tip}" stroke="${C.brass}" stroke-width="3.6" stroke-linecap="round"/>` +
    `<circle r="4.2" fill="${C.sheet}" stroke="${C.ink}" stroke-width="1.3"/><circle r="1.4" fill="${C.ink}"/>`
  );
}

/** A small one for a title row: 38 x 24, positions at the sides. */
export const SMALL_SWITCH: SwitchShape = { width: 38, height: 24, px: 19, py: 18.5, reach: 14, angles: [-52, 52] };

export function smallSwitchStill({ width: w, height: h, px, py, reach, angles }: SwitchShape = SMALL_SWITCH): string {
  const positions = angles
    .map((a) => {
      const [x, y] = pol(px, py, reach, a);
      return `<circle cx="${r1(x)}" cy="${r1(y)}" r="3" fill="${C.sheet}" stroke="${C.ink}" stroke-width="1"/>`;
    })
    .join('');
  return (
    `<path class="brass-ring" d="${rr(-4, -4, w + 8, h + 8, 4)}" fill="${C.brass}" stroke="${C.ink}" stroke-width=".9"/>` +
    `<path d="${rr(0, 0, w, h, 2)}" fill="${C.sheet}" stroke="${C.ink}" stroke-width="1.1"/>${positions}`
  );
}

export function smallBlade(reach = SMALL_SWITCH.reach): string {
  return (
    `<circle cy="${-reach}" r="3" fill="${C.rust}" stroke="${C.ink}" stroke-width="1"/>` +
    `<path d="M0 0V${1 - reach}" stroke="${C.ink}" stroke-width="4.4" stroke-linecap="round"/>` +
    `<path d="M0 0V${1 - reach}" stroke="${C.brass}" stroke-width="2.4" stroke-linecap="round"/>` +
    `<circle r="2.8" fill="${C.sheet}" stroke="${C.ink}" stroke-width="1.1"/>`
  );
}
