/**
 * A circuit deck as data: the elements R L C K G I with their nodes and values in SI units, and the lines that are read
 * but not needed for solving. Names and node names keep the spelling of their first use; they are compared without regard to case.
 */

import type { Problem } from '../base/result.ts';

/** Where a word stands in the text, both from 1; a tab counts as one column. */
export interface DeckPlace {
  readonly line: number;
  readonly column: number;
}

interface Named {
  readonly name: string;
  /** the words of its line, the name first; absent for elements added by an edit */
  readonly places?: readonly DeckPlace[];
}

/** Resistor (ohm), inductor (henry) or capacitor (farad) between two nodes. */
export interface TwoTerminal extends Named {
  readonly kind: 'R' | 'L' | 'C';
  readonly nodes: readonly [string, string];
  readonly value: number;
}

/** Coupling of two inductors: `value` is k, |k| < 1, M = k sqrt(L1 L2). */
export interface Coupling extends Named {
  readonly kind: 'K';
  readonly coils: readonly [string, string];
  readonly value: number;
}

/** Transconductance (siemens): value * (v(control[0]) - v(control[1])) flows from nodes[0] through the element to nodes[1]. */
export interface Transconductance extends Named {
  readonly kind: 'G';
  readonly nodes: readonly [string, string];
  readonly control: readonly [string, string];
  readonly value: number;
}

/** Current source: `value` amps (peak) at `phaseDegrees` flow from nodes[0] through the source to nodes[1]. */
export interface CurrentSource extends Named {
  readonly kind: 'I';
  readonly nodes: readonly [string, string];
  readonly value: number;
  readonly phaseDegrees: number;
  /** read, not needed: the network is solved for alternating current only */
  readonly dcAmps: number;
}

export type DeckElement = TwoTerminal | Coupling | Transconductance | CurrentSource;

/** The `.ac` line. */
export interface AcLine {
  readonly spacing: 'lin' | 'dec' | 'oct';
  /** points in all for `lin`, points a decade or an octave for the others */
  readonly points: number;
  readonly fromHz: number;
  readonly toHz: number;
}

export interface Deck {
  readonly title: string;
  readonly elements: readonly DeckElement[];
  readonly ac: AcLine | null;
  /** the outputs asked for by `.print` and `.save`, as written */
  readonly outputs: readonly string[];
}

export const MAX_NODES = 64;
export const MAX_ELEMENTS = 256;
/** values (ohm, henry, farad, siemens, amp) outside this range would overflow the arithmetic and mean nothing */
export const MIN_VALUE = 1e-24;
export const MAX_VALUE = 1e24;

/** The name under which a node is known: lower case, ground is `0`. */
export function nodeKey(name: string): string {
  const key = name.toLowerCase();
  return key === 'gnd' ? '0' : key;
}

/** Where a word stands, as problems have it. */
export function wordPlace({ line, column }: DeckPlace): Pick<Problem, 'place' | 'at'> {
  return { place: '', at: { line, column } };
}

/** Where an element's word stands (0 the name), or the element's name when it never stood in a text. */
export function elementPlace(element: DeckElement, word = 0): Pick<Problem, 'place' | 'at'> {
  const place = element.places?.[word];
  return place === undefined ? { place: element.name } : wordPlace(place);
}

/** The element of that name (case does not matter), or undefined. */
export function findElement(deck: Deck, name: string): DeckElement | undefined {
  const key = name.toLowerCase();
  return deck.elements.find((element) => element.name.toLowerCase() === key);
}

/** The frequencies of an `.ac` line, hertz. */
export function acFrequencies(ac: AcLine): Float64Array {
  if (ac.spacing === 'lin') {
    const step = ac.points > 1 ? (ac.toHz - ac.fromHz) / (ac.points - 1) : 0;
    return Float64Array.from({ length: ac.points }, (_, i) => ac.fromHz + i * step);
  }
  const base = ac.spacing === 'dec' ? 10 : 2;
  const ratio = base ** (1 / ac.points);
  const count = Math.floor((Math.log(ac.toHz / ac.fromHz) / Math.log(base)) * ac.points + 1e-9) + 1;
  return Float64Array.from({ length: count }, (_, i) => ac.fromHz * ratio ** i);
}
