/** The receiver under the conditions that its sheet states, with the slugs as they stand: what is graded. */

import { highest, type ResponseCurve, voltsAt } from '../receiver/curveReading.ts';
import { createDetectedLevels } from '../receiver/detectedLevels.ts';
import type { SheetResponse, Specification } from '../receiver/receiver.ts';
import { responseById } from '../receiver/responses.ts';
import { readSCurve } from '../receiver/sCurveReading.ts';
import type { StatedResponse } from '../receiver/statedResponse.ts';
import { modelOf } from './benchModel.ts';
import type { BenchState } from './benchState.ts';
import type { FaultBook, FaultsNow } from './faultsNow.ts';
import { keepByKey, keepLast } from './kept.ts';
import { type BenchSetup, designOf } from './setup.ts';
import { statedOn } from './statedOn.ts';

export interface Truth {
  readonly hz: Float64Array;
  /** level over the reference of the sheet (its peak, mostly; an S-curve's half height), linear, with its sign */
  readonly relative: Float64Array;
}

export function createTruth(
  setup: BenchSetup,
  faults: FaultBook,
): {
  of(state: BenchState, response: string): Truth;
  /** detected volts at the curve's reference, at the sheet's level with nominal slugs */
  sheetPeakVolts(response: SheetResponse): number;
} {
  const { receiver } = setup;
  const design = designOf(setup);
  const { probePulses } = modelOf(setup.engine);
  const stated = keepByKey<StatedResponse>(Number.POSITIVE_INFINITY);
  const peaks = keepByKey<number>(Number.POSITIVE_INFINITY);
  const truths = keepByKey<(slugs: BenchState['slugs'], now: FaultsNow) => Truth>(Number.POSITIVE_INFINITY);
  const statedOf = (id: string, { key, effects }: FaultsNow): StatedResponse =>
    stated(`${key}#${id}`, () => statedOn(setup.engine, effects, responseById(receiver, id)));
  const truthOf = (response: string) =>
    keepLast(
      (slugs: BenchState['slugs'], now: FaultsNow) => [slugs, now],
      (slugs, now): Truth => {
        const cores = Object.fromEntries(Object.entries(slugs).map(([id, slug]) => [id, slug.coreTurns]));
        const sheet = statedOf(response, now);
        const curve = sheet.solve(cores);
        return { hz: curve.hz, relative: relativeTo(curve, sheet.response.specification) };
      },
    );
  return {
    of: (state, response) => truths(response, () => truthOf(response))(state.slugs, faults(state)),
    sheetPeakVolts: (response) =>
      peaks(
        response.id,
        () => createDetectedLevels(design.receiver, design.deck, response, probePulses).referenceDetectedVolts,
      ),
  };
}

/** Levels over the reference of the sheet: the peak, the level at its reference frequency, or half the distance between an S-curve's peaks. */
export function relativeTo(curve: ResponseCurve, spec: Specification): Float64Array {
  const reference = referenceOf(curve, spec);
  return curve.volts.map((v) => (reference > 0 ? v / reference : 0));
}

function referenceOf(curve: ResponseCurve, { referenceHz, fromHz, toHz, sCurve }: Specification): number {
  if (sCurve !== null) return readSCurve(curve, sCurve.centreHz, fromHz, toHz).height;
  return referenceHz === undefined ? highest(curve, fromHz, toHz).volts : voltsAt(curve, referenceHz);
}
