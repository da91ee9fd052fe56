/** What cures a fault, and what has been cured. */
import type { Deck } from '../../physics/deck.ts';
import type { Receiver } from '../receiver.ts';
import { type Fault, faultRowOf } from './fault.ts';

/** `replace` a part of the tray, `turn` slugs, or `reconnect` a lead. */
export type Cure =
  | {
      readonly kind: 'replace';
      readonly part: string;
      /** parts any one of which is the cure: two that have changed places go back together */
      readonly parts: readonly string[];
    }
  | { readonly kind: 'turn' }
  | { readonly kind: 'reconnect'; readonly lead: 'earth' | 'rf' };

export function cureOf(fault: Fault, receiver: Receiver, deck: Deck): Cure {
  const { cure } = faultRowOf(fault);
  switch (cure.by) {
    case 'part': {
      const parts = cure.parts(fault, { receiver, deck });
      return { kind: 'replace', part: parts[0], parts };
    }
    case 'turning':
      return { kind: 'turn' };
    case 'lead':
      return { kind: 'reconnect', lead: cure.lead };
  }
}

/** `cured` holds parts that have been replaced, and the marks of leads that have been put on again. */
export function isCured(fault: Fault, receiver: Receiver, deck: Deck, cured: readonly string[]): boolean {
  const cure = cureOf(fault, receiver, deck);
  switch (cure.kind) {
    case 'replace':
      return cure.parts.some((part) => cured.includes(part));
    case 'reconnect':
      return cured.includes(leadMark(cure.lead));
    case 'turn':
      return false;
  }
}

/** How a lead that has been put on again stands in the list of what has been cured. */
export function leadMark(lead: 'earth' | 'rf'): string {
  return `lead:${lead}`;
}

/** What has been put right, by its name in the log, is a part of the set, not a lead clipped on again. */
export function isPartOfSet(name: string): boolean {
  return !name.startsWith('lead:');
}
