/** Rules G12 to G26 and G54 to G61: the set-up as it stands at sign-off, from facts. */

import { describe, expect, test } from 'vitest';
import type { Facts } from '../../src/bench/facts.ts';
import { SET_UP_RULES } from '../../src/grading/rules/setUpRules.ts';
import { setUpLines } from '../../src/grading/standing.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import { ALL_RIGHT } from '../session/fakeFacts.ts';
import { canSetup, stripSetup } from '../session/setups.ts';

const { receiver } = stripSetup();
const lineOf = (rule: string, change: Partial<Facts>) => {
  const line = setUpLines({ ...ALL_RIGHT, ...change }, receiver).find((one) => one.rule === rule);
  if (line === undefined) throw new Error(`no line for ${rule}`);
  return line;
};
const earned = (rule: string, ...changes: readonly Partial<Facts>[]): number[] =>
  changes.map((change) => lineOf(rule, change).earned);

test('all right earns every line', () => {
  const lines = setUpLines(ALL_RIGHT, receiver);
  // The sheet asks for a plain sweep and the tunable marker is off: two rows have nothing to say.
  expect(SET_UP_RULES.map((row) => row.number).filter((rule) => !lines.some((line) => line.rule === rule))).toEqual([
    'G54',
    'G59',
  ]);
  expect(lines.every((line) => line.earned === 1 && line.block === 'truth')).toBe(true);
});

describe('what the tube needs', () => {
  const JUDGED = ['G13', 'G14', 'G16', 'G18', 'G19', 'G21', 'G22', 'G55', 'G56', 'G57', 'G58', 'G60', 'G63', 'G67'];

  test.each([
    ['the X lead off', { xConnected: false }],
    ['no sweep', { sweeping: false }],
    ['nothing detected', { detectedPeakVolts: 0 }],
  ])('[G12] with %s, nothing that a picture shows is paid', (_, change) => {
    const lines = setUpLines({ ...ALL_RIGHT, ...change }, receiver);
    const held = lines.filter((line) => line.held === 'noPicture');
    expect(held.map((line) => line.rule)).toEqual(JUDGED);
    expect(held.every((line) => line.earned === 0)).toBe(true);
    expect(
      lines.filter((line) => line.held === undefined && line.rule !== 'G17').every((line) => line.earned === 1),
    ).toBe(true);
  });
});

test('[G13] phasing: full to 2 degrees, gone at 6, either way', () => {
  const at = (residualPhaseDegrees: number): Partial<Facts> => ({ residualPhaseDegrees });
  expect(earned('G13', at(0), at(2), at(-2), at(2.04), at(4), at(-4), at(6), at(89))).toEqual([
    1, 1, 1, 1, 0.5, 0.5, 0, 0,
  ]);
  expect(lineOf('G13', at(4)).weight).toBe(4);
});

test('[G14] blanking on or off', () => {
  expect(earned('G14', { blanking: true }, { blanking: false })).toEqual([1, 0]);
});

test('[G15] bias within the tolerance of the sheet', () => {
  expect(mainResponse(receiver).setUp.biases[0]?.toleranceVolts).toBe(0.2);
  const off = (errorVolts: number): Partial<Facts> => ({
    biases: [{ at: 'AGC', errorVolts, toleranceVolts: 0.2, clamped: true }],
  });
  const shares = earned('G15', off(0.2), off(-0.4), off(0.6));
  expect(shares[0]).toBe(1);
  expect(shares[1]).toBeCloseTo(0.5, 9);
  expect(shares[2]).toBeCloseTo(0, 9);
});

test('[G15] a sheet without bias has no such line', () => {
  const lines = setUpLines({ ...ALL_RIGHT, response: 'can', biases: [] }, canSetup().receiver);
  expect(lines.some((line) => line.rule === 'G15')).toBe(false);
});

test('[G16] compression: full to half a decibel, gone at one and a half', () => {
  expect(earned('G16', { compressionDb: 0.5 }, { compressionDb: 1 }, { compressionDb: 1.5 })).toEqual([1, 0.5, 0]);
});

test('[G17] too weak: full from a quarter of the sheet, gone at a twelfth', () => {
  // ALL_RIGHT has 2 V as the sheet's peak.
  const shares = earned('G17', { detectedPeakVolts: 0.5 }, { detectedPeakVolts: 1 / 3 }, { detectedPeakVolts: 1 / 6 });
  expect(shares[0]).toBe(1);
  expect(shares[1]).toBeCloseTo(0.5, 3);
  expect(shares[2]).toBeCloseTo(0, 3);
});

test('[G18] the sweep covers the band', () => {
  expect(earned('G18', { spanCovers: true }, { spanCovers: false })).toEqual([1, 0]);
});

test('[G19] the direction of X', () => {
  expect(earned('G19', { xDirectionAsSheet: true }, { xDirectionAsSheet: false })).toEqual([1, 0]);
});

test('[G20] each missing crystal takes its share', () => {
  expect(mainResponse(receiver).setUp.markersHz.length).toBe(6);
  const missing = (...markersMissingHz: number[]): Partial<Facts> => ({ markersMissingHz });
  const shares = earned(
    'G20',
    missing(),
    missing(41.25e6),
    missing(41.25e6, 45.75e6, 47.25e6),
    missing(...mainResponse(receiver).setUp.markersHz),
  );
  expect(shares[0]).toBe(1);
  expect(shares[1]).toBeCloseTo(5 / 6, 9);
  expect(shares[2]).toBeCloseTo(0.5, 9);
  expect(shares[3]).toBe(0);
  expect(lineOf('G20', missing(41.25e6)).hz).toBe(41.25e6);
});

