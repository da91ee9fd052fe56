/** The knob as ink: a fluted disc with a compass needle on a 270 degree scale. Centre of the disc is (0, 0). */
import { arc, C, pol, r1 } from '../theme/ink.ts';

export const needleDegrees = (part: number): number => -135 + 270 * part;

/** Width and height of the block with label and readout, and where the disc's centre stands in it. */
export function knobBlock(r: number): { width: number; height: number; cx: number; cy: number } {
  return { width: 2 * r + 34, height: 2 * r + 59, cx: r + 17, cy: r + 31 };
}

/** Everything that never moves. */
export function knobStill(r: number, ticks = 11): string {
  const scaleRadius = r + 7;
  let marks = '';
  for (let i = 0; i < ticks; i++) {
    const q = -135 + (270 * i) / (ticks - 1);
    const major = i === 0 || i === ticks - 1 || i === (ticks - 1) / 2;
    const [x0, y0] = pol(0, 0, scaleRadius + 1.5, q);
    const [x1, y1] = pol(0, 0, scaleRadius + (major ? 6 : 4), q);
    marks += `M${r1(x0)} ${r1(y0)}L${r1(x1)} ${r1(y1)}`;
  }
  let shade = '';
  for (let i = 0; i < 9; i++) {
    const [x0, y0] = pol(0, 0, r, 100 + i * 9);
    const k = 2 + 3.6 * Math.sin(((i + 0.5) / 9) * Math.PI);
    shade += `M${r1(x0)} ${r1(y0)}l${r1(k)} ${r1(k)}`;
  }
  let flutes = '';
  const count = Math.round(r * 1.7);
  for (let i = 0; i < count; i++) {
    const q = (i / count) * 360;
    const dark = Math.cos(((q - 135) * Math.PI) / 180);
    const [x0, y0] = pol(0, 0, r - 1, q);
    const [x1, y1] = pol(0, 0, r - (dark > 0.2 ? 5 : 4), q);
    flutes += `<path d="M${r1(x0)} ${r1(y0)}L${r1(x1)} ${r1(y1)}" stroke-width="${dark > 0.5 ? 1.5 : dark > -0.1 ? 1 : 0.6}"/>`;
  }
  let gloss = '';
  for (let i = 0; i < 3; i++)
    gloss += `<path d="${arc(0, 0, r - 8.2 - i * 2.3, 95 + i * 10, 178 - i * 10)}" fill="none" stroke="${C.ink}" stroke-width=".75" opacity=".75"/>`;
  return (
    `<path d="${marks}" stroke="${C.ink}" stroke-width="1.1"/>` +
    `<path d="${arc(0, 0, scaleRadius, -135, 135)}" fill="none" stroke="${C.ink}" stroke-width=".9"/>` +
    `<circle class="brass-ring" r="${r + 5.2}" fill="${C.brass}" stroke="${C.ink}" stroke-width="1"/>` +
    `<path class="cast" d="${shade}" stroke="${C.ink}" stroke-width=".8" opacity=".7"/>` +
    `<circle r="${r}" fill="${C.sheet}" stroke="${C.ink}" stroke-width="1.6"/>` +
    `<g stroke="${C.ink}">${flutes}</g>` +
    `<circle r="${r - 6}" fill="${C.paper}" stroke="${C.ink}" stroke-width="1"/>` +
    (r > 14 ? gloss : '')
  );
}

/** The petrol arc that shows the value, from the left end, or from the top where the quantity has a sign. */
export function valueArc(r: number, part: number, signed: boolean): string {
  if (Math.abs(part - (signed ? 0.5 : 0)) <= 0.004) return '';
  return arc(0, 0, r + 5.4, signed ? 0 : -135, needleDegrees(part));
}

/** Needle pointing up; the caller turns it. */
export function needle(r: number): string {
  const tip = r1(r - 2.2);
  const tail = r1(r * 0.44);
  const half = r1(Math.min(3.4, r * 0.15));
  return (
    `<path d="M0 ${-tip}L${half} 0L0 ${tail}L${-half} 0Z" fill="${C.sheet}" stroke="${C.ink}" stroke-width="1.1" stroke-linejoin="round"/>` +
    `<path d="M0 ${-tip}L${half} 0H${-half}Z" fill="${C.rust}" stroke="${C.ink}" stroke-width="1"/><circle r="2" fill="${C.ink}"/>`
  );
}
