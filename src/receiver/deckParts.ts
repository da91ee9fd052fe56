/**
 * The parts of a deck that nothing joins: each is a network of its own and may be solved at its own frequencies. A converter or a video feed (receiver.ts)
 * carries the signal from one to the next.
 */
import { type Deck, type DeckElement, findElement, nodeKey } from '../physics/deck.ts';

export interface DeckPart {
  readonly deck: Deck;
  /** keys (deck.ts) of its nodes, ground left out */
  readonly nodes: ReadonlySet<string>;
}

/** In the order in which the deck names them first. Sources belong to the part that they drive. */
export function deckParts(deck: Deck): readonly DeckPart[] {
  const leader = new Map<string, string>();
  const find = (key: string): string => {
    let at = key;
    while (leader.get(at) !== at) at = leader.get(at)!;
    return at;
  };
  const join = (keys: readonly string[]): void => {
    const real = keys.filter((key) => key !== '0');
    for (const key of real) if (!leader.has(key)) leader.set(key, key);
    for (const key of real.slice(1)) leader.set(find(key), find(real[0]!));
  };
  for (const element of deck.elements) join(nodesTied(deck, element));

  const parts = new Map<string, { elements: DeckElement[]; nodes: Set<string> }>();
  for (const element of deck.elements) {
    const key = nodesTied(deck, element).find((node) => node !== '0');
    // An element with both ends on ground drives nothing; the first part keeps it, so that no element is lost.
    const at = key === undefined ? (parts.keys().next().value ?? '') : find(key);
    const part = parts.get(at) ?? { elements: [], nodes: new Set<string>() };
    parts.set(at, part);
    part.elements.push(element);
    for (const node of nodesTied(deck, element)) if (node !== '0') part.nodes.add(node);
  }
  return [...parts.values()].map(({ elements, nodes }) => ({ deck: { ...deck, elements }, nodes }));
}

function nodesTied(deck: Deck, element: DeckElement): string[] {
  if (element.kind === 'K') {
    return element.coils.flatMap((coil) => {
      const found = findElement(deck, coil);
      return found === undefined || found.kind === 'K' ? [] : found.nodes.map(nodeKey);
    });
  }
  const nodes = element.nodes.map(nodeKey);
  return element.kind === 'G' ? [...nodes, ...element.control.map(nodeKey)] : nodes;
}
