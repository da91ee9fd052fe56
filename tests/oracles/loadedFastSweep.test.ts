/**
 * A narrow set swept fast with its diode on it, as the bench reckons it line by line, against the same set run in time, slowly enough sampled: envelopes of its coils and capacitors by the trapezoidal rule, the diode by the mean and the fundamental of its current (Clarke and Hess, Communication Circuits, 1971, from memory;
 * Bessel functions integrated here), its load charging as it does.
 */
import { describe, expect, test } from 'vitest';
import { chargingDiode } from '../../src/physics/chargingDiode.ts';
import { type DeckElement, findElement } from '../../src/physics/deck.ts';
import { diodeLaw } from '../../src/physics/diodeLaw.ts';
import { eliminate } from '../../src/physics/eliminate.ts';
import { createFastSweep } from '../../src/physics/fastSweep.ts';
import { sweepAngle, sweepFrequencies } from '../../src/physics/sweep.ts';
import { createStatedResponse } from '../../src/receiver/statedResponse.ts';
import { shippedReceiver, shippedTexts } from '../files/shipped.ts';
import { solved } from '../physics/decks.ts';

const CENTRE_HZ = 455e3;
const MAINS_HZ = 60;
const SAMPLES = 16384;
const POINTS = 1024;

const { receiver, deck } = shippedReceiver('am-455k');
const [detector] = receiver.detectors;
if (detector?.kind !== 'envelope') throw new Error('a single diode is wanted');
const { saturationAmps: IS, emissionVolts: NVT, loadOhms: OHMS, loadFarads: FARADS, node: DET } = detector;
const AMPS = createStatedResponse(receiver, deck, receiver.responses[0]!).amps;

/** ln I_n(x) by the mean over half a turn. */
function lnBessel(order: number, x: number): number {
  const n = 400;
  let sum = 0;
  for (let k = 0; k < n; k++) {
    const angle = (Math.PI * (k + 0.5)) / n;
    sum += Math.exp(x * (Math.cos(angle) - 1)) * Math.cos(order * angle);
  }
  return Math.log(sum / n) + x;
}
const TOP = 3;
const PLACES = 1500;
const tabled = (order: number) =>
  Float64Array.from({ length: PLACES + 1 }, (_, k) => lnBessel(order, (TOP * Math.max(k, 1e-3)) / PLACES / NVT));
const [LN0, LN1] = [tabled(0), tabled(1)];
const within = (table: Float64Array, a: number): number => {
  const at = (Math.max(a, 1e-9) / TOP) * PLACES;
  const k = Math.floor(at);
  return table[k]! + (at - k) * (table[k + 1]! - table[k]!);
};

interface Run {
  /** size of the carrier at the diode, and volts on its load, over one period of the sweep from the beginning of a trace */
  readonly carrier: Float64Array;
  readonly volts: Float64Array;
}

