/**
 * The ways in which a bench deceives, each as a number read off the tube of a shipped receiver against what the physics says, worked out here by another road:
 * a dense solve of the whole deck, the describing function by summing, echoes on a line one by one. What grading reads is held against the same picture.
 */
import { describe, expect, test } from 'vitest';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import { diodeLaw } from '../../src/physics/diodeLaw.ts';
import type { DeckEdit } from '../../src/physics/editDeck.ts';
import { BENCH_PROBE } from '../../src/receiver/benchProbe.ts';
import { heightAt, heights, mean, peakX, type Spot, spread } from './look.ts';
import {
  capacitor,
  clip,
  deckValueOf,
  driveAt,
  gain,
  hzAt,
  lift,
  onBench,
  ownLoads,
  RAW,
  rawHeights,
  resistor,
  scale,
  set,
  setTo,
  sourceVolts,
  worked,
  xAt,
} from './shippedSheet.ts';

const valve = onBench('video-valve-45m');
const can = onBench('loose-can-10m7');
const MHZ = [40.5, 42, 43, 44, 45, 45.75, 46.5].map((f) => f * 1e6);
const at = (half: readonly Spot[], hz: number): number => heightAt(half, xAt(valve, hz));
/** The carrier at the diode on the tube, volts, at a frequency. */
const raw = (hz: number, ...acts: BenchEvent[]): number => at(rawHeights(valve.volts(RAW, gain(1), ...acts).trace), hz);

const { stages } = valve.setup.receiver;
const loads = ownLoads(valve.setup);
/** The carrier at a node: three stages in a row, each saturating by its describing function, the diode loading its coil. */
const carrier = (node: string, hz: number, levelDb: number, edits: readonly DeckEdit[] = []): number =>
  Math.hypot(...worked(valve.deck, edits, 'Isig', 1.4e-5 * sourceVolts(levelDb), hz, stages, loads)(node));

describe('x', () => {
  test('phasing off by p parts trace and retrace: x = 5 sin(wt + p) one way, 5 sin(wt - p) the other (Lissajous)', () => {
    // The load of the probe (300 kilohm, 30 pF) and the tube (50 kHz) are late by themselves, a quarter of a degree.
    const late = 2 * Math.PI * 60 * (300e3 * 30e-12 + 1 / (2 * Math.PI * 50e3));
    const p = (10 * Math.PI) / 180 + late;
    const { trace, retrace } = can.volts(set('blanking', false), set('phasingDegrees', 10));
    const tall = spread(heights(trace));
    for (const angle of [-0.5, -0.25, -0.1, 0.1, 0.25, 0.5]) {
      const forth = heightAt(trace, 5 * Math.sin(angle + p));
      const back = heightAt(retrace, 5 * Math.sin(angle - p));
      expect(Math.abs(forth - back) / tall).toBeLessThan(0.005);
    }
    const flank = 5 * Math.sin(0.25);
    expect(Math.abs(heightAt(trace, flank) - heightAt(retrace, flank)) / tall).toBeGreaterThan(0.2);
    expect(can.bench.facts(can.after(set('phasingDegrees', 10))).residualPhaseDegrees).toBe(10);
  });

  test('X reversed: each level stands as far on the other side', () => {
    const turned = valve.volts(RAW, gain(1), set('mirror', true)).trace;
    for (const hz of MHZ) expect(heightAt(rawHeights(turned), -xAt(valve, hz))).toBeCloseTo(raw(hz), 2);
    expect(valve.bench.facts(valve.after(set('mirror', true))).xDirectionAsSheet).toBe(false);
  });

  test('retrace not blanked: no line at zero volts is left', () => {
    const blanked = valve.volts();
    const open = valve.volts(set('blanking', false));
    const middle = (half: readonly Spot[]): number => heightAt(half, xAt(valve, 44e6));
    expect(Math.abs(middle(blanked.retrace))).toBeLessThan(1e-3);
    expect(middle(open.retrace) / middle(open.trace)).toBeCloseTo(1, 2);
    expect(valve.bench.facts(valve.after(set('blanking', false))).blanking).toBe(false);
  });
});

