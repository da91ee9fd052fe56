/** What the sheet's figure and table are made of: the curve of the nominal slugs, and for each level what the detector makes of it. Pure. */
import type { BenchSetup } from '../../../bench/setup.ts';
import { highest, voltsAt } from '../../../receiver/curveReading.ts';
import { createDetectorFigure } from '../../../receiver/detectorFigure.ts';
import type { Receiver } from '../../../receiver/receiver.ts';
import { createStatedResponse } from '../../../receiver/statedResponse.ts';
import type { Curve } from '../../theme/figures.ts';

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
  readonly curve: Curve;
  /** in order of frequency, tolerances as wide as the scenario makes them */
  readonly levels: readonly LevelRow[];
  onTube(relative: number): number;
}

export function sheetFigures({ receiver, deck, scenario }: BenchSetup): SheetFigures {
  const { specification: spec } = receiver;
  const { nominal } = createStatedResponse(receiver, deck);
  const reference =
    spec.referenceHz === undefined
      ? highest(nominal, spec.fromHz, spec.toHz).volts
      : voltsAt(nominal, spec.referenceHz);
  const detector = createDetectorFigure(receiver, nominal);
  const pips = pipNumbers(receiver);
  const wide = scenario.toleranceFactor;
  return {
    curve: { hz: nominal.hz, relative: nominal.volts.map((v) => v / reference) },
    levels: [...spec.points]
      .sort((a, b) => a.hz - b.hz)
      .map(({ hz, target, low, high }) => ({
        hz,
        target,
        low: Math.max(0, target - (target - low) * wide),
        high: target + (high - target) * wide,
        onTube: detector.onTube(target),
        pip: pips.get(hz) ?? null,
      })),
    onTube: detector.onTube,
  };
}

/** Pip numbers of the crystals that the sheet asks for. */
export function pipNumbers(receiver: Receiver): ReadonlyMap<number, number> {
  const wanted = [...receiver.setUp.markersHz].sort((a, b) => a - b);
  return new Map(wanted.map((hz, i) => [hz, i + 1]));
}
