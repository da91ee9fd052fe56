/** The decks that the physics tests use, and a short way from text to a solver. */

import { readdirSync, readFileSync } from 'node:fs';
import { problemLine } from '../../src/base/result.ts';
import { buildNetwork } from '../../src/physics/buildNetwork.ts';
import type { Deck } from '../../src/physics/deck.ts';
import { acFrequencies } from '../../src/physics/deck.ts';
import { HARMONICS, type HarmonicCircuit } from '../../src/physics/harmonicCircuit.ts';
import type { Network } from '../../src/physics/network.ts';
import { readDeck } from '../../src/physics/readDeck.ts';
import type { Solver } from '../../src/physics/solver.ts';
import { createSolver } from '../../src/physics/solver.ts';

const folder = new URL('../fixtures/decks/', import.meta.url);

export const DECK_IDS: readonly string[] = readdirSync(folder)
  .filter((name) => name.endsWith('.cir'))
  .map((name) => name.slice(0, -4))
  .sort();

export interface Slug {
  readonly element: string;
  readonly ganged: readonly string[];
  readonly nominal: number;
  readonly min: number;
  readonly max: number;
}

export const SLUGS: Readonly<Record<string, readonly Slug[]>> = JSON.parse(
  readFileSync(new URL('slugs.json', folder), 'utf8'),
);

export function deckText(id: string): string {
  return readFileSync(new URL(`${id}.cir`, folder), 'utf8');
}

export function deckOf(text: string): Deck {
  const deck = readDeck(text, 'test.cir');
  if (!deck.ok) throw new Error(deck.problems.map(problemLine).join('\n'));
  return deck.value;
}

export function networkOf(deck: Deck): Network {
  const network = buildNetwork(deck, 'test.cir');
  if (!network.ok) throw new Error(network.problems.map(problemLine).join('\n'));
  return network.value;
}

/** A solved solver for a deck, at the frequencies given or those of its `.ac` line. */
export function solved(text: string, hz?: Float64Array): Solver {
  const deck = deckOf(text);
  if (hz === undefined && deck.ac === null) throw new Error('no frequencies');
  const solver = createSolver(networkOf(deck), hz ?? acFrequencies(deck.ac!));
  solver.solve();
  return solver;
}

export function grid(fromHz: number, toHz: number, points: number): Float64Array {
  return Float64Array.from({ length: points }, (_, i) => fromHz + ((toHz - fromHz) * i) / (points - 1));
}

/** A circuit resonant at the carrier whose capacitor alone counts at the harmonics: 1 / (j w C (h - 1/h)). */
export function tankHarmonics(farads: number, hz: number): HarmonicCircuit {
  const orders = Array.from({ length: HARMONICS - 1 }, (_, k) => k + 2);
  return { hz, re: orders.map(() => 0), im: orders.map((h) => -1 / (2 * Math.PI * hz * farads * (h - 1 / h))) };
}

export function decibels(ratio: number): number {
  return 20 * Math.log10(ratio);
}
