/** What a real bench does that a drawing does not: there on the tube, the same in each replay, and never in the score. */
import { describe, expect, test } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchEvent, ControlId } from '../../src/bench/benchEvent.ts';
import type { BenchState } from '../../src/bench/benchState.ts';
import { connectedDeck } from '../../src/bench/connections.ts';
import { createFaultBook } from '../../src/bench/faultsNow.ts';
import { driftsOf, heatNow, warmthOf } from '../../src/bench/heat.ts';
import { createPictureMaker } from '../../src/bench/picture.ts';
import { type BenchSetup, initialState } from '../../src/bench/setup.ts';
import { type Life, lifeOf, MILD_LIFE, NO_LIFE } from '../../src/scenario/life.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { play, readySetup, stripSetup } from './fixture.ts';
import { heights, mean, retrace, trace } from './look.ts';

const set = (control: ControlId, value: number | boolean | string): BenchEvent => ({
  type: 'controlSet',
  control,
  value,
});
const lively = (life: Partial<Life>): BenchSetup => readySetup(stripSetup, { life: { ...NO_LIFE, ...life } });
const clean = lively({});
const noisy = lively({ noise: 1 });
const bench = createBench(clean);
const noisyBench = createBench(noisy);
const on = (...events: BenchEvent[]): BenchState =>
  play(clean, [set('pipHeightDiv', 0), set('yInvert', true), ...events]);

/** Heights of the forward trace over a stretch of it, sweep after sweep. */
function sweeps(state: BenchState, count: number): number[][] {
  return Array.from({ length: count }, (_, k) =>
    heights(trace(noisyBench.display({ ...state, seconds: state.seconds + k / 60 }))),
  );
}
const spread = (list: readonly number[]): number => {
  const middle = mean(list);
  return Math.sqrt(mean(list.map((v) => (v - middle) ** 2)));
};

describe('a scenario', () => {
  test('that says nothing of life has it mildly, and what it names it sets', () => {
    expect(lifeOf({})).toEqual(MILD_LIFE);
    expect(lifeOf({ life: { noise: 2 } })).toEqual({ ...MILD_LIFE, noise: 2 });
    expect(MILD_LIFE.noise).toBeGreaterThan(0);
  });

  test('of the first track is as clean as a drawing, field by field', () => {
    const first = shippedLibrary().scenarios.filter(({ track }) => track === 'first-sweep');
    expect(first.length).toBeGreaterThan(4);
    for (const scenario of first) expect(lifeOf(scenario)).toEqual(NO_LIFE);
  });
});

describe('noise of the set', () => {
  const wide = on(set('yVoltsPerDiv', 0.02), set('levelDb', -66));

  test('is another in each sweep and the same in each replay', () => {
    const [first, second] = sweeps(wide, 2);
    expect(first).not.toEqual(second);
    expect(heights(trace(createBench(noisy).display(wide)))).toEqual(first);
  });

  test('averages, over the sweeps, to a line that stands a little higher than the clean one, on trace and base line', () => {
    const seen = sweeps(wide, 60);
    const averaged = seen[0]!.map((_, i) => mean(seen.map((one) => one[i]!)));
    const still = heights(trace(bench.display(wide)));
    const grass = spread(seen.map((one) => one[512]!));
    expect(grass).toBeGreaterThan(0.05);
    const top = Math.max(...still);
    const at = still.indexOf(top);
    expect(Math.abs(averaged[at]! - top)).toBeLessThan(3 * grass);
    const base = mean(heights(retrace(noisyBench.display(wide))).slice(40));
    expect(base - mean(heights(retrace(bench.display(wide))).slice(40))).toBeGreaterThan(0.02);
  });

  test('hides what is too weak: 24 dB less and the curve is less than its own grass', () => {
    const height = (state: BenchState): number => {
      const seen = sweeps(state, 40);
      return (
        mean(seen.map((one) => mean(one.slice(500, 524)))) - mean(heights(retrace(noisyBench.display(state))).slice(40))
      );
    };
    const grassOf = (state: BenchState): number => spread(sweeps(state, 40).map((one) => one[512]!));
    const strong = on(set('yVoltsPerDiv', 0.02), set('levelDb', -56));
    const weak = on(set('yVoltsPerDiv', 0.02), set('levelDb', -80));
    expect(height(strong)).toBeGreaterThan(10 * grassOf(strong));
    expect(height(weak)).toBeLessThan(grassOf(weak));
  });

  test('is taken off by smoothing, about as the root of the time constants says', () => {
    const grassOf = (state: BenchState): number => spread(sweeps(state, 60).map((one) => one[512]!));
    const smooth = on(set('yVoltsPerDiv', 0.02), set('levelDb', -66), set('ySmoothing', true));
    // The bare lead's tip is the load's own 4.7 kilohm: 47 microseconds against the tube's and the load's 4.
    expect(grassOf(wide) / grassOf(smooth)).toBeGreaterThan(2);
    expect(grassOf(wide) / grassOf(smooth)).toBeLessThan(6);
  });

  test('comes from the set: none without power, and the needle has it too', () => {
    const off: BenchState = { ...wide, powered: false };
    // What is left is the tube's own.
    expect(spread(sweeps(off, 30).map((one) => one[512]!))).toBeLessThan(0.02);
    const metered = play(clean, [
      { type: 'leadConnected', lead: 'meter', to: 'TP4' },
      set('levelDb', -80),
      set('meterRangeVolts', 0.3),
    ]);
    const risen = Math.abs(noisyBench.display(metered).meterVolts) - Math.abs(bench.display(metered).meterVolts);
    expect(risen).toBeGreaterThan(1e-3);
  });

  test('moves no fact and no truth', () => {
    expect(noisyBench.facts(wide)).toEqual(bench.facts(wide));
    expect(noisyBench.truth(wide)).toEqual(bench.truth(wide));
  });
});

