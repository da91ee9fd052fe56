/** What a candidate's runs come to as a whole: of each scenario of the sheet the run that counts, how many are passed, and whether that is enough for the sheet's mark. */
import type { SheetTerms } from '../files/eveningTerms.ts';
import type { ClassRow } from './classList.ts';

/** What is asked of a run here; a row of a class has all of it. */
export type WholeRun = Pick<ClassRow, 'scenario' | 'title' | 'verdict' | 'passed' | 'points' | 'marks' | 'runId'> & {
  /** another learner's file has the same acts */
  readonly shared: boolean;
};

export interface WholeItem {
  readonly id: string;
  /** the run that counts; null: none was handed in that can count */
  readonly run: WholeRun | null;
  /** runs of it that were handed in */
  readonly tries: number;
  /** those of them that cannot count as they are: altered, unfinished, under other rules and the like */
  readonly doubted: number;
  /** minutes that the sheet gives; null: it states none */
  readonly minutes: number | null;
  /** the run that counts took longer */
  readonly late: boolean;
  /** passed, and in its time */
  readonly passed: boolean;
}

export interface Whole {
  readonly items: readonly WholeItem[];
  readonly passed: number;
  /** null: the sheet has no mark */
  readonly mark: number | null;
  /** unsure: it hangs on acts that somebody else handed in as well */
  readonly standing: 'passed' | 'missed' | 'unsure' | 'noMark';
  /** on the bench, of the runs that count */
  readonly seconds: number;
  /** mean over all scenarios of the sheet; what is not there has none */
  readonly points: number;
}

export function wholeOf({ scenarios, minutesEach, passMark }: SheetTerms, runs: readonly WholeRun[]): Whole {
  const items = scenarios.map((id, i) => itemOf(id, minutesEach?.[i] ?? null, runs));
  const passed = items.filter((item) => item.passed).length;
  const mark = passMark ?? null;
  const alone = runs.filter(({ shared }) => !shared);
  const surely = scenarios.filter((id, i) => itemOf(id, minutesEach?.[i] ?? null, alone).passed).length;
  return {
    ...{ items, passed, mark },
    standing: mark === null ? 'noMark' : surely >= mark ? 'passed' : passed >= mark ? 'unsure' : 'missed',
    seconds: items.reduce((sum, { run }) => sum + (run?.marks?.seconds ?? 0), 0),
    points: items.reduce((sum, { run }) => sum + (run?.points ?? 0), 0) / Math.max(1, items.length),
  };
}

/** Of several runs the best counts: one that is passed in its time before any other, then the one with most points, then the first. */
function itemOf(id: string, minutes: number | null, runs: readonly WholeRun[]): WholeItem {
  const mine = runs.filter(({ scenario }) => scenario === id);
  const trusted = mine.filter(
    ({ verdict, points, marks }) => verdict === 'verified' && points !== null && marks !== null,
  );
  const isLate = ({ marks }: WholeRun): boolean => minutes !== null && marks!.seconds > minutes * 60;
  const passes = (run: WholeRun): boolean => run.passed === true && !isLate(run);
  const [best] = [...trusted].sort((a, b) => Number(passes(b)) - Number(passes(a)) || b.points! - a.points!);
  return {
    ...{ id, minutes, run: best ?? null, tries: mine.length, doubted: mine.length - trusted.length },
    late: best !== undefined && isLate(best),
    passed: best !== undefined && passes(best),
  };
}
