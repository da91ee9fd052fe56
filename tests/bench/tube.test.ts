/** What the tube shows, each effect with its number. */
import { describe, expect, test } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchEvent, ControlId } from '../../src/bench/benchEvent.ts';
import type { BenchState } from '../../src/bench/benchState.ts';
import { initialState } from '../../src/bench/setup.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { canSetup, play, readySetup, stripSetup } from './fixture.ts';
import { HALF, heightAt, heights, mean, peakX, retrace, spots, spread, trace } from './look.ts';

const set = (control: ControlId, value: number | boolean | string): BenchEvent => ({
  type: 'controlSet',
  control,
  value,
});
const off = (lead: 'earth' | 'rf' | 'y' | 'x' | 'biasA'): BenchEvent => ({ type: 'leadRemoved', lead });

const can = readySetup(canSetup);
const canBench = createBench(can);
const onCan = (...events: BenchEvent[]): BenchState => play(can, events);
const strip = readySetup(stripSetup);
const stripBench = createBench(strip);
const onStrip = (...events: BenchEvent[]): BenchState => play(strip, events);
const stripX = (mhz: number): number => ((mhz - 44) * 5) / 6;

describe('phasing', () => {
  test('a lag opens the trace into two images S sin(phi) apart at the centre', () => {
    // 10 MHz and 5 degrees: 0.87156 MHz; source: ellipse method (studylib.net/doc/11693367), swept use derived
    const state = onStrip(set('spanHz', 10e6), set('blanking', false), set('phasingDegrees', 5));
    const display = stripBench.display(state);
    const [going, coming] = [trace(display), retrace(display)];
    const hzPerDiv = 10e6 / 10;
    // Samples that stand half a step on either side of the centre frequency, averaged.
    const there = (going[HALF / 2 - 1]!.x + going[HALF / 2]!.x) / 2;
    const back = (coming[HALF / 2 - 1]!.x + coming[HALF / 2]!.x) / 2;
    expect(Math.abs(there - back) * hzPerDiv).toBeCloseTo(0.87156e6, -3.5);
    expect(going[HALF / 2]!.y).toBeCloseTo(coming[HALF / 2 - 1]!.y, 1);
  });

  test('with the lag taken out by the knob, trace and retrace lie on each other', () => {
    const lagging = readySetup(stripSetup, { bench: { ...strip.scenario.bench, phaseLagDegrees: 23 } });
    const bench = createBench(lagging);
    const open = bench.display(play(lagging, [set('blanking', false)]));
    expect(Math.abs(heightAt(trace(open), stripX(45.75)) - heightAt(retrace(open), stripX(45.75)))).toBeGreaterThan(1);
    const shut = bench.display(play(lagging, [set('blanking', false), set('phasingDegrees', -23)]));
    // What is left is the lag of diode, lead and tube: 4.2 microseconds, 9.5 kHz either way at 2.26 GHz/s.
    for (const mhz of [42, 43, 44, 45, 45.75]) {
      const lateDiv = (2 * 4.25e-6 * Math.PI * 60 * 12e6) / 1.2e6;
      const [there, back] = [heightAt(trace(shut), stripX(mhz)), heightAt(retrace(shut), stripX(mhz) - lateDiv)];
      expect(Math.abs(there - back)).toBeLessThan(0.05);
    }
  });

  test('X is linear in frequency only then', () => {
    const display = stripBench.display(onStrip());
    for (const i of [0, 200, 511, 800, 1023]) {
      const hz = 44e6 + 6e6 * Math.sin((Math.PI * (i + 0.5)) / HALF - Math.PI / 2);
      expect(trace(display)[i]!.x).toBeCloseTo(stripX(hz / 1e6), 5);
    }
  });
});

describe('blanking', () => {
  test('draws the base line in the retrace', () => {
    const display = canBench.display(onCan(set('yPositionDiv', -3)));
    // The detector needs some microseconds to let go.
    for (const y of heights(retrace(display)).slice(20)) expect(y).toBeCloseTo(-3, 1);
    // 0.37536 V at the peak, at 0.1 V a division (receiver/detectedLevels.test.ts).
    expect(Math.max(...heights(trace(display)))).toBeCloseTo(-3 + 3.7536, 1);
  });

  test('off: the retrace is the curve once more', () => {
    const display = canBench.display(onCan(set('blanking', false)));
    expect(Math.max(...heights(retrace(display)))).toBeCloseTo(Math.max(...heights(trace(display))), 1);
  });
});

