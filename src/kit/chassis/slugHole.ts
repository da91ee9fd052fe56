/** The hole of a slug in the pan, seen from above, with what turns in it. Middle at the origin; lettering lies elsewhere. */
import type { ToolHead } from '../../receiver/receiver.ts';
import { C, pol, r1 } from '../theme/ink.ts';

const HOLE = '#8d8f88';

export const hexagon = (cx: number, cy: number, r: number): string => {
  let d = '';
  for (let i = 0; i < 6; i++) {
    const [x, y] = pol(cx, cy, r, i * 60);
    d += `${i ? 'L' : 'M'}${r1(x)} ${r1(y)}`;
  }
  return `${d}Z`;
};
export const bar = (half: number, thick: number): string => `M${-half} ${-thick}H${half}V${thick}H${-half}Z`;

/** The rim of a slug's hole, middle at the origin; a lower core shows a dashed rim. */
export function holeRim(r: number, lower: boolean): string {
  return (
    `<circle r="${r + 2.4}" fill="${C.sheet}" stroke="${C.ink}" stroke-width="1.3"${lower ? ' stroke-dasharray="2.4 1.8"' : ''}/>` +
    `<circle r="${r}" fill="${HOLE}" stroke="${C.ink}" stroke-width=".9"/>`
  );
}

/** What turns inside the rim. */
export const holeHead = (r: number, head: ToolHead): string =>
  head === 'hex'
    ? `<path d="${hexagon(0, 0, r * 0.6)}" fill="${C.ink}"/>`
    : `<path d="${bar(r - 0.5, 1.6)}" fill="${C.ink}"/>`;
