/** The certifier: what it refuses and why, and its optimum against an independent optimiser. */

import { describe, expect, it } from 'vitest';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { designOf } from '../../src/bench/setup.ts';
import { certifyScenario } from '../../src/certify/certifyScenario.ts';
import { createDemands, type Standing } from '../../src/certify/demands.ts';
import { leastSquares, squares } from '../../src/certify/leastSquares.ts';
import { worstOf } from '../../src/certify/search.ts';
import { workResponses } from '../../src/receiver/responses.ts';
import { nominalTurns } from '../../src/receiver/slugLaw.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { setupOf } from '../technician/oneScenario.ts';
import { certificateOf } from './secondOpinion.ts';

const changed = (id: string, more: Partial<BenchSetup['scenario']>): BenchSetup => {
  const setup = setupOf(id);
  return { ...setup, scenario: { ...setup.scenario, ...more } };
};

describe('a certificate', () => {
  it('is the same each time, and whole', () => {
    const first = certifyScenario(setupOf('one-slug-out'));
    expect(certifyScenario(setupOf('one-slug-out'))).toEqual(first);
    if (!first.ok) throw new Error('should be certified');
    expect(first.certificate.route).toHaveLength(1);
    expect(Math.abs(first.certificate.route[0]!.turns - 2)).toBeLessThan(0.05);
    expect(first.certificate.reached.excess).toBeLessThan(0);
  });

  it('has a par of two to three times its route, or of one turn where the route is shorter than a third of that', () => {
    let short = 0;
    for (const { id } of shippedLibrary().scenarios) {
      const { route, par } = certificateOf(id);
      const straight = route.reduce((sum, { turns }) => sum + Math.abs(turns), 0);
      if (straight < 1 / 3) {
        expect(par.turns, id).toBe(1);
        short++;
        continue;
      }
      expect(par.turns / straight, id).toBeGreaterThanOrEqual(2);
      expect(par.turns / straight, id).toBeLessThanOrEqual(3);
    }
    // Those whose slugs are right, and two with a slug that is hardly out.
    expect(short).toBeGreaterThan(5);
    expect(short).toBeLessThan(shippedLibrary().scenarios.length / 4);
  });

  it('has a route inside the travel of every slug', () => {
    const setup = setupOf('from-cold');
    const done = certifyScenario(setup);
    if (!done.ok) throw new Error('should be certified');
    for (const { slug, turns } of done.certificate.route) {
      const a = setup.receiver.adjusters.find((one) => one.id === slug)!;
      const end = nominalTurns(a) + (setup.scenario.start.slugs[slug] ?? 0) + turns;
      expect(end).toBeGreaterThan(0);
      expect(end).toBeLessThan(a.travelTurns);
    }
  });
});

describe('the nearest line', () => {
  const { scenario } = setupOf('zero');
  const standing = (id: string, excess: number): Standing => {
    const { receiver, deck } = designOf(setupOf('zero'));
    const slugs = receiver.adjusters.map((a) => a.id);
    const all = createDemands(receiver, deck, workResponses(receiver, scenario), 1, slugs, { receiver, deck });
    const turns = Object.fromEntries(receiver.adjusters.map((a) => [a.id, nominalTurns(a)]));
    return { ...all.standings(turns).find(({ item }) => item.kind === id)!, excess };
  };

  it('is never a yes-or-no line that is met, and is one that is not', () => {
    expect(worstOf([standing('polarity', -1), standing('zero', -1.4)]).item.kind).toBe('zero');
    expect(worstOf([standing('polarity', 1), standing('zero', 0.4)]).item.kind).toBe('polarity');
  });
});

describe('refusals', () => {
  it('a failed part that is cured by nothing on the list of the sheet is told: the line and by how much', () => {
    // The trap's notch asked for where no slug brings it.
    const setup = setupOf('traps-astray');
    const [first, ...rest] = setup.receiver.responses;
    const trap = first!.specification.traps.find((t) => t.hz === 39750000)!;
    const traps = first!.specification.traps.map((t) => (t === trap ? { ...t, maxDb: -140 } : t));
    const response = { ...first!, specification: { ...first!.specification, traps } };
    const outcome = certifyScenario({ ...setup, receiver: { ...setup.receiver, responses: [response, ...rest] } });
    expect(outcome.ok).toBe(false);
    if (outcome.ok) return;
    const lines = outcome.problems.flatMap((p) => ('line' in p && typeof p.line === 'object' ? [p.line] : []));
    expect(lines.some((l) => l.line === 'trap:39750000' && l.excess > 1)).toBe(true);
  });

  it('the merely hard is certified: every slug far off, tolerances as printed', () => {
    const setup = setupOf('from-cold');
    const slugs = Object.fromEntries(setup.receiver.adjusters.map((a, i) => [a.id, i % 2 ? 6 : -6]));
    const hard = certifyScenario(
      changed('from-cold', { start: { ...setup.scenario.start, slugs }, toleranceFactor: 1 }),
    );
    expect(hard.ok).toBe(true);
  });

  it.each([
    ['that is right as it is found', {}],
    ['that an eighth of a turn mends', { T3: 0.125 }],
  ])('a set %s is nothing to do, unless the scenario says that leaving it alone is the answer', (_, slugs) => {
    const start = { ...setupOf('one-slug-out').scenario.start, slugs };
    const outcome = certifyScenario(changed('one-slug-out', { start }));
    expect(outcome).toEqual({ ok: false, problems: [{ code: 'nothingToDo' }] });
    expect(certifyScenario(changed('one-slug-out', { start, slugsRight: true })).ok).toBe(true);
  });

  it('a failed part that slugs can make good for is no fault to find', () => {
    const setup = setupOf('out-of-reach');
    const faults = [{ kind: 'driftedCapacitor', element: 'Cmix', factor: 1.005 }] as const;
    const outcome = certifyScenario({ ...setup, scenario: { ...setup.scenario, faults } });
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect(outcome.problems.map((p) => p.code)).toContain('nothingToSee');
  });
});

