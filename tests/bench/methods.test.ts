/**
 * The methods of the bench on shipped receivers, each against arithmetic of another road: S-curve and rejection of amplitude, limiter, tone null, video sweep, the
 * way through the mixer, comb and zero beat, two bias clamps, and every point that takes the RF lead.
 */
import { describe, expect, test } from 'vitest';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import { admittanceAt } from '../../src/physics/admittance.ts';
import { type Deck, nodeKey } from '../../src/physics/deck.ts';
import { diodeLaw } from '../../src/physics/diodeLaw.ts';
import { createDiodeModulation } from '../../src/physics/diodeModulation.ts';
import { type DeckEdit, editDeck } from '../../src/physics/editDeck.ts';
import { diodeAt } from '../../src/receiver/diodes.ts';
import type { FmDetector } from '../../src/receiver/receiver.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { fullSolve } from '../laws/fullSolve.ts';
import { heightAt, heights, mean, type Spot, spread } from './look.ts';
import {
  type Complex,
  capacitor,
  clip,
  driveAt,
  driveWithout,
  gain,
  hzAt,
  level,
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

function phasor(deck: Deck, edits: readonly DeckEdit[], source: string, node: string, hz: number): Complex {
  const silent = deck.elements
    .filter((e) => e.kind === 'I' && e.name.toLowerCase() !== source.toLowerCase())
    .map((e) => setTo(e.name, 0));
  return fullSolve(editDeck(deck, [...silent, ...edits, setTo(source, 1)]), hz).get(nodeKey(node))!;
}

describe('FM detectors', () => {
  const tuner = onBench('fm-10m7', 's');
  const detector = tuner.setup.receiver.detectors.find((d): d is FmDetector => d.id === 'ratio')!;
  const places = [10.45, 10.55, 10.6, 10.66, 10.74, 10.8, 10.85, 10.95].map((f) => f * 1e6);

  /** Rectified volts of the two halves, both diodes loading their coils and every stage saturating. */
  const halves = (hz: number, volts: number): Complex => {
    const { stages } = tuner.setup.receiver;
    const { loadOhms, loadFarads } = detector;
    const pair = ['a', 'b'].map((node) => ({
      node,
      law: diodeLaw(diodeAt(tuner.deck, detector, node, loadOhms, loadFarads)),
    }));
    const others = ownLoads(tuner.setup).filter(({ node }) => node !== 'a' && node !== 'b');
    const at = worked(tuner.deck, [], 'Isig', 1.89287e-5 * volts, hz, stages, [...pair, ...others]);
    return [pair[0]!.law.detect(at.crest('a'), hz), pair[1]!.law.detect(at.crest('b'), hz)];
  };

  test('the S-curve on the tube is E1 - E2 of each half worked out by itself', () => {
    const { trace } = tuner.volts(gain(0.5));
    const tall = spread(heights(trace));
    const { levelDb } = tuner.response.setUp;
    for (const hz of places) {
      const [e1, e2] = halves(hz, sourceVolts(levelDb));
      // The halves' load is 8 microseconds late, 1.5 kHz of the sweep's 500.
      expect(Math.abs(heightAt(trace, xAt(tuner, hz)) - (e1 - e2)) / tall).toBeLessThan(0.015);
    }
  });

  test('the limiter holds the S-curve while the level goes up by half again; far below it, it does not', () => {
    const tall = (levelDb: number, yVoltsPerDiv: number): number =>
      spread(heights(tuner.volts(set('levelDb', levelDb), gain(yVoltsPerDiv)).trace));
    expect(tall(-26, 0.5) / tall(-32, 0.5)).toBeLessThan(1.15);
    expect(tall(-64, 0.05) / tall(-70, 0.05)).toBeGreaterThan(1.6);
  });

  test('a ratio detector with its sum held is deaf to amplitude, a plain difference is not (Seeley and Avins 1947, from memory)', () => {
    // Below the limiter, so that the whole 30 per cent of the tone comes to the diodes.
    const spot = 10.75e6;
    const acts = [set('sourceMode', 'tone'), set('centreHz', spot), set('levelDb', -56)];
    const tone = (point: string): number => tuner.bench.display(tuner.after(...acts, clip('y', point))).toneVolts;
    const at = (swing: number): Complex => halves(spot, sourceVolts(-56) * (1 + 0.3 * swing));
    const [crest, trough] = [at(1), at(-1)];
    const open = Math.abs(crest[0] - crest[1] - (trough[0] - trough[1])) / 2 / Math.SQRT2;
    expect(Math.abs(tone('TP4') / open - 1)).toBeLessThan(0.01);
    const steps = Array.from({ length: 32 }, (_, k) => at(Math.sin((2 * Math.PI * (k + 0.5)) / 32)));
    const held = mean(steps.map(([a, b]) => a + b));
    const out = ([a, b]: Complex): number => (held / 2) * ((a - b) / (a + b));
    const quiet = Math.abs(out(crest) - out(trough)) / 2 / Math.SQRT2;
    expect(Math.abs(tone('TP8') - quiet)).toBeLessThan(0.03 * quiet + 0.01 * open);
    expect(tone('TP8')).toBeLessThan(tone('TP4') / 6);
  });
});

describe('tone', () => {
  const strip = onBench('video-valve-45m');
  const at = (hz: number, ...more: BenchEvent[]) =>
    strip.bench.display(
      strip.after(set('sourceMode', 'tone'), set('centreHz', hz), set('levelDb', -30), gain(0.01), ...more),
    );

  test('it goes where a trap takes the carrier: on the tube, in the figure and on the needle', () => {
    const beside = at(46.6e6);
    const inside = at(47.25e6);
    expect(inside.toneVolts).toBeLessThan(beside.toneVolts / 20);
    const wave = (display: typeof beside): number => {
      const points = Array.from({ length: display.beam.count / 2 }, (_, i) => display.beam.data[3 * i + 1]!);
      return spread(points);
    };
    const shown = strip.bench.display(
      strip.after(set('sourceMode', 'tone'), set('centreHz', 46.6e6), set('levelDb', -30), gain(0.1)),
    );
    // A sine of V rms is 2 sqrt(2) V from edge to edge; the noise adds its own.
    expect(Math.abs((wave(shown) * 0.1) / (2 * Math.SQRT2 * beside.toneVolts) - 1)).toBeLessThan(0.1);
    const meter = (hz: number): number =>
      at(hz, clip('meter', 'TP1'), set('meterMode', 'tone'), set('meterRangeVolts', 10)).meterVolts;
    expect(Math.abs(meter(46.6e6) / beside.toneVolts - 1)).toBeLessThan(0.05);
    expect(meter(47.25e6)).toBeLessThan(meter(46.6e6) / 20);
  });

  test('the null lies where the curve has its notch', () => {
    const [from, step] = [47.1e6, 10e3];
    const places = Array.from({ length: 31 }, (_, i) => from + i * step);
    const least = (of: (hz: number) => number): number =>
      places.reduce((best, hz) => (of(hz) < of(best) ? hz : best), places[0]!);
    const tone = new Map(places.map((hz) => [hz, at(hz).toneVolts]));
    const amps = 1.4e-5 * sourceVolts(-30);
    const { stages } = strip.setup.receiver;
    const carrier = (hz: number): number =>
      Math.hypot(...worked(strip.deck, [], 'Isig', amps, hz, stages, ownLoads(strip.setup))('det'));
    const curve = new Map(places.map((hz) => [hz, carrier(hz)]));
    expect(least((hz) => tone.get(hz)!)).toBe(least((hz) => curve.get(hz)!));
  });
});

test('video sweep: carrier and two sidebands through the strip, their sum through the amplifier (Nyquist 1928, from memory)', () => {
  const set19 = onBench('colour-overall', 'overall');
  const { trace } = set19.volts(RAW, gain(0.02));
  const carrierHz = 45.75e6;
  const { stages } = set19.setup.receiver;
  const loads = ownLoads(set19.setup);
  const feeding = loads.find(({ node }) => node === 'det')!;
  const volts = sourceVolts(set19.response.setUp.levelDb) * 2.19479e-5;
  // The carrier stands on the diode: to the sidebands it is a resistor and a capacitor, but for what a swing of the amplitude draws beyond that.
  const [cr, ci] = worked(set19.deck, [], 'Isig', volts, carrierHz, stages, loads)('det');
  const size = Math.hypot(cr, ci);
  const y = new Float64Array(4);
  admittanceAt(feeding.law.admittance, size, y);
  const standing = [
    resistor('Rstanding', 'det', 1 / y[0]!),
    capacitor('Cstanding', 'det', y[1]! / (2 * Math.PI * carrierHz)),
  ];
  const swing = createDiodeModulation(feeding.law, size);
  const drawn = new Float64Array(2);
  for (const videoHz of [2.5, 3.08, 3.3, 3.58, 3.9, 4.08, 4.4].map((f) => f * 1e6)) {
    const [ur, ui] = phasor(set19.deck, standing, 'Isig', 'det', carrierHz + videoHz);
    const [lr, li] = phasor(set19.deck, standing, 'Isig', 'det', carrierHz - videoHz);
    const drawnMore = (side: 1 | -1): Complex => {
      const own = [...standing, ...driveWithout('det')];
      const [zr, zi] = phasor(set19.deck, own, 'Itest', 'det', carrierHz + side * videoHz);
      swing.excess(side * videoHz, drawn);
      return [zr * drawn[0]! - zi * drawn[1]!, zr * drawn[1]! + zi * drawn[0]!];
    };
    const [above, below] = [drawnMore(1), drawnMore(-1)];
    const less = Math.hypot(1 + (above[0] + below[0]) / 2, (above[1] - below[1]) / 2);
    // Turned until the carrier is real: the envelope is its real part, at each moment of the video wave.
    const turned = (re: number, im: number): Complex => [(re * cr + im * ci) / size, (im * cr - re * ci) / size];
    const [a, b] = [turned(ur, ui), turned(lr, li)];
    const envelope = Array.from({ length: 360 }, (_, k) => {
      const w = (2 * Math.PI * k) / 360;
      return 0.15 * (a[0] * Math.cos(w) - a[1] * Math.sin(w) + b[0] * Math.cos(w) + b[1] * Math.sin(w));
    });
    const modulation = (Math.max(...envelope) * volts) / less;
    const output = worked(set19.deck, [], 'Idet', modulation * 1.85e-4, videoHz, stages, loads);
    const wanted = Math.hypot(...output('vout'));
    // A 360th of a turn, a hundredth of compression, and the tube's noise.
    expect(Math.abs(heightAt(rawHeights(trace), xAt(set19, videoHz)) - wanted)).toBeLessThan(0.015 * wanted + 0.5e-3);
  }
});

describe('from the antenna', () => {
  const gannet = onBench('front-to-detector', 'overall');
  const tank = (hz: number): number => level(gannet.deck, [], 'Iosc', 'osc', hz);
  let oscillatorHz = 221e6;
  for (let step = 256e3; step > 100; step /= 2) {
    for (const side of [-1, 1]) if (tank(oscillatorHz + side * step) > tank(oscillatorHz)) oscillatorHz += side * step;
  }

  test('the mixer turns the band over: what is high at the antenna is low at the diode', () => {
    const { trace } = gannet.volts(RAW, gain(0.2));
    const drive = 3.95285e-3 * sourceVolts(gannet.response.setUp.levelDb);
    const { stages } = gannet.setup.receiver;
    const loads = ownLoads(gannet.setup);
    for (const hz of [174.5, 175.25, 176.5, 177.5, 178.5, 179.2].map((f) => f * 1e6)) {
      const mixer = Math.hypot(...worked(gannet.deck, [], 'Iant', drive, hz, stages, loads)('mxg'));
      const behind = worked(gannet.deck, [], 'Isig', mixer * 3e-5, oscillatorHz - hz, stages, loads);
      const wanted = Math.hypot(...behind('det'));
      expect(Math.abs(heightAt(rawHeights(trace), xAt(gannet, hz)) / wanted - 1)).toBeLessThan(0.03);
    }
    // The trap for 47.25 takes out 173.75, below the vision carrier at 175.25, which stands at 45.75.
    const low = heightAt(rawHeights(trace), xAt(gannet, 173.75e6));
    expect(low / heightAt(rawHeights(trace), xAt(gannet, 177.5e6))).toBeLessThan(0.02);
    expect(Math.abs(oscillatorHz - 221e6)).toBeLessThan(100e3);
  });

  test('two bias clamps hold two lines, each with its own law', () => {
    const meter = (at: string): number => gannet.bench.display(gannet.after(clip('meter', at))).meterVolts;
    expect([meter('AGC'), meter('RFB')]).toEqual([2, -3]);
    const rf = onBench('front-to-detector', 'rf');
    const middle = (...acts: BenchEvent[]): number =>
      heightAt(rawHeights(rf.volts(RAW, gain(0.05), ...acts).trace), xAt(rf, 177.5e6));
    const gm = Math.exp(-3 / 5);
    const farads = 10e-12 + 2e-12 * (Math.sqrt(gm) - 1);
    const edits = [scale('Gt1', gm), setTo('Ct1', farads), scale('Rgt1', 1 / gm)];
    const { stages } = rf.setup.receiver;
    const amps = 3.95285e-3 * sourceVolts(rf.response.setUp.levelDb);
    const grid = (changes: readonly DeckEdit[]): number =>
      Math.hypot(...worked(rf.deck, changes, 'Iant', amps, 177.5e6, stages, ownLoads(rf.setup))('mxg'));
    const wanted = grid(edits) / grid([]);
    expect(Math.abs(middle(set('biasBVolts', 6)) / middle() / wanted - 1)).toBeLessThan(0.02);
    // The other line has nothing to do with the tuner.
    expect(middle(set('biasAVolts', 4)) / middle()).toBeCloseTo(1, 2);
  });
});

describe('frequencies', () => {
  const lying = onBench('video-valve-45m', undefined, { dialErrorHz: 40e3, centreErrorHz: 250e3 });
  const tags = (...acts: BenchEvent[]) => lying.bench.display(lying.after(...acts)).tags;

  test('the comb tells where the sweep really is: its centre dial is 250 kHz off', () => {
    const teeth = tags(set('comb', true)).filter((tag) => tag.kind === 'comb');
    expect(teeth.map((tag) => tag.hz)).toEqual(Array.from({ length: 12 }, (_, i) => (39 + i) * 1e6));
    for (const tag of teeth) expect(tag.xDiv).toBeCloseTo((5 * (tag.hz - 44.25e6)) / 6e6, 6);
    // Set right by the tooth of 44 MHz in the middle.
    const right = tags(set('comb', true), set('centreHz', 43.75e6)).find((tag) => tag.hz === 44e6)!;
    expect(right.xDiv).toBeCloseTo(0, 6);
  });

  test('zero beat against a crystal takes the error out of the dial', () => {
    const plug: BenchEvent = { type: 'crystalPlugged', hz: 45.75e6 };
    const apart = (trimHz: number): number => {
      const [crystal, dial] = tags(plug, set('tunableOn', true), set('tunableHz', 45.75e6), set('dialTrimHz', trimHz));
      return dial!.xDiv! - crystal!.xDiv!;
    };
    expect(apart(0)).toBeCloseTo((5 * 40e3) / 6e6, 6);
    expect(apart(-40e3)).toBeCloseTo(0, 9);
    const note = (centreHz: number): number | null =>
      lying.bench.display(lying.after(plug, set('sourceMode', 'spot'), set('centreHz', centreHz))).beatHz;
    // The dial of the source lies too (its true frequency is 250 kHz more): silence there is what zero beat means.
    expect(note(45.5e6)).toBeCloseTo(0, 3);
    expect(note(45.502e6)).toBeCloseTo(2e3, 3);
    expect(note(45.75e6)).toBeNull();
  });

  test('at 50 Hz the same smoothing is five sixths as late', () => {
    const late = (mainsHz: 50 | 60): number => {
      const bench = onBench('video-valve-45m', undefined, { mainsHz });
      return bench.bench.facts(bench.after(set('ySmoothing', true))).verticalLagDegrees;
    };
    expect(late(50) / late(60)).toBeCloseTo(5 / 6, 3);
  });
});

test('the raw view is a band from edge to edge, and nothing in the blanked retrace', () => {
  const strip = onBench('video-valve-45m');
  const { trace, retrace } = strip.volts(RAW, gain(0.5));
  const middle = (half: readonly Spot[]): readonly Spot[] => half.slice(400, 600);
  const edges = middle(trace).map((p) => Math.sign(p.y));
  expect(edges.every((sign, i) => i === 0 || sign === -edges[i - 1]!)).toBe(true);
  expect(Math.max(...heights(rawHeights(retrace)))).toBeLessThan(1e-3);
});

describe('stage by stage', () => {
  const library = shippedLibrary();
  const points = [...library.receivers.values()].flatMap(({ receiver, deck }) => {
    const observed = receiver.detectors.filter((d) => d.kind === 'envelope');
    return receiver.testPoints.flatMap((point) =>
      point.inject === null || point.node === null || receiver.converter !== null || receiver.videoFeed !== null
        ? []
        : observed.slice(0, 1).map((d) => [receiver.id, point.id, { receiver, deck, point, detector: d }] as const),
    );
  });

  test('there are points to try', () => expect(points.length).toBeGreaterThan(20));

  test.each(points)(
    '%s, RF lead at %s: the tube shows what lies behind it',
    (id, name, { point, detector, receiver, deck }) => {
      const response = receiver.responses.find((r) => {
        const observedAt = receiver.testPoints.find((p) => p.id === r.setUp.observeAt);
        return observedAt?.detector === detector.id;
      })!;
      const bench = onBench(id, response.id);
      const inject = point.inject!;
      if (detector.kind !== 'envelope') throw new Error('an envelope detector was asked for');
      const perVolt = inject.kind === 'deckSource' ? inject.siemens : 1 / 75;
      const source = inject.kind === 'deckSource' ? inject.element : 'Itest';
      const edits = inject.kind === 'deckSource' ? [] : driveAt(point.node!);
      const probe = (receiver.probeInDeck?.elements ?? []).map(
        (element): DeckEdit => ({ kind: 'remove', name: element }),
      );
      const xs = [-3, -1.5, 0, 1.5, 3];
      const bare = xs.map((x) => perVolt * level(deck, [...probe, ...edits], source, detector.node, hzAt(bench, x)));
      // As strong as leaves every stage room: 30 mV at the diode at most, would it not load its circuit.
      const levelDb = Math.max(-80, Math.floor(20 * Math.log10(0.03 / (2 * Math.max(...bare)))));
      const acts = [clip('rf', name), set('levelDb', Math.min(levelDb, 0)), RAW, gain(0.1)];
      const facts = bench.bench.facts(bench.after(...acts));
      const { trace } = bench.volts(...acts);
      for (const x of xs) {
        const amps = perVolt * sourceVolts(Math.min(levelDb, 0));
        const hz = hzAt(bench, x);
        const at = worked(deck, [...probe, ...edits], source, amps, hz, receiver.stages, ownLoads(bench.setup));
        const volts = Math.hypot(...at(detector.node));
        const off = Math.abs(heightAt(rawHeights(trace), x) - volts);
        // A hundredth, what the sweep itself is late, and the tube's noise.
        expect(off).toBeLessThan((0.01 + facts.sweepLag) * volts + 0.5e-3);
      }
      expect(facts.rfConnected).toBe(true);
    },
  );
});

test('lifting the RF lead leaves a flat line', () => {
  const strip = onBench('video-valve-45m');
  expect(spread(heights(strip.volts(lift('rf'), gain(0.01)).trace))).toBeLessThan(2e-3);
});
