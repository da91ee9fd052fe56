/** The rules that need the whole deck: bounds, names, values, couplings. Used on files and again after every edit. */

import type { Phrase, Unit } from '../base/phrases.ts';
import type { Problem } from '../base/result.ts';
import type { CoilGroup } from './coilGroups.ts';
import { isPositiveDefinite } from './coilGroups.ts';
import type { Coupling, Deck, DeckElement } from './deck.ts';
import { elementPlace, MAX_ELEMENTS, MAX_NODES, MAX_VALUE, MIN_VALUE, nodeKey } from './deck.ts';

/** `unread` holds names (lower case) of elements that the deck has but that could not be read. */
export function deckProblems(deck: Deck, file: string, unread: ReadonlySet<string> = new Set()): Problem[] {
  const problems: Problem[] = [];
  const { elements } = deck;
  const add = (element: DeckElement | null, word: number, found: Phrase, wanted: Phrase): void => {
    const place = element === null ? { place: '' } : elementPlace(element, word);
    problems.push({ file, ...place, found, wanted });
  };
  if (elements.length > MAX_ELEMENTS) {
    add(null, 0, elements.length > 4 * MAX_ELEMENTS ? ['veryMany'] : ['elements', elements.length], [
      'atMost',
      MAX_ELEMENTS,
    ]);
    return problems;
  }
  const nodes = nodesOf(deck);
  if (nodes.length > MAX_NODES) add(null, 0, ['nodesBesides', nodes.length], ['atMost', MAX_NODES]);

  const byName = new Map<string, DeckElement>();
  for (const element of elements) {
    const key = element.name.toLowerCase();
    if (byName.has(key)) add(element, 0, ['secondElement', element.name], ['eachOnce']);
    else byName.set(key, element);
    const wrong = wrongValue(element);
    if (wrong !== null)
      add(element, (element.places?.length ?? 1) - 1, ['amount', element.value, UNITS[element.kind]], wrong);
  }

  const pairs = new Set<string>();
  let couplingsStand = true;
  for (const element of elements) {
    if (element.kind !== 'K') continue;
    for (const [i, coil] of element.coils.entries()) {
      const target = byName.get(coil.toLowerCase());
      if (target === undefined && unread.has(coil.toLowerCase())) couplingsStand = false;
      else if (target?.kind !== 'L') {
        add(element, i + 1, ['coilNamed', coil], ['inductorOfDeck']);
        couplingsStand = false;
      }
    }
    const [a, b] = element.coils.map((coil) => coil.toLowerCase()).sort() as [string, string];
    if (a === b) {
      add(element, 2, ['coilWithItself', element.coils[1]], ['twoCoils']);
      couplingsStand = false;
    }
    if (pairs.has(`${a} ${b}`)) {
      add(element, 0, ['secondCoupling', element.coils[0], element.coils[1]], ['pairOnce']);
      couplingsStand = false;
    }
    pairs.add(`${a} ${b}`);
  }
  if (couplingsStand && problems.length === 0) {
    const values = Float64Array.from(elements, (element) => element.value);
    for (const group of coilGroups(deck)) {
      if (isPositiveDefinite(group, values)) continue;
      const names = group.coils.map((i) => elements[i]!.name);
      add(elements[group.pairs[0]!.element]!, 0, ['negativeEnergy', names], ['positiveDefinite']);
    }
  }
  return problems;
}

/** Node names besides ground, first spelling, in order of first use. */
export function nodesOf(deck: Deck): string[] {
  const seen = new Map<string, string>();
  for (const element of deck.elements) {
    if (element.kind === 'K') continue;
    const names = element.kind === 'G' ? [...element.nodes, ...element.control] : element.nodes;
    for (const name of names) {
      const key = nodeKey(name);
      if (key !== '0' && !seen.has(key)) seen.set(key, name);
    }
  }
  return [...seen.values()];
}

/** Inductors joined by couplings, each group with its pairs; a lone coil is a group of one. Couplings must name existing coils. */
export function coilGroups(deck: Deck): CoilGroup[] {
  const { elements } = deck;
  const index = new Map<string, number>();
  for (const [i, element] of elements.entries()) if (element.kind === 'L') index.set(element.name.toLowerCase(), i);
  const root = new Map<number, number>();
  for (const i of index.values()) root.set(i, i);
  const find = (i: number): number => {
    let at = i;
    while (root.get(at) !== at) at = root.get(at)!;
    return at;
  };
  const ends = (k: Coupling): [number, number] => [
    index.get(k.coils[0].toLowerCase())!,
    index.get(k.coils[1].toLowerCase())!,
  ];
  for (const element of elements) {
    if (element.kind !== 'K') continue;
    const [a, b] = ends(element);
    root.set(find(a), find(b));
  }
  const groups = new Map<number, { coils: number[]; pairs: { i: number; j: number; element: number }[] }>();
  for (const i of index.values()) {
    const key = find(i);
    const group = groups.get(key) ?? { coils: [], pairs: [] };
    groups.set(key, group);
    group.coils.push(i);
  }
  for (const [at, element] of elements.entries()) {
    if (element.kind !== 'K') continue;
    const [a, b] = ends(element);
    const group = groups.get(find(a))!;
    group.pairs.push({ i: group.coils.indexOf(a), j: group.coils.indexOf(b), element: at });
  }
  return [...groups.values()];
}

/** What the value of an element is in. */
export const UNITS: Readonly<Record<DeckElement['kind'], Unit>> = {
  R: '\u03a9',
  L: 'H',
  C: 'F',
  K: '',
  G: 'S',
  I: 'A',
};

function wrongValue(element: DeckElement): Phrase | null {
  const { value } = element;
  if (element.kind === 'K') return Math.abs(value) < 1 ? null : ['deckCoupling', 'none'];
  if (element.kind === 'I') return value >= 0 && value <= MAX_VALUE ? null : ['alternatingAmps', 'none'];
  return value >= MIN_VALUE && value <= MAX_VALUE
    ? null
    : ['deckValue', MIN_VALUE, MAX_VALUE, UNITS[element.kind], 'none'];
}