describe('a set that has stood cold', () => {
  const cold = lively({ cold: true, driftFarads: 0.2e-12 });
  const coldBench = createBench(cold);
  const start = initialState(cold);
  const switchedOn = play(cold, [
    { type: 'powerSwitched', on: false },
    { type: 'powerSwitched', on: true },
  ]);
  const later = (seconds: number): BenchState => ({ ...switchedOn, seconds: switchedOn.seconds + seconds });
  const top = (state: BenchState): number =>
    Math.max(...heights(trace(coldBench.display({ ...state, controls: { ...state.controls, yInvert: true } }))));
  /** Middle of the curve, by its height, hertz. */
  const middleHz = (state: BenchState): number => {
    const still = { ...state, controls: { ...state.controls, yInvert: true, xPositionDiv: 0 } };
    const points = trace(coldBench.display(still));
    const weight = points.reduce((sum, { y }) => sum + y, 0);
    const sum = points.reduce(
      (all, { y }, i) => all + y * Math.sin((Math.PI * (i + 0.5)) / points.length - Math.PI / 2),
      0,
    );
    return ((sum / weight) * still.controls.spanHz) / 2;
  };

  test('begins cold, switched on or not', () => {
    expect(start.heat).toEqual({ atSeconds: 0, heater: 0, chassis: 0 });
    expect(warmthOf(cold, { ...start, powered: false }).chill).toBe(1);
  });

  test('is dead for nine seconds, then rises, and is all there after thirty', () => {
    expect(top(later(8))).toBeLessThan(0.01);
    expect(coldBench.display(later(5)).note).toBe('heating');
    expect(top(later(14))).toBeGreaterThan(10 * top(later(8)));
    expect(top(later(31))).toBeGreaterThan(0.9 * top(later(600)));
    expect(coldBench.display(later(31)).note).toBe('none');
  });

  test('stands too high in frequency until it has come to itself: a twentieth is left after ten minutes', () => {
    const warm = middleHz(later(6000));
    const early = middleHz(later(40)) - warm;
    expect(early).toBeGreaterThan(30e3);
    expect(middleHz(later(300)) - warm).toBeLessThan(early / 2);
    expect(warmthOf(cold, later(600)).chill).toBeCloseTo(Math.exp(-3), 2);
  });

  test('drifts by df/f = -dC / 2C: 0.1 pF less of 12 pF puts 45.75 MHz up by 0.19 MHz (differential of the resonance formula)', () => {
    const [first] = [...driftsOf(cold.receiver, { ...cold.scenario, life: { driftFarads: 0.2e-12 } }).values()];
    expect(first).toBeGreaterThanOrEqual(0.1e-12);
    expect(first).toBeLessThanOrEqual(0.3e-12);
    const tuned = (farads: number): number => 1 / (2 * Math.PI * Math.sqrt(1.0085e-6 * farads));
    const moved = tuned(11.9e-12) - tuned(12e-12);
    expect(Math.abs(moved / (tuned(12e-12) * (0.1 / 24)) - 1)).toBeLessThan(0.01);
  });

  test('cools when it is switched off: the heaters in half a minute, the chassis in some minutes', () => {
    const hot = later(600);
    const off = { ...play(cold, [{ type: 'powerSwitched', on: false }], hot), seconds: 0 };
    const coolFor = (seconds: number) => heatNow({ ...off, seconds: off.heat.atSeconds + seconds });
    expect(coolFor(30).heater).toBeLessThan(0.05);
    expect(coolFor(30).chassis).toBeGreaterThan(0.85);
    expect(coolFor(1200).chassis).toBeLessThan(0.06);
  });

  test('is graded as the warm set: the truth does not move, and a set without valves does not warm', () => {
    expect(coldBench.truth(later(12))).toEqual(createBench(clean).truth(later(12)));
    const transistors = {
      ...cold,
      receiver: { ...cold.receiver, stages: cold.receiver.stages.map((s) => ({ ...s, device: 'Q1 NPN' })) },
    };
    expect(warmthOf(transistors, start)).toEqual({ emission: 1, chill: 0 });
    expect(warmthOf(clean, start)).toEqual({ emission: 1, chill: 0 });
  });
});

