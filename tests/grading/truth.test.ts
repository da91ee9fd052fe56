/** Rules G12 to G26: the set-up as it stands at sign-off, from facts. */
import { describe, expect, test } from 'vitest';
import type { Facts } from '../../src/bench/facts.ts';
import { truthLines } from '../../src/grading/truth.ts';
import { ALL_RIGHT } from '../session/fakeFacts.ts';
import { canSetup, stripSetup } from '../session/setups.ts';

const { receiver } = stripSetup();
const lineOf = (rule: string, change: Partial<Facts>) => {
  const line = truthLines({ ...ALL_RIGHT, ...change }, receiver).find((one) => one.rule === rule);
  if (line === undefined) throw new Error(`no line for ${rule}`);
  return line;
};
const earned = (rule: string, ...changes: readonly Partial<Facts>[]): number[] =>
  changes.map((change) => lineOf(rule, change).earned);

test('all right earns every line', () => {
  const lines = truthLines(ALL_RIGHT, receiver);
  expect(lines.length).toBe(14);
  expect(lines.every((line) => line.earned === 1 && line.block === 'truth')).toBe(true);
});

describe('what the tube needs', () => {
  const JUDGED = ['G13', 'G14', 'G16', 'G18', 'G19', 'G21', 'G22'];

  test.each([
    ['the X lead off', { xConnected: false }],
    ['no sweep', { sweeping: false }],
    ['nothing detected', { detectedPeakVolts: 0 }],
  ])('[G12] with %s, nothing that a picture shows is paid', (_, change) => {
    const lines = truthLines({ ...ALL_RIGHT, ...change }, receiver);
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
  expect(receiver.setUp.bias?.toleranceVolts).toBe(0.2);
  const shares = earned('G15', { biasErrorVolts: 0.2 }, { biasErrorVolts: -0.4 }, { biasErrorVolts: 0.6 });
  expect(shares[0]).toBe(1);
  expect(shares[1]).toBeCloseTo(0.5, 9);
  expect(shares[2]).toBeCloseTo(0, 9);
});

test('[G15] a sheet without bias has no such line', () => {
  const lines = truthLines({ ...ALL_RIGHT, biasErrorVolts: null }, canSetup().receiver);
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
  expect(receiver.setUp.markersHz.length).toBe(6);
  const missing = (...markersMissingHz: number[]): Partial<Facts> => ({ markersMissingHz });
  const shares = earned(
    'G20',
    missing(),
    missing(41.25e6),
    missing(41.25e6, 45.75e6, 47.25e6),
    missing(...receiver.setUp.markersHz),
  );
  expect(shares[0]).toBe(1);
  expect(shares[1]).toBeCloseTo(5 / 6, 9);
  expect(shares[2]).toBeCloseTo(0.5, 9);
  expect(shares[3]).toBe(0);
  expect(lineOf('G20', missing(41.25e6)).hz).toBe(41.25e6);
});

test('[G20] a sheet without markers has no such line', () => {
  const bare = { ...receiver, setUp: { ...receiver.setUp, markersHz: [] } };
  expect(truthLines(ALL_RIGHT, bare).some((line) => line.rule === 'G20')).toBe(false);
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
