/** Which slug's coil hangs on a node of the deck: its own coil or one that is ganged with it. */
import { type Deck, findElement, nodeKey } from '../physics/deck.ts';
import type { Adjuster } from './receiver.ts';

/** The first of the slugs, in their order, with a coil on one of the nodes. `nodes`: keys (`nodeKey`). */
export function coilOn(adjusters: readonly Adjuster[], deck: Deck, nodes: readonly string[]): Adjuster | null {
  const hangs = (coil: string): boolean => {
    const found = findElement(deck, coil);
    return found?.kind === 'L' && found.nodes.some((end) => nodes.includes(nodeKey(end)));
  };
  return adjusters.find(({ element, ganged }) => [element, ...ganged].some(hangs)) ?? null;
}