describe('the set', () => {
  const saturated = (hz: number, levelDb: number): number => carrier('det', hz, levelDb);

  test('overload flattens the top as the describing function says', () => {
    for (const hz of MHZ) {
      const wanted = saturated(hz, -20);
      expect(Math.abs(raw(hz, set('levelDb', -20), gain(5)) / wanted - 1)).toBeLessThan(0.01);
    }
    const share = (levelDb: number): number => saturated(45.75e6, levelDb) / saturated(44e6, levelDb);
    expect(share(-20)).toBeGreaterThan(1.2 * share(-46));
    expect(valve.bench.facts(valve.after(set('levelDb', -20))).compressionDb).toBeGreaterThan(3);
  });

  test('wrong bias: gain and grid capacitance as the law of the valve says', () => {
    // gm by exp(-3/5) in both stages, input conductance with it, 2 pF of capacitance with its root: the receiver's own law (file).
    const gm = Math.exp(-3 / 5);
    const farads = 2e-12 * (Math.sqrt(gm) - 1);
    const edits = ['Cin', 'Cp1'].map((name) => setTo(name, deckValueOf(valve.deck, name) + farads));
    const all = [...edits, ...['G1', 'G2'].map((g) => scale(g, gm)), ...['Rgin', 'Rgp1'].map((r) => scale(r, 1 / gm))];
    for (const hz of MHZ) {
      const wanted = carrier('det', hz, -46, all);
      const seen = raw(hz, set('biasAVolts', 6), gain(0.1));
      expect(Math.abs(seen - wanted)).toBeLessThan(0.01 * wanted + 0.003);
    }
    expect(valve.bench.facts(valve.after(set('biasAVolts', 6))).biases[0]!.errorVolts).toBe(-3);
  });

  test('AGC unclamped: the line stands where its own detector puts it, and twice the level is far from twice the curve', () => {
    const free = (...more: BenchEvent[]) => [lift('biasA'), clip('meter', 'AGC'), set('meterRangeVolts', 30), ...more];
    const seen = (levelDb: number) => {
      const acts = free(set('levelDb', levelDb), gain(1));
      const { trace, retrace } = valve.volts(...acts);
      return {
        meter: valve.bench.display(valve.after(...acts)).meterVolts,
        mean: mean(heights([...trace, ...retrace])),
      };
    };
    for (const db of [-40, -34, -28]) {
      const { meter, mean: detected } = seen(db);
      // 470 kilohm of line, 600 kilohm of meter; rest -1 V, -8 V for each volt of the diode (the receiver's file).
      const wanted = (600 / 1070) * (-1 - 8 * Math.abs(detected));
      expect(Math.abs(meter / wanted - 1)).toBeLessThan(0.01);
    }
    expect(seen(-28).mean / seen(-34).mean).toBeLessThan(1.6);
    expect(valve.bench.facts(valve.after(lift('biasA'))).biases[0]!.clamped).toBe(false);
  });

  test('probe on a plate: 10 pF and its diode more, and the hump goes down in frequency', () => {
    const probed = [clip('y', 'TP4'), set('yTip', 'probe'), set('levelDb', -20), RAW, gain(0.1)];
    const extra = [capacitor('Cx', 'p1', 10e-12)];
    const amps = 1.4e-5 * sourceVolts(-20);
    const withProbe = [...loads, { node: 'p1', law: diodeLaw(BENCH_PROBE) }];
    const plate = (hz: number, edits: readonly DeckEdit[], hanging: typeof loads): number =>
      Math.hypot(...worked(valve.deck, edits, 'Isig', amps, hz, stages, hanging)('p1'));
    const { trace } = valve.volts(...probed);
    for (const hz of MHZ) {
      const wanted = plate(hz, extra, withProbe);
      // A hundredth, and the noise of the tube: 0.1 mV rms.
      expect(Math.abs(at(rawHeights(trace), hz) - wanted)).toBeLessThan(0.01 * wanted + 0.3e-3);
    }
    expect(Math.abs(plate(44e6, extra, withProbe) / plate(44e6, [], loads) - 1)).toBeGreaterThan(0.2);
    expect(valve.bench.facts(valve.after(...probed)).yTipAsSheet).toBe(false);
  });

  test('wrong test point: sweeping the last grid shows the last pair alone', () => {
    const acts = [clip('rf', 'TP3'), set('levelDb', -20), RAW, gain(0.5)];
    const { trace } = valve.volts(...acts);
    for (const hz of MHZ) {
      const amps = sourceVolts(-20) / 75;
      const wanted = Math.hypot(...worked(valve.deck, driveAt('p2'), 'Itest', amps, hz, stages, loads)('det'));
      expect(Math.abs(at(rawHeights(trace), hz) / wanted - 1)).toBeLessThan(0.01);
    }
    expect(valve.bench.facts(valve.after(...acts)).rfAtSheetPoint).toBe(false);
  });

  test('steel in a slug: 3 per cent more inductance and a Q of 15 (common practice, no source)', () => {
    const acts: BenchEvent[] = [
      { type: 'toolTaken', tool: 'steel' },
      { type: 'toolPlaced', slug: 'T1T' },
      ...[RAW, gain(0.1)],
    ];
    const { adjusters, testPoints } = can.setup.receiver;
    const { element } = adjusters.find((a) => a.id === 'T1T')!;
    const observed = testPoints.find((p) => p.id === can.response.setUp.observeAt)!.node!;
    const source = testPoints.find((p) => p.id === can.response.setUp.injectAt)!.inject!;
    if (source.kind !== 'deckSource') throw new Error('the can is fed through its own input');
    const henries = deckValueOf(can.deck, element);
    const coil = can.deck.elements.find((e) => e.name === element)!;
    if (coil.kind !== 'L') throw new Error('a slug turns a coil');
    const steel = [
      setTo(element, 1.03 * henries),
      resistor('Rsteel', coil.nodes[0], 2 * Math.PI * can.response.setUp.centreHz * henries * 15),
    ];
    const { trace } = can.volts(...acts);
    const drive = source.siemens * sourceVolts(can.response.setUp.levelDb);
    for (const x of [-4, -2, 0, 2, 4]) {
      const probe = [{ node: observed, law: diodeLaw(BENCH_PROBE) }];
      const wanted = Math.hypot(...worked(can.deck, steel, source.element, drive, hzAt(can, x), [], probe)(observed));
      expect(Math.abs(heightAt(rawHeights(trace), x) - wanted)).toBeLessThan(0.02 * wanted + 0.002);
    }
    expect(can.bench.facts(can.after(...acts)).steelIn).toBe('T1T');
  });
});

