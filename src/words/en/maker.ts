/** What is told of a receiver that is made from its deck, and the sentences that go into a receiver file which has none of its own. */
import { format } from './numbers.ts';

export const makerWords = {
  noObject: 'something else',
  wantObject: 'an object with adjusters, testPoints and responses',
  noSCurve: 'a curve that does not cross zero between two peaks inside the span',
  wantSCurve: 'an S-curve with both peaks inside centreHz and spanHz',
  flat: 'a curve without a top, all of it within a tenth of a decibel',
  atEnd: 'a curve that is highest at an end of the span: its coils are tuned elsewhere',
  wantTop: 'a response that has a top inside centreHz and spanHz',
  noSource: 'no current source',
  wantSource: 'a current source where the signal comes in, such as `Isig in 0 AC 1u`',
  noTunedCoil: 'no coil with a capacitor across it',
  wantTunedCoil: 'at least one that a slug can tune',
  description: 'A practice set. Bring every slug to where the curve lies inside the limits of this sheet.',
  does: 'Moves part of the curve: see which, then turn.',
  note: 'A point of the circuit for the leads.',
  response: 'Response',
  device: 'Stage',
  safe: 'Read the cautions and tick them off.',
  connect: (inject: string, observe: string, probe: boolean): string =>
    `Earth strap first. RF lead to ${inject}, ${probe ? 'probe' : 'detector lead'} to ${observe}.`,
  sweep: (centreHz: number, spanHz: number, slow: boolean): string =>
    `Centre ${format.frequency(centreHz)}, span ${format.width(spanHz)}.${slow ? ' Slow sweep on.' : ''}`,
  level: (volts: number): string => `Level for ${format.quantity(volts, 'V')} at the top.`,
  levelAt: (volts: number, hz: number): string =>
    `Level for ${format.quantity(volts, 'V')} at ${format.frequency(hz)}.`,
  levelOfPeaks: (volts: number): string => `Level for ${format.quantity(volts, 'V')} from zero to either peak.`,
  phasing: 'Blanking off. Turn the phasing until trace and retrace lie on each other. Blanking on.',
  bias: (line: string, volts: number): string => `Clamp ${line} at ${format.quantity(volts, 'V')}.`,
  markers: (list: readonly number[]): string =>
    `Crystals ${format.list(list.map(format.frequency))} in. Keep the pips small enough not to bend the line.`,
  trap: (letter: string, hz: number): string => `${letter} for the least at ${format.frequency(hz)}.`,
  slug: (letter: string): string => `${letter} for the levels of the sheet, and again after the others.`,
  slugs: (letters: readonly string[]): string =>
    `${format.list(letters)} for the levels of the sheet, round and round until none needs moving.`,
  prove:
    'Halve the level: the shape must stay. Turn the pips off and on, lift the earth strap and clip it back: the curve must be the same afterwards.',
  cautions: [
    'A slug is brittle. Never force it past the end of its thread, and use the tool that fits.',
    'This bench is for practice. Work on real sets only under local codes, and only if you are qualified or with somebody who is.',
  ],
} as const;
