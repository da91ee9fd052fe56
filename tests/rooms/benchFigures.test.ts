/** How the bench writes, speaks and reads quantities. House style: one unit, a true minus, fractions with a gap (common practice, no source). */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { en } from '../../src/words/en/index.ts';

const { aloud, clock, eighths, frequency, width } = en.format;
const { biasVolts, decibels, degrees, divisions, voltage, voltsPerDiv } = en.format.knob;
const { frequency: typedFrequency, decibels: typedDecibels, degrees: typedDegrees } = en.format.typed;
const { share: typedShare, volts: typedVolts } = en.format.typed;

describe('written quantities', () => {
  it.each([
    [frequency(43.5e6), '43.50 MHz'],
    [frequency(43.505e6), '43.505 MHz'],
    [frequency(455e3), '455.0 kHz'],
    [width(10e6), '10.0 MHz'],
    [width(1.25e6), '1.25 MHz'],
    [width(50e3), '50 kHz'],
    [decibels(-46), '\u221246 dB'],
    [decibels(0), '0 dB'],
    [degrees(12), '+12\u00b0'],
    [degrees(-8), '\u22128\u00b0'],
    [degrees(0), '0\u00b0'],
    [divisions(-0.04), '\u22120.04 div'],
    [divisions(-0.001), '0.0 div'],
    [voltage(0.02), '20 mV'],
    [voltsPerDiv(0.2), '0.2 V/div'],
    [biasVolts(4, '-'), '\u22124.0 V'],
    [biasVolts(4.25, '+'), '+4.25 V'],
    [biasVolts(0, '-'), '0.0 V'],
    [clock(872), '14:32'],
    [clock(3845), '1:04:05'],
    [clock(-3), '00:00'],
  ])('%s', (text, wanted) => {
    expect(text).toBe(wanted);
  });

  it.each([
    [0, '0'],
    [0.125, '1/8'],
    [0.5, '1/2'],
    [1.375, '1 3/8'],
    [4.26, '4 1/4'],
    [-2.5, '\u22122 1/2'],
    [-0.01, '0'],
    [7.99, '8'],
  ])('%f turns', (turns, text) => {
    expect(eighths(turns)).toBe(text);
  });

  it('are spoken in full, with no sign that a voice would swallow', () => {
    expect(aloud(decibels(-46))).toBe('minus 46 decibels');
    expect(aloud(frequency(43.5e6))).toBe('43.50 megahertz');
    expect(aloud(voltsPerDiv(0.02))).toBe('20 millivolts a division');
    expect(aloud(voltsPerDiv(0.2))).toBe('0.2 volts a division');
    expect(aloud(degrees(12))).toBe('+12 degrees');
    expect(aloud(divisions(-0.5))).toBe('minus 0.5 divisions');
  });
});

describe('typed quantities', () => {
  it('come back from what is written', () => {
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 46000 }), (n) => {
        expect(typedFrequency(1e6)(frequency(n * 5e3))).toBe(n * 5e3);
      }),
    );
    fc.assert(
      fc.property(fc.integer({ min: -80, max: 0 }), (db) => {
        expect(typedDecibels(decibels(db))).toBeCloseTo(db, 12);
      }),
    );
  });

  it.each([
    ['43.5', 1e6, 43.5e6],
    ['43,5', 1e6, 43.5e6],
    ['455', 1e3, 455e3],
    ['10.7 mhz', 1e3, 10.7e6],
    ['465k', 1e6, 465e3],
    [' 455 kHz ', 1e6, 455e3],
  ])('%s', (text, bare, hz) => {
    expect(typedFrequency(bare)(text)).toBe(hz);
  });

  it('take a hyphen for a minus and know the units of their own kind', () => {
    expect(typedDecibels('-46 dB')).toBe(-46);
    expect(typedDegrees('+12\u00b0')).toBe(12);
    expect(typedVolts('20 mV')).toBe(0.02);
    expect(typedVolts('20 mV/div')).toBe(0.02);
    expect(typedShare('70%')).toBe(0.7);
  });

  it.each(['', 'lots', '1 2', '4 V', '1e3', '--3', 'NaN', 'Infinity', '5 MHz!'])('%j is no level', (text) => {
    expect(typedDecibels(text)).toBeNull();
  });
});

describe('readings', () => {
  it('say the tunable marker to the nearest ruled mark only', () => {
    expect(en.dial.spoken(43.6e6, 50e3)).toBe('about 43.60 megahertz, to the nearest 50 kilohertz');
  });

  it('say what the needle says, and no more', () => {
    expect(en.meter.reading(-3.0123, 10, false, true)).toBe('Meter reads minus 3.0 volts');
    expect(en.meter.reading(0.1234, 0.3, false, true)).toBe('Meter reads 0.123 volts');
    expect(en.meter.reading(-10, 10, true, true)).toBe('Meter on its stop, below minus 10 volts');
    expect(en.meter.reading(0, 10, false, false)).toBe('Meter at rest: its lead is in the tray');
  });
});
