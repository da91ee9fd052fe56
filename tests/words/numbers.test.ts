/** How figures are written for people. */
import { expect, test } from 'vitest';
import {
  decibels,
  degrees,
  figure,
  frequency,
  offset,
  percent,
  turns,
  turnsLong,
  volts,
} from '../../src/words/en/numbers.ts';

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
  expect([45.75e6, 10.7e6, 42.17e6, 455e3].map(frequency)).toEqual([
    '45.75 MHz',
    '10.70 MHz',
    '42.17 MHz',
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