describe('the leads', () => {
  /** Echoes added up one by one: r of the wave comes back after each 2T. */
  const echoes = (hz: number, reflection: number, seconds: number): number => {
    let [re, im] = [0, 0];
    for (let n = 0; n < 60; n++) {
      re += reflection ** n * Math.cos(4 * Math.PI * hz * seconds * n);
      im += reflection ** n * Math.sin(4 * Math.PI * hz * seconds * n);
    }
    return Math.hypot(re, im);
  };

  test('lead unterminated: twice the volts, and a tilt by echoes on 10 ns of cable (lossless line, any lines text)', () => {
    const acts = [set('rfTerminated', false), set('levelDb', -66)];
    for (const hz of MHZ.slice(1)) {
      const ratio = raw(hz, ...acts, gain(0.1)) / raw(hz, set('levelDb', -66), gain(0.1));
      // The diode loads the stronger carrier less.
      const raised = carrier('det', hz, -66 + 20 * Math.log10(2 * echoes(hz, 0.2, 10e-9)));
      expect(Math.abs(ratio / (raised / carrier('det', hz, -66)) - 1)).toBeLessThan(0.02);
    }
    expect(valve.bench.facts(valve.after(...acts)).rfTerminated).toBe(false);
  });

  test('ground missing: the long way home comes back 30 ns late, and ripples the curve (common practice, no source)', () => {
    for (const hz of MHZ.slice(1)) {
      const ratio = raw(hz, lift('earth')) / raw(hz);
      const raised = carrier('det', hz, -46 + 20 * Math.log10(echoes(hz, 0.12, 30e-9)));
      expect(Math.abs(ratio / (raised / carrier('det', hz, -46)) - 1)).toBeLessThan(0.01);
    }
    expect(valve.bench.facts(valve.after(lift('earth'))).earthed).toBe(false);
  });

  test.each([50, 60] as const)(
    'mains hum: one wave in a sweep at %d Hz, 80 mV of it and 20 mV of its second (common practice, no source)',
    (mainsHz) => {
      const bench = onBench('video-valve-45m', undefined, { mainsHz });
      const quiet = bench.volts(set('levelDb', -80), lift('rf'));
      const humming = bench.volts(set('levelDb', -80), lift('rf'), lift('earth'));
      const wave = [...humming.trace, ...humming.retrace].map((p, i) => p.y - [...quiet.trace, ...quiet.retrace][i]!.y);
      const harmonic = (n: number): number => {
        const turn = (i: number): number => (2 * Math.PI * n * i) / wave.length;
        const re = wave.reduce((sum, v, i) => sum + v * Math.cos(turn(i)), 0);
        const im = wave.reduce((sum, v, i) => sum + v * Math.sin(turn(i)), 0);
        return (2 * Math.hypot(re, im)) / wave.length;
      };
      expect(harmonic(1)).toBeCloseTo(0.08, 4);
      expect(harmonic(2)).toBeCloseTo(0.02, 4);
      expect(harmonic(3)).toBeLessThan(1e-4);
      const facts = bench.bench.facts(bench.after(lift('earth'), gain(0.2)));
      expect(facts.humRatio).toBeCloseTo(0.16 / (facts.traceHeightDiv * 0.2), 6);
    },
  );
});

