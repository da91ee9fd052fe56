/** Laws of networks with nonlinear loads, tried on random ones. Sources: network theory (substitution theorem, differences against slopes); no figures. */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Admittance, admittanceAt, tabulateAdmittance } from '../../src/physics/admittance.ts';
import type { Solver } from '../../src/physics/solver.ts';
import { solved } from '../physics/decks.ts';
import { levelSensitivities } from '../physics/levelSensitivities.ts';
import { type Circuit, circuits, circuitText, coilNames, SEED } from './randomNetworks.ts';

const HZ = Float64Array.of(0.7e6, 3.1e6, 11e6, 29e6, 87e6);
const runs = { seed: SEED, numRuns: 150 };
const passive = circuits({ stages: 0 });
const pick = fc.nat({ max: 1000 });

/** Presents less to a large carrier than to a small one, as diodes do, with a share of capacitance. */
const LOAD = tabulateAdmittance(0.3, 100, 400, (a) => {
  const g = 4e-4 + 2e-3 / (1 + a / 0.3) ** 1.5;
  return [g, 0.4 * g];
});

function presented(load: Admittance, volts: number): { readonly g: number; readonly b: number } {
  const y = new Float64Array(4);
  admittanceAt(load, volts, y);
  return { g: y[0]!, b: y[1]! };
}

/** Up to three loads, which may share a node. */
function loadedNodes(circuit: Circuit, which: number): string[] {
  const places = [0, which, 3 * which + 1].slice(0, 1 + (which % 3));
  return places.map((n) => `n${1 + (n % circuit.nodes)}`);
}

function loadedSolver(circuit: Circuit, which: number, hz: Float64Array, extra: readonly string[] = []): Solver {
  const text = circuitText(circuit, { from: 0, into: 1 }).replace('.end', [...extra, '.end'].join('\n'));
  const solver = solved(text, hz);
  solver.setDrive('I1', 2e-3);
  solver.setLoads(loadedNodes(circuit, which).map((node) => ({ node, admittance: LOAD })));
  solver.solve();
  return solver;
}

describe('loads on random passive networks', () => {
  test('substitution: a resistor and a capacitor of what each load presents change nothing (within 1e-8)', () => {
    let several = 0;
    fc.assert(
      fc.property(passive, pick, (circuit, which) => {
        const solver = loadedSolver(circuit, which, HZ);
        const nodes = loadedNodes(circuit, which);
        if (new Set(nodes).size > 1) several++;
        for (let f = 0; f < HZ.length; f++) {
          const parts = nodes.flatMap((node, k) => {
            const { g, b } = presented(LOAD, solver.magnitude(node)[f]!);
            return [`Rload${k} ${node} 0 ${1 / g}`, `Cload${k} ${node} 0 ${b / (2 * Math.PI * HZ[f]!)}`];
          });
          const text = circuitText(circuit, { from: 0, into: 1 }).replace('.end', [...parts, '.end'].join('\n'));
          const plain = solved(text, Float64Array.of(HZ[f]!));
          plain.setDrive('I1', 2e-3);
          plain.solve();
          const largest = Math.max(...plain.nodeNames.map((node) => plain.magnitude(node)[0]!));
          for (const node of plain.nodeNames) {
            const off = Math.hypot(
              solver.real(node)[f]! - plain.real(node)[0]!,
              solver.imag(node)[f]! - plain.imag(node)[0]!,
            );
            expect(off / largest).toBeLessThan(1e-8);
          }
        }
      }),
      runs,
    );
    expect(several).toBeGreaterThan(30);
  });

  test('the answer does not depend on what was solved before', () => {
    fc.assert(
      fc.property(passive, pick, (circuit, which) => {
        const fresh = loadedSolver(circuit, which, HZ);
        const used = loadedSolver(circuit, which, HZ);
        used.setDrive('I1', 1);
        used.solve();
        used.setLoads([]);
        used.solve();
        used.setDrive('I1', 2e-3);
        used.setLoads(loadedNodes(circuit, which).map((node) => ({ node, admittance: LOAD })));
        used.solve();
        for (const node of fresh.nodeNames) expect(used.real(node)).toEqual(fresh.real(node));
      }),
      { ...runs, numRuns: 40 },
    );
  });

  test('sensitivities agree with differences of the level (within 1e-5 of the largest)', () => {
    const one = Float64Array.of(3.1e6);
    fc.assert(
      fc.property(passive, pick, (circuit, which) => {
        const node = `n${1 + (which % circuit.nodes)}`;
        const solver = loadedSolver(circuit, which, one);
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
          const h = 1e-4;
          const slope = (8 * (at(1 + h) - at(1 - h)) - (at(1 + 2 * h) - at(1 - 2 * h))) / (12 * h * henries);
          at(1);
          const exact = slopes.get(name)![0]!;
          expect(Math.abs(slope - exact) / Math.max(Math.abs(exact), level / henries)).toBeLessThan(1e-5);
        }
      }),
      runs,
    );
  });
});

test('through saturating stages and loads in every block slopes agree with differences (within 1e-5 of the largest)', () => {
  const text = [
    'three blocks',
    'I1 0 a AC 3m',
    'L1 a 0 1u\nC1 a 0 200p\nR1 a 0 2k\nL2 b 0 1.1u\nC2 b 0 190p\nR2 b 0 3k\nK1 L1 L2 0.02',
    'G1 c 0 b 0 3m\nL3 c 0 0.9u\nC3 c 0 220p\nR3 c 0 1k',
    'G2 0 d c b 2m\nL4 d 0 1u\nC4 d 0 210p\nR4 d 0 2k\nL5 e 0 1u\nC5 e 0 200p\nR5 e 0 4k\nK2 L4 L5 0.03',
    '.end',
  ].join('\n');
  const hz = Float64Array.of(9.5e6, 10.6e6, 11.25e6, 11.5e6, 12.4e6);
  const solver = solved(text, hz);
  solver.setSaturation('G1', 0.6);
  solver.setSaturation('G2', 0.9);
  solver.setLoads(['b', 'c', 'd', 'e'].map((node) => ({ node, admittance: LOAD })));
  solver.solve();
  expect(solver.worstCompressionDb()).toBeGreaterThan(2);
  const names = ['L1', 'L2', 'L3', 'L4', 'L5'];
  const slopes = levelSensitivities(solver, 'e', names);
  const level = solver.magnitude('e');
  for (const name of names) {
    const henries = solver.value(name);
    const at = (factor: number): Float64Array => {
      solver.setValue(name, henries * factor);
      solver.solve();
      return solver.magnitude('e');
    };
    const h = 1e-4;
    const [a, b, c, d] = [at(1 + h), at(1 - h), at(1 + 2 * h), at(1 - 2 * h)];
    at(1);
    for (let f = 0; f < hz.length; f++) {
      const slope = (8 * (a[f]! - b[f]!) - (c[f]! - d[f]!)) / (12 * h * henries);
      expect(Math.abs(slope - slopes.get(name)![f]!) / (level[f]! / henries)).toBeLessThan(1e-5);
    }
  }
});
