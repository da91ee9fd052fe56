/**
 * What a person has on paper: the service sheet with its printed curves, and the parts of the set by name. No element value stands here, and nothing of
 * the set on the bench: the curves are those of a sound set with its slugs right, as its tube would show them.
 */
import type { ControlId } from '../../bench/benchEvent.ts';
import type { LeadId } from '../../bench/benchState.ts';
import type { ProcedureStep, SheetSetUp, Specification, TestPoint } from '../../receiver/receiver.ts';

export interface PrintedSlug {
  readonly id: string;
  /** the coil that it turns, by its name in the list of parts */
  readonly coil: string;
  readonly kind: 'slug' | 'trap';
  readonly head: 'hex' | 'blade';
  readonly trapHz: number | null;
  readonly travelTurns: number;
}

/** A curve as the tube of a sound set shows it, volts at the Y input with their sign. */
export interface PrintedCurve {
  readonly response: string;
  readonly injectAt: string;
  /** the source's attenuator for these volts */
  readonly levelDb: number;
  readonly hz: readonly number[];
  readonly volts: readonly number[];
}

/** What the tube shows of a set that is sound but for one part, from each point that the sheet sweeps. A part may stand there more than once. */
export interface ChartEntry {
  readonly part: string;
  readonly voltsFrom: Readonly<Record<string, readonly number[]>>;
}

/** What a bias line gives left to itself with no signal, with the meter on it at that range. */
export interface PrintedLine {
  readonly at: string;
  readonly meterRangeVolts: number;
  readonly restVolts: number;
}

export interface PrintedResponse {
  readonly id: string;
  readonly setUp: SheetSetUp;
  readonly specification: Specification;
  /** where the leads go for the overall curve, what is screwed to them, and how the knobs stand, in the order in which they are set */
  readonly leads: Readonly<Record<LeadId, string | null>>;
  readonly fittings: readonly PrintedSetting[];
  readonly knobs: readonly PrintedSetting[];
}

export type PrintedSetting = readonly [control: ControlId, value: number | boolean | string];

export interface PrintedSheet {
  readonly mains: boolean;
  readonly slugs: readonly PrintedSlug[];
  readonly testPoints: readonly Pick<TestPoint, 'id' | 'role' | 'inject'>[];
  /** those that this job asks for */
  readonly responses: readonly PrintedResponse[];
  readonly procedure: readonly ProcedureStep[];
  /** for each response as set up, and for each step of the procedure that sweeps another point */
  readonly curves: readonly PrintedCurve[];
  /** for the first response; empty where no part is in doubt */
  readonly chart: readonly ChartEntry[];
  readonly lines: readonly PrintedLine[];
  readonly proofs: readonly string[];
  readonly timeLimitSeconds: number | null;
  /** widens every tolerance of the sheet */
  readonly toleranceFactor: number;
}
