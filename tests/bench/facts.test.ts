/** Facts: what guards, grading and the coach read. */
import { describe, expect, test } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchEvent, ControlId } from '../../src/bench/benchEvent.ts';
import { initialState } from '../../src/bench/setup.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import { canSetup, play, readySetup, stripSetup } from './fixture.ts';

const set = (control: ControlId, value: number | boolean | string): BenchEvent => ({
  type: 'controlSet',
  control,
  value,
});
const strip = readySetup(stripSetup);
const bench = createBench(strip);
const facts = (...events: BenchEvent[]) => bench.facts(play(strip, events));

test('a bench set up as the sheet asks has every fact right', () => {
  const all = facts(
    ...mainResponse(strip.receiver).setUp.markersHz.map((hz): BenchEvent => ({ type: 'crystalPlugged', hz })),
    set('yVoltsPerDiv', 0.2),
    set('yPositionDiv', 3),
  );
  expect(all).toMatchObject({
    cautionsAcknowledged: true,
    isolated: true,
    powered: true,
    rfAtSheetPoint: true,
    rfConnected: true,
    rfTerminated: true,
    yAtSheetPoint: true,
    yTipAsSheet: true,
    xConnected: true,
    earthed: true,
    biasConnected: true,
    residualPhaseDegrees: 0,
    blanking: true,
    xDirectionAsSheet: true,
    spanCovers: true,
    response: 'if',
    sourceAsSheet: true,
    slowSweepAsSheet: true,
    carrierErrorHz: null,
    biases: [{ at: 'AGC', errorVolts: 0, toleranceVolts: 0.2, clamped: true }],
    dcCoupled: true,
    humRatio: 0,
    dialErrorHz: null,
    steelIn: null,
    markersMissingHz: [],
    markersAdded: true,
    traceOnScreen: true,
    sweeping: true,
    slugsTouched: 0,
    secondsSinceSlugTurn: null,
    crackedSlugs: [],
    proofsDone: [],
    stopped: false,
    signedOff: false,
  });
  expect(all.compressionDb).toBeLessThan(0.1);
  expect(all.detectedPeakVolts / all.sheetPeakVolts).toBeCloseTo(1, 1.9);
  expect(all.traceHeightDiv).toBeCloseTo(all.detectedPeakVolts / 0.2, 1);
});

test('a bench at rest has none of them', () => {
  const cold = stripSetup();
  expect(createBench(cold).facts(initialState(cold))).toMatchObject({
    cautionsAcknowledged: false,
    isolated: false,
    powered: false,
    rfAtSheetPoint: false,
    rfConnected: false,
    rfTerminated: false,
    yAtSheetPoint: false,
    yTipAsSheet: false,
    xConnected: false,
    earthed: false,
    biasConnected: false,
    blanking: false,
    spanCovers: false,
    biases: [{ at: 'AGC', errorVolts: 3, toleranceVolts: 0.2, clamped: false }],
    compressionDb: 0,
    detectedPeakVolts: 0,
    markersMissingHz: mainResponse(cold.receiver).setUp.markersHz,
    traceHeightDiv: 0,
    traceOnScreen: false,
    pipHeightRatio: 0,
  });
});

test('a board without mains needs no isolation, no power and no bias', () => {
  const can = canSetup();
  expect(createBench(can).facts(initialState(can))).toMatchObject({
    cautionsAcknowledged: true,
    isolated: true,
    powered: true,
    biasConnected: true,
    biases: [],
  });
});

describe('phase and direction', () => {
  const at = (lag: number, knob: number, mirror = false, xSwapped = false) => {
    const setup = readySetup(canSetup, { bench: { phaseLagDegrees: lag, xSwapped, mainsHz: 60, dialErrorHz: 0 } });
    const { residualPhaseDegrees, xDirectionAsSheet } = createBench(setup).facts(
      play(setup, [set('phasingDegrees', knob), set('mirror', mirror)]),
    );
    return [residualPhaseDegrees, xDirectionAsSheet];
  };

  test.each([
    [0, 0, false, false, 0, true],
    [20, -20, false, false, 0, true],
    [20, 0, false, false, 20, true],
    [90, 0, false, false, 90, false],
    [170, 0, false, false, -10, false],
    [170, 10, true, false, 0, true],
    [-170, -20, false, false, -10, false],
    [0, 0, true, false, 0, false],
    [0, 0, true, true, 0, true],
    [0, 0, false, true, 0, false],
  ])('lag %d, knob %d, mirror %s, swapped %s: %d left, as the sheet %s', (lag, knob, mirror, swapped, left, right) => {
    const [residual, direction] = at(lag, knob, mirror, swapped);
    expect(residual).toBeCloseTo(left, 9);
    if (Math.abs(left) !== 90) expect(direction).toBe(right);
  });
});

test('the span must reach everything that the sheet names', () => {
  expect(facts(set('spanHz', 9e6)).spanCovers).toBe(true);
  expect(facts(set('spanHz', 6e6)).spanCovers).toBe(false);
  expect(facts(set('centreHz', 40e6)).spanCovers).toBe(false);
  expect(facts(set('spanHz', 30e6)).spanCovers).toBe(true);
});

test('bias off by the volts it is off, of either sign', () => {
  expect(facts(set('biasAVolts', 4.5)).biases[0]!.errorVolts).toBe(-1.5);
  expect(facts(set('biasAVolts', 2)).biases[0]!.errorVolts).toBe(1);
  expect(facts(set('biasAPolarity', '+')).biases[0]!.errorVolts).toBe(6);
});

test('height and place of the trace', () => {
  expect(facts(set('yVoltsPerDiv', 0.2), set('yPositionDiv', 2)).traceOnScreen).toBe(true);
  expect(facts(set('yVoltsPerDiv', 0.05)).traceOnScreen).toBe(false);
  expect(facts(set('yPositionDiv', 3), set('xGain', 2)).traceOnScreen).toBe(false);
  expect(facts(set('yPositionDiv', 3), set('xPositionDiv', 2)).traceOnScreen).toBe(false);
  const raw = facts(set('yInput', 'raw'), set('yVoltsPerDiv', 0.5));
  // 1.1395 V at the peak, both ways: the same equations written a second time with numpy and scipy 1.17.
  expect(raw.traceHeightDiv).toBeCloseTo((2 * 1.1395) / 0.5, 1);
});

test('slugs touched, seconds since, cracked ones', () => {
  const state = play(strip, [
    { type: 'toolTaken', tool: 'hex' },
    { type: 'slugTurned', slug: 'T1', turns: 1 },
    { type: 'slugTurned', slug: 'T2', turns: 1 },
    { type: 'slugTurned', slug: 'T2', turns: -1 },
    set('focus', 0.5),
  ]);
  expect(bench.facts(state)).toMatchObject({ slugsTouched: 1, secondsSinceSlugTurn: 1 });
  const forced = play(
    strip,
    Array.from({ length: 6 }, (): BenchEvent => ({ type: 'slugTurned', slug: 'T3', turns: 2 })),
    play(strip, [{ type: 'toolTaken', tool: 'hex' }]),
  );
  expect(forced.slugs.T3?.cracked).toBe(true);
  expect(bench.facts(forced).crackedSlugs).toEqual(['T3']);
});

test('a half-slipped state of the rack: markers missing are those not plugged', () => {
  expect(facts({ type: 'crystalPlugged', hz: 45.75e6 }).markersMissingHz).toEqual([41.25e6, 42.17e6, 47.25e6]);
});
