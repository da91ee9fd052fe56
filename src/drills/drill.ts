/** The drills: one skill each. What a look puts on the tube, what it asks, what may be answered, and what is told afterwards. Plain data. */
import type { BenchState } from '../bench/benchState.ts';
import type { BenchSetup } from '../bench/setup.ts';
import type { FaultKind } from '../receiver/faults/fault.ts';
import type { Part } from '../receiver/faults/partsTray.ts';

/** In the order in which they stand on the page: the name in the address, and the page of the handbook that explains what the drill is about. */
const DRILL_ROWS = [
  { id: 'phase-it', page: 'phasing' },
  { id: 'which-way', page: 'slug' },
  { id: 'per-cent', page: 'reading' },
  { id: 'find-the-trap', page: 'traps' },
  { id: 'overload', page: 'overload' },
  { id: 'zero', page: 's-curve' },
  { id: 'which-part', page: 'faults' },
  { id: 'what-lies-here', page: 'reading' },
] as const;
export type DrillId = (typeof DRILL_ROWS)[number]['id'];
export const DRILLS: readonly DrillId[] = DRILL_ROWS.map(({ id }) => id);

/** Page of the handbook, by drill. */
export const DRILL_PAGES = Object.fromEntries(DRILL_ROWS.map(({ id, page }) => [id, page])) as Readonly<
  Record<DrillId, string>
>;

/** A bench and how it stands: what the tube shows follows from these two. */
export interface Scene {
  readonly setup: BenchSetup;
  readonly state: BenchState;
}

/** What can stand at a place of a vision curve. */
const LANDMARKS = ['adjacentVision', 'sound', 'colour', 'middle', 'vision', 'adjacentSound'] as const;
export type Landmark = (typeof LANDMARKS)[number];

/** Ways in which a part fails that the shape of a curve tells, and that a sentence explains. */
export const TOLD_FAULTS = [
  'openResistor',
  'openCoupling',
  'weakStage',
  'leakyCoupling',
  'openBypass',
  'openWinding',
  'openCapacitor',
  'driftedCapacitor',
  'shortedTrap',
  'reversedDiode',
  'shortedDiode',
] as const satisfies readonly FaultKind[];
export type ToldFault = (typeof TOLD_FAULTS)[number];

export type Way = 'in' | 'out' | 'notThis';

export type Choice =
  | { readonly kind: 'way'; readonly way: Way }
  | { readonly kind: 'percent'; readonly percent: number }
  | { readonly kind: 'pip'; readonly number: number }
  | { readonly kind: 'overloaded'; readonly overloaded: boolean }
  | { readonly kind: 'part'; readonly part: Part; readonly slug: string | null }
  | { readonly kind: 'landmark'; readonly landmark: Landmark };

/** What is turned for an answer, and how near is near enough. */
export type Turn =
  | { readonly kind: 'phasing'; readonly withinDegrees: number }
  | { readonly kind: 'slug'; readonly slug: string; readonly withinHz: number };

export type Ask =
  | { readonly kind: 'choice'; readonly choices: readonly Choice[]; readonly right: number }
  | { readonly kind: 'turn'; readonly turn: Turn };

/** What the words of a question speak of. */
export interface Subject {
  /** the slug that it is about */
  readonly slug?: string;
  /** the pip that it is about, by its number from the left */
  readonly pip?: number;
  /** the pip's frequency, told only afterwards */
  readonly hz?: number;
}

/** What stood on the tube, in figures: for the sentences that say why. */
export type LookFacts =
  | { readonly drill: 'phase-it'; readonly lagDegrees: number }
  | { readonly drill: 'which-way'; readonly way: Way; readonly slug: string; readonly other: string | null }
  | { readonly drill: 'per-cent'; readonly percent: number; readonly heightDiv: number; readonly peakDiv: number }
  | { readonly drill: 'find-the-trap'; readonly slug: string; readonly pip: number; readonly meantHz: number }
  | { readonly drill: 'overload'; readonly overloaded: boolean; readonly compressionDb: number }
  | { readonly drill: 'zero'; readonly slug: string; readonly centreHz: number }
  | {
      readonly drill: 'which-part';
      readonly part: Part;
      readonly slug: string | null;
      readonly fault: ToldFault;
      readonly peakDb: number;
    }
  | { readonly drill: 'what-lies-here'; readonly landmark: Landmark; readonly hz: number };

export type CurveRole = 'was' | 'half' | 'wanted';

export interface Question {
  readonly drill: DrillId;
  readonly scene: Scene;
  /** a second curve in wax on the glass from the beginning; null: none */
  readonly wax: Scene | null;
  /** pips bear no frequency: what stands there is the question, or part of it */
  readonly unnamedPips: boolean;
  readonly ask: Ask;
  readonly subject: Subject;
  readonly told: LookFacts;
  /** the curves of the figure that comes with the answer */
  readonly after: readonly (readonly [look: CurveRole, scene: Scene])[];
}

/** What is given for an answer: a choice by its place, or the bench as it has been turned. */
export type Answer =
  | { readonly kind: 'choice'; readonly at: number }
  | { readonly kind: 'turned'; readonly state: BenchState };