describe('hum on the gain', () => {
  // Bias law alone: nothing at the grids moves with it, so a stage's gain is exp(-|V| / 5 V) and nothing else.
  const plain = (life: Partial<Life>): BenchSetup => {
    const setup = lively(life);
    const stages = setup.receiver.stages.map((s) => ({ ...s, inputCapacitor: null, inputResistor: null }));
    return { ...setup, receiver: { ...setup.receiver, stages } };
  };
  const state = play(plain({}), [
    set('blanking', false),
    set('yInput', 'raw'),
    set('levelDb', -80),
    set('pipHeightDiv', 0),
  ]);
  /** Carrier with hum over the carrier without, decibels, sample by sample over trace and retrace. */
  const gainDb = (life: Partial<Life>, at: BenchState = state): number[] => {
    const read = (setup: BenchSetup): number[] => {
      const faults = createFaultBook(setup);
      return [...createPictureMaker(setup, faults)(at).shownVolts];
    };
    const without = read(plain({}));
    return read(plain(life)).map((v, i) => 20 * Math.log10(v / without[i]!));
  };
  /** Size of the wave at so many times the mains, and what is left without it. */
  const waveOf = (db: readonly number[], times: number) => {
    const part = (f: (x: number) => number) =>
      (2 / db.length) * db.reduce((sum, v, i) => sum + v * f((2 * Math.PI * times * (i + 0.5)) / db.length), 0);
    const [c, s] = [part(Math.cos), part(Math.sin)];
    const rest = db.map((v, i) => {
      const x = (2 * Math.PI * times * (i + 0.5)) / db.length;
      return v - c * Math.cos(x) - s * Math.sin(x);
    });
    return { size: Math.hypot(c, s), rest: Math.max(...rest.map(Math.abs)) };
  };

  test('0.1 V on two stages of 5 V each: 0.347 dB either way, once in a sweep (bias law)', () => {
    const { size, rest } = waveOf(gainDb({ biasHumVolts: 0.1 }), 1);
    expect(Math.abs(size - 0.347)).toBeLessThan(0.002);
    expect(rest).toBeLessThan(0.003);
  });

  test('so between the ends of the sweep there may be 0.69 dB, and the retrace leans the other way', () => {
    const db = gainDb({ biasHumVolts: 0.1 });
    expect(Math.max(...db) - Math.min(...db)).toBeCloseTo(0.695, 2);
    for (const i of [100, 400, 800]) expect(db[i]! + db[i + 1024]!).toBeCloseTo(0, 2);
  });

  test('at twice the mains it is a bow: the same on trace and retrace but for its phase', () => {
    const db = gainDb({ supplyHum: 0.04 });
    expect(Math.abs(waveOf(db, 2).size - 0.04 * 8.686)).toBeLessThan(0.002);
    for (const i of [100, 400, 800]) expect(db[i]!).toBeCloseTo(db[i + 1024]!, 6);
  });

  test('a slow sweep has eight waves in it', () => {
    const slow = play(plain({}), [set('slowSweep', true)], state);
    expect(Math.abs(waveOf(gainDb({ biasHumVolts: 0.1 }, slow), 8).size - 0.347)).toBeLessThan(0.002);
  });

  test('swept from behind the second controlled stage, or with the line left alone, there is none of it', () => {
    const behind = { ...state, leads: { ...state.leads, rf: 'TP3' } };
    const all = waveOf(gainDb({ biasHumVolts: 0.1 }), 1).size;
    expect(waveOf(gainDb({ biasHumVolts: 0.1 }, behind), 1).size).toBeLessThan(0.75 * all);
    const free = { ...state, leads: { ...state.leads, biasA: null } };
    expect(waveOf(gainDb({ biasHumVolts: 0.1 }, free), 1).size).toBeLessThan(1e-9);
  });

  test('moves no fact', () => {
    const humming = plain({ biasHumVolts: 0.1, supplyHum: 0.02 });
    expect(createBench(humming).facts(state)).toEqual(createBench(plain({})).facts(state));
  });
});

