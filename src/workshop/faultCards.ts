/** Faults as cards: which kinds a receiver can have, what a new card says, and what its fields may hold. All of it from the table of faults. */
import { checkFaults } from '../files/checkFaults.ts';
import { nodeKey } from '../physics/deck.ts';
import { cureOf } from '../receiver/faults/cure.ts';
import { FAULT_KINDS, type Fault, type FaultKind, faultRowOf } from '../receiver/faults/fault.ts';
import type { FaultField } from '../receiver/faults/faultField.ts';
import { biasedStages, type FaultySet } from '../receiver/faults/faultPlaces.ts';
import { FAULT_ROWS } from '../receiver/faults/faultRows.ts';
import { chartedFaults } from '../receiver/faults/faultsThatFit.ts';
import { partsTray } from '../receiver/faults/partsTray.ts';
import type { FlawUnit } from './flaws.ts';

/** Where a new card begins, by the name of the field that carries the figure. Round figures of our own, no source. */
const USUAL: Readonly<Record<string, number>> = {
  ohms: 220e3,
  farads: 10e-12,
  factor: 0.5,
  volts: 4.5,
  amps: 1e-6,
  seconds: 20,
  afterSeconds: 300,
};

export type CardUnit = FlawUnit | 'A' | 's' | 'div';

const UNITS: Readonly<Record<string, CardUnit>> = {
  ohms: 'Ω',
  farads: 'F',
  factor: '×',
  volts: 'V',
  amps: 'A',
  seconds: 's',
  afterSeconds: 's',
};

export interface AmountField {
  readonly key: string;
  readonly holds: 'number';
  readonly value: number;
  readonly unit: CardUnit;
  readonly least: number;
  readonly most: number;
}
export interface PlaceField {
  readonly key: string;
  readonly holds: Exclude<FaultField['holds'], 'number'>;
  readonly value: string;
  readonly choices: readonly string[];
}
export type CardField = AmountField | PlaceField;

const fieldsOf = (kind: FaultKind): readonly (readonly [string, FaultField])[] =>
  Object.entries(FAULT_ROWS[kind].fields);

/** The fields of a fault in their order, with what each may hold at this set. */
export function cardFields(fault: Fault, set: FaultySet): readonly CardField[] {
  const values: Readonly<Record<string, unknown>> = fault;
  return fieldsOf(fault.kind).map(([key, field]): CardField => {
    if (field.holds !== 'number')
      return { key, holds: field.holds, value: String(values[key]), choices: placesThatFit(fault, key, field, set) };
    const { least, most } = field;
    return { key, holds: 'number', value: Number(values[key]), unit: UNITS[key] ?? '×', least, most };
  });
}

export const withField = (fault: Fault, key: string, value: string | number): Fault =>
  ({ ...fault, [key]: value }) as Fault;

/** The first fault of a kind that goes with those that are there; null: this set has no place for one more. */
export function newFault(kind: FaultKind, set: FaultySet, there: readonly Fault[]): Fault | null {
  for (const fault of candidates(kind, set, chartedSingly(set))) {
    if (!canBeHad(fault, set)) continue;
    let sound = true;
    checkFaults([...there, fault], set.receiver, set.deck, () => {
      sound = false;
    });
    if (sound) return fault;
  }
  return null;
}

/** Kinds that the set has any place for, in the order of the table. */
export function kindsThatFit(set: FaultySet): readonly FaultKind[] {
  // The chart is drawn up once for all kinds.
  const charted = chartedSingly(set);
  return FAULT_KINDS.filter((kind) => candidates(kind, set, charted).some((fault) => canBeHad(fault, set)));
}

const chartedSingly = ({ receiver, deck }: FaultySet): readonly Fault[] =>
  chartedFaults(receiver, deck).flatMap((faults) => (faults.length === 1 ? faults : []));

/** Those that the chart of faults has, which show best, then whatever else there is a place for: each place once, with the usual figure. Whether they can be had is not asked. */
function candidates(kind: FaultKind, set: FaultySet, charted: readonly Fault[]): readonly Fault[] {
  const listed = fieldsOf(kind).reduce<readonly Readonly<Record<string, unknown>>[]>(
    (all, [key, field]) => all.flatMap((one) => valuesOf(field, key, set).map((value) => ({ ...one, [key]: value }))),
    [{ kind }],
  );
  return [...charted.filter((fault) => fault.kind === kind), ...(listed as readonly Fault[])];
}

function valuesOf(field: FaultField, key: string, set: FaultySet): readonly (string | number)[] {
  return field.holds === 'number' ? [USUAL[key] ?? field.least] : placesOf(field, set);
}

/** Cured by a part that lies in the tray, and it changes something. */
function canBeHad(fault: Fault, set: FaultySet): boolean {
  const cure = cureOf(fault, set.receiver, set.deck);
  if (cure.kind === 'replace' && !cure.parts.every((part) => trayOf(set).has(part))) return false;
  return faultRowOf(fault).edits?.(fault, set).length !== 0;
}

function placesThatFit(fault: Fault, key: string, field: FaultField, set: FaultySet): readonly string[] {
  return placesOf(field, set).filter((place) => canBeHad(withField(fault, key, place), set));
}

function placesOf(field: FaultField, { receiver, deck }: FaultySet): readonly string[] {
  switch (field.holds) {
    case 'element':
      return deck.elements.filter((e) => field.of.some((kind) => kind === e.kind)).map((e) => e.name);
    case 'stage': {
      if (field.of === 'any') return receiver.stages.map((s) => s.element);
      const lines = receiver.biasLines.filter((line) => field.of === 'biased' || line.kind === 'exponential');
      return biasedStages(receiver).flatMap((s) => (lines.some((line) => line.at === s.agc) ? [s.element] : []));
    }
    case 'slug':
      return receiver.adjusters.map((a) => a.id);
    case 'line':
      return receiver.biasLines.map((line) => line.at);
    case 'detector':
      return receiver.detectors.filter((d) => field.of === 'any' || d.kind === field.of).map((d) => d.id);
    case 'node':
      return [...new Set(deck.elements.flatMap((e) => (e.kind === 'K' ? [] : e.nodes.map(nodeKey))))];
    case 'number':
      return [];
  }
}

const trays = new WeakMap<FaultySet['receiver'], ReadonlySet<string>>();

function trayOf({ receiver, deck }: FaultySet): ReadonlySet<string> {
  const tray = trays.get(receiver) ?? new Set(partsTray(receiver, deck).map(({ name }) => name));
  trays.set(receiver, tray);
  return tray;
}
