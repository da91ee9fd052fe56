/** A network as data: numbered nodes, elements, groups of coupled coils, blocks in signal order. `buildNetwork.ts` makes it from a deck. */

import type { CoilGroup } from './coilGroups.ts';
import type { Deck } from './deck.ts';

/** An element with its nodes numbered; ground is -1. Index in `elements` equals the index in the deck. */
export interface NetworkElement {
  readonly name: string;
  readonly kind: 'R' | 'L' | 'C' | 'K' | 'G' | 'I';
  readonly value: number;
  /** the two nodes (R L C G I); -1, -1 for K */
  readonly plus: number;
  readonly minus: number;
  /** control nodes (G); -1 otherwise */
  readonly controlPlus: number;
  readonly controlMinus: number;
  readonly phaseDegrees: number;
}

export interface Network {
  readonly deck: Deck;
  readonly nodeNames: readonly string[];
  /** lower-case node name to number */
  readonly nodeNumber: ReadonlyMap<string, number>;
  readonly elements: readonly NetworkElement[];
  /** lower-case element name to index */
  readonly elementIndex: ReadonlyMap<string, number>;
  readonly groups: readonly CoilGroup[];
  /** node numbers of each block, signal order: no block depends on a later one */
  readonly blocks: readonly Int32Array[];
  readonly blockOfNode: Int32Array;
  /** a node's number within its block */
  readonly localOfNode: Int32Array;
}
