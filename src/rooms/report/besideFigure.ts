/** Turns made over the minutes of two runs: the learner's in ink, the technician's dashed. */
import { axisLabels, axisMarks } from '../../kit/theme/figures.ts';
import { C, r1, T } from '../../kit/theme/ink.ts';

type Points = readonly { readonly seconds: number; readonly turns: number }[];

export interface BesideWords {
  readonly mine: string;
  readonly his: string;
  readonly clock: (seconds: number) => string;
  readonly turns: (turns: number) => string;
}

const LEFT = 44;
const RIGHT = 14;
const TOP = 26;
const BOTTOM = 26;

export function besideFigure(w: number, h: number, mine: Points, his: Points, words: BesideWords): string {
  const seconds = Math.max(60, mine.at(-1)!.seconds, his.at(-1)!.seconds);
  const most = Math.max(1, mine.at(-1)!.turns, his.at(-1)!.turns);
  const X = (s: number): number => LEFT + (s / seconds) * (w - LEFT - RIGHT);
  const Y = (t: number): number => h - BOTTOM - (t / most) * (h - TOP - BOTTOM);
  // A turn is made at its moment: between two the line stands.
  const steps = (points: Points): string =>
    points.map(({ seconds: s, turns }, i) => `${i === 0 ? 'M' : `H${r1(X(s))}L`}${r1(X(s))} ${r1(Y(turns))}`).join('') +
    `H${r1(X(seconds))}`;
  const marks = axisMarks(0, most, 4);
  const labels = axisLabels(marks);
  const half = seconds / 2;
  return (
    marks
      .map(
        (mark, i) =>
          `<path d="M${LEFT} ${r1(Y(mark))}H${w - RIGHT}" stroke="${C.ink}" stroke-width=".7" stroke-dasharray="2 4" opacity=".55"/>` +
          T(LEFT - 8, Y(mark) + 4.5, labels[i]!, 'm', { anchor: 'end' }),
      )
      .join('') +
    [0, half, seconds]
      .map((s, i) => T(X(s), h - 6, words.clock(s), 'm', { anchor: i === 0 ? 'start' : i === 1 ? 'middle' : 'end' }))
      .join('') +
    `<path d="${steps(his)}" fill="none" stroke="${C.petrolInk}" stroke-width="2" stroke-dasharray="6 4"/>` +
    `<path d="${steps(mine)}" fill="none" stroke="${C.ink}" stroke-width="2.4"/>` +
    `<path d="M${LEFT} 12h22" stroke="${C.ink}" stroke-width="2.4"/>${T(LEFT + 28, 16.5, words.mine, 'l')}` +
    `<path d="M${r1(w / 2)} 12h22" stroke="${C.petrolInk}" stroke-width="2" stroke-dasharray="6 4"/>${T(w / 2 + 28, 16.5, words.his, 'l')}`
  );
}
