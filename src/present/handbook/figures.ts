/** Every live figure by its kind. */
import type { FigureKind } from '../../words/handbook.ts';
import { oneCan, slug, stagger } from './figures/cans.ts';
import { detector, sCurve } from './figures/detecting.ts';
import { bias, faults, lead, overload, probe, slope } from './figures/stages.ts';
import { fastSweep, phasing, scale, spot } from './figures/sweeping.ts';
import { bridgedT, markers, trap } from './figures/traps.ts';
import type { FigureControl, Plot, Reading } from './liveFigure.ts';

const FIGURES = {
  spot,
  scale,
  phasing,
  fastSweep,
  markers,
  slug,
  oneCan,
  stagger,
  trap,
  bridgedT,
  detector,
  sCurve,
  bias,
  overload,
  probe,
  lead,
  slope,
  faults,
} as const satisfies Record<FigureKind, unknown>;

/** A figure for views, which know its controls and readings by name only. */
export interface AnyFigure {
  readonly controls: Readonly<Record<string, FigureControl>>;
  readonly draw: (settings: Readonly<Record<string, number>>) => {
    readonly plot: Plot;
    readonly readings: Readonly<Record<string, Reading>>;
  };
}

export const figureOf = (kind: FigureKind): AnyFigure => FIGURES[kind] as AnyFigure;
