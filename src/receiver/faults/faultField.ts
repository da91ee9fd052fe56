/**
 * The fields of a fault as data. From them come the type of the fault, its shape in a scenario file (`faultSchema.ts`) and what is checked against the receiver
 * (`checkFaults.ts`).
 */

/** Kinds of deck element that a field may name. */
export type ElementKind = 'R' | 'L' | 'C' | 'K' | 'G';

export type FaultField =
  /** an element of the deck, of one of some kinds */
  | { readonly holds: 'element'; readonly of: readonly ElementKind[] }
  /** the deck element of a stage: of any, of one with a bias line, of a valve with one */
  | { readonly holds: 'stage'; readonly of: 'any' | 'biased' | 'valve' }
  | { readonly holds: 'slug' }
  /** a bias line, by its test point */
  | { readonly holds: 'line' }
  | { readonly holds: 'detector'; readonly of: 'envelope' | 'any' }
  /** a node of the deck */
  | { readonly holds: 'node' }
  /** bounds inclusive; the field's name carries the unit */
  | { readonly holds: 'number'; readonly least: number; readonly most: number };

export type FaultFields = Readonly<Record<string, FaultField>>;

/** What a fault holds under its fields. */
export type FieldValues<F extends FaultFields> = { readonly [K in keyof F]: FieldValue<F[K]> };
type FieldValue<T> = T extends { readonly holds: 'number' } ? number : string;

export const elementOf = (...of: readonly ElementKind[]) => ({ holds: 'element', of }) as const;
export const numberFrom = (least: number, most: number) => ({ holds: 'number', least, most }) as const;
