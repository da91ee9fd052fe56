/** What a blank record card has a line for: levels and traps in order of frequency, tops, what an S-curve must be, and the bias lines. Pure. */
import type { Receiver } from '../receiver/receiver.ts';
import { slugLetters } from '../receiver/slugLetters.ts';
import type { Words } from '../words/words.ts';
import type { SheetFigures } from './sheetFigures.ts';

export interface CardRow {
  /** the frequency, in the unit of the curve, or what is measured */
  readonly at: string;
  readonly wanted: string;
}

export interface CardLines {
  readonly measured: readonly CardRow[];
  /** on every card of the curve: nothing is measured before they stand */
  readonly biases: readonly CardRow[];
}

export function cardLines(
  { papers, sheet, rack }: Pick<Words, 'papers' | 'sheet' | 'rack'>,
  receiver: Receiver,
  { response, levels }: Pick<SheetFigures, 'response' | 'levels'>,
): CardLines {
  const { cardRows: say } = papers;
  const { specification: spec, setUp } = response;
  const letters = slugLetters(receiver);
  const trapLetter = (hz: number): string | null => {
    const slug = receiver.adjusters.find(({ trapHz }) => trapHz === hz);
    return slug === undefined ? null : (letters.get(slug.id) ?? null);
  };
  const s = spec.sCurve;
  const byFrequency = [
    ...levels.map(({ hz, target, low, high }) => ({ hz, wanted: sheet.percent(target, low, high) })),
    ...spec.traps.map(({ hz, maxDb }) => ({ hz, wanted: say.trap(maxDb, trapLetter(hz)) })),
    ...spec.peaks.map(({ hz, toleranceHz }) => ({ hz, wanted: say.peak(toleranceHz) })),
    ...(s === null ? [] : [{ hz: s.centreHz, wanted: say.zero(s.zero.toleranceHz) }]),
  ].sort((a, b) => a.hz - b.hz);
  return {
    measured: [
      ...byFrequency.map(({ hz, wanted }) => ({ at: rack.canLabel(hz), wanted })),
      ...(s === null
        ? []
        : [
            { at: say.apart, wanted: sheet.peaksApart(s.separation.minHz, s.separation.maxHz) },
            { at: say.even, wanted: sheet.evenPeaks(s.symmetry.low, s.symmetry.high) },
          ]),
    ],
    biases: setUp.biases.map(({ at, volts, toleranceVolts }) => ({
      at,
      wanted: sheet.setUpLines.bias(at, volts, toleranceVolts),
    })),
  };
}
