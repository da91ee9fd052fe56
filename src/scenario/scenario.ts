/** What a scenario file says. `scenarioSchema.ts` checks files against it; unknown keys are errors. */

import type { Fault } from '../receiver/faults/fault.ts';
import type { Life } from './life.ts';
import type { Par } from './par.ts';
import type { ProofId } from './proofId.ts';

export interface ScenarioWords {
  /** one or two sentences on the card and at the top of the briefing */
  readonly brief: string;
  /** the story: whose set, what was noticed; a short paragraph */
  readonly story: string;
  /** what will have been learnt */
  readonly lesson: string;
}

export interface ScenarioStart {
  /** turns away from the nominal position, by slug id; a slug left out stands at nominal (plus scatter) */
  readonly slugs: Readonly<Record<string, number>>;
  /** seeded uniform scatter on every slug not named, turns */
  readonly randomTurns: number;
  /** controls that stand elsewhere than the bench's resting values */
  readonly controls: Readonly<Record<string, number | boolean | string>>;
  /** phases that a helper has already done */
  readonly prepared: readonly ('safe' | 'connect')[];
  /** leads that stand elsewhere than the sheet has them: a test point, or null for the tray; a lead left out stands as prepared */
  readonly leads?: Readonly<Partial<Record<'rf' | 'y' | 'earth' | 'biasA' | 'biasB', string | null>>>;
  /** slug that somebody has left a screwdriver of steel standing in; left out: none */
  readonly steelIn?: string;
}

export interface ScenarioBench {
  /** the bench's own lag between sweep and X drive, degrees */
  readonly phaseLagDegrees: number;
  /** the lead swaps sense of X (mirror needed) */
  readonly xSwapped: boolean;
  readonly mainsHz: 50 | 60;
  /** error of the tunable marker's dial, hertz (true = dial + error) */
  readonly dialErrorHz: number;
  /** error of the sweep source's centre dial, hertz (true = dial + error); left out: none */
  readonly centreErrorHz?: number;
}

export interface ScenarioAids {
  readonly hints: boolean;
  /** the tolerances of the sheet, in wax on the glass of the tube */
  readonly toleranceMarks: boolean;
}

export interface ScenarioWeights {
  readonly response: number;
  readonly truth: number;
  readonly proofs: number;
  readonly care: number;
  readonly economy: number;
}

export interface Scenario {
  readonly format: 'haystack-scenario';
  readonly version: 2;
  readonly id: string;
  /** card code, such as `S-01` */
  readonly code: string;
  readonly title: string;
  /** who wrote it, as the file says; left out: it does not say */
  readonly author?: string;
  readonly track: string;
  readonly order: number;
  readonly difficulty: 1 | 2 | 3;
  /** ids of scenarios that are best done before; none of them locks this one */
  readonly recommendedAfter: readonly string[];
  readonly receiver: string;
  /** responses of the receiver's sheet that are to be put right and are judged; left out: all */
  readonly responses?: readonly string[];
  readonly words: ScenarioWords;
  readonly seed: number;
  /** which set of the design stands on the bench; left out: the design itself, every part as printed */
  readonly set?: number;
  /** of a scenario that was made for one attempt at a sealed one: its number. No file of the course has it. */
  readonly attempt?: number;
  readonly start: ScenarioStart;
  readonly bench: ScenarioBench;
  /** what the bench does that a drawing does not; each left out stands at its mild value */
  readonly life?: Partial<Life>;
  readonly faults: readonly Fault[];
  /** each attempt at this sealed scenario is dealt other failed parts and bad contacts than those in `faults`, or none */
  readonly dealsFaults?: boolean;
  /** the slugs are right as they are found, and leaving them alone is the answer */
  readonly slugsRight?: boolean;
  readonly aids: ScenarioAids;
  readonly sealed: boolean;
  readonly timeLimitSeconds: number | null;
  /** widens every tolerance of the receiver's sheet */
  readonly toleranceFactor: number;
  readonly weights: ScenarioWeights;
  readonly proofs: readonly ProofId[];
  /** of a good run, as the certificate has it; a file that is handed out has none */
  readonly par: Par;
  readonly hints: readonly string[];
  /** of the texts in this file, a tag of BCP 47; left out: English */
  readonly language?: string;
  /** the same texts in other languages, by tag */
  readonly translations?: Readonly<Record<string, ScenarioText>>;
}

/** Everything that a scenario file says to people. */
export type ScenarioText = Pick<Scenario, 'title' | 'words' | 'hints'>;
