/** What tips, meters and steel do to the circuit that they touch. */
import { describe, expect, test } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchEvent, ControlId } from '../../src/bench/benchEvent.ts';
import type { BenchState } from '../../src/bench/benchState.ts';
import { connectedDeck, connectionsOf } from '../../src/bench/connections.ts';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { buildNetwork } from '../../src/physics/buildNetwork.ts';
import { readDeck } from '../../src/physics/readDeck.ts';
import { createSolver } from '../../src/physics/solver.ts';
import { canSetup, play, readySetup, stripSetup } from './fixture.ts';

const set = (control: ControlId, value: number | boolean | string): BenchEvent => ({
  type: 'controlSet',
  control,
  value,
});
const to = (lead: 'y' | 'rf' | 'meter', point: string): BenchEvent => ({ type: 'leadConnected', lead, to: point });

/** One tank of high Q, fed by a current that does not load it. */
function tank(henries: number, farads: number): BenchSetup {
  const can = canSetup();
  const deck = readDeck(
    `one tank\nIsig 0 sec AC 1u\nL1 sec 0 ${henries}\nC1 sec 0 ${farads}\nRq sec 0 1Meg\nL2 x 0 1u\nRx x 0 1k\nRsrc gen 0 75\nRp pri 0 1k\n.end\n`,
    'tank.cir',
  );
  if (!deck.ok) throw new Error(JSON.stringify(deck.problems));
  return { ...can, deck: deck.value, receiver: { ...can.receiver, probeInDeck: null } };
}

/** Frequency of the peak at a node of the deck that is really on the bench, found by golden section. */
function resonanceHz(setup: BenchSetup, state: BenchState, nearHz: number): number {
  const network = buildNetwork(connectedDeck(setup, connectionsOf(setup, state)), 'bench');
  if (!network.ok) throw new Error(JSON.stringify(network.problems));
  const solver = createSolver(network.value, Float64Array.of(nearHz));
  const level = (hz: number): number => {
    solver.setFrequencies(Float64Array.of(hz));
    solver.solve();
    return solver.magnitude('sec')[0]!;
  };
  let [low, high] = [nearHz * 0.98, nearHz * 1.02];
  for (let i = 0; i < 80; i++) {
    const [a, b] = [high - 0.618 * (high - low), low + 0.618 * (high - low)];
    if (level(a) > level(b)) high = b;
    else low = a;
  }
  return (low + high) / 2;
}

describe('the probe', () => {
  test.each([
    // f sqrt(C / (C + 10 pF)): check value "probe or stray capacitance" (from resonance, re-derived)
    [12.1e-12, 45.75e6, 33.852e6, 1e3],
    [150e-12, 455e3, 440.55e3, 50],
  ])('on a tank of %d F at %d Hz moves it', (farads, hz, expected, within) => {
    const setup = tank(1 / ((2 * Math.PI * hz) ** 2 * farads), farads);
    const free = play(setup, []);
    expect(Math.abs(resonanceHz(setup, free, hz) - hz)).toBeLessThan(within);
    const probed = play(setup, [to('y', 'TP1'), set('yTip', 'probe')]);
    expect(Math.abs(resonanceHz(setup, probed, expected) - expected)).toBeLessThan(within);
  });

  test('that stands in the deck is there only while it rests on its point', () => {
    const setup = readySetup(canSetup);
    const names = (state: BenchState) =>
      connectedDeck(setup, connectionsOf(setup, state)).elements.map((e) => e.name.toLowerCase());
    const home = names(play(setup, []));
    expect(home).toContain('cprobe');
    expect(home).not.toContain('cbench_y');
    const away = names(play(setup, [to('y', 'TP2')]));
    expect(away).not.toContain('cprobe');
    expect(away).not.toContain('rprobe');
    expect(away).toContain('cbench_y');
    expect(names(play(setup, [{ type: 'leadRemoved', lead: 'y' }]))).not.toContain('cprobe');
    expect(names(play(setup, [set('yTip', 'plain')]))).not.toContain('cprobe');
  });
});

