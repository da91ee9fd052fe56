/** The levels of the sheet as anybody can read them off the tube: heights above the base line, at places found by the dials of the sweep. Nothing here looks at the set. */
import { workResponses } from '../receiver/responses.ts';
import type { BenchState } from './benchState.ts';
import { xSense } from './deflection.ts';
import { HALF_WIDTH_DIV } from './instruments.ts';
import type { BenchSetup } from './setup.ts';
import { heightShown, tallShown } from './witness.ts';

/** A line of the sheet as the tube shows it. */
export interface TubeReading {
  readonly hz: number;
  /** per cent of the tallest place; null where nothing can be read there */
  readonly percent: number | null;
}

/** With less than this there is no picture to read, divisions. */
const LEAST_TALL_DIV = 0.5;

export function tubeReadings(setup: BenchSetup, shown: BenchState, response: string): readonly TubeReading[] {
  const found = workResponses(setup.receiver, setup.scenario).find(({ id }) => id === response);
  const tall = tallShown(setup, shown);
  return [...(found?.specification.points ?? [])]
    .sort((a, b) => a.hz - b.hz)
    .map(({ hz }) => {
      const xDiv = placeOf(setup, shown, hz);
      const seen = tall >= LEAST_TALL_DIV && Math.abs(xDiv) <= HALF_WIDTH_DIV;
      const div = seen ? heightShown(setup, shown, xDiv) : null;
      return { hz, percent: div === null ? null : Math.round((100 * div) / tall) };
    });
}

/** By the dials, with the axis of the sweep taken as straight. */
function placeOf(setup: BenchSetup, shown: BenchState, hz: number): number {
  const { centreHz, spanHz, xGain, xPositionDiv } = shown.controls;
  return ((2 * HALF_WIDTH_DIV * (hz - centreHz)) / spanHz) * xSense(setup, shown) * xGain + xPositionDiv;
}
