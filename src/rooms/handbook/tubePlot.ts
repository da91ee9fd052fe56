/** A plot on the glass of the bench's tube: graticule, wax lines under the beam, the beam with its halo. Still while nothing moves. */
import { linePath } from '../../kit/plots/plotInk.ts';
import { axisLabels, axisMarks } from '../../kit/theme/figures.ts';
import { C, r1, T } from '../../kit/theme/ink.ts';
import { DIVS_ACROSS, TUBE_COLOURS, type TubeGeometry, tubeGeometry } from '../../kit/tube/hood.ts';
import type { Plot } from '../../present/handbook/liveFigure.ts';

const HOOD = 14;
/** Divisions from the middle to the foot and to the head of a picture. */
const FOOT = -3;
const HEAD = 3;
/** Height of the ruled scale under the tube. */
export const SCALE_PX = 40;

/** The tube that fills a width. */
export function tubeFor(width: number): TubeGeometry {
  // Hood and the glass beyond the graticule take 2 x 14 px and 0.756 of a cell.
  const cell = Math.max(14, Math.min(46, (width - 2 * HOOD - 10) / (DIVS_ACROSS + 0.76)));
  return tubeGeometry({ cell, hood: HOOD, lip: 0 });
}

const HALO: readonly (readonly [width: number, alpha: number])[] = [
  [14, 0.06],
  [9, 0.09],
  [5, 0.2],
];

export function beamPlot(g: TubeGeometry, { from, to, low, high, lines, dots = [] }: Plot): string {
  const { cx, cy, cell } = g;
  const X = (v: number): number => cx + ((v - from) / (to - from) - 0.5) * DIVS_ACROSS * cell;
  const Y = (v: number): number => cy - (FOOT + ((v - low) / (high - low)) * (HEAD - FOOT)) * cell;
  const [left, top, w, h] = g.glass;
  let s = `<defs><clipPath id="face"><rect x="${r1(left)}" y="${r1(top)}" width="${r1(w)}" height="${r1(h)}"/></clipPath></defs><g clip-path="url(#face)" fill="none" stroke-linejoin="round">`;
  for (const line of lines) {
    const d = linePath(line, X, Y);
    if (line.look === 'wax' || line.look === 'sheet') {
      const dash = line.look === 'wax' ? '2 5' : '9 5';
      s += `<path d="${d}" stroke="${TUBE_COLOURS.wax}" stroke-width="1.7" stroke-dasharray="${dash}" opacity=".85"/>`;
      continue;
    }
    const dim = line.look === 'retrace' ? 0.55 : 1;
    for (const [width, alpha] of HALO)
      s += `<path d="${d}" stroke="#5fe0a2" stroke-width="${width}" opacity="${r1(alpha * dim * 100) / 100}"/>`;
    s += `<path d="${d}" stroke="${TUBE_COLOURS.body}" stroke-width="2" opacity="${dim}"/>`;
  }
  for (const { x, y } of dots)
    s += `<circle cx="${r1(X(x))}" cy="${r1(Y(y))}" r="4.500" fill="${C.rust}" stroke="#fff" stroke-width="1.2"/>`;
  return `${s}</g>`;
}

/** The frequencies under the glass, on the paper. */
export function frequencyScale(g: TubeGeometry, { from, to }: Plot): string {
  const { cx, cell } = g;
  const [perUnit, unit] = to < 2e6 ? [1e3, 'kHz'] : [1e6, 'MHz'];
  const half = (DIVS_ACROSS / 2) * cell;
  const X = (hz: number): number => cx - half + ((hz - from) / (to - from)) * 2 * half;
  const figures = axisMarks(from / perUnit, to / perUnit, Math.max(2, Math.floor((2 * half) / 62)));
  const labels = axisLabels(figures);
  let ticks = '';
  for (const v of axisMarks(from / perUnit, to / perUnit, (2 * half) / 16)) ticks += `M${r1(X(v * perUnit))} 8v5`;
  let s = `<path d="M${r1(cx - half)} 8H${r1(cx + half)}${ticks}" stroke="${C.ink}" fill="none"/>`;
  figures.forEach((v, i) => {
    const x = X(v * perUnit);
    if (x < cx + half - 24 - 4 * labels[i]!.length) s += T(x, 28, labels[i]!, 'ms', { anchor: 'middle' });
  });
  return s + T(cx + half, 28, unit, 'ls', { anchor: 'end' });
}
