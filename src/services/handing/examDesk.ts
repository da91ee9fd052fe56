/** What an opened exam allows: which scenario may be done now, how much time is left, whose worth is told. The first page asks it too, so it reads no files. Worked out from the shelf, the logbook and the day's clock. */
import type { KeptRun } from '../store/keptRuns.ts';
import type { OwnExam } from '../store/ownExam.ts';

export type ExamGate =
  /** it lies open, as the try of this number */
  | { readonly kind: 'open'; readonly turn: number }
  | { readonly kind: 'signed' }
  /** another has to be signed first */
  | { readonly kind: 'waits'; readonly after: string }
  | { readonly kind: 'timeUp' }
  | { readonly kind: 'handedIn' };

export type Opened = OwnExam & { readonly opened: NonNullable<OwnExam['opened']> };

/** The exam that is going on; null: none. */
export function goingOn(exams: readonly OwnExam[]): Opened | null {
  return exams.find((one): one is Opened => one.opened !== null && !one.opened.handedIn) ?? null;
}

/** milliseconds; null: no limit */
export function timeLeft({ minutes, opened }: Opened, nowMs: number): number | null {
  return minutes === null ? null : Math.max(0, opened.openedAtMs + minutes * 60_000 - nowMs);
}

/** Runs that were signed in the exam, in order. */
export function runsOf({ opened }: Opened, kept: readonly KeptRun[]): readonly KeptRun[] {
  return kept.filter(
    ({ scenarioId, signedAtMs }) => opened.scenarios.includes(scenarioId) && (signedAtMs ?? 0) >= opened.openedAtMs,
  );
}

/** Runs whose worth nobody is told yet: the exam that they belong to tells it when it is handed in. */
export function heldBack(exams: readonly OwnExam[], kept: readonly KeptRun[]): ReadonlySet<string> {
  const exam = goingOn(exams);
  if (exam === null || exam.opened.results === 'each') return new Set();
  return new Set(runsOf(exam, kept).map(({ runId }) => runId));
}

/** milliseconds on the bench's own clock; null: no time is stated for this scenario */
export function timeOnBench({ opened }: Opened, id: string): number | null {
  const minutes = opened.minutesEach?.[opened.scenarios.indexOf(id)] ?? null;
  return minutes === null ? null : minutes * 60_000;
}

export function gateOf(exam: Opened, id: string, kept: readonly KeptRun[], nowMs: number): ExamGate {
  const { opened } = exam;
  if (opened.handedIn) return { kind: 'handedIn' };
  const runs = runsOf(exam, kept);
  const turn = runs.filter(({ scenarioId }) => scenarioId === id).length;
  if (turn > 0 && opened.attempts === 'one') return { kind: 'signed' };
  if (timeLeft(exam, nowMs) === 0) return { kind: 'timeUp' };
  if (opened.order === 'listed') {
    const before = opened.scenarios.slice(0, opened.scenarios.indexOf(id));
    const after = before.find((one) => !runs.some(({ scenarioId }) => scenarioId === one));
    if (after !== undefined) return { kind: 'waits', after };
  }
  return { kind: 'open', turn };
}
