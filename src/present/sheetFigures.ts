/** What the sheet's figure and table are made of: the curve of the nominal slugs, and for each level what the detector makes of it. Pure. */
import { type BenchSetup, designOf } from '../bench/setup.ts';
import { relativeTo } from '../bench/truth.ts';
import { createDetectorFigure } from '../receiver/detectorFigure.ts';
import type { SheetResponse } from '../receiver/receiver.ts';
import { createStatedResponse } from '../receiver/statedResponse.ts';
import type { Curve } from './curves.ts';

export interface LevelRow {
  readonly hz: number;
  readonly target: number;
  readonly low: number;
  readonly high: number;
  /** the target as a share of the reference's height on the tube */
  readonly onTube: number;
  /** number of its pip when just the sheet's crystals are in; null where the sheet asks for none here */
  readonly pip: number | null;
}

export interface SheetFigures {
  readonly response: SheetResponse;
  readonly curve: Curve;
  /** in order of frequency, tolerances as wide as the scenario makes them */
  readonly levels: readonly LevelRow[];
  onTube(relative: number): number;
}

export function sheetFigures(setup: BenchSetup, response: SheetResponse): SheetFigures {
  const { scenario } = setup;
  const { receiver, deck } = designOf(setup);
  const { specification: spec } = response;
  const { nominal } = createStatedResponse(receiver, deck, response);
  const detector = createDetectorFigure(receiver, deck, response);
  const pips = pipNumbers(response);
  const wide = scenario.toleranceFactor;
  return {
    response,
    curve: { hz: nominal.hz, relative: relativeTo(nominal, spec) },
    levels: [...spec.points]
      .sort((a, b) => a.hz - b.hz)
      .map(({ hz, target, low, high }) => ({
        hz,
        target,
        low: spec.sCurve === null ? Math.max(0, target - (target - low) * wide) : target - (target - low) * wide,
        high: target + (high - target) * wide,
        onTube: detector.onTube(target),
        pip: pips.get(hz) ?? null,
      })),
    onTube: detector.onTube,
  };
}

/** Pip numbers of the crystals that the sheet asks for. */
export function pipNumbers({ setUp }: SheetResponse): ReadonlyMap<number, number> {
  const wanted = [...setUp.markersHz].sort((a, b) => a - b);
  return new Map(wanted.map((hz, i) => [hz, i + 1]));
}
