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