describe('level', () => {
  const shape = (db: number, mhz: number): number => {
    const state = onStrip(set('levelDb', db), set('yVoltsPerDiv', 5), set('yInput', 'raw'), set('blanking', false));
    const data = stripBench.display(state).beam.data;
    const at = (m: number): number => {
      const i = Math.round((HALF * (Math.asin((m - 44) / 6) + Math.PI / 2)) / Math.PI - 0.5);
      return Math.abs(data[3 * i + 1]!);
    };
    return at(mhz) / at(44);
  };

  test('too much flattens the top and fills the skirts', () => {
    expect(shape(-46, 45.75)).toBeCloseTo(0.496, 1.7);
    // The same equations written a second time with numpy and scipy 1.17.
    expect(shape(-10, 45.75)).toBeCloseTo(0.855, 1.7);
    expect(shape(-10, 41.25)).toBeGreaterThan(3 * shape(-46, 41.25));
    const facts = (db: number) => stripBench.facts(onStrip(set('levelDb', db)));
    expect(facts(-46).compressionDb).toBeLessThan(0.05);
    expect(facts(-10).compressionDb).toBeGreaterThan(12);
  });

  test('deep in saturation the output stands still: 4 / pi of the stage current', () => {
    // I1 -> (4/pi) gm Vs for a hard limiter: describing function of a relay, any control text (from memory)
    const peak = (db: number) => stripBench.facts(onStrip(set('levelDb', db))).detectedPeakVolts;
    expect(peak(0) / peak(-10)).toBeLessThan(1.08);
    expect(peak(-50) / peak(-60)).toBeGreaterThan(3);
  });

  test('a weak carrier is squared by the diode: half the level is less than half as high', () => {
    const peak = (db: number) => canBench.facts(onCan(set('levelDb', db))).detectedPeakVolts;
    expect(peak(-8) / peak(-2)).toBeLessThan(0.49);
    // square law: 6.02 dB of carrier are 12.04 dB of volts (D. W. Knight, Diode detectors for RF measurement)
    expect(20 * Math.log10(peak(-54) / peak(-60))).toBeCloseTo(12, 0.5);
  });
});

describe('bias', () => {
  // Levels against the peak and peak gain against the reference, AGC stages moved together, the diode loading its coil at this level; the same equations written a
  // second time with numpy and scipy 1.17 (receiver/specification.test.ts).
  test.each([
    [-1, 4.76, { 45.75: 0.509, 45: 0.962, 43: 0.68, 42.5: 0.625, 41.25: 0.057 }],
    [-3, 0, { 45.75: 0.412, 45: 0.917, 43: 0.845, 42.5: 0.735, 41.25: 0.046 }],
    [-6, -7.68, { 45.75: 0.351, 45: 0.81, 43: 0.733, 42.5: 0.483, 41.25: 0.028 }],
    [-12, -23.8, { 45.75: 0.368, 45: 0.882, 43: 0.365, 42.5: 0.2, 41.25: 0.012 }],
  ] as [number, number, Record<string, number>][])('at %s V', (volts, gainDb, levels) => {
    const at = (bias: number) => {
      const events = [set('biasAVolts', -bias), set('yInput', 'raw'), set('levelDb', -60), set('yVoltsPerDiv', 0.05)];
      return trace(stripBench.display(onStrip(...events))).map((p) => ({ x: p.x, y: Math.abs(p.y) }));
    };
    const peak = Math.max(...heights(at(volts)));
    for (const [mhz, level] of Object.entries(levels)) {
      // 0.1 mV of noise on the tube is what limits this reading.
      expect(heightAt(at(volts), stripX(Number(mhz))) / peak).toBeCloseTo(level, volts === -12 ? 1.3 : 1.8);
    }
    expect(20 * Math.log10(peak / Math.max(...heights(at(-3))))).toBeCloseTo(gainDb, volts === -12 ? 0.5 : 1);
  });

  test('of the wrong sign sinks the curve', () => {
    const right = stripBench.facts(onStrip()).detectedPeakVolts;
    expect(stripBench.facts(onStrip(set('biasAPolarity', '+'))).detectedPeakVolts).toBeLessThan(0.3 * right);
  });

  test('left off, the line follows the signal and settles where its own law says', () => {
    const free = onStrip(off('biasA'));
    const volts = -3 + stripBench.facts(free).biases[0]!.errorVolts;
    expect(volts).toBeLessThan(-1.2);
    const fixed = onStrip(set('biasAVolts', -volts), set('yVoltsPerDiv', 1));
    // The supply's own volts are now those of the line: the detector's mean must give them back (rest -1, -6 a volt).
    const detected = Math.abs(mean(heights(spots(stripBench.display(fixed)))));
    expect(-1 - 6 * detected).toBeCloseTo(volts, 2);
    const louder = -3 + stripBench.facts(play(strip, [set('levelDb', -36)], free)).biases[0]!.errorVolts;
    expect(louder).toBeLessThan(volts - 0.5);
  });
});

