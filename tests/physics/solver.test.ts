/** The solver on circuits whose answer is known by hand. Source: Ohm's law and nodal equations; SPICE's sign rule for I and G elements. */

import { describe, expect, test } from 'vitest';
import { fundamentalGainByQuadrature } from '../../src/physics/describingFunction.ts';
import type { Solver } from '../../src/physics/solver.ts';
import { deckText, grid, solved } from './decks.ts';

const at1MHz = Float64Array.of(1e6);
const value = (solver: Solver, node: string) => [solver.real(node)[0]!, solver.imag(node)[0]!];

function expectVolts(solver: Solver, node: string, re: number, im: number): void {
  const [r, i] = value(solver, node) as [number, number];
  expect(Math.hypot(r - re, i - im)).toBeLessThan(1e-12 * Math.max(1, Math.hypot(re, im)));
}

describe('signs', () => {
  test('I1 0 a pushes its current into a; I1 a 0 draws it out', () => {
    expectVolts(solved('t\nI1 0 a AC 1m\nR1 a 0 1k', at1MHz), 'a', 1, 0);
    expectVolts(solved('t\nI1 a 0 AC 1m\nR1 a 0 1k', at1MHz), 'a', -1, 0);
  });

  test('G1 b 0 a 0 inverts: 1 V at a draws gm out of b', () => {
    expectVolts(solved('t\nI1 0 a AC 1m\nR1 a 0 1k\nG1 b 0 a 0 2m\nR2 b 0 3k', at1MHz), 'b', -6, 0);
    expectVolts(solved('t\nI1 0 a AC 1m\nR1 a 0 1k\nG1 0 b a 0 2m\nR2 b 0 3k', at1MHz), 'b', 6, 0);
  });

  test('phase of a source, several sources in one circuit', () => {
    expectVolts(solved('t\nI1 0 a AC 1m 90\nR1 a 0 1k', at1MHz), 'a', 0, 1);
    expectVolts(solved('t\nI1 0 a AC 1m 90\nI2 0 a AC 2m\nI3 b 0 AC 1m\nR1 a 0 1k\nR2 b 0 2k', at1MHz), 'a', 2, 1);
    expectVolts(solved('t\nI1 a b AC 1m\nR1 a 0 1k\nR2 b 0 2k', at1MHz), 'a', -1, 0);
    expectVolts(solved('t\nI1 a b AC 1m\nR1 a 0 1k\nR2 b 0 2k', at1MHz), 'b', 2, 0);
  });

  test('a coil leads, a capacitor lags', () => {
    const w = 2 * Math.PI * 1e6;
    expectVolts(
      solved('t\nI1 0 a AC 1m\nL1 a 0 1u\nRs a 0 1meg', at1MHz),
      'a',
      (1e-3 * w * 1e-6 * ((w * 1e-6) / 1e6)) / (1 + (w * 1e-12) ** 2),
      (1e-3 * w * 1e-6) / (1 + (w * 1e-12) ** 2),
    );
    const loss = 1 / (1 + (w * 1e-9 * 1e3) ** 2);
    expectVolts(solved('t\nI1 0 a AC 1m\nC1 a 0 1n\nR1 a 0 1k', at1MHz), 'a', loss, -w * 1e-6 * loss);
  });

  test('coupled coils: dots at the first nodes, a negative k turns one round', () => {
    const open = (k: number) =>
      solved(`t\nI1 0 a AC 1m\nL1 a 0 4u\nL2 b 0 1u\nK1 L1 L2 ${k}\nR1 a 0 1meg\nR2 b 0 1meg`, at1MHz);
    const [plus, minus] = [value(open(0.5), 'b')[1]!, value(open(-0.5), 'b')[1]!];
    expect(plus).toBeCloseTo(1e-3 * 2 * Math.PI * 1e6 * 1e-6, 6);
    expect(minus).toBeCloseTo(-plus, 12);
  });

  test('ground reads zero under both its names', () => {
    const solver = solved('t\nI1 0 a AC 1m\nR1 a gnd 1k', at1MHz);
    expect(value(solver, '0')).toEqual([0, 0]);
    expect(solver.magnitude('GND')[0]).toBe(0);
  });
});

