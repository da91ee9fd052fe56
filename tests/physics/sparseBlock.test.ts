/**
 * Elimination along the pattern against elimination with partial pivoting, on random blocks; and what it does where its own order of pivots fails.
 * Outside check of the solver as a whole: ngspiceReceivers.test.ts. The method here: Golub and Van Loan, Matrix Computations, sec. 3.4 (from memory).
 */

import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import { solveDense } from '../../src/physics/denseComplex.ts';
import { solveSparse, sparsePlan } from '../../src/physics/sparseBlock.ts';
import { grid } from './decks.ts';

const HZ = grid(40e6, 48e6, 300);

interface Block {
  readonly n: number;
  readonly g: Float64Array;
  readonly c: Float64Array;
  readonly b: Float64Array;
}

/** Tuned circuits with loss at every node, joined here and there by small capacitors, some by an amplifier's feedback. */
function randomBlock(seed: number): Block {
  const random = seededRandom(seed);
  const n = 3 + Math.floor(random() * 6);
  const [g, c, b] = [new Float64Array(n * n), new Float64Array(n * n), new Float64Array(n * n)];
  for (let i = 0; i < n; i++) {
    const farads = 5e-12 + 30e-12 * random();
    c[i * n + i] = farads;
    b[i * n + i] = farads * (2 * Math.PI * (40e6 + 8e6 * random())) ** 2;
    g[i * n + i] = 1e-5 * 10 ** (3 * random());
  }
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      if (i === j || random() > 0.35) continue;
      const farads = 4e-12 * random();
      for (const [at, sign] of [[i * n + i, 1] as const, [j * n + j, 1] as const, [i * n + j, -1] as const])
        c[at]! += sign * farads;
      c[j * n + i]! -= farads;
      if (random() < 0.3) g[i * n + j]! += 1e-3 * random();
    }
  }
  return { n, g, c, b };
}

const holdsOf =
  ({ g, c, b }: Block) =>
  (at: number): boolean =>
    g[at] !== 0 || c[at] !== 0 || b[at] !== 0;

function sparse(block: Block, amps: Float64Array, columns: number) {
  const plan = sparsePlan(block.n, holdsOf(block));
  const [re, im] = [new Float64Array(amps.length * HZ.length), new Float64Array(amps.length * HZ.length)];
  const lost: number[] = [];
  solveSparse(plan, block, amps, columns, HZ, re, im, (f) => lost.push(f));
  return { re, im, lost };
}

/** x of every row and column at one frequency, interleaved, with partial pivoting. */
function dense({ n, g, c, b }: Block, amps: Float64Array, columns: number, f: number): Float64Array {
  const w = 2 * Math.PI * HZ[f]!;
  const a = new Float64Array(2 * n * (n + columns));
  for (let i = 0; i < n; i++) {
    const row = 2 * i * (n + columns);
    for (let j = 0; j < n; j++) {
      a[row + 2 * j] = g[i * n + j]!;
      a[row + 2 * j + 1] = w * c[i * n + j]! - b[i * n + j]! / w;
    }
    for (let p = 0; p < columns; p++) a[row + 2 * (n + p)] = amps[p * n + i]!;
  }
  solveDense(a, n, columns, new Int32Array(n).fill(n - 1));
  const x = new Float64Array(2 * n * columns);
  for (let i = 0; i < n; i++) {
    for (let p = 0; p < columns; p++) {
      x[2 * (p * n + i)] = a[2 * (i * (n + columns) + n + p)]!;
      x[2 * (p * n + i) + 1] = a[2 * (i * (n + columns) + n + p) + 1]!;
    }
  }
  return x;
}

describe('elimination along the pattern', () => {
  it.each(Array.from({ length: 40 }, (_, i) => i + 1))(
    'random block %d is as with partial pivoting within 1e-10',
    (seed) => {
      const block = randomBlock(seed);
      const { n } = block;
      const amps = new Float64Array(2 * n);
      amps[seed % n] = 1;
      amps[n + ((seed + 1) % n)] = -1;
      amps[n + ((seed + 2) % n)] = 1;
      const { re, im, lost } = sparse(block, amps, 2);
      expect(lost.length).toBeLessThan(HZ.length / 2);
      let worst = 0;
      for (let f = 0; f < HZ.length; f++) {
        if (lost.includes(f)) continue;
        const x = dense(block, amps, 2, f);
        const largest = x.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
        for (let at = 0; at < 2 * n; at++) {
          const off = Math.hypot(re[at * HZ.length + f]! - x[2 * at]!, im[at * HZ.length + f]! - x[2 * at + 1]!);
          worst = Math.max(worst, off / largest);
        }
      }
      expect(worst).toBeLessThan(1e-10);
    },
  );

  it('gives up the frequencies where a pivot is small against what stands beside it, and only those', () => {
    // Two nodes of ideal tuned circuits, the first exactly on resonance at HZ[100], joined by a resistor's cross terms only; a third hangs on the second.
    const w = 2 * Math.PI * HZ[100]!;
    const farads = 10e-12;
    const block: Block = {
      n: 3,
      g: Float64Array.of(0, -1e-3, 0, -1e-3, 1e-3, -1e-4, 0, -1e-4, 2e-4),
      c: Float64Array.of(farads, 0, 0, 0, farads, 0, 0, 0, farads),
      b: Float64Array.of(w * (w * farads), 0, 0, 0, 0, 0, 0, 0, 0),
    };
    const { lost } = sparse(block, Float64Array.of(1, 0, 0), 1);
    // |l| = g / (2 C dw) = 10 sqrt(S1 / S0), S0 = 2 w C and S1 = 1 mS + w C: 0.95 MHz on either side, at 26.8 kHz a step.
    const limit = 10 * Math.sqrt((1e-3 + w * farads) / (2 * w * farads));
    const steps = Math.floor(1e-3 / (2 * farads * limit) / (2 * Math.PI * (HZ[1]! - HZ[0]!)));
    expect(Math.min(...lost)).toBeCloseTo(100 - steps, -1);
    expect(Math.max(...lost)).toBeCloseTo(100 + steps, -1);
    expect(lost).toContain(100);
  });

  it('takes leaves of a tree first, so that nothing is filled in', () => {
    // A star: node 0 in the middle of six.
    const n = 7;
    const plan = sparsePlan(n, (at) => at % n === 0 || at < n || at % (n + 1) === 0);
    expect(plan.slots).toBe(7 + 12);
    expect(plan.order.indexOf(0)).toBeGreaterThanOrEqual(5);
  });
});