describe('leads', () => {
  test('without its termination the RF lead gives about twice the level, and a tilt', () => {
    const state = (terminated: boolean) =>
      onStrip(set('rfTerminated', terminated), set('yInput', 'raw'), set('levelDb', -66), set('yVoltsPerDiv', 0.02));
    const height = (mhz: number, of: BenchState) => heightAt(absolute(stripBench.display(of)), stripX(mhz));
    // 2 / |1 - 0.2 exp(-2 j w T)|, T = 10 ns: lossless line between mismatched ends (from memory)
    const share = (mhz: number): number => {
      const angle = 4 * Math.PI * mhz * 0.01;
      return 2 / Math.hypot(1 - 0.2 * Math.cos(angle), 0.2 * Math.sin(angle));
    };
    for (const mhz of [42.5, 44, 45.75]) {
      // As if the attenuator stood so much higher: the diode's load goes with the level.
      const raised = between(-66 + 20 * Math.log10(share(mhz)), (levelDb) =>
        height(mhz, play(strip, [set('levelDb', levelDb)], state(true))),
      );
      expect(height(mhz, state(false)) / raised).toBeCloseTo(1, 1.7);
      expect(height(mhz, state(false)) / height(mhz, state(true))).toBeGreaterThan(1.6);
    }
    expect(share(45.75) / share(42.5)).toBeGreaterThan(1.05);
  });

  test('a wrong point shows the truth for that point: Y on a signal point needs the probe', () => {
    const plain = canBench.display(onCan(set('yTip', 'plain')));
    expect(plain.note).toBe('noSignal');
    expect(spread(heights(spots(plain)))).toBeLessThan(0.05);
    expect(stripBench.display(onStrip(set('yTip', 'probe'))).note).toBe('noSignal');
  });

  test('no earth: mains hum on the trace, as high as the pick-up', () => {
    const display = canBench.display(onCan(off('earth')));
    expect(display.humDiv).toBeCloseTo(1.6, 9);
    expect(spread(heights(retrace(display)).slice(20))).toBeGreaterThan(0.7);
    const earthed = canBench.display(onCan());
    expect(earthed.humDiv).toBe(0);
    expect(spread(heights(retrace(earthed)).slice(20))).toBeLessThan(0.05);
  });

  test('no X lead: a line in the middle', () => {
    const display = canBench.display(onCan(off('x'), set('xPositionDiv', 1)));
    expect(display.note).toBe('noX');
    expect(new Set(spots(display).map((p) => p.x))).toEqual(new Set([1]));
  });

  test('no isolating capacitor on a grid: the stage loses its bias; on a live point: it stops', () => {
    const at = (point: string, capacitor: boolean) =>
      onStrip({ type: 'leadConnected', lead: 'rf', to: point }, set('rfCapacitor', capacitor), set('levelDb', -80));
    const peak = (point: string, capacitor: boolean) => stripBench.facts(at(point, capacitor)).detectedPeakVolts;
    // First stage at 0 V instead of -3 V: gm is exp(3 / 5) = 1.82 times; the grid loading across 37.5 ohm does not matter.
    const volts = (capacitor: boolean, levelDb = -80) => {
      const more = [
        set('yInput', 'raw'),
        set('yVoltsPerDiv', 1),
        ...(levelDb === -80 ? [] : [set('levelDb', levelDb)]),
      ];
      return Math.max(...heights(absolute(stripBench.display(play(strip, more, at('TP2', capacitor))))));
    };
    // As if the attenuator stood so much higher: the diode's load goes with the level.
    const raised = between(-80 + 20 * Math.log10(Math.exp(3 / 5)), (levelDb) => volts(true, levelDb));
    expect(volts(false) / raised).toBeCloseTo(1, 1);
    expect(volts(false) / volts(true)).toBeGreaterThan(1.7);
    expect(peak('TP3', true)).toBeGreaterThan(1e-6);
    expect(peak('TP3', false)).toBe(0);
  });

  test('the bare lead hangs on the detector and pulls the last coil', () => {
    const height = (tip: string) => heightAt(trace(stripBench.display(onStrip(set('yTip', tip)))), stripX(45.75));
    expect(Math.abs(height('plain') / height('resistor') - 1)).toBeGreaterThan(0.002);
    expect(Math.abs(height('plain') / height('resistor') - 1)).toBeLessThan(0.1);
  });
});

