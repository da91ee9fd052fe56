/** The bench as one plain, serialisable value. Everything that the tube, the meter and the dial show is a function of it. */

import type { Diagnosis } from '../scenario/diagnosis.ts';
import type { SeenAnswer } from '../scenario/findingAnswer.ts';
import type { ProofId } from '../scenario/proofId.ts';
import type { ValuesOf } from './controls/row.ts';
import type { CONTROL_ROWS } from './controls/rows.ts';

export const LEAD_IDS = ['rf', 'y', 'x', 'earth', 'biasA', 'biasB', 'meter'] as const;
export type LeadId = (typeof LEAD_IDS)[number];

/** A test point of the receiver, or one of the two ends that every bench has. */
export type LeadEnd = string;
/** Where the X lead goes. */
export const TUBE_X: LeadEnd = 'tube';
/** The fenced high-tension corner of the plan, as an end that a careless lead may be put on. */
export const HOT_CORNER: LeadEnd = 'hot';

export const TOOL_IDS = ['hex', 'blade', 'steel'] as const;
export type ToolId = (typeof TOOL_IDS)[number];

/** Every knob and switch, in the unit that its name says. */
export type Controls = ValuesOf<typeof CONTROL_ROWS>;
/** What the tip of the Y lead is: a plain wire, a wire behind 10 kilohm, or the demodulator probe. */
export type YTip = Controls['yTip'];
export type Phosphor = Controls['phosphor'];

export interface SlugState {
  /** where the screw stands, in turns from the outer stop (0 = out, travel = in); finite */
  readonly screwTurns: number;
  /** where the core stands: follows the screw less the backlash */
  readonly coreTurns: number;
  readonly cracked: boolean;
  /** how far it was forced past a stop, turns in all */
  readonly forcedTurns: number;
  /** wear from wrong heads, 0 to 1 */
  readonly wear: number;
}

/** Something that costs points, with the second at which it happened. */
export type IncidentKind =
  | 'hotChassis' // powered on, or a lead clipped, on a live-chassis set without the isolating transformer
  | 'wrongPowerOrder' // leads handled or isolation changed with the power on
  | 'beforeEarth' // a lead clipped to a chassis that may be live, or to a set that is on, before the earth strap
  | 'steelTool'
  | 'wrongHead'
  | 'forcedStop'
  | 'crackedSlug'
  | 'hotTouch' // a lead put on the fenced high-tension corner
  | 'goodPartReplaced';

export interface Incident {
  readonly kind: IncidentKind;
  readonly atSeconds: number;
  /** slug, lead or part concerned */
  readonly subject: string;
}

/** What the learner says was seen during a proof. */
export interface Finding {
  readonly answer: SeenAnswer | 'notLooked';
  /** read off the graticule, divisions; null = none was given */
  readonly figure: number | null;
  readonly atSeconds: number;
  /** how often it has been said since the act */
  readonly said: number;
}

export interface StoodValue {
  readonly value: number;
  readonly far: boolean;
  readonly away?: { readonly bench: BenchState; readonly seconds: number };
}

/** How far an act of proof has come: the value left behind, waiting for the return. */
export interface ProofWatch {
  readonly done: boolean;
  readonly doneAtSeconds: number | null;
  /** between the two halves of an act: the value to come back to (1 where the act is off and on); null when nothing is half done */
  readonly from: number | null;
  /** values at which the watched knob stood since the last slug moved, whether it has been far enough away since, and where it then rested longest */
  readonly stood?: readonly StoodValue[];
  /** when the knob that it watches last moved */
  readonly movedAtSeconds?: number;
  /** once it is done: the bench half way through, and after it */
  readonly act?: { readonly away: BenchState; readonly rest: BenchState };
  /** what the learner says was seen */
  readonly finding?: Finding;
}

const NOT_BEGUN: ProofWatch = { done: false, doneAtSeconds: null, from: null };

/** No proof done and none begun: at the start, and whenever a slug has moved. */
export const NO_PROOFS: Readonly<Record<ProofId, ProofWatch>> = {
  halveLevel: NOT_BEGUN,
  markersOffOn: NOT_BEGUN,
  touchEarth: NOT_BEGUN,
  swingPhase: NOT_BEGUN,
  skirts: NOT_BEGUN,
  bias: NOT_BEGUN,
  liftCrystal: NOT_BEGUN,
  pipDown: NOT_BEGUN,
};

/** How warm the set was when its power was last switched, 0 (the room's warmth) to 1. */
export interface Heat {
  readonly atSeconds: number;
  readonly heater: number;
  readonly chassis: number;
}

export interface BenchState {
  /** seconds since the run began, taken from the last event */
  readonly seconds: number;
  readonly cautionsAcknowledged: boolean;
  readonly isolated: boolean;
  readonly powered: boolean;
  /** when the power was last switched; it counts only in a scenario that begins cold */
  readonly heat: Heat;
  /** where each lead's free end is; null = in the tray */
  readonly leads: Readonly<Record<LeadId, LeadEnd | null>>;
  /** the generator's lead has been clipped on, now or before */
  readonly rfHasBeenOn: boolean;
  readonly controls: Controls;
  /** crystals in the rack's sockets, hertz, at most 8 */
  readonly crystals: readonly number[];
  readonly slugs: Readonly<Record<string, SlugState>>;
  /** tool in the hand */
  readonly tool: ToolId | null;
  /** slug that the tool is standing in: steel detunes it while it is there */
  readonly toolIn: string | null;
  readonly replaced: readonly string[];
  /** the capacitor that a good one is clipped across; null = none */
  readonly bridged: string | null;
  readonly incidents: readonly Incident[];
  readonly proofs: Readonly<Record<ProofId, ProofWatch>>;
  /** turns of all slugs added up, whichever way */
  readonly turnsMade: number;
  readonly lastSlugTurnSeconds: number | null;
  readonly hintsTaken: number;
  /** a helper has set the bench up */
  readonly helped: boolean;
  /** the bench when the lines of a response were recorded as found, by its id */
  readonly asFound: Readonly<Record<string, BenchState>>;
  /** what the learner says was wrong; null = nothing has been said */
  readonly diagnosis: (Diagnosis & { readonly atSeconds: number }) | null;
  readonly signedOff: boolean;
  readonly stopped: 'hotChassis' | null;
}
