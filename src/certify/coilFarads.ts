/** What a coil is tuned with. */
import { type Deck, findElement, nodeKey } from '../physics/deck.ts';

/** All the capacitance on a coil's ends. A coil turned so that its product with this stays the same is about where it was, however narrow its circuit. */
export function faradsAt(deck: Deck, coil: string): number {
  const element = findElement(deck, coil);
  const ends = new Set(element === undefined || element.kind === 'K' ? [] : element.nodes.map(nodeKey));
  ends.delete('0');
  return deck.elements
    .filter((e) => e.kind === 'C' && e.nodes.some((node) => ends.has(nodeKey(node))))
    .reduce((sum, e) => sum + e.value, 0);
}
