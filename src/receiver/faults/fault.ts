/** What may have failed in a set or at the bench: plain data, as a scenario names it. Its kinds are the rows of the table. */
import type { FieldValues } from './faultField.ts';
import type { FaultRow } from './faultRow.ts';
import { FAULT_ROWS } from './faultRows.ts';

type Rows = typeof FAULT_ROWS;

export type FaultKind = keyof Rows;

export type Fault = {
  readonly [K in FaultKind]: { readonly kind: K } & FieldValues<Rows[K]['fields']>;
}[FaultKind];

type PartRow = Extract<Rows[FaultKind], { readonly symptom: unknown }>;

/** Keys of what a report says of parts that nothing can be measured of. */
export type ToldSymptom = Extract<PartRow['symptom'], { readonly tells: string }>['tells'];

/** Kinds of part that faults add to the tray. */
export type OwnPartKind = NonNullable<PartRow['cure']['own']>['kind'];

/** In the order in which faults are applied. */
export const FAULT_KINDS = Object.keys(FAULT_ROWS) as readonly FaultKind[];

export function faultRowOf({ kind }: Fault): FaultRow {
  return FAULT_ROWS[kind];
}