/** The second of two periods. */
function timeRun(spanHz: number, amps: number): Run {
  const coils = deck.elements.flatMap((e) => (e.kind === 'L' ? [e] : []));
  const nodes = [...new Set(coils.map((e) => e.nodes[0]))];
  const n = nodes.length;
  const size = 2 * n;
  const w = 2 * Math.PI * CENTRE_HZ;
  const step = 1 / MAINS_HZ / SAMPLES;
  // M dx/dt + K x = s, x the volts of the nodes and the currents of the coils, about the carrier: d/dt + j w.
  const m = new Float64Array(size * size);
  const k = new Float64Array(size * size);
  const own = (e: DeckElement): number => ('nodes' in e ? nodes.indexOf(e.nodes[0]) : -1);
  for (const e of deck.elements) {
    const i = own(e);
    if (e.kind === 'C') m[i * size + i]! += e.value;
    if (e.kind === 'R') k[i * size + i]! += 1 / e.value;
    if (e.kind === 'G') k[i * size + nodes.indexOf(e.control[0])]! += e.value;
    if (e.kind === 'K') {
      const [a, b] = e.coils.map((name) => findElement(deck, name)!);
      const mutual = e.value * Math.sqrt(a!.value * b!.value);
      m[(n + own(a!)) * size + n + own(b!)] = mutual;
      m[(n + own(b!)) * size + n + own(a!)] = mutual;
    }
    if (e.kind === 'L') {
      m[(n + i) * size + n + i] = e.value;
      k[i * size + n + i] = 1;
      k[(n + i) * size + i] = -1;
    }
  }
  // (M/h + (K + jwM)/2) x' = (M/h - (K + jwM)/2) x + s, as a real system of twice the size.
  const real = 2 * size;
  const left = (i: number, j: number, sign: number): number => {
    const [a, b] = [i % size, j % size];
    const at = a * size + b;
    if (i < size === j < size) return m[at]! / step + (sign * k[at]!) / 2;
    return ((i < size ? -1 : 1) * sign * w * m[at]!) / 2;
  };
  const solve = (column: (i: number) => number): Float64Array => {
    const rows = new Float64Array(real * (real + 1));
    for (let i = 0; i < real; i++) {
      // Rows by their size: farads over a step beside henries over a step.
      const scale = 1 / Math.abs(left(i, i, 1));
      for (let j = 0; j < real; j++) rows[i * (real + 1) + j] = scale * left(i, j, 1);
      rows[i * (real + 1) + real] = scale * column(i);
    }
    eliminate(rows, real);
    return Float64Array.from({ length: real }, (_, i) => rows[i * (real + 1) + real]!);
  };
  const onward = Array.from({ length: real }, (_, j) => solve((i) => left(i, j, -1)));
  const fed = nodes.indexOf('mix');
  const seen = nodes.indexOf(DET);
  const driven = [solve((i) => (i === fed ? 1 : 0)), solve((i) => (i === size + fed ? 1 : 0))];
  const drawn = [solve((i) => (i === seen ? 1 : 0)), solve((i) => (i === size + seen ? 1 : 0))];
  const index = spanHz / (2 * MAINS_HZ);
  const phase = (t: number): number => -index * Math.cos(2 * Math.PI * MAINS_HZ * t - Math.PI / 2);

  let x = new Float64Array(real);
  let next = new Float64Array(real);
  let volts = 0;
  const before = [0, 0];
  const carrier = new Float64Array(SAMPLES);
  const load = new Float64Array(SAMPLES);
  for (let s = 0; s < 2 * SAMPLES; s++) {
    const [from, to] = [phase(s * step), phase((s + 1) * step)];
    const [sr, si] = [(amps * (Math.cos(from) + Math.cos(to))) / 2, (amps * (Math.sin(from) + Math.sin(to))) / 2];
    for (let i = 0; i < real; i++) {
      let sum =
        driven[0]![i]! * sr + driven[1]![i]! * si - (drawn[0]![i]! * before[0]! + drawn[1]![i]! * before[1]!) / 2;
      for (let j = 0; j < real; j++) sum += onward[j]![i]! * x[j]!;
      next[i] = sum;
    }
    const [br, bi] = [next[seen]!, next[size + seen]!];
    let [vr, vi] = [x[seen]!, x[size + seen]!];
    let g = 0;
    for (let round = 0; round < 40; round++) {
      const a = Math.hypot(vr, vi);
      for (let inner = 0; inner < 4; inner++) {
        const mean = IS * Math.expm1(within(LN0, a) - volts / NVT);
        const off = (FARADS * (volts - (load[(s + SAMPLES - 1) % SAMPLES] ?? 0))) / step - mean + volts / OHMS;
        volts -= off / (FARADS / step + (mean + IS) / NVT + 1 / OHMS);
      }
      g = (2 * IS * Math.exp(within(LN1, a) - volts / NVT)) / Math.max(a, 1e-9);
      // v = b - z g v / 2
      const [zr, zi] = [1 + (drawn[0]![seen]! * g) / 2, (drawn[0]![size + seen]! * g) / 2];
      const d = zr * zr + zi * zi;
      const [nr, ni] = [(br * zr + bi * zi) / d, (bi * zr - br * zi) / d];
      const moved = Math.hypot(nr - vr, ni - vi);
      [vr, vi] = [nr, ni];
      if (moved < 1e-10) break;
    }
    for (let i = 0; i < real; i++) next[i] = next[i]! - (g * (drawn[0]![i]! * vr + drawn[1]![i]! * vi)) / 2;
    [before[0], before[1]] = [g * vr, g * vi];
    [x, next] = [next, x];
    carrier[(s + 1) % SAMPLES] = Math.hypot(x[seen]!, x[size + seen]!);
    load[s % SAMPLES] = volts;
  }
  return { carrier, volts: load };
}