describe('a hand at a coil', () => {
  const near = lively({ handFarads: 0.02e-12 });
  const shown = (events: BenchEvent[]): number[] =>
    heights(trace(createBench(near).display({ ...play(near, events), seconds: 5 })));
  const [slug] = near.receiver.adjusters.filter(({ kind }) => kind !== 'trap');
  const tool: BenchEvent = { type: 'toolTaken', tool: slug!.head };

  test('is on the curve while the tool stands in the slug, and gone when it is lifted out', () => {
    const still = shown([tool]);
    const touched = shown([tool, { type: 'toolPlaced', slug: slug!.id }]);
    const lifted = shown([tool, { type: 'toolPlaced', slug: slug!.id }, { type: 'toolPlaced', slug: null }]);
    expect(Math.max(...still.map((y, i) => Math.abs(y - touched[i]!)))).toBeGreaterThan(0.005);
    expect(lifted).toEqual(still);
  });

  test('is a capacitor of that size at the coil, and no part of the deck otherwise', () => {
    const setup = near;
    const connections = {
      rf: null,
      terminated: false,
      y: null,
      tip: 'plain',
      steelIn: null,
      bridged: null,
      handAt: slug!.id,
    } as const;
    const hand = connectedDeck(setup, connections).elements.find(({ name }) => name === 'Cbench_hand');
    expect(hand?.kind === 'C' ? hand.value : null).toBe(0.02e-12);
    expect(connectedDeck(setup, { ...connections, handAt: null }).elements).toHaveLength(
      connectedDeck(setup, connections).elements.length - 1,
    );
  });

  test('moves nothing that is graded', () => {
    const state = play(near, [tool, { type: 'toolPlaced', slug: slug!.id }]);
    expect(createBench(near).truth(state)).toEqual(createBench(clean).truth(state));
  });
});

