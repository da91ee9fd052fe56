/** Whether a deck is one of parts that a set can have: a value a million times out by a slip of its suffix, or a node that nothing else goes to, is told by its line. */
import type { Unit } from '../base/phrases.ts';
import type { Problem } from '../base/result.ts';
import { type Deck, type DeckElement, elementPlace, nodeKey } from '../physics/deck.ts';
import { UNITS } from '../physics/deckProblems.ts';
import type { Receiver } from '../receiver/receiver.ts';

type Bounds = readonly [least: number, most: number];

/** Parts of radio sets, small signal circuits and their models (common practice, no source): wide enough for a bypass of thousands of microfarads and a stray tenth of a femtofarad. */
const BY_KIND = { R: [1e-3, 1e11], C: [1e-16, 1e-2], L: [1e-10, 100], G: [1e-7, 10] } as const;
/** At the set's own frequencies: a capacitor or coil beyond these is a plain short, or nothing at all. */
const LEAST_OHMS = 1e-4;
const MOST_OHMS = 1e9;

export function checkParts({ responses }: Receiver, deck: Deck, deckFile: string): Problem[] {
  const ends = responses.flatMap(({ specification: s }) => [s.fromHz, s.toHz]);
  return partsWithin([Math.min(...ends), Math.max(...ends)], deck, deckFile);
}

/** The same of a deck that has no sheet yet: between the frequencies that its set is for. */
export function partsWithin([fromHz, toHz]: readonly [number, number], deck: Deck, deckFile: string): Problem[] {
  const [lowHz, highHz] = [Math.max(1, fromHz), Math.max(1, toHz)];
  const bounds: Readonly<Record<'R' | 'C' | 'L' | 'G', Bounds>> = {
    R: BY_KIND.R,
    C: narrower(BY_KIND.C, [1 / (perSecond(highHz) * MOST_OHMS), 1 / (perSecond(lowHz) * LEAST_OHMS)]),
    L: narrower(BY_KIND.L, [LEAST_OHMS / perSecond(highHz), MOST_OHMS / perSecond(lowHz)]),
    G: BY_KIND.G,
  };
  const values = deck.elements.flatMap((element): Problem[] => {
    const { kind, name, value } = element;
    if (kind === 'K' || kind === 'I') return [];
    const [least, most] = bounds[kind];
    if (value >= least && value <= most) return [];
    const unit: Unit = UNITS[kind];
    const place = elementPlace(element, (element.places?.length ?? 1) - 1);
    return [
      {
        ...{ file: deckFile, ...place },
        found: ['namedValue', name, value, unit],
        wanted: ['partFor', kind, rounded(least), rounded(most), unit, lowHz, highHz],
      },
    ];
  });
  return [...values, ...looseNodes(deck, deckFile)];
}

/** A node with one end of one part on it carries no current: a slip of the pen. */
function looseNodes(deck: Deck, deckFile: string): Problem[] {
  const ends = new Map<string, { readonly element: DeckElement; readonly word: number; readonly node: string }[]>();
  for (const element of deck.elements) {
    if (element.kind === 'K') continue;
    const nodes = element.kind === 'G' ? [...element.nodes, ...element.control] : element.nodes;
    nodes.forEach((node, i) => {
      const key = nodeKey(node);
      if (key !== '0') ends.set(key, [...(ends.get(key) ?? []), { element, word: i + 1, node }]);
    });
  }
  return [...ends.values()].flatMap(([first, second]): Problem[] => {
    if (first === undefined || second !== undefined) return [];
    const { element, word, node } = first;
    const problem = { file: deckFile, ...elementPlace(element, word) };
    return [{ ...problem, found: ['looseNode', node, element.name], wanted: ['twoOnNode'] }];
  });
}

const perSecond = (hz: number): number => 2 * Math.PI * hz;
const rounded = (value: number): number => Number(value.toPrecision(2));
const narrower = (a: Bounds, b: Bounds): Bounds => [Math.max(a[0], b[0]), Math.min(a[1], b[1])];
