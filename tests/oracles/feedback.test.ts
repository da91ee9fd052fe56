/**
 * A tuned pentode stage with its grid-plate capacitance inside the solved network: gain and the edge of oscillation.
 * gm 6.2 mS, 0.02 pF, 44 MHz, equal circuits; degree of stability k = 2 g^2 / (w C gm).
 * Sources: Stern, Proc. IRE March 1957 (from memory); Rollett factor in y-parameters, public course notes; both put the edge at k = 1.
 */

import { expect, test } from 'vitest';
import type { Solver } from '../../src/physics/solver.ts';
import { solved } from '../physics/decks.ts';

const GM = 6.2e-3;
const C_GA = 0.02e-12;
const HZ = 44e6;
const W = 2 * Math.PI * HZ;

/** Both circuits loaded for degree of stability k, with B/G = `a` at 44 MHz, the feedback capacitance counted in each. */
function stage(k: number, a: number): Solver {
  const g = Math.sqrt((k * W * C_GA * GM) / 2);
  const henries = 1e-6;
  const farads = (1 / (W * henries) + a * g) / W - C_GA;
  const circuit = (n: string) => [`L${n} ${n} 0 ${henries}`, `C${n} ${n} 0 ${farads}`, `R${n} ${n} 0 ${1 / g}`];
  const text = [
    'stage',
    'I1 0 g AC 1u',
    ...circuit('g'),
    ...circuit('p'),
    `Gm p 0 g 0 ${GM}`,
    `Cga g p ${C_GA}`,
    '.end',
  ];
  return solved(text.join('\n'), Float64Array.of(HZ));
}

function gain(solver: Solver): number {
  return solver.magnitude('p')[0]! / solver.magnitude('g')[0]!;
}

/** Conductance of the whole stage seen at the grid node, siemens; below zero it feeds power out: the circuit oscillates. */
function conductance(solver: Solver): number {
  const [re, im] = [solver.real('g')[0]!, solver.imag('g')[0]!];
  return (1e-6 * re) / (re * re + im * im);
}

test('the feedback makes grid and plate one block', () => {
  expect(stage(4, 0).network.blocks).toHaveLength(1);
});

test('k 4: gain 23.678, stable with both circuits anywhere (within 1 %)', () => {
  expect(Math.abs(gain(stage(4, 0)) / 23.678 - 1)).toBeLessThan(0.01);
  for (let a = -3; a <= 3; a += 0.25) expect(conductance(stage(4, a))).toBeGreaterThan(0);
});

test('k 1: gain 47.356 (within 1 %), oscillates with both circuits at a = -1; the edge lies at k = 1 within 0.01', () => {
  expect(Math.abs(gain(stage(1, 0)) / 47.356 - 1)).toBeLessThan(0.01);
  expect(conductance(stage(1.01, -1))).toBeGreaterThan(0);
  expect(conductance(stage(0.99, -1))).toBeLessThan(0);
  // On the edge itself the level runs away; on the other side of resonance, and well inside the edge, it does not.
  const level = (k: number, a: number) => stage(k, a).magnitude('g')[0]!;
  expect(level(1, -1) / level(4, -1)).toBeGreaterThan(100);
  expect(level(1, 1) / level(4, 1)).toBeLessThan(10);
});