describe('the bias box', () => {
  const line = (life: Partial<Life>, events: BenchEvent[] = []): number => {
    const setup = lively(life);
    const picture = createPictureMaker(setup, createFaultBook(setup));
    return picture(play(setup, events)).lineVolts.AGC!;
  };
  const metered: BenchEvent[] = [
    { type: 'powerSwitched', on: false },
    { type: 'leadConnected', lead: 'meter', to: 'AGC' },
    { type: 'powerSwitched', on: true },
    set('meterRangeVolts', 10),
  ];

  test('gives what its knob says only about: half to all of its error, either way, by the seed', () => {
    const said = line({});
    const off = Math.abs(line({ biasKnobError: 0.2 }) / said - 1);
    expect(off).toBeGreaterThanOrEqual(0.1);
    expect(off).toBeLessThanOrEqual(0.2);
  });

  test('sags by its own resistance under the meter: 1 kilohm against 20 kilohm a volt, 10 V range, and the line’s 470 kilohm (Ohm)', () => {
    const said = line({});
    const own = stripSetup().receiver.biasLines[0]!.unclampedRestVolts;
    const siemens = 1 / 1000 + 1 / 470e3;
    expect(line({ biasOhms: 1000 })).toBeCloseTo((said / 1000 + own / 470e3) / siemens, 9);
    expect(line({ biasOhms: 1000 }, metered)).toBeCloseTo((said / 1000 + own / 470e3) / (siemens + 1 / 200e3), 9);
  });

  test('is told by the needle, which shows what the line holds and what is graded', () => {
    const setup = lively({ biasKnobError: 0.2, biasOhms: 1000 });
    const state = play(setup, metered);
    const tested = createBench(setup);
    const shown = tested.display(state).meterVolts;
    const [bias] = setup.receiver.responses[0]!.setUp.biases;
    expect(shown - bias!.volts).toBeCloseTo(tested.facts(state).biases[0]!.errorVolts, 9);
    expect(Math.abs(tested.facts(state).biases[0]!.errorVolts)).toBeGreaterThan(bias!.toleranceVolts);
    const said = state.controls.biasAVolts;
    const put = play(setup, [set('biasAVolts', Math.round((100 * said * bias!.volts) / shown) / 100)], state);
    expect(Math.abs(tested.facts(put).biases[0]!.errorVolts)).toBeLessThan(0.02);
  });
});

describe('harmonics of a plugged crystal', () => {
  const withBox = (life: Partial<Life>): BenchSetup => {
    const setup = lively(life);
    return { ...setup, receiver: { ...setup.receiver, crystalsHz: [10.7e6, ...setup.receiver.crystalsHz] } };
  };
  const rack = withBox({ crystalHarmonics: 0.4 });
  const plugged = play(rack, [{ type: 'crystalPlugged', hz: 10.7e6 }, set('pipHeightDiv', 1), set('levelDb', -80)]);
  const pipsAt = (setup: BenchSetup, state: BenchState, mhz: number): number => {
    const points = trace(createBench(setup).display(state));
    const near = points.filter((_, i) => {
      const hz = 44 + 6 * Math.sin((Math.PI * (i + 0.5)) / points.length - Math.PI / 2);
      return Math.abs(hz - mhz) < 0.15;
    });
    return Math.max(...heights(near)) - Math.min(...heights(near));
  };

  test('have pips wherever they fall in the sweep: 10.7 MHz at 42.8, 2 / n as high as the second', () => {
    const fourth = pipsAt(rack, plugged, 42.8);
    expect(fourth).toBeGreaterThan(0.08);
    expect(fourth).toBeLessThan(0.25);
    expect(pipsAt(rack, plugged, 46.5)).toBeLessThan(0.03);
    expect(pipsAt(withBox({}), plugged, 42.8)).toBeLessThan(0.03);
  });

  test('bear no tag, and are no crystal that the sheet could ask for', () => {
    const tested = createBench(rack);
    const tags = tested.display(plugged).tags.map(({ hz }) => hz);
    expect(tags).toContain(10.7e6);
    expect(tags).not.toContain(42.8e6);
    expect(tested.facts(plugged).markersMissingHz).toEqual(createBench(withBox({})).facts(plugged).markersMissingHz);
  });
});

describe('a Y gain that reads wrong', () => {
  const off = lively({ yGainError: 0.25 });
  const tested = createBench(off);

  test('has a volt stand so much taller than the knob says: trace, hum and all that is judged of them', () => {
    const state = on();
    const [plain, tall] = [bench.facts(state), tested.facts(state)];
    expect(tall.traceHeightDiv).toBeCloseTo(1.25 * plain.traceHeightDiv, 9);
    expect(tall.detectedPeakVolts).toBe(plain.detectedPeakVolts);
    const extent = (of: readonly number[]): number => Math.max(...of) - Math.min(...of);
    const shown = (at: typeof bench): number => extent(heights(trace(at.display(state))));
    expect(shown(tested) / shown(bench)).toBeCloseTo(1.25, 2);
    const loose: BenchState = { ...state, leads: { ...state.leads, earth: null } };
    expect(tested.display(loose).humDiv).toBeCloseTo(1.25 * bench.display(loose).humDiv, 9);
    expect(tested.facts(loose).humRatio).toBeCloseTo(bench.facts(loose).humRatio, 9);
  });
});