test('[G20] a sheet without markers has no such line', () => {
  const main = mainResponse(receiver);
  const bare = { ...receiver, responses: [{ ...main, setUp: { ...main.setUp, markersHz: [] } }] };
  expect(setUpLines(ALL_RIGHT, bare).some((line) => line.rule === 'G20')).toBe(false);
});

test('[G21] pips: full from 2 to 15 per cent of the trace, gone at 45, nothing when they cannot be seen', () => {
  const ratio = (pipHeightRatio: number): Partial<Facts> => ({ pipHeightRatio });
  expect(earned('G21', ratio(0.02), ratio(0.15), ratio(0.3), ratio(0.45), ratio(0.019), ratio(0))).toEqual([
    1, 1, 0.5, 0, 0, 0,
  ]);
});

test('[G22] markers added after detection', () => {
  expect(earned('G22', { markersAdded: true }, { markersAdded: false })).toEqual([1, 0]);
});

test('[G23] the RF lead at the point of the sheet', () => {
  expect(earned('G23', { rfAtSheetPoint: true }, { rfAtSheetPoint: false })).toEqual([1, 0]);
});

test('[G24] terminated, and connected at all', () => {
  expect(earned('G24', {}, { rfTerminated: false }, { rfConnected: false })).toEqual([1, 0, 0]);
});

test('[G25] the Y lead at the point of the sheet with its tip', () => {
  expect(earned('G25', {}, { yAtSheetPoint: false }, { yTipAsSheet: false })).toEqual([1, 0, 0]);
});

test('[G26] the earth strap', () => {
  expect(earned('G26', { earthed: true }, { earthed: false })).toEqual([1, 0]);
});

test('[G54] the mode of the source, and the carrier of a video sweep', () => {
  expect(setUpLines(ALL_RIGHT, receiver).some((line) => line.rule === 'G54')).toBe(false);
  expect(lineOf('G54', { sourceAsSheet: false })).toMatchObject({ earned: 0, unit: 'yes' });
  const main = mainResponse(receiver);
  const setUp = { ...main.setUp, source: 'video', carrierHz: 45.75e6 } as const;
  const video = { ...receiver, responses: [{ ...main, setUp }] };
  const at = (carrierErrorHz: number) =>
    setUpLines({ ...ALL_RIGHT, carrierErrorHz }, video).find((line) => line.rule === 'G54')!.earned;
  // A thousandth of the carrier is allowed: 45.75 kHz, rounded down to 45.7.
  expect(at(45e3)).toBe(1);
  expect(at(-91.5e3)).toBeCloseTo(0.5, 2);
  expect(at(138e3)).toBe(0);
});

test('[G55] direct coupling', () => {
  expect(earned('G55', { dcCoupled: true }, { dcCoupled: false })).toEqual([1, 0]);
});

test('[G56] the lag of the Y input: full to one degree, gone at three', () => {
  const at = (verticalLagDegrees: number): Partial<Facts> => ({ verticalLagDegrees });
  expect(earned('G56', at(1), at(2), at(3))).toEqual([1, 0.5, 0]);
});

test('[G57] hum: full to 3 per cent of the trace, gone at 9', () => {
  const shares = earned('G57', { humRatio: 0.03 }, { humRatio: 0.06 }, { humRatio: 0.09 });
  expect(shares[0]).toBe(1);
  expect(shares[1]).toBeCloseTo(0.5, 9);
  expect(shares[2]).toBeCloseTo(0, 9);
});

test('[G67] a bridge off or on; without spares there is no such line', () => {
  expect(earned('G67', { bridge: { across: null } }, { bridge: { across: 'C39' } })).toEqual([1, 0]);
  expect(lineOf('G67', { bridge: { across: 'C39' } }).subject).toBe('C39');
  const { bridge: _, ...without } = ALL_RIGHT;
  expect(setUpLines(without, receiver).some((line) => line.rule === 'G67')).toBe(false);
});

test('[G58] steel left in a coil is named with its slug', () => {
  expect(earned('G58', { steelIn: null }, { steelIn: 'T1' })).toEqual([1, 0]);
  expect(lineOf('G58', { steelIn: 'T1' }).subject).toBe('T1');
});

test('[G59] the tunable marker, while it is on: a four-hundredth of the span', () => {
  expect(setUpLines(ALL_RIGHT, receiver).some((line) => line.rule === 'G59')).toBe(false);
  const at = (dialErrorHz: number): Partial<Facts> => ({ dialErrorHz });
  // 12 MHz of span: 30 kHz.
  expect(earned('G59', at(30e3), at(-60e3), at(90e3))).toEqual([1, 0.5, 0]);
});

test('[G60] the speed of the sweep: full to a lag of 5 per cent of the width, gone at 15', () => {
  const shares = earned('G60', { sweepLag: 0.05 }, { sweepLag: 0.1 }, { sweepLag: 0.15 });
  expect(shares[0]).toBe(1);
  expect(shares[1]).toBeCloseTo(0.5, 9);
  expect(shares[2]).toBeCloseTo(0, 9);
});

test('[G61] each line that the sheet names must be clamped', () => {
  const free = { at: 'AGC', errorVolts: 0, toleranceVolts: 0.2, clamped: false };
  expect(lineOf('G61', { biases: [free] })).toMatchObject({ id: 'G61:AGC', earned: 0, subject: 'AGC' });
  expect(lineOf('G61', {}).earned).toBe(1);
});
