/** What a live figure of the handbook is: what can be turned, and the picture and readings that the circuits give for it. Pure: the same settings, the same figure. */
import type { FigureKind, FigureTable } from '../../words/handbook.ts';
import type { Unit } from './quantity.ts';

export type FigureControl =
  | {
      readonly kind: 'slider';
      readonly from: number;
      readonly to: number;
      readonly step: number;
      readonly start: number;
      readonly unit: Unit;
      readonly places: number;
    }
  | { readonly kind: 'switch'; readonly places: number; readonly start: number };

/** `now`: the beam. `wax`: dotted, what it was or might be; `sheet`: dashed, what is wanted */
export type LineLook = 'now' | 'retrace' | 'wax' | 'sheet';

export interface PlotLine {
  readonly look: LineLook;
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
}

export interface Plot {
  /** hertz across the graticule */
  readonly from: number;
  readonly to: number;
  /** what stands at the foot and at the head of the picture */
  readonly low: number;
  readonly high: number;
  readonly lines: readonly PlotLine[];
  readonly dots?: readonly { readonly x: number; readonly y: number }[];
  /** a core in its coil, by so many turns further in than where it is right */
  readonly coreTurns?: number;
}

export interface Reading {
  /** null: there is none, as with two humps that are one */
  readonly value: number | null;
  readonly unit: Unit;
  readonly places: number;
}

export interface Drawn<K extends FigureKind> {
  readonly plot: Plot;
  readonly readings: Readonly<Record<FigureTable[K]['reading'], Reading>>;
}

export interface LiveFigure<K extends FigureKind> {
  readonly controls: Readonly<Record<FigureTable[K]['control'], FigureControl>>;
  readonly draw: (settings: Readonly<Record<FigureTable[K]['control'], number>>) => Drawn<K>;
}

export const slider = (
  from: number,
  to: number,
  step: number,
  start: number,
  unit: Unit,
  places: number,
): FigureControl => ({ kind: 'slider', from, to, step, start, unit, places });

export const places = (count: number, start = 0): FigureControl => ({ kind: 'switch', places: count, start });

export const reading = (value: number | null, unit: Unit, places: number): Reading => ({ value, unit, places });

export const shareOf = (y: ArrayLike<number>, of: number): Float64Array => Float64Array.from(y, (v) => v / of);

/** Two curves over the same frequencies, as shares of one height: dotted what was, and the beam. */
export const waxAndNow = (
  hz: ArrayLike<number>,
  was: ArrayLike<number>,
  now: ArrayLike<number>,
  of: number,
): readonly PlotLine[] => [
  { look: 'wax', x: hz, y: shareOf(was, of) },
  { look: 'now', x: hz, y: shareOf(now, of) },
];
