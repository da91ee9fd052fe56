/** What the sheet's figure and table are made of: the curve of the nominal slugs, and for each level what the detector makes of it. Pure. */
import { choicesOf } from '../bench/controlRange.ts';
import { type BenchSetup, designOf } from '../bench/setup.ts';
import { relativeTo } from '../bench/truth.ts';
import { createDetectedLevels } from '../receiver/detectedLevels.ts';
import type { SheetResponse } from '../receiver/receiver.ts';
import { createStatedResponse } from '../receiver/statedResponse.ts';
import type { Curve } from './curves.ts';
import type { StageCurve } from './stageCurve.ts';

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
  /** detected, at the curve's reference, with the source at the sheet's level */
  readonly volts: number;
  /** the sweep goes in farther on than the sheet's own point; null: at that point */
  readonly stage: StageCurve | null;
  /** see `DetectedLevels` */
  onTube(relative: number, hz?: number): number;
}

export function sheetFigures(setup: BenchSetup, response: SheetResponse): SheetFigures {
  const { scenario } = setup;
  const { receiver, deck } = designOf(setup);
  const { specification: spec } = response;
  const { nominal } = createStatedResponse(receiver, deck, response);
  const beat = spec.peaks.find(({ oscillator }) => oscillator === true);
  const detector = createDetectedLevels(receiver, deck, response);
  const pips = pipNumbers(response);
  const wide = scenario.toleranceFactor;
  return {
    response,
    curve: beat === undefined ? { hz: nominal.hz, relative: relativeTo(nominal, spec) } : beatCurve(response, beat.hz),
    levels: [...spec.points]
      .sort((a, b) => a.hz - b.hz)
      .map(({ hz, target, low, high }) => ({
        hz,
        target,
        low: spec.sCurve === null ? Math.max(0, target - (target - low) * wide) : target - (target - low) * wide,
        high: target + (high - target) * wide,
        onTube: detector.onTube(target, hz),
        pip: pips.get(hz) ?? null,
      })),
    volts: detector.referenceDetectedVolts,
    stage: null,
    onTube: detector.onTube,
  };
}

/** An oscillator that runs shows no curve but a beat, about a fiftieth of the sheet's span wide. */
function beatCurve({ setUp, specification: { fromHz, toHz } }: SheetResponse, beatHz: number): Curve {
  // Even steps to either side of its top, so that the top itself is drawn.
  const points = 151;
  const stepHz = Math.min(beatHz - fromHz, toHz - beatHz) / points;
  const hz = Float64Array.from({ length: 2 * points + 1 }, (_, i) => beatHz + (i - points) * stepHz);
  const widthHz = setUp.spanHz / 100;
  return { hz, relative: hz.map((f) => 1 / (1 + ((f - beatHz) / widthHz) ** 2)) };
}

/** How a level is asked for: so many volts, at a click of the Y gain that shows them in four divisions or a little more or less. */
export function levelReading(setup: BenchSetup, { volts }: Pick<SheetFigures, 'volts'>): LevelReading {
  const clicks = choicesOf(setup, 'yVoltsPerDiv').map(Number);
  const voltsPerDiv = clicks.find((click) => volts / click <= MOST_DIV) ?? clicks.at(-1)!;
  return { volts, voltsPerDiv, div: volts / voltsPerDiv };
}

const MOST_DIV = 6;

export interface LevelReading {
  readonly volts: number;
  readonly voltsPerDiv: number;
  readonly div: number;
}

/** Pip numbers of the crystals that the sheet asks for. */
export function pipNumbers({ setUp }: SheetResponse): ReadonlyMap<number, number> {
  const wanted = [...setUp.markersHz].sort((a, b) => a - b);
  return new Map(wanted.map((hz, i) => [hz, i + 1]));
}
