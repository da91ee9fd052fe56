/**
 * Single tuned circuits and staggered strips of them. Sources: universal curve, Terman 1943 (from memory, derived again); geometric
 * symmetry and staggering, Sedra and Smith, Appendix on stagger-tuned amplifiers; exact pair and gain, Valley and Wallman, Vacuum
 * Tube Amplifiers, 1948, ch. 4 (from memory, derived again); shrinkage, examination key GATE EC 1993, question 6.10.
 */

import { describe, expect, test } from 'vitest';
import { editDeck } from '../../src/physics/editDeck.ts';
import { createSolver } from '../../src/physics/solver.ts';
import { decibels, deckOf, grid, networkOf, solved } from '../physics/decks.ts';
import { crossingBetween, peakBetween, tank, voltsAt } from './measure.ts';

interface Stage {
  readonly hz: number;
  readonly bandwidth: number;
}

/** A strip of single tuned stages, 15 pF each, joined by 6.2 mS transconductances, driven by such a stage from 1 V. */
function strip(stages: readonly Stage[]) {
  const farads = 15e-12;
  const lines = ['strip', 'I1 0 n0 AC 6.2m'];
  for (const [i, { hz, bandwidth }] of stages.entries()) {
    lines.push(tank(`s${i}`, `n${i}`, hz, hz / bandwidth, 1 / ((2 * Math.PI * hz) ** 2 * farads)));
    if (i > 0) lines.push(`G${i} n${i} 0 n${i - 1} 0 6.2m`);
  }
  return { solver: solved([...lines, '.end'].join('\n'), Float64Array.of(1e6)), last: `n${stages.length - 1}` };
}

function edges(stages: readonly Stage[], referenceHz: number, fromHz: number, toHz: number): readonly [number, number] {
  const { solver, last } = strip(stages);
  const level = voltsAt(solver, last, referenceHz) / Math.SQRT2;
  return [
    crossingBetween(solver, last, level, fromHz, referenceHz),
    crossingBetween(solver, last, level, referenceHz, toHz),
  ];
}

describe('one circuit, 44 MHz, Q 20: symmetrical in log f', () => {
  const { solver, last } = strip([{ hz: 44e6, bandwidth: 2.2e6 }]);
  const top = voltsAt(solver, last, 44e6);
  test.each([
    [41.25e6, -8.85],
    [47.25e6, -9.609],
  ])('%d Hz: %d dB (within 0.005; the narrow-band form gives -8.603 and -9.881)', (hz, expected) => {
    expect(Math.abs(decibels(voltsAt(solver, last, hz) / top) - expected)).toBeLessThan(0.005);
  });
});

test('3 dB edges of 45.75 MHz, Q 15.25: 44.27458 and 47.27458 MHz, geometric mean 45.75000 (within 1e-5 MHz)', () => {
  const [low, high] = edges([{ hz: 45.75e6, bandwidth: 3e6 }], 45.75e6, 42e6, 50e6);
  expect(Math.abs(low - 44.27458e6)).toBeLessThan(10);
  expect(Math.abs(high - 47.27458e6)).toBeLessThan(10);
  expect(Math.abs(Math.sqrt(low * high) - 45.75e6)).toBeLessThan(10);
});

test('four equal single circuits keep 0.43498 of the bandwidth of one (within 0.0005)', () => {
  const stage = { hz: 44e6, bandwidth: 4e6 };
  const [low1, high1] = edges([stage], 44e6, 30e6, 60e6);
  const [low4, high4] = edges([stage, stage, stage, stage], 44e6, 30e6, 60e6);
  expect(Math.abs((high4 - low4) / (high1 - low1) - 0.43498)).toBeLessThan(0.0005);
});

describe('flat triple of exact circuits, 43.5 MHz, 4 MHz: 41.7679 (2), 43.5 (4), 45.2321 (2)', () => {
  const triple = [
    { hz: 41.7679e6, bandwidth: 2e6 },
    { hz: 43.5e6, bandwidth: 4e6 },
    { hz: 45.2321e6, bandwidth: 2e6 },
  ];

  test('3 dB edges, from the level at 43.5: 41.5715 and 45.5667 MHz (within 0.003)', () => {
    const [low, high] = edges(triple, 43.5e6, 40e6, 48e6);
    expect(Math.abs(low - 41.5715e6)).toBeLessThan(0.003e6);
    expect(Math.abs(high - 45.5667e6)).toBeLessThan(0.003e6);
  });

  test('highest point +0.172 dB over the centre (within 0.01)', () => {
    const { solver, last } = strip(triple);
    const over = decibels(peakBetween(solver, last, 41e6, 46e6).volts / voltsAt(solver, last, 43.5e6));
    expect(Math.abs(over - 0.172)).toBeLessThan(0.01);
  });

  test('gain of three such stages of 6.2 mS, 15 pF: 72.96 dB staggered against 55.41 dB in step (within 0.1)', () => {
    const { solver, last } = strip(triple);
    expect(Math.abs(decibels(voltsAt(solver, last, 43.5e6)) - 72.96)).toBeLessThan(0.1);
    const stage = { hz: 43.5e6, bandwidth: 7.846e6 };
    const inStep = strip([stage, stage, stage]);
    expect(Math.abs(decibels(voltsAt(inStep.solver, inStep.last, 43.5e6)) - 55.41)).toBeLessThan(0.1);
  });
});

describe('exact staggered pair, relative width 0.2: alpha 1.0733966, d 0.1410674', () => {
  const f0 = 10e6;
  const [alpha, d] = [1.0733966, 0.1410674];
  const pair = [f0 * alpha, f0 / alpha].map((hz) => ({ hz, bandwidth: hz * d }));
  const [low, high] = edges(pair, f0, 5e6, 20e6);

  test('3 dB width 0.20000 f0 and edges whose product is f0 squared (within 1e-4)', () => {
    expect(Math.abs((high - low) / f0 - 0.2)).toBeLessThan(1e-4);
    expect(Math.abs((low * high) / f0 ** 2 - 1)).toBeLessThan(1e-4);
  });

  test('nothing in the band is more than 0.001 dB over the centre', () => {
    const { solver, last } = strip(pair);
    const centre = voltsAt(solver, last, f0);
    expect(decibels(peakBetween(solver, last, low, high).volts / centre)).toBeLessThan(0.001);
  });
});

test.each([
  ['44 MHz, 20 pF, +0.5 pF', 43.4601e6, 44e6, 20e-12, 0.5e-12, 2000],
  ['10.7 MHz, 50 pF, +2 pF', 10.4922e6, 10.7e6, 50e-12, 2e-12, 1000],
  ['455 kHz, 150 pF, +10 pF', 440.55e3, 455e3, 150e-12, 10e-12, 20],
])(
  'probe loading, %s: resonance moves to %d Hz (within 0.002 MHz, 0.001 MHz, 0.02 kHz)',
  (_, expected, hz, farads, probe, tolerance) => {
    // Source: resonance formula, any handbook (Terman 1943, from memory).
    const deck = deckOf(`tank\nI1 0 a AC 1m\n${tank('a', 'a', hz, 200, 1 / ((2 * Math.PI * hz) ** 2 * farads))}\n.end`);
    const loaded = editDeck(deck, [
      { kind: 'add', element: { kind: 'C', name: 'Cprobe', nodes: ['a', '0'], value: probe } },
    ]);
    const solver = createSolver(networkOf(loaded), grid(hz * 0.9, hz, 3));
    expect(Math.abs(peakBetween(solver, 'a', hz * 0.9, hz).hz - expected)).toBeLessThan(tolerance);
  },
);
