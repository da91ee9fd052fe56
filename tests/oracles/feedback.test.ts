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

/*
 * Two equal circuits of 5 kilohm and 12 pF at 45.94 MHz about a stage of 5 mS, an open can's capacitance between them. Where the natural frequencies of the pair cross into growth
 * (eigenvalues, computed here from the characteristic polynomial) is 0.0574 pF; the rule of thumb 2 / (w gm R1 R2) says 0.0554.
 */
const CAN = { ohms: 5e3, farads: 12e-12, siemens: 5e-3, hz: 45.94e6 };

function canText(feedbackFarads: number): string {
  const henries = 1 / ((2 * Math.PI * CAN.hz) ** 2 * CAN.farads);
  const circuit = (n: string) => [`L${n} ${n} 0 ${henries}`, `C${n} ${n} 0 ${CAN.farads}`, `R${n} ${n} 0 ${CAN.ohms}`];
  return [
    'open can',
    'I1 0 g AC 1u',
    ...circuit('g'),
    ...circuit('p'),
    `Gm p 0 g 0 ${CAN.siemens}`,
    `Ccan g p ${feedbackFarads}`,
    '.end',
  ].join('\n');
}

/** Least damping of the four natural frequencies, radians a second; below zero the pair grows. Roots of s^2 (Y11 Y22 - Y12 Y21) by Durand and Kerner. */
function leastDamping(feedback: number): number {
  const { ohms, farads, siemens, hz } = CAN;
  const scale = 2 * Math.PI * hz;
  const c = (farads + feedback) * scale;
  const g = 1 / ohms;
  const b = (scale * farads) as number;
  const f = feedback * scale;
  // (s c + g + b / s)^2 + s f (gm - s f), times s^2, by falling powers of s in units of the resonance.
  const poly = [c * c - f * f, 2 * c * g + f * siemens, g * g + 2 * c * b, 2 * g * b, b * b];
  const monic = poly.map((v) => v / poly[0]!);
  let roots = [0, 1, 2, 3].map((k) => ({ re: Math.cos(0.4 + 1.7 * k), im: Math.sin(0.4 + 1.7 * k) }));
  const times = (x: Root, y: Root): Root => ({ re: x.re * y.re - x.im * y.im, im: x.re * y.im + x.im * y.re });
  const over = (x: Root, y: Root): Root => {
    const size = y.re * y.re + y.im * y.im;
    return { re: (x.re * y.re + x.im * y.im) / size, im: (x.im * y.re - x.re * y.im) / size };
  };
  for (let round = 0; round < 500; round++) {
    roots = roots.map((root, k) => {
      const value = monic.reduce<Root>((sum, v) => ({ ...times(sum, root), re: times(sum, root).re + v }), {
        re: 0,
        im: 0,
      });
      const apart = roots.reduce<Root>(
        (all, other, m) => (m === k ? all : times(all, { re: root.re - other.re, im: root.im - other.im })),
        { re: 1, im: 0 },
      );
      const step = over(value, apart);
      return { re: root.re - step.re, im: root.im - step.im };
    });
  }
  return -Math.max(...roots.map(({ re }) => re));
}

interface Root {
  readonly re: number;
  readonly im: number;
}

test('an open can: the pair begins to oscillate at 0.0574 pF (within 0.0002), where the solved level runs away', () => {
  let [low, high] = [0.01e-12, 0.2e-12];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (leastDamping(middle) > 0) low = middle;
    else high = middle;
  }
  expect(Math.abs(low - 0.0574e-12)).toBeLessThan(0.0002e-12);
  const { ohms, siemens, hz } = CAN;
  expect(2 / (2 * Math.PI * hz * siemens * ohms * ohms) / low).toBeCloseTo(0.965, 2);
  const grid = Float64Array.from({ length: 4001 }, (_, i) => 44e6 + i * 1e3);
  const peak = (farads: number): number => Math.max(...solved(canText(farads), grid).magnitude('p'));
  expect(peak(0.995 * low) / peak(1e-18)).toBeGreaterThan(50);
});

test('at half of it the peak is 1.56 times as high and 0.75 MHz wide instead of 1.705 (within 1 %)', () => {
  const grid = Float64Array.from({ length: 8001 }, (_, i) => 42e6 + i * 1e3);
  const read = (farads: number) => {
    const level = [...solved(canText(farads), grid).magnitude('p')];
    const peak = Math.max(...level);
    const inside = level.filter((v) => v >= peak / Math.SQRT2).length;
    return { peak, wide: inside * 1e3 };
  };
  const closed = read(1e-18);
  const open = read(0.0287e-12);
  expect(Math.abs(closed.wide / 1.705e6 - 1)).toBeLessThan(0.01);
  expect(Math.abs(open.wide / 0.75e6 - 1)).toBeLessThan(0.01);
  expect(Math.abs(open.peak / closed.peak / 1.56 - 1)).toBeLessThan(0.01);
});
