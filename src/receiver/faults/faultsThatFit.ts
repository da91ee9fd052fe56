/** Faults that make sense at a receiver: what the endless track draws from, and what a fault-finding chart lists. */
import type { Deck } from '../../physics/deck.ts';
import type { Receiver } from '../receiver.ts';
import { cureOf } from './cure.ts';
import { FAULT_KINDS, type Fault, type FaultKind } from './fault.ts';
import { type FaultPlace, type FaultySet, faultPlaces } from './faultPlaces.ts';
import { FAULT_ROWS } from './faultRows.ts';
import { partsTray } from './partsTray.ts';

/** Single faults, place by place. */
export function plausibleFaults(receiver: Receiver, deck: Deck): readonly Fault[] {
  return fitting({ receiver, deck }).flatMap(({ drawn, faults }) => (drawn ? faults : []));
}

/** As `plausibleFaults`, then what is not drawn, then faults of one place that may well come all at once. */
export function chartedFaults(receiver: Receiver, deck: Deck): readonly (readonly Fault[])[] {
  const all = fitting({ receiver, deck });
  const single = [...all.filter((one) => one.drawn), ...all.filter((one) => !one.drawn)].flatMap(
    ({ faults }) => faults,
  );
  const sets = all.filter(({ together, faults }) => together && faults.length > 1).map(({ faults }) => faults);
  return [...single.map((fault) => [fault]), ...sets];
}

/** The faults of one kind at one place. */
interface Fitting {
  readonly drawn: boolean;
  readonly together: boolean;
  readonly faults: readonly Fault[];
}

function fitting(set: FaultySet): readonly Fitting[] {
  const parts = new Set(partsTray(set.receiver, set.deck).map(({ name }) => name));
  const canBeHad = (fault: Fault): boolean => {
    const cure = cureOf(fault, set.receiver, set.deck);
    return cure.kind !== 'replace' || cure.parts.every((part) => parts.has(part));
  };
  return faultPlaces(set)
    .flatMap((place) => FAULT_KINDS.flatMap((kind) => atPlace(kind, place, set)))
    .map((one) => ({ ...one, faults: one.faults.filter(canBeHad) }));
}

function atPlace(kind: FaultKind, { at, place }: FaultPlace, set: FaultySet): readonly Fitting[] {
  const { sits } = FAULT_ROWS[kind];
  if (sits === null || sits.at !== at) return [];
  // The place is of the sort that the row asks for, as both are called `at`; the compiler does not follow this through the union of all rows.
  const faults = sits.of(place as never, set).map((values) => ({ kind, ...values }) as Fault);
  return [{ drawn: sits.drawn, together: sits.together === true, faults }];
}