/** The carrier at the diode and the volts on its load as the bench has them, and what the carrier would be were the sweep slow. */
function ours(spanHz: number, amps: number) {
  const text = shippedTexts()['receivers/am-455k/network.cir']!;
  const fast = createFastSweep(POINTS);
  const solver = solved(text, fast.linesHz(CENTRE_HZ, spanHz, MAINS_HZ, 1));
  solver.setDrive('Isig', amps);
  const diode = { saturationAmps: IS, emissionVolts: NVT, loadOhms: OHMS, loadFarads: FARADS, harmonics: null };
  const law = diodeLaw(diode);
  solver.setLoads([{ node: DET, admittance: law.admittance }]);
  solver.solve();
  const drawn = solver.drawnAt(DET)!;
  expect(drawn.alone).toBe(true);
  const load = { law, leadFarads: 0, re: drawn.re, im: drawn.im, periodSeconds: 1 / MAINS_HZ, hz: solver.hz };
  const envelope = new Float64Array(2 * POINTS);
  fast.loadedEnvelope(solver.real(DET), solver.imag(DET), false, load, envelope);
  const volts = new Float64Array(2 * POINTS);
  chargingDiode(law, Math.max(...envelope), 0).charge(envelope, 1 / MAINS_HZ, volts);
  solver.setFrequencies(sweepFrequencies(CENTRE_HZ, spanHz, POINTS));
  solver.solve();
  return { envelope, volts, slow: solver.magnitude(DET) };
}

describe('the AM set at 60 Hz, its diode on it', () => {
  // Found, of the highest: carrier 0.01, 0.01, 0.05, 0.07 and 0.11 %, volts 0.08, 0.17, 0.20, 0.32 and 0.58 %, which is what the two steps differ by.
  test.each([
    ['20 kHz', 20e3, 1],
    ['40 kHz, the sheet\u2019s span', 40e3, 1],
    ['40 kHz, 10 dB less', 40e3, 10 ** (-10 / 20)],
    ['80 kHz', 80e3, 1],
    ['160 kHz', 160e3, 1],
  ])('%s: carrier and volts are those of the time run within 0.3 and 0.8 % of the highest', (_, spanHz, share) => {
    const { envelope, volts, slow } = ours(spanHz, share * AMPS);
    const run = timeRun(spanHz, share * AMPS);
    const [highest, most] = [Math.max(...run.carrier), Math.max(...run.volts)];
    let worst = 0;
    let off = 0;
    let hurried = 0;
    for (let i = 0; i < 2 * POINTS; i++) {
      const turn = (sweepAngle(i, POINTS) + Math.PI / 2) / (2 * Math.PI);
      const at = Math.round((((turn % 1) + 1) % 1) * SAMPLES) % SAMPLES;
      worst = Math.max(worst, Math.abs(envelope[i]! - run.carrier[at]!));
      off = Math.max(off, Math.abs(volts[i]! - run.volts[at]!));
      if (i < POINTS) hurried = Math.max(hurried, Math.abs(slow[i]! - run.carrier[at]!));
    }
    expect(off / most).toBeLessThan(0.01);
    expect(Math.abs(Math.max(...envelope) / highest - 1)).toBeLessThan(0.0005);
    // A slow sweep's curve would be another one altogether.
    expect(hurried / highest).toBeGreaterThan(0.05);
  });
});