describe('changes', () => {
  const chain =
    't\nI1 0 a AC 1m\nI2 0 b AC 0\nR1 a 0 1k\nG1 b 0 a 0 2m\nR2 b 0 3k\nG2 c 0 b 0 1m\nR3 c 0 1k\nC3 c 0 1p';

  test('values, drives and frequencies', () => {
    const solver = solved(chain, at1MHz);
    solver.setValue('r1', 500);
    solver.setValue('G1', 1e-3);
    solver.solve();
    expectVolts(solver, 'b', -1.5, 0);
    solver.setDrive('I1', 0);
    solver.setDrive('I2', 1e-3);
    solver.solve();
    expect(value(solver, 'a')).toEqual([0, 0]);
    expectVolts(solver, 'b', 3, 0);
    solver.setDrive('I2', 0);
    solver.solve();
    for (const node of ['a', 'b', 'c']) expect(value(solver, node)).toEqual([0, 0]);
    solver.setValue('R2', 1e3);
    solver.setDrive('I1', 1e-3);
    solver.solve();
    expectVolts(solver, 'b', -0.5, 0);
    solver.setFrequencies(grid(1e6, 2e6, 5));
    solver.solve();
    expect(solver.real('b')).toHaveLength(5);
    expect(solver.real('b')[4]).toBeCloseTo(-0.5, 12);
    expect(solver.value('R2')).toBe(1e3);
  });

  test('gm of zero cuts a stage off and back on', () => {
    const solver = solved(chain, at1MHz);
    solver.setValue('G1', 0);
    solver.solve();
    expect(solver.magnitude('c')[0]).toBe(0);
    solver.setValue('G1', 2e-3);
    solver.solve();
    expectVolts(solver, 'b', -6, 0);
    expect(solver.magnitude('c')[0]).toBeGreaterThan(5);
  });

  test('a view keeps its place when the solver runs again', () => {
    const solver = solved(chain, at1MHz);
    const view = solver.real('b');
    solver.setValue('R2', 6e3);
    solver.solve();
    expect(view[0]).toBeCloseTo(-12, 12);
  });

  test('only the block of the slug and those that hang on it are solved again', () => {
    const solver = solved(deckText('video-valve-45m'), grid(38e6, 52e6, 50));
    const first = solver.real('mix');
    const before = first.slice();
    // A mark left in an earlier block's result must survive the turn of a later slug.
    first[0] = 123;
    solver.setValue('Ldet', 1.2e-6);
    solver.solve();
    expect(first[0]).toBe(123);
    solver.setValue('Lmix', 1.3e-6);
    solver.solve();
    expect(first[0]).not.toBe(123);
    expect(first[10]).not.toBe(before[10]);
  });

  test('wrong use throws and changes nothing', () => {
    const solver = solved(`${chain}\nL1 a 0 1u\nL2 b 0 1u`, at1MHz);
    expect(() => solver.setValue('R9', 1)).toThrow('R9');
    expect(() => solver.setValue('R1', 0)).toThrow('R1');
    expect(() => solver.setValue('R1', Number.NaN)).toThrow('R1');
    expect(() => solver.setValue('I1', 1)).toThrow('setDrive');
    expect(() => solver.setDrive('R1', 1)).toThrow('R1');
    expect(() => solver.setDrive('I1', Number.POSITIVE_INFINITY)).toThrow('I1');
    expect(() => solver.setSaturation('R1', 1)).toThrow('R1');
    expect(() => solver.setSaturation('G1', 0)).toThrow('G1');
    expect(() => solver.setFrequencies(Float64Array.of(0))).toThrow('frequency');
    expect(() => solver.real('nowhere')).toThrow('nowhere');
    expect(() => solver.magnitude('a', new Float64Array(3))).toThrow('out');
  });

  test('a coupling can be changed, but not beyond positive energy', () => {
    const text =
      't\nI1 0 a AC 1m\nL1 a 0 1u\nL2 b 0 1u\nL3 c 0 1u\nK1 L1 L2 0.9\nK2 L2 L3 0.4\nR1 a 0 1k\nR2 b 0 1k\nR3 c 0 1k';
    const solver = solved(text, at1MHz);
    expect(() => solver.setValue('K2', 0.6)).toThrow('negative energy');
    expect(solver.value('K2')).toBe(0.4);
    solver.setValue('K2', -0.2);
    solver.solve();
    const fresh = solved(text.replace('L2 L3 0.4', 'L2 L3 -0.2'), at1MHz);
    expect(value(solver, 'c')).toEqual(value(fresh, 'c'));
  });
});