describe('the tube', () => {
  test('AC coupling takes the mean away: the base line of a blanked trace sinks by it', () => {
    // duty times height: sweep use of check value "AC coupling droop" (computed)
    const dc = heights(spots(canBench.display(onCan())));
    const ac = heights(spots(canBench.display(onCan(set('yCoupling', 'AC')))));
    expect(mean(ac)).toBeCloseTo(0, 4);
    expect(mean(ac.slice(HALF + 100, HALF + 900))).toBeCloseTo(-mean(dc), 1);
    expect(spread(ac)).toBeCloseTo(spread(dc), 1);
  });

  test('mirror and a swapped lead each turn X round', () => {
    const swapped = readySetup(canSetup, { bench: { ...can.scenario.bench, xSwapped: true } });
    const first = (setup: typeof can, events: BenchEvent[]) =>
      spots(createBench(setup).display(play(setup, events)))[0]!.x;
    expect(first(can, [])).toBeCloseTo(-5, 3);
    expect(first(can, [set('mirror', true)])).toBeCloseTo(5, 3);
    expect(first(swapped, [])).toBeCloseTo(5, 3);
    expect(first(swapped, [set('mirror', true)])).toBeCloseTo(-5, 3);
    expect(first(can, [set('xGain', 0.5), set('xPositionDiv', 1)])).toBeCloseTo(-1.5, 3);
  });

  test('gain, position, inversion', () => {
    // All at one moment: the noise is the same.
    const at = (...events: BenchEvent[]) => canBench.display({ ...onCan(...events), seconds: 1 });
    const y = (...events: BenchEvent[]) => Math.max(...heights(spots(at(...events))));
    const base = y();
    expect(y(set('yVoltsPerDiv', 0.2))).toBeCloseTo(base / 2, 1.5);
    expect(y(set('yPositionDiv', -2))).toBeCloseTo(base - 2, 3);
    const inverted = heights(spots(canBench.display(onCan(set('yInvert', true)))));
    expect(Math.min(...inverted)).toBeCloseTo(-base, 2);
  });

  test('a negative detector draws downwards', () => {
    const y = heights(spots(stripBench.display(onStrip())));
    expect(Math.min(...y)).toBeLessThan(-5);
    expect(Math.max(...y)).toBeLessThan(0.1);
  });

  test('raw: the carrier fills the envelope from edge to edge', () => {
    const display = canBench.display(onCan(set('yInput', 'raw'), set('yVoltsPerDiv', 0.2)));
    const y = heights(trace(display));
    // 0.44379 V at the peak, the probe's diode loading it: the same equations written a second time with numpy and scipy 1.17
    const edge = 0.44379 / 0.2;
    expect(Math.max(...y)).toBeCloseTo(edge, 1.5);
    expect(Math.min(...y)).toBeCloseTo(-edge, 1.5);
    expect(y.filter((v, i) => i > 400 && i < 600 && v * (y[i - 1] ?? 0) < 0).length).toBe(199);
  });

  test('the beam spends the same time everywhere; brightness scales it', () => {
    const { beam } = canBench.display(onCan(set('brightness', 1)));
    let sum = 0;
    for (let i = 0; i < beam.count; i++) sum += beam.data[3 * i + 2]!;
    expect(sum).toBeCloseTo(1, 5);
    expect(beam.data[2]).toBe(beam.data[2 + 3 * 1000]);
    expect(beam.count).toBe(2 * HALF);
  });

  test('notes say why the face is dark or flat', () => {
    const note = (...events: BenchEvent[]) => canBench.display(onCan(...events)).note;
    expect(note()).toBe('none');
    expect(note(off('y'))).toBe('noY');
    expect(note(off('rf'))).toBe('noSignal');
    expect(note(set('yPositionDiv', 8), set('yVoltsPerDiv', 5))).toBe('offScreen');
    const dark = stripBench.display(onStrip({ type: 'powerSwitched', on: false }));
    expect(dark.note).toBe('powerOff');
    expect(spread(heights(spots(dark)))).toBeLessThan(0.02);
  });
});

