/** Response curves drawn by hand, so that a rule can be tested on exact figures. */

import type { DraftLine } from '../../src/grading/draft.ts';
import { linesOf } from '../../src/grading/lines.ts';
import { createSheetJudge } from '../../src/grading/response.ts';
import { RULES } from '../../src/grading/rules/rules.ts';
import type { ResponseCurve } from '../../src/receiver/curveReading.ts';
import type { Receiver, Specification } from '../../src/receiver/receiver.ts';
import type { StatedResponse } from '../../src/receiver/statedResponse.ts';

export const EMPTY_SHEET: Specification = {
  fromHz: 40e6,
  toHz: 48e6,
  points: [],
  windows: [],
  tilts: [],
  traps: [],
  skirts: [],
  bandwidths: [],
  peaks: [],
  sCurve: null,
  gain: null,
};

/** Level at every 2 kHz from 40 to 48 MHz: so fine that reading between samples changes no figure. */
export function curve(level: (hz: number) => number): ResponseCurve {
  const hz = Float64Array.from({ length: 4001 }, (_, i) => 40e6 + 2e3 * i);
  return { hz, volts: hz.map(level) };
}

export function linesOn(
  sheet: Partial<Specification>,
  level: (hz: number) => number,
  toleranceFactor = 1,
): readonly DraftLine[] {
  const drawn = curve(level);
  const response = { id: 'if', specification: { ...EMPTY_SHEET, ...sheet } };
  const stated = { response, solve: () => drawn, nominal: drawn } as unknown as StatedResponse;
  const receiver = { responses: [response], adjusters: [] } as unknown as Receiver;
  return linesOf(RULES, { demand: createSheetJudge(receiver, [stated], toleranceFactor).demands({}, false) });
}

/** Power bell of one megahertz either side: 1 in its middle, 0 at its feet. */
export const bell = (hz: number, middle: number): number =>
  Math.abs(hz - middle) < 1e6 ? Math.cos((Math.PI / 2) * ((hz - middle) / 1e6)) ** 2 : 0;

/** Full height everywhere but about one place, where it sinks smoothly to `level`. */
export const flatBut =
  (at: number, level: number) =>
  (hz: number): number =>
    Math.sqrt(1 - (1 - level ** 2) * bell(hz, at));
