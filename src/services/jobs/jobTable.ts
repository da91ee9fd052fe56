/** What can be done beside the page: for each job what it is given, what comes of it, and how it tells how far it is. Plain data, so that it can cross to a worker. */

import type { Result } from '../../base/result.ts';
import type { BenchSetup } from '../../bench/setup.ts';
import type { FoundIdea } from '../../certify/attempt.ts';
import type { Certification, CertifyProblem } from '../../certify/certificate.ts';
import type { DrillId, Question } from '../../drills/drill.ts';
import type { TimedEvent } from '../../files/runFile.ts';
import type { BlindTurn } from '../../grading/blindTurns.ts';
import type { Report } from '../../grading/report.ts';
import type { HandedOut } from '../../judge/handedOut.ts';
import type { Judged } from '../../judge/judged.ts';
import type { SetParts } from '../../receiver/individualSet.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { Saying } from '../../technician/atBench.ts';
import type { Nearest } from '../../workshop/nearest.ts';

export interface JobTable {
  /** makes and certifies the endless track's scenario of an id; null where none can be had */
  readonly endless: { readonly order: { readonly id: string }; readonly outcome: Scenario | null };
  /** can this scenario be solved, and at what par? */
  readonly certify: {
    /** `design`: of a receiver that is not of the project; left out: the project's own of that name */
    readonly order: { readonly scenario: Scenario; readonly design?: SetParts };
    readonly outcome: Certification;
  };
  /** the smallest change of a draft that was refused for these reasons with which it would not be; null: none was found */
  readonly nearest: {
    readonly order: {
      readonly draft: Scenario;
      readonly problems: readonly CertifyProblem[];
      readonly design: SetParts;
    };
    readonly outcome: Nearest | null;
  };
  /** the bench of a scenario, with the set that it deals */
  readonly setUp: {
    readonly order: { readonly design: SetParts; readonly scenario: Scenario };
    readonly outcome: Result<BenchSetup>;
  };
  /** the bench of one attempt at a sealed scenario, dealt afresh */
  readonly attempt: {
    readonly order: { readonly design: SetParts; readonly scenario: Scenario; readonly attempt: number };
    readonly outcome: Result<BenchSetup>;
  };
  /** every `step`-th of its ideas from `first` on, to the first that can be certified; null: none of them */
  readonly ideas: {
    readonly order: Order<'attempt'> & { readonly first: number; readonly step: number };
    readonly outcome: FoundIdea | null;
  };
  /** grades a run that is known to fit its bench */
  readonly grade: { readonly order: RunOnBench; readonly outcome: Report };
  /** grades it and looks back on it: all that a report is made of. `rules`: those that it was made under; left out: of today */
  readonly report: { readonly order: RunOnBench & { readonly rules?: number }; readonly outcome: GradedRun };
  /** the technician does it, and says what he sees */
  readonly demonstrate: { readonly order: { readonly setup: BenchSetup }; readonly outcome: ShownRun };
  /** one look of a drill */
  readonly drill: {
    readonly order: { readonly drill: DrillId; readonly seed: string; readonly design: SetParts };
    readonly outcome: Question;
  };
  /** judges the text of a run file as it was handed in */
  readonly judge: {
    /** `handedOut`: scenarios that lie beside the runs, besides the course and the shelf of one's own */
    readonly order: { readonly text: string; readonly file: string; readonly handedOut?: readonly HandedOut[] };
    readonly outcome: Judged;
  };
}

export interface RunOnBench {
  readonly setup: BenchSetup;
  readonly events: readonly TimedEvent[];
}

/** The technician's run, signed off. */
export interface ShownRun {
  readonly events: readonly TimedEvent[];
  readonly said: readonly Saying[];
  readonly passed: boolean;
}

export interface GradedRun {
  readonly report: Report;
  readonly blind: readonly BlindTurn[];
}

export type JobName = keyof JobTable;
export type Order<N extends JobName> = JobTable[N]['order'];
export type Outcome<N extends JobName> = JobTable[N]['outcome'];

/** Hears the share of a job that is done, 0 to 1, never falling. */
export type OnShare = (share: number) => void;

/** What a worker offers. */
export interface Workbench {
  run<N extends JobName>(name: N, order: Order<N>, onShare: OnShare): Promise<Outcome<N>>;
}
