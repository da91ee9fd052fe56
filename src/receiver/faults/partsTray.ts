/** The parts that may be replaced at a set, by the name that an act of replacing uses. */
import type { Deck } from '../../physics/deck.ts';
import type { Receiver } from '../receiver.ts';
import type { OwnPartKind } from './fault.ts';
import type { FaultRow } from './faultRow.ts';
import { FAULT_ROWS } from './faultRows.ts';

export type PartKind = 'resistor' | 'capacitor' | 'coil' | 'stage' | 'diode' | 'line' | OwnPartKind;

export interface Part {
  /** deck element, detector, bias line's test point, or what a fault's row calls its own part */
  readonly name: string;
  readonly kind: PartKind;
  /** ohms or farads; null for the others */
  readonly value: number | null;
  /** the slug that a coil carries */
  readonly slug: string | null;
  /** the element of the deck that a fault's own part belongs to */
  readonly at: string | null;
}

/** In the order of the deck; diodes, lines and the faults' own parts after it. */
export function partsTray(receiver: Receiver, deck: Deck): readonly Part[] {
  const { adjusters, stages, detectors, biasLines, notParts = [] } = receiver;
  const parts: Part[] = [];
  const none = new Set(notParts.map((name) => name.toLowerCase()));
  for (const { kind, name, value } of deck.elements) {
    if (none.has(name.toLowerCase())) continue;
    if (kind === 'R') parts.push({ name, kind: 'resistor', value, slug: null, at: null });
    if (kind === 'C') parts.push({ name, kind: 'capacitor', value, slug: null, at: null });
    if (kind === 'L') {
      const slug = adjusters.find((a) => a.element.toLowerCase() === name.toLowerCase());
      if (slug !== undefined) parts.push({ name, kind: 'coil', value: null, slug: slug.id, at: null });
    }
    if (kind === 'G' && stages.some((s) => s.element.toLowerCase() === name.toLowerCase())) {
      parts.push({ name, kind: 'stage', value: null, slug: null, at: null });
    }
  }
  for (const { id } of detectors) parts.push({ name: id, kind: 'diode', value: null, slug: null, at: null });
  for (const { at } of biasLines) parts.push({ name: at, kind: 'line', value: null, slug: null, at: null });
  for (const { cure } of Object.values<FaultRow>(FAULT_ROWS)) {
    const own = cure.by === 'part' ? cure.own : undefined;
    for (const name of own?.names({ receiver, deck }) ?? []) {
      if (parts.some((part) => part.name === name)) continue;
      const at = name.includes(':') ? name.slice(name.indexOf(':') + 1) : null;
      parts.push({ name, kind: own!.kind as OwnPartKind, value: null, slug: null, at });
    }
  }
  return parts;
}