/** Nelder and Mead, Computer Journal 7 (1965): reflection, expansion, contraction, shrinking; from memory. Started again from its own end. */
function simplex(f: (x: number[]) => number, start: number[], step: number, rounds: number): number {
  let best = start;
  for (let round = 0; round < rounds; round++) {
    let points = [best, ...best.map((_, j) => best.map((v, k) => (k === j ? v + step / (1 + round) : v)))].map((x) => ({
      x,
      y: f(x),
    }));
    for (let i = 0; i < 400 * start.length; i++) {
      points.sort((a, b) => a.y - b.y);
      const worst = points.at(-1)!;
      const rest = points.slice(0, -1);
      if (worst.y - points[0]!.y < 1e-10 * (1 + points[0]!.y)) break;
      const middle = start.map((_, k) => rest.reduce((s, p) => s + p.x[k]!, 0) / rest.length);
      const along = (t: number) => {
        const x = middle.map((v, k) => v + t * (worst.x[k]! - v));
        return { x, y: f(x) };
      };
      const mirrored = along(-1);
      if (mirrored.y < points[0]!.y) {
        const further = along(-2);
        points = [...rest, further.y < mirrored.y ? further : mirrored];
      } else if (mirrored.y < rest.at(-1)!.y) points = [...rest, mirrored];
      else {
        const nearer = along(mirrored.y < worst.y ? -0.5 : 0.5);
        if (nearer.y < Math.min(worst.y, mirrored.y)) points = [...rest, nearer];
        else points = points.map((p) => (p === points[0] ? p : mid(p.x, points[0]!.x, f)));
      }
    }
    points.sort((a, b) => a.y - b.y);
    best = points[0]!.x;
  }
  return f(best);
}
const mid = (a: number[], b: number[], f: (x: number[]) => number) => {
  const x = a.map((v, k) => (v + b[k]!) / 2);
  return { x, y: f(x) };
};

describe('the optimum', () => {
  // What no slug can meet: the curve laid on one that is printed for another Q. So the least cost is not zero, and both must find the same.
  it.each(['off-centre', 'the-first-pair', 'three-of-colour'])('of %s is that of a simplex search', (id) => {
    const { scenario } = setupOf(id);
    const { receiver, deck } = designOf(setupOf(id));
    const slugs = receiver.adjusters.map((a) => a.id);
    const damped = {
      ...deck,
      elements: deck.elements.map((e) => (e.kind === 'R' ? { ...e, value: e.value * 1.3 } : e)),
    };
    const demands = createDemands(receiver, damped, workResponses(receiver, scenario), 1, slugs, { receiver, deck });
    const turnsOf = (x: ArrayLike<number>) => Object.fromEntries(slugs.map((s, j) => [s, x[j]!]));
    const high = receiver.adjusters.map((a) => a.travelTurns);
    // Coupled coils have more than one place to rest in: both methods begin in the same five.
    const starts = [0.8, -0.8, 0.1, 2, -2].map((off) =>
      receiver.adjusters.map((a, i) => nominalTurns(a) + (i % 2 ? off : -off)),
    );
    const task = {
      residuals: (x: Float64Array) => demands.printed(turnsOf(x)),
      slopes: (x: Float64Array) => demands.printedSlopes(turnsOf(x)),
      box: { low: high.map(() => 0), high },
      mostIterations: 100,
      enough: 0,
    };
    const own = Math.min(...starts.map((start) => leastSquares(task, Float64Array.from(start)).cost));
    const cost = (x: number[]): number => squares(demands.printed(turnsOf(x)));
    const other = Math.min(...starts.flatMap((start) => [0.5, 1.5, 4].map((step) => simplex(cost, start, step, 4))));
    expect(own).toBeGreaterThan(1e-3);
    expect(Math.abs(own / other - 1)).toBeLessThan(0.01);
  });
});