describe('the tube', () => {
  test('AC coupling: no direct current passes a capacitor, so the base line slides by the mean', () => {
    const dc = valve.volts(gain(0.2));
    const ac = valve.volts(gain(0.2), set('yCoupling', 'AC'));
    const all = (seen: typeof dc): number => mean(heights([...seen.trace, ...seen.retrace]));
    expect(Math.abs(all(ac))).toBeLessThan(1e-3);
    expect(mean(heights(ac.retrace)) - mean(heights(dc.retrace))).toBeCloseTo(-all(dc), 2);
    expect(valve.bench.facts(valve.after(set('yCoupling', 'AC'))).dcCoupled).toBe(false);
  });

  test('vertical bandwidth too low: a pole of 10 kilohm and 10 nF makes the curve late both ways', () => {
    const period = 1 / 60;
    const unsmoothed = valve.volts(set('blanking', false), gain(0.2));
    const plain = heights([...unsmoothed.trace, ...unsmoothed.retrace]);
    // The pole by hand: exact step for a ramp between samples, three times round to be periodic.
    const decay = Math.exp(-period / plain.length / 1e-4);
    let y = 0;
    const late = plain.map(() => 0);
    for (let i = 0; i < 3 * plain.length; i++) {
      const n = i % plain.length;
      y = plain[n]! + (y - plain[n]!) * decay;
      late[n] = y;
    }
    const seen = valve.volts(set('blanking', false), gain(0.2), set('ySmoothing', true));
    const both = heights([...seen.trace, ...seen.retrace]);
    const worst = Math.max(...both.map((v, i) => Math.abs(v - late[i]!)));
    expect(worst / spread(plain)).toBeLessThan(0.01);
    expect(Math.max(...both.map((v, i) => Math.abs(v - plain[i]!))) / spread(plain)).toBeGreaterThan(0.05);
    // atan(2 pi 60 (10 kilohm x 10 nF)) is 2.16 degrees; lead, load and tube add a little.
    const lag = valve.bench.facts(valve.after(set('ySmoothing', true))).verticalLagDegrees;
    expect(lag).toBeGreaterThan(2.16);
    expect(lag).toBeLessThan(2.3);
  });
});

describe('the markers', () => {
  const plug: BenchEvent = { type: 'crystalPlugged', hz: 44e6 };

  test('pips too high: a pip of 3 divisions lifts the line by up to half of that', () => {
    const off = valve.volts(gain(0.2)).trace;
    const on = valve.volts(plug, gain(0.2), set('pipHeightDiv', 3)).trace;
    const lifted = on.map((p, i) => Math.abs(p.y - off[i]!.y) / 0.2);
    const most = Math.max(...lifted);
    expect(most).toBeGreaterThan(1);
    expect(most).toBeLessThan(1.55);
    const x = on[lifted.indexOf(most)]!.x;
    expect(Math.abs(x - xAt(valve, 44e6))).toBeLessThan(0.15);
    const facts = valve.bench.facts(valve.after(plug, gain(0.2), set('pipHeightDiv', 3)));
    expect(facts.pipHeightRatio).toBeCloseTo(3 / facts.traceHeightDiv, 6);
  });

  test('markers through the set: they lift the blanked base line, and one in a trap is gone', () => {
    const marks = [41.25e6, 44e6, 45.75e6, 47.25e6];
    const plugs = marks.map((hz): BenchEvent => ({ type: 'crystalPlugged', hz }));
    const sent = valve.volts(RAW, gain(1), ...plugs, set('pipHeightDiv', 2), set('markerRoute', 'through'));
    // Each is a fifth of the sweep's own level (common practice, no source); on the way through the set it is what the curve makes of it.
    const wanted = 0.2 * Math.hypot(...marks.map((hz) => raw(hz)));
    expect(Math.abs(mean(heights(rawHeights(sent.retrace))) / wanted - 1)).toBeLessThan(0.01);
    expect(raw(47.25e6) / raw(44e6)).toBeLessThan(0.01);
    expect(valve.bench.facts(valve.after(set('markerRoute', 'through'))).markersAdded).toBe(false);
  });

  test('dial error: the tunable pip stands at its true frequency, and the trim puts it right', () => {
    const lying = onBench('loose-can-10m7', undefined, { dialErrorHz: 30e3 });
    const middle = (...acts: BenchEvent[]): number => {
      const on = lying.volts(set('tunableOn', true), set('tunableHz', 10.7e6), gain(0.2), ...acts).trace;
      const off = lying.volts(gain(0.2)).trace;
      const weight = on.map((p, i) => (p.y - off[i]!.y) ** 2);
      const sum = weight.reduce((a, b) => a + b, 0);
      return on.reduce((all, p, i) => all + p.x * weight[i]!, 0) / sum;
    };
    const wanted = xAt(lying, 10.73e6) - xAt(lying, 10.7e6);
    expect(Math.abs(middle() - wanted)).toBeLessThan(0.03);
    expect(Math.abs(middle(set('dialTrimHz', -30e3)))).toBeLessThan(0.03);
    expect(lying.bench.facts(lying.after(set('tunableOn', true))).dialErrorHz).toBe(30e3);
  });
});