describe('spot and tone', () => {
  test('a carrier that stands still draws a level line', () => {
    const display = canBench.display(onCan(set('sourceMode', 'spot'), set('blanking', false)));
    expect(spread(heights(spots(display)))).toBeLessThan(0.02);
    expect(spread(spots(display).map((p) => p.x))).toBeCloseTo(10, 3);
    const level = spots(display)[0]!.y;
    expect(level).toBeCloseTo(heightAt(trace(canBench.display(onCan())), 0), 1);
    expect(spots(canBench.display(onCan(set('spanHz', 0))))[500]?.y).toBeCloseTo(level, 1);
  });

  test('the tone is a wave on the line: 30 per cent of the carrier, through the diode', () => {
    const state = onStrip(
      set('sourceMode', 'tone'),
      set('levelDb', -52),
      set('blanking', false),
      set('yVoltsPerDiv', 0.1),
    );
    const display = stripBench.display(state);
    const y = heights(spots(display)).map((div) => Math.abs(div) * 0.1);
    // 0.7147 and 0.3527 V of carrier at the diode, which loads the trough harder: the same equations written a second time with numpy and scipy 1.17.
    const [crest, trough] = [0.47496, 0.21296] as const;
    expect(Math.max(...y)).toBeCloseTo(crest, 2);
    expect(Math.min(...y)).toBeCloseTo(trough, 2);
    expect(display.toneVolts).toBeCloseTo((crest - trough) / 2 / Math.SQRT2, 2);
    expect(stripBench.display(onStrip()).toneVolts).toBe(0);
  });

  test('in a trap the tone all but goes', () => {
    const tone = (hz: number) =>
      stripBench.display(onStrip(set('sourceMode', 'tone'), set('centreHz', hz), set('levelDb', -40))).toneVolts;
    expect(tone(47.25e6)).toBeLessThan(0.02 * tone(44e6));
  });
});

describe('time', () => {
  test('the same state gives the same picture; only pips, noise and tone move with the seconds', () => {
    const state = onStrip({ type: 'crystalPlugged', hz: 44e6 });
    const copy = (seconds: number) => Float32Array.from(stripBench.display({ ...state, seconds }).beam.data);
    expect(copy(5)).toEqual(copy(5));
    const [now, later] = [copy(5), copy(5.3)];
    let far = 0;
    let near = 0;
    for (let i = 0; i < HALF; i++) {
      const moved = Math.abs(now[3 * i + 1]! - later[3 * i + 1]!);
      if (Math.abs(now[3 * i]!) > 0.9) far = Math.max(far, moved);
      else near = Math.max(near, moved);
    }
    expect(near).toBeGreaterThan(0.05);
    expect(far).toBeLessThan(0.02);
  });
});

test('the peak stands at the same place on the tube as in the truth', () => {
  const truth = stripBench.truth(onStrip());
  let best = 0;
  for (let i = 0; i < truth.hz.length; i++) if (truth.relative[i]! > truth.relative[best]!) best = i;
  const lone: Scenario['start'] = { ...can.scenario.start, slugs: { T1T: -8 } };
  const setup = readySetup(canSetup, { start: lone });
  const bench = createBench(setup);
  const x = peakX(trace(bench.display(initialState(setup))));
  const off = bench.truth(initialState(setup));
  let high = 0;
  for (let i = 0; i < off.hz.length; i++) if (off.relative[i]! > off.relative[high]!) high = i;
  // The rounded top lets noise move its highest sample by some kilohertz; the probe's lag is 2.3 kHz.
  expect(Math.abs(10.7e6 + x * 1e5 - off.hz[high]!)).toBeLessThan(10e3);
  expect(truth.relative[best]).toBeCloseTo(1, 4);
});

/** A figure between two whole decibels of the attenuator, its logarithm straight between them. */
function between(levelDb: number, at: (wholeDb: number) => number): number {
  const low = Math.floor(levelDb);
  return at(low) * (at(low + 1) / at(low)) ** (levelDb - low);
}

function absolute(display: ReturnType<typeof canBench.display>) {
  return trace(display).map((p) => ({ x: p.x, y: Math.abs(p.y) }));
}
