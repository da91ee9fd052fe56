/** Laws that hold for every network, tried on random ones. Sources: network theory (reciprocity, Tellegen's theorem, scaling); no figures. */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Solver } from '../../src/physics/solver.ts';
import { deckOf, solved } from '../physics/decks.ts';
import { levelSensitivities } from '../physics/levelSensitivities.ts';
import { fullSolve } from './fullSolve.ts';
import type { Circuit, Part } from './randomNetworks.ts';
import { circuits, circuitText, coilNames, isSolvable, SEED } from './randomNetworks.ts';

const HZ = Float64Array.of(0.7e6, 3.1e6, 11e6, 29e6, 87e6);
const runs = { seed: SEED, numRuns: 150 };
const passive = circuits({ stages: 0 });
const active = circuits({ stages: 4 }).filter(isSolvable);
const pick = fc.nat({ max: 1000 });

const intoFirst = { from: 0, into: 1 };
const voltage = (solver: Solver, node: number, f: number): readonly [number, number] =>
  node === 0 ? [0, 0] : [solver.real(`n${node}`)[f]!, solver.imag(`n${node}`)[f]!];

/** Largest difference of two solutions at a frequency, against the largest voltage there. */
function difference(a: Solver, b: Solver, nodes: number, f: number, scale = 1): number {
  let worst = 0;
  let largest = 0;
  for (let n = 1; n <= nodes; n++) {
    const [ar, ai] = voltage(a, n, f);
    const [br, bi] = voltage(b, n, f);
    worst = Math.max(worst, Math.hypot(ar - scale * br, ai - scale * bi));
    largest = Math.max(largest, Math.hypot(ar, ai));
  }
  return worst / largest;
}

describe('passive networks', () => {
  test('reciprocity: a source here and a meter there may change places (within 1e-10)', () => {
    fc.assert(
      fc.property(passive, pick, pick, (circuit, p, q) => {
        const [a, b] = [1 + (p % circuit.nodes), 1 + (q % circuit.nodes)];
        const there = solved(circuitText(circuit, { from: 0, into: a }), HZ);
        const back = solved(circuitText(circuit, { from: 0, into: b }), HZ);
        for (let f = 0; f < HZ.length; f++) {
          const [xr, xi] = voltage(there, b, f);
          const [yr, yi] = voltage(back, a, f);
          const scale = Math.sqrt(Math.hypot(...voltage(there, a, f)) * Math.hypot(...voltage(back, b, f)));
          expect(Math.hypot(xr - yr, xi - yi) / scale).toBeLessThan(1e-10);
        }
      }),
      runs,
    );
  });

  test('energy: the source delivers just what the resistors take (within 1e-9)', () => {
    fc.assert(
      fc.property(passive, (circuit) => {
        const solver = solved(circuitText(circuit, intoFirst), HZ);
        for (let f = 0; f < HZ.length; f++) {
          const delivered = voltage(solver, 1, f)[0] / 2;
          const level = Math.hypot(...voltage(solver, 1, f));
          expect(Math.abs(takenBy(circuit, solver, f) - delivered)).toBeLessThan(1e-9 * level);
        }
      }),
      runs,
    );
  });

  test('no gain: no load takes more than the available power |I|^2 R / 8 of the source', () => {
    fc.assert(
      fc.property(passive, (circuit) => {
        const solver = solved(circuitText(circuit, intoFirst), HZ);
        // The first part is the resistor across the source: the source's own.
        const available = circuit.parts[0]!.value / 8;
        const loads = { ...circuit, parts: circuit.parts.slice(1) };
        for (let f = 0; f < HZ.length; f++)
          expect(takenBy(loads, solver, f)).toBeLessThanOrEqual(available * (1 + 1e-9));
      }),
      runs,
    );
  });
});

/** Watts in the resistors of a circuit. */
function takenBy(circuit: Circuit, solver: Solver, f: number): number {
  let watts = 0;
  for (const part of circuit.parts) {
    if (part.kind !== 'R') continue;
    const [ar, ai] = voltage(solver, part.ends[0]!, f);
    const [br, bi] = voltage(solver, part.ends[1]!, f);
    watts += ((ar - br) ** 2 + (ai - bi) ** 2) / (2 * part.value);
  }
  return watts;
}

