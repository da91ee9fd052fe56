/** What the faults of a scenario do together: the deck as they leave it, and what no deck can hold. */
import type { Deck } from '../../physics/deck.ts';
import { editDeck } from '../../physics/editDeck.ts';
import type { Receiver } from '../receiver.ts';
import { isCured } from './cure.ts';
import { FAULT_KINDS, type Fault, faultRowOf } from './fault.ts';
import type { FaultMark } from './faultRow.ts';

export interface DetectorFault {
  readonly reversed: boolean;
  /** across the diode's load, ohms; null where it does not leak */
  readonly leakOhms: number | null;
}

export interface FaultEffects {
  readonly deck: Deck;
  readonly detectors: Readonly<Record<string, DetectorFault>>;
  /** leak of a bias line to earth, ohms, by its test point */
  readonly leaks: Readonly<Record<string, number>>;
  readonly earthLoose: boolean;
  readonly leadUnmatched: boolean;
}

/** `cured`: see `isCured`. */
export function faultEffects(
  receiver: Receiver,
  deck: Deck,
  faults: readonly Fault[],
  cured: readonly string[],
): FaultEffects {
  const active = faults.filter((fault) => !isCured(fault, receiver, deck, cured));
  const ordered = [...active].sort((a, b) => FAULT_KINDS.indexOf(a.kind) - FAULT_KINDS.indexOf(b.kind));
  let edited = deck;
  for (const fault of ordered) {
    edited = editDeck(edited, faultRowOf(fault).edits?.(fault, { receiver, deck: edited }) ?? []);
  }
  const detectors: Record<string, DetectorFault> = {};
  const leaks: Record<string, number> = {};
  const marks = faultMarks(ordered);
  for (const mark of marks) {
    const known = (id: string): DetectorFault => detectors[id] ?? { reversed: false, leakOhms: null };
    if (mark.kind === 'reversed') detectors[mark.detector] = { ...known(mark.detector), reversed: true };
    if (mark.kind === 'detectorLeak') detectors[mark.detector] = { ...known(mark.detector), leakOhms: mark.ohms };
    if (mark.kind === 'lineLeak') leaks[mark.at] = mark.ohms;
  }
  const noContact = (lead: 'earth' | 'rf'): boolean =>
    marks.some((mark) => mark.kind === 'noContact' && mark.lead === lead);
  return { deck: edited, detectors, leaks, earthLoose: noContact('earth'), leadUnmatched: noContact('rf') };
}

/** What no deck can hold, of every fault. */
export function faultMarks(faults: readonly Fault[]): readonly FaultMark[] {
  return faults.flatMap((fault) => faultRowOf(fault).marks?.(fault) ?? []);
}
