/** How figures are written for people. */
import { expect, test } from 'vitest';
import { en } from '../../src/words/en/index.ts';
import { createFormat } from '../../src/words/format.ts';

const { counted, frequency, list, plural, turns, turnsLong } = en.format;
const { decibels, degrees, figure, offset, percent, volts } = en.format.score;

test('turns are fractions: eighths, and thirty-seconds below a half', () => {
  expect([0, 1 / 32, 0.07, 3 / 16, 0.49, 0.5, 0.51, 0.97, 1, 1.375, 5.5, -1.375, 12].map(turns)).toEqual([
    ...['0', '1/32', '1/16', '3/16', '1/2', '1/2', '1/2', '1', '1', '1 3/8', '5 1/2', '1 3/8', '12'],
  ]);
  expect([0, 0.25, 1, 1.25, 2, 12].map(turnsLong)).toEqual([
    '0 turns',
    '1/4 turn',
    '1 turn',
    '1 1/4 turns',
    '2 turns',
    '12 turns',
  ]);
});

test('the minus is a true one', () => {
  expect(decibels(-9.44)).toBe('\u22129.4 dB');
  expect(degrees(-4)).toBe('\u22124\u00b0');
  expect(volts(-3)).toBe('\u22123 V');
  expect(figure(-240_000, 'hz')).toBe('\u2212240 kHz');
  // Nothing is not less than nothing.
  expect(decibels(-0.01)).toBe('0 dB');
});

test('frequencies and distances', () => {
  expect([45.75e6, 10.7e6, 42.17e6, 1e6, 455e3].map(frequency)).toEqual([
    '45.75 MHz',
    '10.70 MHz',
    '42.17 MHz',
    '1.00 MHz',
    '455.0 kHz',
  ]);
  expect([1.23e6, 291_800, 12_540, 400, 0].map(offset)).toEqual(['1.23 MHz', '292 kHz', '12.5 kHz', '400 Hz', '0 Hz']);
});

test('per cent: a decimal under ten', () => {
  expect([0, 0.04, 4.93, 9.96, 60.7, 100].map(percent)).toEqual(['0%', '0%', '4.9%', '10%', '61%', '100%']);
});

test('every unit has its writing', () => {
  const units = ['percent', 'db', 'hz', 'degrees', 'volts', 'turns', 'seconds', 'count', 'ratio', 'yes'] as const;
  expect(units.map((unit) => figure(2, unit))).toEqual([
    '2%',
    '2 dB',
    '2 Hz',
    '2\u00b0',
    '2 V',
    '2 turns',
    '00:02',
    '2',
    '2',
    '2',
  ]);
});

test('counts take the word that fits them, by the rules of the language and not by an added s', () => {
  const SLUGS = { one: 'slug', other: 'slugs' };
  expect([0, 1, 2, 21, 1.5].map((n) => counted(n, SLUGS))).toEqual([
    ...['0 slugs', '1 slug', '2 slugs', '21 slugs', '1.5 slugs'],
  ]);
  // One point nought is no longer one (Unicode CLDR, plural rules of English).
  expect([plural(1, SLUGS), plural(1, SLUGS, 1)]).toEqual(['slug', 'slugs']);
  expect(en.sheet.slugTurns(1)).toBe('1 turn of thread');
  expect(en.dialogs.briefing.par(turnsLong(1), '05:00')).toBe('Par: 1 turn and 05:00.');
  expect(en.verdicts.sentences.verified(1, false)).toContain('the same 1 point:');
  expect(en.verdicts.sentences.cutOff(1, 2)).toBe('Only 1 of 2 actions is left in the file.');
  expect(en.report.spell('A', -1, '00:10')).toBe('00:10, slug A, 1 turn out');
});

test('a list ends as the language ends it', () => {
  expect([['a'], ['a', 'b'], ['a', 'b', 'c']].map(list)).toEqual(['a', 'a and b', 'a, b and c']);
});

test('in another language decimals, plurals and lists follow its own rules', () => {
  const words = {
    aloud: (text: string) => text,
    typedDegrees: [],
    turns: { part: 'obrotu', one: 'obrót', few: 'obroty', other: 'obrotów' },
  };
  const polish = createFormat('pl', words);
  expect([1, 3, 5, 0.5, 22].map(polish.turnsLong)).toEqual([
    '1 obrót',
    '3 obroty',
    '5 obrotów',
    '1/2 obrotu',
    '22 obroty',
  ]);
  const german = createFormat('de', { ...words, turns: { part: 'Umdrehung', one: 'Umdrehung', other: 'Umdrehungen' } });
  expect(german.frequency(43.505e6)).toBe('43,505 MHz');
  expect(german.typed.frequency(1e6)('43,505 MHz')).toBe(43.505e6);
  expect(german.score.percent(4.93)).toBe('4,9\u00a0%');
  expect(german.list(['a', 'b', 'c'])).toBe('a, b und c');
  expect(german.knob.degrees(-8)).toBe('\u22128\u00b0');
});