describe('any network', () => {
  const ratio = fc.double({ min: 0.1, max: 10, noNaN: true });

  test('frequency scaling: L and C divided by s at s times the frequency change nothing (within 1e-9)', () => {
    fc.assert(
      fc.property(active, ratio, (circuit, s) => {
        const scale = (part: Part) => (part.kind === 'L' || part.kind === 'C' ? part.value / s : part.value);
        const before = solved(circuitText(circuit, intoFirst), HZ);
        const after = solved(
          circuitText(circuit, intoFirst, scale),
          HZ.map((hz) => hz * s),
        );
        for (let f = 0; f < HZ.length; f++) expect(difference(before, after, circuit.nodes, f)).toBeLessThan(1e-9);
      }),
      runs,
    );
  });

  test('impedance scaling: R and L times z, C and G divided by z multiply every voltage by z (within 1e-9)', () => {
    fc.assert(
      fc.property(active, ratio, (circuit, z) => {
        const up = (part: Part) => part.kind === 'R' || part.kind === 'L';
        const scale = (part: Part) => (part.kind === 'K' ? part.value : up(part) ? part.value * z : part.value / z);
        const before = solved(circuitText(circuit, intoFirst), HZ);
        const after = solved(circuitText(circuit, intoFirst, scale), HZ);
        for (let f = 0; f < HZ.length; f++)
          expect(difference(before, after, circuit.nodes, f, 1 / z)).toBeLessThan(1e-9);
      }),
      runs,
    );
  });

  test('linearity: twice the drive, twice the voltage (within 1e-14)', () => {
    fc.assert(
      fc.property(active, (circuit) => {
        const one = solved(circuitText(circuit, intoFirst), HZ);
        const two = solved(circuitText(circuit, intoFirst), HZ);
        two.setDrive('I1', 2);
        two.solve();
        for (let f = 0; f < HZ.length; f++) expect(difference(one, two, circuit.nodes, f, 0.5)).toBeLessThan(1e-14);
      }),
      runs,
    );
  });

  test('blocks: the same voltages as one dense solve of everything with coil currents as unknowns (within 1e-9)', () => {
    let several = 0;
    fc.assert(
      fc.property(active, (circuit) => {
        const text = circuitText(circuit, intoFirst);
        const solver = solved(text, HZ);
        if (solver.network.blocks.length > 1) several++;
        for (let f = 0; f < HZ.length; f++) {
          const full = fullSolve(deckOf(text), HZ[f]!);
          const largest = Math.max(...[...full.values()].map(([re, im]) => Math.hypot(re, im)));
          for (const [key, [re, im]] of full) {
            const n = Number(key.slice(1));
            const [vr, vi] = voltage(solver, n, f);
            expect(Math.hypot(vr - re, vi - im) / largest).toBeLessThan(1e-9);
          }
        }
      }),
      runs,
    );
    expect(several).toBeGreaterThan(30);
  });

  test('order: no block is fed by itself or a later one, and every node is in one block', () => {
    fc.assert(
      fc.property(active, (circuit) => {
        const { network, system } = solved(circuitText(circuit, intoFirst), HZ);
        for (const [b, plan] of system.plans.entries()) for (const from of plan.fedBy) expect(from).toBeLessThan(b);
        const members = network.blocks.flatMap((nodes) => [...nodes]).sort((x, y) => x - y);
        expect(members).toEqual(network.nodeNames.map((_, i) => i));
      }),
      runs,
    );
  });

  test('one slug turned in a living solver: exactly the voltages of a fresh solver', () => {
    const turns = fc.array(fc.tuple(pick, fc.double({ min: 0.8, max: 1.25, noNaN: true })), {
      minLength: 1,
      maxLength: 6,
    });
    fc.assert(
      fc.property(active, turns, (circuit, list) => {
        const text = circuitText(circuit, intoFirst);
        const living = solved(text, HZ);
        const names = coilNames(circuit);
        for (const [which, factor] of list) {
          const name = names[which % names.length]!;
          living.setValue(name, living.value(name) * factor);
          living.solve();
        }
        const fresh = solved(text, HZ);
        for (const name of names) fresh.setValue(name, living.value(name));
        fresh.solve();
        for (let f = 0; f < HZ.length; f++) expect(difference(living, fresh, circuit.nodes, f)).toBe(0);
      }),
      runs,
    );
  });

  test('sensitivities agree with differences of the level (within 1e-6 of the largest)', () => {
    const one = Float64Array.of(3.1e6);
    fc.assert(
      fc.property(active, pick, (circuit, which) => {
        const node = `n${1 + (which % circuit.nodes)}`;
        const solver = solved(circuitText(circuit, intoFirst), one);
        const names = coilNames(circuit);
        const slopes = levelSensitivities(solver, node, names);
        const level = solver.magnitude(node)[0]!;
        if (level < 1e-9) return;
        for (const name of names) {
          const henries = solver.value(name);
          const at = (factor: number): number => {
            solver.setValue(name, henries * factor);
            solver.solve();
            return solver.magnitude(node)[0]!;
          };
          // Fourth-order central difference, so that sharp circuits do not need a looser bound.
          const h = 2e-5;
          const slope = (8 * (at(1 + h) - at(1 - h)) - (at(1 + 2 * h) - at(1 - 2 * h))) / (12 * h * henries);
          at(1);
          const exact = slopes.get(name)![0]!;
          // Rounding of the differences is about 1e-15 level / h; relative changes (dV/V) / (dL/L) much below 1 are lost in it.
          const scale = Math.max(Math.abs(exact), level / henries);
          expect(Math.abs(slope - exact) / scale).toBeLessThan(1e-6);
        }
      }),
      runs,
    );
  });
});
