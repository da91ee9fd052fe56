/**
 * What a person has on paper: the service sheet with its printed curves, and the parts of the set by name. No element value stands here, and nothing of
 * the set on the bench: the curves are those of a sound set with its slugs right, as its tube would show them.
 */
import type { BenchEvent, ControlId } from '../../bench/benchEvent.ts';
import type { LeadId } from '../../bench/benchState.ts';
import type { ProcedureStep, SheetSetUp, Specification, TestPoint } from '../../receiver/receiver.ts';
import type { SpecItem } from '../../receiver/specification.ts';

export interface PrintedSlug {
  readonly id: string;
  /** the coil that it turns, by its name in the list of parts */
  readonly coil: string;
  readonly kind: 'slug' | 'trap';
  readonly head: 'hex' | 'blade';
  readonly trapHz: number | null;
  /** its core can be screwed right through the coil, and peaks a second time beyond the middle */
  readonly goesThrough: boolean;
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
  /** the same as levels of the carrier, as the sheet's figure shows them: the two together are the detector's own curve */
  readonly levels: readonly number[];
  /** the same volts with so many decibels more from the source than `levelDb`; empty where nobody needs them */
  readonly louder: readonly { readonly byDb: number; readonly volts: readonly number[] }[];
  /** frequencies at which traps work, of those that are printed */
  readonly trapsHz: readonly number[];
  /** of a stage that is swept from its own point: what each of its slugs does, at `hz`; empty for the whole curve, whose effects stand with its response */
  readonly effects: readonly SlugEffect[];
  /** the same of slugs in front of the stage that show from there all the same; empty where no part may have failed */
  readonly besides: readonly SlugEffect[];
}

/** A demand of the sheet, worked out on paper from what was read. */
export type JudgedDemand = SpecItem;

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
  /** whose grids hang on it, by their names in the parts tray */
  readonly valves: readonly string[];
}

/** What one slug by itself does to a curve of a sound set: the curve with its core in each of some places, all others right. From a notebook, not from the set. */
export interface SlugEffect {
  readonly slug: string;
  /** turns in from where it belongs, rising, nothing among them */
  readonly turns: readonly number[];
  /** for each of these, at the response's `lookAtHz`: levels against the highest of the right curve, with their sign where the curve has one */
  readonly levels: readonly Float64Array[];
}

export interface PrintedResponse {
  readonly id: string;
  readonly setUp: SheetSetUp;
  readonly specification: Specification;
  /** the frequencies at which the sheet wants to be looked at, and its demands on what was read there: levels of the carrier (an S-curve: volts with their sign) */
  readonly lookAtHz: readonly number[];
  readonly judge: (read: readonly number[]) => readonly JudgedDemand[];
  readonly effects: readonly SlugEffect[];
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
  /** for each response as set up, for each step of the procedure that sweeps another point, and where a part may have failed from every point that takes a signal */
  readonly curves: readonly PrintedCurve[];
  /** for the first response; empty where no part is in doubt */
  readonly chart: readonly ChartEntry[];
  readonly lines: readonly PrintedLine[];
  readonly proofs: readonly Extract<BenchEvent, { type: 'findingStated' }>['proof'][];
  /** a sealed job: nobody says whether something has failed */
  readonly sealed: boolean;
  /** it is asked at signing what was wrong */
  readonly asksDiagnosis: boolean;
  readonly timeLimitSeconds: number | null;
  /** widens every tolerance of the sheet */
  readonly toleranceFactor: number;
}