describe('blocks', () => {
  test('a three-stage strip falls into blocks of 4, 2, 1 and 2 nodes', () => {
    expect(solved(deckText('video-valve-45m')).network.blocks.map((b) => b.length)).toEqual([4, 2, 1, 2]);
  });

  test('a G element that leads back makes its blocks one', () => {
    const text = 't\nI1 0 a AC 1m\nR1 a 0 1k\nG1 b 0 a 0 1m\nR2 b 0 2k\nG2 0 a b 0 0.25m';
    const solver = solved(text, at1MHz);
    expect(solver.network.blocks).toHaveLength(1);
    // a = 1 k (1 m + 0.25 m b), b = -2 a: a = 1 - 0.5 a.
    expectVolts(solver, 'a', 2 / 3, 0);
    expectVolts(solver, 'b', -4 / 3, 0);
  });

  test('a floating G element between two blocks, controlled across two others', () => {
    const solver = solved(
      't\nI1 0 a AC 1m\nI2 0 b AC 2m\nR1 a 0 1k\nR2 b 0 1k\nG1 c d a b 1m\nR3 c 0 1k\nR4 d 0 2k',
      at1MHz,
    );
    expect(solver.network.blocks).toHaveLength(4);
    expectVolts(solver, 'c', 1, 0);
    expectVolts(solver, 'd', -2, 0);
  });

  test('a G element half inside a feedback loop: the outer control node is an input', () => {
    // v(a) = 1. Block b: R 1 k and G1 with control a - b: i = 1 m (a - b) drawn from b, so b = -(1 - b) = no solution for b... with 0.5 m: b = -0.5 (1 - b).
    const solver = solved('t\nI1 0 a AC 1m\nR1 a 0 1k\nR2 b 0 1k\nG1 b 0 a b 0.5m', at1MHz);
    expectVolts(solver, 'b', -1, 0);
  });

  test.each([2, 3, 4])('a node of %i that by itself is in resonance, without loss, is no trouble (1e-12)', (nodes) => {
    // At 1 rad/s node a: 1 H against 0.5 F + 0.5 F cancel; each further node hangs on the one before by 0.5 F and has 1 ohm to ground.
    const names = ['a', 'b', 'c', 'd'].slice(0, nodes);
    const links = names.slice(1).flatMap((name, i) => [`C${name} ${names[i]} ${name} 0.5`, `R${name} ${name} 0 1`]);
    const solver = solved(
      ['t', 'I1 0 a AC 1', 'L1 a 0 1', 'C1 a 0 0.5', ...links].join('\n'),
      Float64Array.of(1 / (2 * Math.PI)),
    );
    // Node a sees nothing but the link, whose current is then the whole ampere: v(b) = 1 / (-0.5 j) = 2 j, and v(a) follows from node b.
    expectVolts(solver, 'b', 0, 2);
    // Current into b's own load: y_b v(b) with y_b = 1 plus the rest of the chain; v(a) = v(b) + i / 0.5 j.
    const rest = (left: number): readonly [number, number] => {
      if (left === 0) return [1, 0];
      const [g, b] = rest(left - 1);
      // 0.5 j in series with g + j b, then 1 ohm beside it.
      const d = g * g + (b + 0.5) ** 2;
      return [1 + (0.25 * g) / d, (0.5 * (g * g + b * b) + 0.25 * b) / d];
    };
    const [g, b] = rest(nodes - 2);
    expectVolts(solver, 'a', 4 * g, 2 + 4 * b);
  });

  test('a lossless circuit exactly on resonance gives large finite volts', () => {
    const hz = 1 / (2 * Math.PI);
    const one = solved('t\nI1 0 a AC 1\nL1 a 0 1\nC1 a 0 1', Float64Array.of(hz));
    const two = solved('t\nI1 0 a AC 1\nL1 a 0 1\nC1 a 0 1\nL2 b 0 1\nC2 b 0 1\nC3 a b 1e-24', Float64Array.of(hz));
    const three = solved(
      't\nI1 0 a AC 1\nL1 a 0 1\nC1 a 0 1\nC3 a b 1e-24\nC4 b c 1e-24\nR1 c 0 1',
      Float64Array.of(hz),
    );
    const dead = solved('t\nI1 0 a AC 1\nL1 a 0 1\nC1 a 0 1\nL2 a b 1\nC2 a b 1', Float64Array.of(hz));
    const chain = solved(
      't\nI1 0 a AC 1\nL1 a 0 1\nC1 a 0 1\nL2 a b 1\nC2 a b 1\nL3 b c 1\nC3 b c 1\nR1 c 0 1',
      Float64Array.of(hz),
    );
    for (const solver of [one, two, three, dead, chain]) {
      const volts = solver.nodeNames.map((node) => solver.magnitude(node)[0]!);
      expect(volts.every(Number.isFinite)).toBe(true);
      expect(Math.max(...volts)).toBeGreaterThan(1e9);
    }
  });
});

