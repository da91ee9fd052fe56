/** A plot of the handbook as lines: on paper in ink, small; and as the paths that a tube's beam is drawn with. */
import type { LineLook, Plot, PlotLine } from '../../present/handbook/liveFigure.ts';
import { C, r1 } from '../theme/ink.ts';

export type Across = (value: number) => number;

export function linePath({ x, y }: PlotLine, X: Across, Y: Across): string {
  let d = '';
  for (let i = 0; i < x.length; i++) d += `${i ? 'L' : 'M'}${r1(X(x[i]!))} ${r1(Y(y[i]!))}`;
  return d;
}

const INKS: Readonly<Record<LineLook, string>> = {
  now: `stroke="${C.ink}" stroke-width="2"`,
  retrace: `stroke="${C.ink2}" stroke-width="1.3"`,
  wax: `stroke="${C.petrolInk}" stroke-width="1.5" stroke-dasharray="2 4"`,
  sheet: `stroke="${C.brassInk}" stroke-width="1.5" stroke-dasharray="6 4"`,
};

export function inkPlot(w: number, h: number, { from, to, low, high, lines, dots = [] }: Plot): string {
  const X: Across = (v) => ((v - from) / (to - from)) * w;
  const Y: Across = (v) => h - 4 - ((v - low) / (high - low)) * (h - 8);
  const zero = low <= 0 && high > 0 ? Y(0) : h - 2;
  const box = `<clipPath id="box"><rect width="${w}" height="${h}"/></clipPath>`;
  const drawn = lines.map((line) => `<path d="${linePath(line, X, Y)}" ${INKS[line.look]}/>`).join('');
  const spots = dots
    .map(({ x, y }) => `<circle cx="${r1(X(x))}" cy="${r1(Y(y))}" r="3.5" fill="${C.rust}" stroke="${C.ink}"/>`)
    .join('');
  return `<defs>${box}</defs><path d="M0 ${r1(zero)}H${w}" stroke="${C.ink}"/><g fill="none" stroke-linejoin="round" clip-path="url(#box)">${drawn}</g>${spots}`;
}