describe('sweep too fast', () => {
  const radio = onBench('am-455k');
  const fast = [set('slowSweep', false), set('blanking', false), RAW, gain(0.2)];

  const FAINT_DB = -65;

  /** |sum of c_n H(f_c + n f_s) exp(j 2 pi n f_s t)| by plain sums (Carson and Fry 1937, from memory), at a turn of the sweep. */
  const steadyState = (): ((turn: number) => number) => {
    const [sweepHz, spanHz, lines, samples] = [60, 8e3, 100, 4096];
    const index = spanHz / (2 * sweepHz);
    const phi = (turn: number): number => -index * Math.cos(2 * Math.PI * turn - Math.PI / 2);
    const drive = 9.01249e-6 * sourceVolts(FAINT_DB);
    const answer: { n: number; re: number; im: number }[] = [];
    for (let n = -lines; n <= lines; n++) {
      let [re, im] = [0, 0];
      for (let k = 0; k < samples; k++) {
        const angle = phi(k / samples) - (2 * Math.PI * n * k) / samples;
        re += Math.cos(angle) / samples;
        im += Math.sin(angle) / samples;
      }
      // So faint and so slowly swept the load is as it stands at each frequency by itself; tests/oracles/loadedFastSweep.test.ts has it otherwise.
      const hz = 455e3 + n * sweepHz;
      const [hr, hi] = worked(
        radio.deck,
        [],
        'Isig',
        drive,
        hz,
        radio.setup.receiver.stages,
        ownLoads(radio.setup),
      )('det');
      answer.push({ n, re: re * hr - im * hi, im: re * hi + im * hr });
    }
    return (turn) => {
      let [re, im] = [0, 0];
      for (const line of answer) {
        const angle = 2 * Math.PI * line.n * turn;
        re += line.re * Math.cos(angle) - line.im * Math.sin(angle);
        im += line.re * Math.sin(angle) + line.im * Math.cos(angle);
      }
      return Math.hypot(re, im);
    };
  };

  test('the curve on the tube is the periodic steady state of the set, trace and retrace', () => {
    const wanted = steadyState();
    const { trace, retrace } = radio.volts(...fast, set('spanHz', 8e3), set('levelDb', FAINT_DB), gain(0.05));
    const whole = [...trace, ...retrace];
    const tall = Math.max(...whole.map((p) => Math.abs(p.y)));
    for (let i = 16; i < whole.length; i += 32) {
      const off = Math.abs(Math.abs(whole[i]!.y) - wanted((i + 0.5) / whole.length));
      expect(off / tall).toBeLessThan(0.005);
    }
  });

  test('the peaks of trace and retrace part, and the slow sweep brings them together', () => {
    const parted = (slow: boolean): number => {
      const { trace, retrace } = radio.volts(set('slowSweep', slow), set('blanking', false), gain(0.2));
      const top = (half: readonly Spot[]): number => peakX(half.map(({ x, y }) => ({ x, y: -y })));
      return Math.abs(top(trace) - top(retrace));
    };
    // The deck of the design run in time wave by wave, its diode, load, lead and a tube of 50 kHz behind it, has them 0.1958 divisions apart.
    expect(Math.abs(parted(false) / 0.1958 - 1)).toBeLessThan(0.015);
    expect(parted(true)).toBeLessThan(parted(false) / 4);
    expect(radio.bench.facts(radio.after(...fast)).sweepLag).toBeGreaterThan(0.05);
    expect(radio.bench.facts(radio.after()).sweepLag).toBeLessThanOrEqual(0.05);
  });
});
