/** The parts that may be replaced at a set, by the name that an act of replacing uses. */
import type { Deck } from '../../physics/deck.ts';
import type { Receiver } from '../receiver.ts';
import type { OwnPartKind } from './fault.ts';
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
}

/** In the order of the deck; diodes, lines and the faults' own parts after it. */
export function partsTray(
  { adjusters, stages, detectors, biasLines, notParts = [] }: Receiver,
  { elements }: Deck,
): readonly Part[] {
  const parts: Part[] = [];
  const none = new Set(notParts.map((name) => name.toLowerCase()));
  for (const { kind, name, value } of elements) {
    if (none.has(name.toLowerCase())) continue;
    if (kind === 'R') parts.push({ name, kind: 'resistor', value, slug: null });
    if (kind === 'C') parts.push({ name, kind: 'capacitor', value, slug: null });
    if (kind === 'L') {
      const slug = adjusters.find((a) => a.element.toLowerCase() === name.toLowerCase());
      if (slug !== undefined) parts.push({ name, kind: 'coil', value: null, slug: slug.id });
    }
    if (kind === 'G' && stages.some((s) => s.element.toLowerCase() === name.toLowerCase())) {
      parts.push({ name, kind: 'stage', value: null, slug: null });
    }
  }
  for (const { id } of detectors) parts.push({ name: id, kind: 'diode', value: null, slug: null });
  for (const { at } of biasLines) parts.push({ name: at, kind: 'line', value: null, slug: null });
  for (const { cure } of Object.values(FAULT_ROWS)) {
    const own = cure.by === 'part' ? cure.own : undefined;
    if (own === undefined || parts.some((part) => part.name === own.name)) continue;
    parts.push({ name: own.name, kind: own.kind, value: null, slug: null });
  }
  return parts;
}
