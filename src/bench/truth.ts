/** The receiver under the conditions that its sheet states, with the slugs as they stand: what is graded. */
import { highest, type ResponseCurve, voltsAt } from '../receiver/curveReading.ts';
import { createDetectorFigure } from '../receiver/detectorFigure.ts';
import { createStatedResponse, type StatedResponse } from '../receiver/statedResponse.ts';
import type { Truth } from './bench.ts';
import type { BenchState } from './benchState.ts';
import type { SheetFigures } from './measureFacts.ts';
import type { BenchSetup } from './setup.ts';

export function createTruth({ receiver, deck }: BenchSetup): { of(state: BenchState): Truth; figures(): SheetFigures } {
  let response: StatedResponse | null = null;
  let known: { readonly slugs: BenchState['slugs']; readonly truth: Truth } | null = null;
  const stated = (): StatedResponse => {
    response ??= createStatedResponse(receiver, deck);
    return response;
  };
  return {
    of({ slugs }) {
      if (known?.slugs === slugs) return known.truth;
      const cores = Object.fromEntries(Object.entries(slugs).map(([id, slug]) => [id, slug.coreTurns]));
      const curve = stated().solve(cores);
      const reference = referenceVolts(curve);
      const relative = curve.volts.map((v) => (reference > 0 ? v / reference : 0));
      known = { slugs, truth: { hz: curve.hz, relative } };
      return known.truth;
    },
    figures: () => ({ sheetPeakVolts: createDetectorFigure(receiver, stated().nominal).referenceDetectedVolts }),
  };

  function referenceVolts(curve: ResponseCurve): number {
    const { referenceHz, fromHz, toHz } = receiver.specification;
    return referenceHz === undefined ? highest(curve, fromHz, toHz).volts : voltsAt(curve, referenceHz);
  }
}
