/** The course as a whole: what a learner must have met by its end. The lists are the project's own; each deception is found on the bench as a scenario begins. */
import { describe, expect, it, test } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import type { Facts } from '../../src/bench/facts.ts';
import { firstResponse, initialState } from '../../src/bench/setup.ts';
import {
  COMPRESSION_LIMIT_DB,
  HUM_SHARE,
  PHASE_TOLERANCE_DEGREES,
  PIP_SHARE,
  SWEEP_LAG_LIMIT,
  VERTICAL_LAG_LIMIT_DEGREES,
} from '../../src/grading/limits.ts';
import { FAULT_KINDS } from '../../src/receiver/faults/fault.ts';
import { shippedLibrary } from './shipped.ts';

const { scenarios, receivers } = shippedLibrary();

/** Where all is clipped on, so that what is wrong is wrong by more than not being there. */
const starts = scenarios
  .filter((scenario) => scenario.start.prepared.includes('connect'))
  .map((scenario) => {
    const setup = { ...receivers.get(scenario.receiver)!, scenario };
    const bench = createBench(setup);
    // The sheet's crystals are in: a pip can be too high only where there is one.
    const crystals = [...firstResponse(setup).setUp.markersHz].slice(0, 4);
    const state = { ...initialState(setup), crystals };
    return { scenario, facts: bench.facts(state) };
  });

const DECEPTIONS: Readonly<Record<string, (facts: Facts, dialErrorHz: number) => boolean>> = {
  'phasing off': (f) => Math.abs(f.residualPhaseDegrees) > PHASE_TOLERANCE_DEGREES,
  'retrace not blanked': (f) => !f.blanking,
  overload: (f) => f.compressionDb > COMPRESSION_LIMIT_DB,
  'wrong bias': (f) => f.biases.some((b) => b.clamped && Math.abs(b.errorVolts) > b.toleranceVolts),
  'AGC unclamped': (f) => f.biases.some((b) => !b.clamped),
  'probe loading': (f) => !f.yTipAsSheet,
  'lead unterminated': (f) => f.rfConnected && !f.rfTerminated,
  'ground missing': (f) => !f.earthed,
  'pips too high': (f) => f.pipHeightRatio > PIP_SHARE.high,
  'markers through the set': (f) => !f.markersAdded,
  'AC coupling': (f) => !f.dcCoupled,
  'vertical bandwidth too low': (f) => f.verticalLagDegrees > 2 * VERTICAL_LAG_LIMIT_DEGREES,
  'wrong test point': (f) => (f.rfConnected && !f.rfAtSheetPoint) || !f.yAtSheetPoint,
  'mains hum': (f) => f.humRatio > HUM_SHARE,
  'steel tool in a slug': (f) => f.steelIn !== null,
  'dial error': (_, dialErrorHz) => dialErrorHz !== 0,
  'sweep too fast': (f) => f.sweepLag > SWEEP_LAG_LIMIT,
};

test('sixty scenarios and more, each with a number and a place of its own', () => {
  expect(scenarios.length).toBeGreaterThanOrEqual(60);
  expect(new Set(scenarios.map((s) => s.code)).size).toBe(scenarios.length);
  expect(new Set(scenarios.map((s) => `${s.track} ${s.order}`)).size).toBe(scenarios.length);
});

test('every receiver is worked on', () => {
  expect([...receivers.keys()].filter((id) => !scenarios.some((s) => s.receiver === id))).toEqual([]);
});

test('X reversed occurs: a lead that turns left and right round, and the mirror not set for it', () => {
  expect(scenarios.some((s) => s.bench.xSwapped && s.start.controls.mirror !== true)).toBe(true);
});

test('every kind of fault occurs, and once at least two of them together', () => {
  const met = new Set(scenarios.flatMap((s) => s.faults.map((fault) => fault.kind)));
  expect(FAULT_KINDS.filter((kind) => !met.has(kind))).toEqual([]);
  expect(scenarios.some((s) => new Set(s.faults.map((fault) => fault.kind)).size > 1)).toBe(true);
});

describe('deceptions that stand on the bench as a scenario begins', () => {
  it.each(Object.entries(DECEPTIONS))('%s', (_, found) => {
    const where = starts.filter(({ facts, scenario }) => found(facts, scenario.bench.dialErrorHz));
    expect(where.map(({ scenario }) => scenario.id)).not.toEqual([]);
  });
});

test('aids fade along a track: the last of each has no more of them than the first, and a sealed one has none', () => {
  for (const track of new Set(scenarios.map((s) => s.track))) {
    const ordered = scenarios.filter((s) => s.track === track).sort((a, b) => a.order - b.order);
    const aids = ordered.map(({ aids: a }) => Number(a.hints) + Number(a.waxMarks) + Number(a.exactReadouts));
    expect(aids.at(-1)!, track).toBeLessThanOrEqual(aids[0]!);
  }
  for (const { id, sealed, aids, hints } of scenarios) {
    if (sealed)
      expect([aids.hints, aids.waxMarks, aids.exactReadouts, hints.length], id).toEqual([false, false, false, 0]);
  }
});