test('the RF lead on a node lays its 75 ohm across it, and 75 more with its termination', () => {
  const setup = readySetup(stripSetup);
  const ohms = (terminated: boolean) =>
    connectedDeck(setup, connectionsOf(setup, play(setup, [to('rf', 'TP2'), set('rfTerminated', terminated)])))
      .elements.filter((e) => e.name.startsWith('Rbench'))
      .map((e) => [e.name, e.value]);
  expect(ohms(true)).toEqual([
    ['Rbench_source', 75],
    ['Rbench_end', 75],
  ]);
  expect(ohms(false)).toEqual([['Rbench_source', 75]]);
});

test('steel in a slug: 3 per cent more inductance and a Q of 15; in the hand, or plastic in the slug, nothing', () => {
  const setup = readySetup(canSetup);
  const bench = createBench(setup);
  const peak = (...events: BenchEvent[]) => bench.facts(play(setup, events)).detectedPeakVolts;
  const hold: BenchEvent = { type: 'toolTaken', tool: 'steel' };
  const place: BenchEvent = { type: 'toolPlaced', slug: 'T1T' };
  expect(peak(hold)).toBe(peak());
  expect(peak({ type: 'toolTaken', tool: 'blade' }, place)).toBe(peak());
  expect(peak(hold, place)).toBeLessThan(0.7 * peak());
  const state = play(setup, [hold, place]);
  const ohms = connectedDeck(setup, connectionsOf(setup, state)).elements.find((e) => e.name === 'Rbench_steel')?.value;
  expect(ohms! / (2 * Math.PI * 10.7e6 * 3.882e-6)).toBeCloseTo(15, 9);
  expect(peak(hold, place, { type: 'toolPlaced', slug: null })).toBe(peak());
});

describe('the meter', () => {
  const setup = readySetup(stripSetup);
  const bench = createBench(setup);
  const read = (...events: BenchEvent[]) => bench.display(play(setup, events));

  test('on the clamped line reads the supply, with its sign', () => {
    expect(read(to('meter', 'AGC')).meterVolts).toBe(-3);
    expect(read(to('meter', 'AGC'), set('biasAPolarity', '+')).meterVolts).toBe(3);
    expect(read().meterVolts).toBe(0);
  });

  test('lies on its stop beyond the range', () => {
    const display = read(to('meter', 'AGC'), set('meterRangeVolts', 1));
    expect(display).toMatchObject({ meterVolts: -1, meterPinned: true });
    expect(read(to('meter', 'AGC')).meterPinned).toBe(false);
  });

  test('pulls an unclamped line towards earth: 20 kilohm a volt against 470 kilohm', () => {
    const quiet: BenchEvent[] = [
      { type: 'leadRemoved', lead: 'biasA' },
      { type: 'leadRemoved', lead: 'rf' },
    ];
    const at = (range: number) => read(...quiet, to('meter', 'AGC'), set('meterRangeVolts', range)).meterVolts;
    for (const range of [3, 10, 30]) expect(at(range)).toBeCloseTo((-1 * 20e3 * range) / (20e3 * range + 470e3), 9);
  });

  test("on the detector's load reads the mean, and loads it", () => {
    const open = play(setup, [set('yVoltsPerDiv', 1)]);
    const { beam } = bench.display(open);
    let sum = 0;
    for (let i = 0; i < beam.count; i++) sum += beam.data[3 * i + 1]!;
    const mean = sum / beam.count;
    const reading = (range: number) => read(to('meter', 'TP4'), set('meterRangeVolts', range)).meterVolts;
    expect(reading(10)).toBeCloseTo(mean, 2);
    expect(Math.abs(reading(1))).toBeLessThan(Math.abs(reading(30)));
  });

  test('on a point with volts of its own reads them while the set is on', () => {
    expect(read(to('meter', 'TP3'), set('meterRangeVolts', 30))).toMatchObject({ meterVolts: 30, meterPinned: true });
    const off: BenchEvent = { type: 'powerSwitched', on: false };
    expect(read(to('meter', 'TP3'), off).meterVolts).toBe(0);
    expect(read(to('meter', 'Earth')).meterVolts).toBe(0);
  });
});
