/** A person at the bench: hands that act, eyes that see the display. There is no other way in. */
import type { BenchEvent, ControlId, KnobId, Refusal } from '../../bench/benchEvent.ts';
import type { Controls, LeadId } from '../../bench/benchState.ts';
import type { BenchDisplay } from '../../bench/display.ts';
import type { Remark } from './remark.ts';

export interface Engraving {
  readonly low: number;
  readonly high: number;
  /** values in rising order where it clicks; empty where it may stand anywhere between its ends */
  readonly clicks: readonly number[];
}

export interface Hands {
  /** null when done; else why the bench would not */
  act(event: BenchEvent): Refusal | null;
  /** what the tube, the needle and the dials show at this moment, or so many sweeps later; the next look overwrites it */
  look(sweepsLater?: number): BenchDisplay;
  /** says what is seen, or why the hand goes where it goes next; nothing follows from it */
  note(remark: Remark): void;
  /** hands off, for a while */
  wait(seconds: number): void;
  /** what the knobs' own scales say, and where the leads are: both lie open to the eye */
  knobs(): Controls;
  /** what is engraved round a knob */
  scale(knob: KnobId): Engraving;
  /** what the clock on the wall says since the job began */
  clockSeconds(): number;
  /** which pip, counted from the left, the card asks about once the markers have been off and on */
  pipAskedFor(proof: 'markersOffOn' | 'pipDown'): number | null;
  /** where the card asks for a height, divisions from the middle; null: at no place */
  placeAskedFor(proof: 'halveLevel' | 'skirts'): number | null;
  leads(): Readonly<Record<LeadId, string | null>>;
}

/** Turns a knob; what is so already is left alone. */
export function set(hands: Hands, control: ControlId, value: number | boolean | string): void {
  if (hands.knobs()[control] === value) return;
  const refused = hands.act({ type: 'controlSet', control, value });
  if (refused !== null) throw new Error(`the bench will not set ${control} to ${String(value)}: ${refused}`);
}

export function clip(hands: Hands, lead: LeadId, to: string | null): void {
  const now = hands.leads()[lead];
  if (now === to) return;
  const refused = hands.act(to === null ? { type: 'leadRemoved', lead } : { type: 'leadConnected', lead, to });
  if (refused !== null) throw new Error(`the bench will not take ${lead} to ${to}: ${refused}`);
}
