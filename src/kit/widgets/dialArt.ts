/** The tunable marker's dial: a ruled scale that slides under a fixed hairline. Figures stand at the major marks only. */
import { arc, C, hatch, pol, r1, rr, T } from '../theme/ink.ts';

/** Pixels along the arc between two major marks; long figures need more room. */
export const majorPixels = (figure: string): number => (figure.length > 3 ? 46 : 34);

export interface DialShape {
  readonly cx: number;
  readonly cy: number;
  readonly radius: number;
  readonly degreesPerMajor: number;
  /** how far marks are drawn on either side, degrees */
  readonly reach: number;
}

export function dialShape(w: number, h: number, majorPx: number): DialShape {
  const radius = Math.max(150, w * 1.15);
  return {
    cx: w / 2,
    // The figures over the arc need 38 pixels.
    cy: radius + Math.max(38, h - 46),
    radius,
    degreesPerMajor: ((majorPx / radius) * 180) / Math.PI,
    reach: Math.min(60, (Math.asin(Math.min(1, w / 2 / radius)) * 180) / Math.PI + 4),
  };
}

/** Marks and figures round `major`, which stands at 0 degrees; the caller turns the whole by less than one major step. */
export function dialScale(shape: DialShape, major: number, figure: (major: number) => string): string {
  const { cx, cy, radius, degreesPerMajor, reach } = shape;
  const majors = Math.ceil(reach / degreesPerMajor) + 1;
  let fine = '';
  let heavy = '';
  let figures = '';
  for (let k = -majors * 20; k <= majors * 20; k++) {
    const a = (k / 20) * degreesPerMajor;
    const whole = k % 20 === 0;
    const length = whole ? 14 : k % 10 === 0 ? 11 : k % 2 === 0 ? 7 : 4;
    const [x0, y0] = pol(cx, cy, radius, a);
    const [x1, y1] = pol(cx, cy, radius + length, a);
    const mark = `M${r1(x0)} ${r1(y0)}L${r1(x1)} ${r1(y1)}`;
    if (whole) heavy += mark;
    else fine += mark;
    if (!whole) continue;
    const [tx, ty] = pol(cx, cy, radius + 20, a);
    figures += `<g transform="translate(${r1(tx)} ${r1(ty)}) rotate(${r1(a)})">${T(0, 0, figure(major + k / 20), 'm', { anchor: 'middle' })}</g>`;
  }
  return `<path d="${fine}" stroke="${C.ink}" stroke-width=".9"/><path d="${heavy}" stroke="${C.ink}" stroke-width="1.6"/>${figures}`;
}

export function dialStill(shape: DialShape, w: number, h: number): string {
  const { cx, cy, radius } = shape;
  return (
    `<path d="${arc(cx, cy, radius, -60, 60)}" stroke="${C.ink}" stroke-width="1.1" fill="none"/>` +
    `<path d="${arc(cx, cy, radius - 4, -60, 60)}" stroke="${C.ink}" stroke-width=".6" fill="none"/>` +
    hatch(`M0 ${h}V${h - 14}H${w}V${h}Z`, [0, h - 14, w, 14], { a: 45, gap: 3.2, sw: 0.6, op: 0.35 })
  );
}

export const dialFrame = (w: number, h: number): string =>
  `<path class="brass-ring" d="${rr(-5, -5, w + 10, h + 10, 5)}" fill="${C.brass}" stroke="${C.ink}"/>` +
  `<path d="${rr(0, 0, w, h, 3)}" fill="${C.sheet}" stroke="${C.ink}" stroke-width="1.5"/>`;

export function hairline(w: number, h: number): string {
  const cx = w / 2;
  return (
    `<path d="M${cx} 2V${h - 2}" stroke="${C.rust}" stroke-width="1.8"/>` +
    `<path d="M${cx - 6} -1h12l-6 8z" fill="${C.rust}" stroke="${C.ink}" stroke-width="1"/>`
  );
}
