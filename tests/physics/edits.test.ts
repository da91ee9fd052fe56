/** Edits of a deck and sensitivities on a circuit known by hand. Source: resonance formula; no other figures. */

import { describe, expect, test } from 'vitest';
import { buildNetwork } from '../../src/physics/buildNetwork.ts';
import { findElement } from '../../src/physics/deck.ts';
import { editDeck } from '../../src/physics/editDeck.ts';
import { createSolver } from '../../src/physics/solver.ts';
import { saidOf } from '../files/said.ts';
import { deckOf, deckText, grid, networkOf, solved } from './decks.ts';
import { levelSensitivities } from './levelSensitivities.ts';

describe('editDeck', () => {
  const deck = deckOf(deckText('loose-can-10m7'));
  const levels = (edited: typeof deck) => {
    const solver = createSolver(networkOf(edited), grid(10.2e6, 11.2e6, 21));
    solver.solve();
    return [...solver.magnitude('sec')];
  };

  test('takes the probe out and puts it back', () => {
    const probe = ['Cprobe', 'Rprobe'].map((name) => findElement(deck, name)!);
    const without = editDeck(deck, [
      { kind: 'remove', name: 'cprobe' },
      { kind: 'remove', name: 'Rprobe' },
    ]);
    expect(without.elements).toHaveLength(deck.elements.length - 2);
    expect(levels(without)).not.toEqual(levels(deck));
    const again = editDeck(
      without,
      probe.map((element) => ({ kind: 'add', element }) as const),
    );
    for (const [i, level] of levels(again).entries()) expect(level).toBeCloseTo(levels(deck)[i]!, 9);
  });

  test('scales, sets and moves; the deck given stays as it was', () => {
    const before = JSON.stringify(deck);
    const edited = editDeck(deck, [
      { kind: 'scale', name: 'c1', factor: 2 },
      { kind: 'set', name: 'Rser', value: 10e3 },
      { kind: 'add', element: { kind: 'L', name: 'Lground', nodes: ['chassis', '0'], value: 50e-9 } },
      { kind: 'move', name: 'Rsrc', end: 1, node: 'chassis' },
      { kind: 'move', name: 'Isig', end: 0, node: 'chassis' },
    ]);
    expect(findElement(edited, 'C1')!.value).toBeCloseTo(112e-12, 20);
    expect(findElement(edited, 'Rser')!.value).toBe(10e3);
    expect(findElement(edited, 'Rsrc')).toMatchObject({ nodes: ['gen', 'chassis'] });
    expect(findElement(edited, 'Isig')).toMatchObject({ nodes: ['chassis', 'gen'] });
    expect(networkOf(edited).nodeNames).toContain('chassis');
    expect(JSON.stringify(deck)).toBe(before);
  });

  test('a coil that goes takes its couplings along', () => {
    const edited = editDeck(deck, [{ kind: 'remove', name: 'L1' }]);
    expect(edited.elements.some((e) => e.kind === 'K')).toBe(false);
  });

  test('edits of what is not there throw', () => {
    expect(() => editDeck(deck, [{ kind: 'remove', name: 'R99' }])).toThrow('R99');
    expect(() => editDeck(deck, [{ kind: 'move', name: 'K1', end: 0, node: 'x' }])).toThrow('K1');
    const element = { kind: 'R', name: 'rser', nodes: ['a', '0'], value: 1 } as const;
    expect(() => editDeck(deck, [{ kind: 'add', element }])).toThrow('rser');
  });

  test('an edit beyond the bounds is found when the network is built, and named by the element', () => {
    const edited = editDeck(deck, [
      { kind: 'set', name: 'K1', value: 1.5 },
      { kind: 'add', element: { kind: 'R', name: 'Rlost', nodes: ['x', 'y'], value: -1 } },
    ]);
    const network = buildNetwork(edited, 'edited');
    expect(saidOf(network).map((p) => `${p.place}: ${p.found}`)).toEqual([
      'line 15, column 10: 1.5',
      'Rlost: \u22121 \u03a9',
    ]);
  });
});

describe('sensitivities', () => {
  test('one tuned circuit: d|V|/dL from the closed form (within 1e-9 of the largest)', () => {
    const [henries, farads, ohms] = [1e-6, 12.1e-12, 5000];
    const hz = grid(42e6, 50e6, 33);
    const solver = solved(`t\nI1 0 a AC 1m\nL1 a 0 ${henries}\nC1 a 0 ${farads}\nR1 a 0 ${ohms}`, hz);
    const slopes = levelSensitivities(solver, 'a', ['L1']).get('L1')!;
    const expected = hz.map((f) => {
      const w = 2 * Math.PI * f;
      const b = w * farads - 1 / (w * henries);
      // |V| = I / sqrt(g^2 + b^2), db/dL = 1 / (w L^2).
      return (-1e-3 * b) / (w * henries ** 2) / (1 / ohms ** 2 + b * b) ** 1.5;
    });
    const largest = Math.max(...expected.map(Math.abs));
    for (let f = 0; f < hz.length; f++) expect(Math.abs(slopes[f]! - expected[f]!) / largest).toBeLessThan(1e-9);
  });

  test('coils that do not act on the node, or only behind it, have none', () => {
    const solver = solved(deckText('video-valve-45m'), grid(40e6, 48e6, 9));
    const slopes = levelSensitivities(solver, 'g1', ['Lmix', 'L47', 'Lp1', 'Ldet']);
    expect(slopes.get('Lp1')!.every((v) => v === 0)).toBe(true);
    expect(slopes.get('Ldet')!.every((v) => v === 0)).toBe(true);
    expect(slopes.get('Lmix')!.every((v) => v !== 0)).toBe(true);
    expect(slopes.get('L47')!.every((v) => v !== 0)).toBe(true);
  });

  test('a node without voltage has slope zero; wrong use throws', () => {
    const solver = solved(deckText('video-valve-45m'), grid(40e6, 48e6, 9));
    solver.setDrive('Isig', 0);
    expect([...levelSensitivities(solver, 'det', ['Lmix']).get('Lmix')!]).toEqual(new Array(9).fill(0));
    expect(() => levelSensitivities(solver, 'nowhere', ['Lmix'])).toThrow('nowhere');
    expect(() => levelSensitivities(solver, 'det', ['Cmix'])).toThrow('Cmix');
  });
});
