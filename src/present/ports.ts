/** What the pages may ask of the rest: state, picture and facts to read, events to send. The app hands it down; views hold no bench state. */

import type { Applied, BenchEvent, Refusal } from '../bench/benchEvent.ts';
import type { BenchState } from '../bench/benchState.ts';
import type { BenchDisplay } from '../bench/display.ts';
import type { Facts } from '../bench/facts.ts';
import type { PartReading } from '../bench/partMeter.ts';
import type { BenchSetup } from '../bench/setup.ts';
import type { TubeReading } from '../bench/tubeReadings.ts';
import type { RunFile } from '../files/runFile.ts';
import type { BlindTurn } from '../grading/blindTurns.ts';
import type { Report } from '../grading/report.ts';
import type { Receiver } from '../receiver/receiver.ts';
import type { EndlessDifficulty } from '../scenario/endlessId.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { SessionView } from '../session/phase.ts';
import type { ScenarioEntry } from './scenarioEntry.ts';

export interface BenchPort {
  readonly receiver: Receiver;
  readonly scenario: Scenario;
  /** receiver, deck and scenario together: ranges of controls, points that take a lead, the sheet's own figures are asked of it */
  readonly setup: BenchSetup;
  state(): BenchState;
  /** the picture of this moment; the same object until something changes */
  display(): BenchDisplay;
  facts(): Facts;
  /** what the meter says with its prods across a part of the tray, as the set now is */
  partReading(part: string): PartReading;
  session(): SessionView;
  /** time on the bench, seconds, without the time suspended */
  elapsedSeconds(): number;
  /** sends an act; a refusal changes nothing and is also shown where the act was tried */
  act(event: BenchEvent): Applied;
  /** continuous turning and dragging: gathered and sent at most 30 times a second */
  actSoon(event: BenchEvent): void;
  begin(): void;
  /** sealed run: ticks a step of the sheet, from 0, or takes the tick back */
  tickStep(step: number): void;
  /** asks to sign off (opens the question), goes back to work, or signs */
  askToSign(): void;
  keepWorking(): void;
  sign(): void;
  abandon(): void;
  suspend(): void;
  resume(): void;
  /** called at most once an animation frame, when something changed */
  subscribe(listener: () => void): () => void;
  /** called when the bench's clock has counted another second, whether or not anything else changed; in steps of five where nothing has been done for a while and no time is about to run out */
  onSecond(listener: () => void): () => void;
  /** told of each refusal */
  onRefused(listener: (reason: Refusal, event: BenchEvent) => void): () => void;
}

/** What a card of the course shows. */
export interface CourseCard {
  readonly scenario: ScenarioEntry;
  readonly best: number | null;
  /** one of its runs has passed */
  readonly passed: boolean;
  /** a run lies half done on the bench */
  readonly onBench: { readonly turns: number; readonly seconds: number } | null;
  /** what should come before is not done yet: drawn dashed, and opens all the same */
  readonly early: boolean;
}

/** Hears who is about to press something, so that what pressing takes can be made ready. */
export interface Approach {
  /** the pointer has come over it, or has gone again */
  near(here: boolean): void;
  /** a finger, a key or the pointer's button is at it */
  reach(): void;
}

export interface CoursePort {
  /** of the course */
  cards(): readonly CourseCard[];
  /** of scenarios that the user has opened from files */
  own(): readonly CourseCard[];
  /** false while the logbook opens: no card has a mark yet */
  runsRead(): boolean;
  /** cards that could not be read, by code or whatever else is known of them */
  leftOut(): readonly string[];
  open(scenarioId: string): void;
  /** of the ways into this scenario, while nobody has gone it yet */
  approach(scenarioId: string): Approach;
  /** a seed word for the endless track that nobody has had yet */
  newSeed(): string;
  openEndless(difficulty: EndlessDifficulty, seed: string): void;
  subscribe(listener: () => void): () => void;
}

/** The lines of a response on the tube, before a slug was turned and at the end. */
export interface ReadingsKept {
  readonly response: string;
  readonly found: readonly TubeReading[];
  /** null: at the end the bench stood for another curve */
  readonly left: readonly TubeReading[] | null;
}

export interface ShownRunBeside {
  readonly events: RunFile['events'];
  readonly passed: boolean;
}

/** The technician's run of the job that a report is about. */
export interface ShownBeside {
  /** has it made; the outcome is null when it was called off */
  make(): { readonly outcome: Promise<ShownRunBeside | null>; callOff(): void };
  /** to where it can be watched */
  watch(): void;
}

export interface ReportPort {
  readonly report: Report;
  readonly run: RunFile;
  readonly receiver: Receiver;
  /** turns that were made by a picture that lied, for the findings; left out = none are looked for */
  readonly blind?: readonly BlindTurn[];
  /** of each response that was recorded as found; left out = none */
  readonly readings?: readonly ReadingsKept[];
  /** left out: a sealed job, which is shown to nobody */
  readonly beside?: ShownBeside;
  /** best score before this run; null when there was none */
  readonly previousBest: number | null;
  /** the picture, state and session at a time of the run, for the replay (seconds) */
  at(seconds: number): { readonly state: BenchState; readonly display: BenchDisplay; readonly session: SessionView };
  /** hands the run file to the browser as a download */
  exportRun(): void;
  /** hands out a text of the report as a file: `csv`, its lines, `svg`, its figure */
  save(kind: 'csv' | 'svg', text: string): void;
  again(): void;
  /** of `again`; left out: it takes nothing that could be made ready */
  readonly againApproach?: Approach;
  toCourse(): void;
}
