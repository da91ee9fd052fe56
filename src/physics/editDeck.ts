/** Edits a deck: what leads, probes and faults do to the circuit. The deck given is left as it is. */

import type { Deck, DeckElement } from './deck.ts';
import { findElement } from './deck.ts';

export type DeckEdit =
  | { readonly kind: 'add'; readonly element: DeckElement }
  /** takes an element out; couplings of a coil go with it */
  | { readonly kind: 'remove'; readonly name: string }
  | { readonly kind: 'scale'; readonly name: string; readonly factor: number }
  | { readonly kind: 'set'; readonly name: string; readonly value: number }
  /** lifts one end of an element and puts it on another node (`end` 0 or 1) */
  | { readonly kind: 'move'; readonly name: string; readonly end: 0 | 1; readonly node: string }
  /** the same with what a transconductance is controlled by */
  | { readonly kind: 'moveControl'; readonly name: string; readonly end: 0 | 1; readonly node: string };

/** Applies edits in order. An edit of an element that is not there throws; bounds are checked by buildNetwork. */
export function editDeck(deck: Deck, edits: readonly DeckEdit[]): Deck {
  return edits.reduce(applyEdit, deck);
}

function applyEdit(deck: Deck, edit: DeckEdit): Deck {
  if (edit.kind === 'add') {
    if (findElement(deck, edit.element.name) !== undefined)
      throw new Error(`the deck already has an element ${edit.element.name}`);
    return { ...deck, elements: [...deck.elements, edit.element] };
  }
  const target = findElement(deck, edit.name);
  if (target === undefined) throw new Error(`the deck has no element ${edit.name}`);
  const change = (changed: DeckElement): Deck => ({
    ...deck,
    elements: deck.elements.map((e) => (e === target ? changed : e)),
  });
  switch (edit.kind) {
    case 'remove':
      return { ...deck, elements: deck.elements.filter((e) => e !== target && !couples(e, target.name)) };
    case 'scale':
      return change({ ...target, value: target.value * edit.factor });
    case 'set':
      return change({ ...target, value: edit.value });
    case 'move': {
      if (target.kind === 'K') throw new Error(`${edit.name} is a coupling and stands on no node`);
      return change({ ...target, nodes: moved(target.nodes, edit.end, edit.node) });
    }
    case 'moveControl':
      if (target.kind !== 'G') throw new Error(`${edit.name} is controlled by nothing`);
      return change({ ...target, control: moved(target.control, edit.end, edit.node) });
  }
}

function moved(ends: readonly [string, string], end: 0 | 1, node: string): readonly [string, string] {
  return end === 0 ? [node, ends[1]] : [ends[0], node];
}

function couples(element: DeckElement, coil: string): boolean {
  return element.kind === 'K' && element.coils.some((name) => name.toLowerCase() === coil.toLowerCase());
}
