/** Pencil work: turns worked out from a curve and the notebook of what each slug does. The expected places are those that the curves were made with. */
import { describe, expect, it } from 'vitest';
import { designOf } from '../../src/bench/setup.ts';
import { workResponses } from '../../src/receiver/responses.ts';
import { leastSquares, solve } from '../../src/technician/person/leastSquares.ts';
import { createNotebook } from '../../src/technician/person/notebook.ts';
import type { SlugEffect } from '../../src/technician/person/sheet.ts';
import { slugEffects } from '../../src/technician/slugEffects.ts';
import { setupOf } from './oneScenario.ts';

const TURNS = [-4, -2, -1, 0, 1, 2, 4];
const HZ = Array.from({ length: 81 }, (_, i) => 40e6 + i * 1e5);
const WIDE = { low: -4, high: 4 };

/** A single tuned circuit of Q 20 at so many hertz (from memory: the universal resonance curve). */
function hump(hz: number, at: number): number {
  return 1 / Math.hypot(1, 20 * (hz / at - at / hz));
}

/** Two circuits with a valve between them: a turn in lowers each by half a per cent. */
function curve(turns: readonly [number, number]): number[] {
  const at = [43e6 * (1 - 0.005 * turns[0]), 45e6 * (1 - 0.005 * turns[1])] as const;
  const volts = HZ.map((f) => hump(f, at[0]) * hump(f, at[1]));
  const height = Math.max(...HZ.map((f) => hump(f, 43e6) * hump(f, 45e6)));
  return volts.map((v) => v / height);
}

const effects: readonly SlugEffect[] = [
  { slug: 'one', turns: TURNS, levels: TURNS.map((t) => Float64Array.from(curve([t, 0]))) },
  { slug: 'two', turns: TURNS, levels: TURNS.map((t) => Float64Array.from(curve([0, t]))) },
];
const notebook = (reach = [WIDE, WIDE]) =>
  createNotebook({ hz: HZ, effects, isSCurve: false, trapsHz: [] }, ['one', 'two'], reach);

describe('turns that make squares least', () => {
  it('solve equations whose unknowns are known', () => {
    const x = [2, -1, 0.5];
    const matrix = [
      [0, 2, 1],
      [1, -1, 4],
      [3, 0.5, -2],
    ];
    const right = matrix.map((row) => row.reduce((sum, v, i) => sum + v * x[i]!, 0));
    for (const [i, v] of solve(matrix, right).entries()) expect(v).toBeCloseTo(x[i]!, 10);
  });

  const wrong = (turns: readonly number[]): Float64Array => Float64Array.of(turns[0]! - 1.5, 3 * (turns[1]! + 0.5));

  it('find the bottom where nothing is paid for a turn', () => {
    const { turns } = leastSquares([0, 0], { wrong, price: 0, low: [-4, -4], high: [4, 4] });
    expect(turns[0]).toBeCloseTo(1.5, 3);
    expect(turns[1]).toBeCloseTo(-0.5, 3);
  });

  it('stop short of it by half the price where a turn costs, and never pass a bound', () => {
    // d/dt of (t - 1.5)^2 + p t is nothing at 1.5 - p / 2.
    const { turns } = leastSquares([0, 0], { wrong, price: 1, low: [-4, -0.2], high: [4, 4] });
    expect(turns[0]).toBeCloseTo(1, 2);
    expect(turns[1]).toBe(-0.2);
  });
});

describe('the notebook', () => {
  it.each([
    [1.5, 0],
    [0, -2],
    [-1, 1.5],
  ] as const)('tells from one curve that the slugs stand %d and %d turns in', (a, b) => {
    const [one, two] = notebook().whereSlugsStand(curve([a, b]), null);
    expect(one).toBeCloseTo(a, 0);
    expect(Math.abs(one! - a)).toBeLessThan(0.2);
    expect(Math.abs(two! - b)).toBeLessThan(0.2);
  });

  it('says that nothing is out of place of a curve that is right, also of one that is louder all over', () => {
    for (const times of [1, 1.3]) {
      const stand = notebook().whereSlugsStand(
        curve([0, 0]).map((v) => v * times),
        null,
      );
      for (const turns of stand) expect(Math.abs(turns)).toBeLessThan(0.02);
    }
  });

  it('foretells a curve with slugs turned: their effects in decibels add where a valve stands between them', () => {
    const seen = notebook().withTurned(curve([2, -2]), [2, -2], [-2, 2]);
    for (const [i, v] of curve([0, 0]).entries()) expect(seen[i]!).toBeCloseTo(v, 2);
  });

  it('turns towards the right curve', () => {
    const [one, two] = notebook().towardsRight(curve([2, -1]), [2, -1], 4);
    expect(one).toBeCloseTo(-2, 0);
    expect(two).toBeCloseTo(1, 0);
  });

  it('thinks no slug farther out than it can have been turned', () => {
    const [one] = notebook([{ low: -0.5, high: 0.5 }, WIDE]).whereSlugsStand(curve([2, 0]), null);
    expect(one).toBeLessThanOrEqual(0.5);
  });

  it('learns what turns have really done, and forgets it', () => {
    const book = notebook();
    const before = curve([0, 0]);
    // A set whose first slug does twice what the notebook says.
    const after = curve([2, 0]);
    const foretold = (): number => {
      const seen = book.withTurned(before, [0, 0], [1, 0]);
      return Math.max(...seen.map((v, i) => Math.abs(v - after[i]!)));
    };
    const untaught = foretold();
    book.learn(before, [0, 0], [1, 0], after);
    expect(foretold()).toBeLessThan(untaught / 20);
    book.forget();
    expect(foretold()).toBe(untaught);
  });

  it('knows nothing of the set on the bench: of two sets of one design it says the same', () => {
    const said = ['one-slug-out', 'flat-top'].map((id) => {
      const setup = setupOf(id);
      const [response] = workResponses(setup.receiver, setup.scenario);
      return { receiver: setup.receiver, effects: slugEffects(designOf(setup), response!, [42e6, 44e6, 46e6]) };
    });
    expect(said[0]!.receiver.adjusters).not.toEqual(said[1]!.receiver.adjusters);
    expect(said[0]!.effects).toEqual(said[1]!.effects);
  });
});