describe('saturation', () => {
  const text = 't\nI1 0 a AC 1m\nR1 a 0 1k\nG1 b 0 a 0 2m\nR2 b 0 3k\nG2 c 0 b 0 1m\nR3 c 0 1k';

  test('a stage gives gm v N(|v| / Vs), its follower is driven by that', () => {
    const solver = solved(text, at1MHz);
    solver.setSaturation('G1', 0.5);
    solver.setSaturation('G2', 10);
    solver.solve();
    const b = 6 * fundamentalGainByQuadrature(2);
    expect(solver.real('b')[0]).toBeCloseTo(-b, 6);
    expect(solver.real('c')[0]).toBeCloseTo(b * fundamentalGainByQuadrature(b / 10), 6);
    expect(solver.worstCompressionDb()).toBeCloseTo(-20 * Math.log10(fundamentalGainByQuadrature(2)), 5);
    solver.setSaturation('G1', null);
    solver.setSaturation('G2', null);
    solver.solve();
    expectVolts(solver, 'c', 6, 0);
    expect(solver.worstCompressionDb()).toBe(0);
  });

  test('a small signal is not compressed, a huge one is limited to 4 / pi gm Vs', () => {
    const solver = solved(text, at1MHz);
    solver.setSaturation('G1', 0.5);
    solver.setDrive('I1', 1e-9);
    solver.solve();
    expect(solver.real('b')[0]! / -6e-6).toBeCloseTo(1, 9);
    solver.setDrive('I1', 10);
    solver.solve();
    expect(solver.real('b')[0]).toBeCloseTo((-4 / Math.PI) * 2e-3 * 0.5 * 3e3, 4);
  });

  test('inside a feedback loop the small-signal gm stays, though the compression is reported', () => {
    const loop = `${text}\nR9 a b 100k`;
    const linear = solved(loop, at1MHz);
    const limited = solved(loop, at1MHz);
    limited.setSaturation('G1', 0.01);
    limited.solve();
    expect(value(limited, 'b')).toEqual(value(linear, 'b'));
    expect(limited.worstCompressionDb()).toBeGreaterThan(20);
  });

  test('a stage with one control node inside the block that it drives keeps its small-signal gm too', () => {
    const half = 't\nI1 0 a AC 1m\nR1 a 0 1k\nR2 b 0 1k\nG1 b 0 a b 0.5m';
    const limited = solved(half, at1MHz);
    limited.setSaturation('G1', 0.01);
    limited.solve();
    expectVolts(limited, 'b', -1, 0);
  });

  test('overload flattens the top of a resonance', () => {
    const strip = 't\nI1 0 a AC 1m\nL1 a 0 1u\nC1 a 0 12.1p\nR1 a 0 5k\nG1 b 0 a 0 5m\nR2 b 0 1k';
    const depth = (volts: number | null): number => {
      const solver = solved(strip, grid(42e6, 49e6, 141));
      solver.setSaturation('G1', volts);
      solver.solve();
      const out = solver.magnitude('b');
      return Math.max(...out) / out[0]!;
    };
    expect(depth(0.5)).toBeLessThan(0.5 * depth(null));
  });
});
