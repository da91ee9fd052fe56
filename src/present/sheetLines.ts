/** What a service sheet demands of a curve, and how the bench is set up for it, line by line in the words of the page. Pure. */
import type { SheetResponse } from '../receiver/receiver.ts';
import type { Words } from '../words/words.ts';
import type { LevelReading } from './sheetFigures.ts';

/** Every demand but the levels, which stand in a table. */
export function demandLines({ sheet }: Pick<Words, 'sheet'>, { specification: spec }: SheetResponse): string[] {
  const s = spec.sCurve;
  return [
    ...spec.windows.map((w) => sheet.ripple(w.fromHz, w.toHz, w.maxRippleDb)),
    ...spec.tilts.map((t) => sheet.tilt(t.lowHz, t.highHz, t.maxDb)),
    ...spec.traps.map((t) => sheet.trap(t.hz, t.maxDb)),
    ...spec.skirts.map((one) => sheet.skirt(one.fromHz, one.toHz, one.max)),
    ...spec.peaks.map((p) =>
      p.oscillator === true ? sheet.oscillator(p.hz, p.toleranceHz) : sheet.peak(p.hz, p.toleranceHz),
    ),
    ...(s === null
      ? []
      : [
          sheet.zero(s.centreHz, s.zero.toleranceHz, s.risesWithFrequency),
          sheet.peaksApart(s.separation.minHz, s.separation.maxHz),
          sheet.evenPeaks(s.symmetry.low, s.symmetry.high),
          ...(s.linearity === null ? [] : [sheet.straight(s.linearity.withinHz, s.linearity.max)]),
        ]),
    ...spec.bandwidths.map((b) => sheet.bandwidth(b.levelDb, b.minHz, b.maxHz)),
    ...(spec.gain === null ? [] : [sheet.gain(spec.gain.hz, spec.gain.minDb)]),
  ];
}

export function setUpLines(
  { sheet }: Pick<Words, 'sheet'>,
  { setUp, specification }: SheetResponse,
  level: LevelReading,
): string[] {
  const words = sheet.setUpLines;
  return [
    words.inject(setUp.injectAt, words.injectWith),
    words.observe(setUp.observeAt, setUp.observeWith === 'probe'),
    ...(setUp.biases.length === 0 ? [words.noBias] : []),
    ...setUp.biases.map((bias) => words.bias(bias.at, bias.volts, bias.toleranceVolts)),
    ...(setUp.carrierHz === null ? [] : [words.carrier(setUp.carrierHz)]),
    words.sweep(setUp.centreHz, setUp.spanHz),
    ...(setUp.slowSweep === true ? [words.slow] : []),
    levelLine(words, specification, level),
    words.direction(setUp.lowFrequencyAtLeft),
  ];
}

/** In detected volts, which are the same whatever the source's attenuator says and whichever lead is on it; a beat has none of its own. */
function levelLine(
  words: Words['sheet']['setUpLines'],
  { peaks, sCurve, referenceHz }: SheetResponse['specification'],
  { volts, voltsPerDiv, div }: LevelReading,
): string {
  if (peaks.some(({ oscillator }) => oscillator === true)) return words.beatLevel;
  return words.level(volts, voltsPerDiv, div, sCurve !== null ? 'eitherPeak' : (referenceHz ?? 'top'));
}
