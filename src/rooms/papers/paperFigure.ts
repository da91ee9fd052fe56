/** Figures for paper: lines alone, black on white, thick enough for a copy of a copy. */
import { axisLabels, axisMarks, curvePath } from '../../kit/theme/figures.ts';
import { r1, T } from '../../kit/theme/ink.ts';
import type { SheetFigures } from '../../present/sheetFigures.ts';

const LEFT = 46;
const RIGHT = 12;
const TOP = 16;
const BOTTOM = 24;
const BLACK = '#000';

export interface PaperFigure {
  readonly figures: SheetFigures;
  readonly width: number;
  readonly height: number;
  readonly perUnit: number;
  /** `dotted`: to draw beside, on squared paper */
  readonly style: 'wanted' | 'dotted';
}

export function paperFigure({ figures, width, height, perUnit, style }: PaperFigure): string {
  const { setUp, specification } = figures.response;
  const [from, to] = [setUp.centreHz - setUp.spanHz / 2, setUp.centreHz + setUp.spanHz / 2];
  const signed = specification.sCurve !== null;
  const [floor, roof] = signed ? [-1.05, 1.05] : [0, 1.05];
  const X = (hz: number): number => LEFT + ((hz - from) / (to - from)) * (width - LEFT - RIGHT);
  const Y = (level: number): number => height - BOTTOM - ((level - floor) / (roof - floor)) * (height - TOP - BOTTOM);
  const grid = style === 'dotted';
  const marks = axisMarks(from / perUnit, to / perUnit, width > 400 ? 10 : 5);
  const labels = axisLabels(marks);
  const levels = signed ? [-1, 0, 1] : [0, 0.5, 1];
  let s = '';
  for (const level of levels)
    s +=
      `<path d="M${LEFT} ${r1(Y(level))}H${width - RIGHT}" stroke="${BLACK}" stroke-width="${level === 0 ? 1.6 : 1}"${level === 0 ? '' : ' stroke-dasharray="2 4"'} fill="none"/>` +
      T(LEFT - 6, Y(level) + 5, Math.round(100 * level), 'm', { anchor: 'end', fill: BLACK });
  marks.forEach((mark, i) => {
    const x = r1(X(mark * perUnit));
    s += grid
      ? `<path d="M${x} ${TOP}V${height - BOTTOM}" stroke="${BLACK}" stroke-width="1" stroke-dasharray="2 4" fill="none"/>`
      : `<path d="M${x} ${height - BOTTOM}v5" stroke="${BLACK}" stroke-width="1.4" fill="none"/>`;
    // A figure at the very edge would be cut.
    if (x > LEFT + 8 && x < width - RIGHT - 14)
      s += T(x, height - 5, labels[i]!, 'm', { anchor: 'middle', fill: BLACK });
  });
  if (grid)
    s += `<rect x="${LEFT}" y="${TOP}" width="${width - LEFT - RIGHT}" height="${height - TOP - BOTTOM}" fill="none" stroke="${BLACK}" stroke-width="1.6"/>`;
  s += `<path d="${curvePath(figures.curve, from, to, X, Y)}" fill="none" stroke="${BLACK}" stroke-width="2"${grid ? ' stroke-dasharray="1.5 5" stroke-linecap="round"' : ''}/>`;
  if (!grid)
    for (const { hz, low, high, pip } of figures.levels) {
      if (pip === null || hz < from || hz > to) continue;
      const [x, y0, y1] = [X(hz), Y(Math.min(high, roof)), Y(Math.max(low, floor))];
      s += `<path d="M${r1(x - 6)} ${r1(y0)}h12M${r1(x)} ${r1(y0)}V${r1(y1)}M${r1(x - 6)} ${r1(y1)}h12" stroke="${BLACK}" stroke-width="1.6" fill="none"/>`;
    }
  return s;
}
