/** The meter as ink: a plain arc, one needle, a dark boss with the unit. */
import { arc, C, pol, r1, rr, T } from '../theme/ink.ts';

export interface MeterShape {
  readonly cx: number;
  readonly cy: number;
  readonly radius: number;
  /** degrees from the middle to either end of the arc */
  readonly spread: number;
}

export function meterShape(w: number, h: number): MeterShape {
  const radius = h - 6;
  const spread = Math.min(48, (Math.asin(Math.min(0.95, (w / 2 - 16) / radius)) * 180) / Math.PI);
  return { cx: w / 2, cy: h + 18, radius, spread };
}

/** `marks`: words at equal steps from left to right. */
export function meterStill(w: number, h: number, marks: readonly string[], unit: string, clip: string): string {
  const { cx, cy, radius, spread } = meterShape(w, h);
  const frame = rr(0, 0, w, h, 3);
  let ticks = '';
  const n = (marks.length - 1) * 5;
  for (let i = 0; i <= n; i++) {
    const a = -spread + (2 * spread * i) / n;
    const [x0, y0] = pol(cx, cy, radius, a);
    const [x1, y1] = pol(cx, cy, radius + (i % 5 === 0 ? 8 : 4.5), a);
    ticks += `M${r1(x0)} ${r1(y0)}L${r1(x1)} ${r1(y1)}`;
  }
  const words = marks
    .map((word, i) => {
      const [x, y] = pol(cx, cy, radius - 9, -spread + (2 * spread * i) / (marks.length - 1));
      return T(x, y + 4, word, 'l2', { anchor: 'middle', fill: C.ink });
    })
    .join('');
  const boss = `M${cx - 34} ${h}A34 22 0 0 1 ${cx + 34} ${h}Z`;
  return (
    `<path d="${frame}" fill="${C.sheet}" stroke="${C.ink}" stroke-width="1.5"/><clipPath id="${clip}"><path d="${frame}"/></clipPath>` +
    `<path d="${arc(cx, cy, radius, -spread, spread)}" fill="none" stroke="${C.ink}" stroke-width="1.2"/>` +
    `<path d="${ticks}" stroke="${C.ink}" stroke-width="1"/>${words}` +
    `<path d="${boss}" fill="${C.ink}"/>${T(cx, h - 5, unit, 'l', { anchor: 'middle', fill: C.paper })}`
  );
}

/** Needle pointing up from the pivot at (0, 0); only the part above the boss is drawn. */
export function meterNeedle(radius: number): string {
  return (
    `<path d="M2 -38L2 ${-radius - 3}" stroke="${C.ink}" stroke-width="1.4" opacity=".18"/>` +
    `<path d="M0 -40V${-radius - 5}" stroke="${C.rust}" stroke-width="1.7"/>`
  );
}
