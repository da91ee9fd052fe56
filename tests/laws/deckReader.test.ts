/** The deck reader never throws, names a place for every problem and never hands out a deck that cannot be solved. No outside source. */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildNetwork } from '../../src/physics/buildNetwork.ts';
import { readDeck } from '../../src/physics/readDeck.ts';
import { createSolver } from '../../src/physics/solver.ts';
import { DECK_IDS, deckText } from '../physics/decks.ts';
import { SEED } from './randomNetworks.ts';

const runs = { seed: SEED, numRuns: 400 };

/** Reads a text; whatever comes out must keep the promises. */
function keepsPromises(text: unknown): boolean {
  const deck = readDeck(text, 'random.cir');
  if (!deck.ok) {
    expect(deck.problems.length).toBeGreaterThan(0);
    for (const problem of deck.problems) {
      expect(problem.file).toBe('random.cir');
      expect(problem.found).not.toBe('');
      expect(problem.wanted).not.toBe('');
      expect(problem.place).toMatch(/^$|^line \d+, column \d+$/);
    }
    return false;
  }
  const network = buildNetwork(deck.value, 'random.cir');
  if (!network.ok) throw new Error('a deck that was read must make a network');
  const solver = createSolver(network.value, Float64Array.of(1e3, 1e6, 45e6));
  solver.solve();
  for (const node of solver.nodeNames) {
    for (const part of [solver.real(node), solver.imag(node)]) expect(part.every(Number.isFinite)).toBe(true);
  }
  return true;
}

describe('reads without throwing', () => {
  test('any text', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 300, unit: 'binary' }), (text) => void keepsPromises(text)),
      runs,
    );
  });

  test('anything that is not a text', () => {
    fc.assert(
      fc.property(
        fc.anything().filter((value) => typeof value !== 'string'),
        (value) => {
          expect(keepsPromises(value)).toBe(false);
        },
      ),
      runs,
    );
  });

  test('words of the language in any order; now and then they make a circuit', () => {
    const word = fc.constantFrom(
      ...[
        'R1',
        'R2',
        'L1',
        'L2',
        'C1',
        'K1',
        'G1',
        'I1',
        'a',
        'b',
        '0',
        'gnd',
        '1k',
        '10p',
        '1u',
        '0.5',
        '-0.9',
        'AC',
        'DC',
      ],
      ...[
        '1m',
        '90',
        '+',
        '*',
        ';',
        '.ac',
        '.print',
        '.end',
        'lin',
        '281',
        '1meg',
        '2meg',
        'v(a)',
        '1e400',
        '-1',
        '1mil',
        '$',
        '=',
      ],
    );
    const line = fc.array(word, { maxLength: 7 }).map((words) => words.join(' '));
    fc.assert(
      fc.property(fc.array(line, { maxLength: 12 }), (lines) => void keepsPromises(`title\n${lines.join('\n')}`)),
      runs,
    );
  });

  test('circuits of well-formed lines with nodes and values at random', () => {
    const node = fc.constantFrom('0', 'a', 'b', 'c');
    const value = fc.constantFrom('1', '1k', '1meg', '1u', '1n', '1p', '1e-24', '1e24', '47', '3.3m');
    const part = fc.oneof(
      fc.tuple(fc.constantFrom('R', 'L', 'C', 'R', 'L', 'C'), node, node, value).map((w) => w.join(' ')),
      fc.tuple(fc.constant('G'), node, node, node, node, value).map((w) => w.join(' ')),
      fc.tuple(fc.constant('I'), node, node, fc.constant('AC'), value).map((w) => w.join(' ')),
    );
    let read = 0;
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 10 }), (parts) => {
        const lines = parts.map((line, i) => line.replace(/^(\w)/, `$1${i}`));
        if (keepsPromises(`title\n${lines.join('\n')}\n.end`)) read++;
      }),
      runs,
    );
    expect(read).toBeGreaterThan(40);
  });

  test('real decks with a few letters changed', () => {
    const change = fc.tuple(fc.nat(4000), fc.nat(3), fc.string({ maxLength: 3, unit: 'grapheme-ascii' }));
    fc.assert(
      fc.property(fc.constantFrom(...DECK_IDS), fc.array(change, { maxLength: 5 }), (id, changes) => {
        let text = deckText(id);
        for (const [at, cut, put] of changes) {
          const from = at % text.length;
          text = text.slice(0, from) + put + text.slice(from + cut);
        }
        keepsPromises(text);
      }),
      runs,
    );
  });
});
