/**
 * Ticks on the steps of the sheet. A step of alignment is ticked when each of its slugs has been turned: that it was gone through, not that it is right,
 * which only the curve can say. A step of the set-up is ticked while the parts that it is about are right, every other while its phase is done. Pure.
 */
import type { BenchState } from '../bench/benchState.ts';
import type { ProcedureStep, Receiver } from '../receiver/receiver.ts';
import { setUpCodes } from '../session/missing.ts';
import type { SessionView } from '../session/phase.ts';

export type StepMark = 'done' | 'now' | 'toCome';

/** A tenth of a detent: less is no turn. */
const TURNED = 0.01;

export function turnedSlugs(start: BenchState, state: BenchState): ReadonlySet<string> {
  const turned = new Set<string>();
  for (const [id, slug] of Object.entries(state.slugs)) {
    const before = start.slugs[id];
    if (before === undefined || Math.abs(slug.screwTurns - before.screwTurns) > TURNED) turned.add(id);
  }
  return turned;
}

export function stepMarks(receiver: Receiver, session: SessionView, turned: ReadonlySet<string>): readonly StepMark[] {
  const done = receiver.procedure.map((step) =>
    step.phase === 'align' && step.slugs.length > 0
      ? step.slugs.every((id) => turned.has(id))
      : session.done[step.phase] || partsAreRight(step, session),
  );
  const now = done.indexOf(false);
  return done.map((isDone, i) => (isDone ? 'done' : i === now ? 'now' : 'toCome'));
}

/** Number of the step to do now, from 0; the last one when all are done. */
export function stepNow(marks: readonly StepMark[]): number {
  const at = marks.indexOf('now');
  return at >= 0 ? at : marks.length - 1;
}

/** The first thing that keeps this step from its tick; null when nothing does or nothing can be named. */
export function missingOfStep(step: ProcedureStep, session: SessionView): string | null {
  const missing = session.missing[step.phase];
  if (step.parts === undefined) return missing[0] ?? null;
  const codes: readonly string[] = step.parts.flatMap((part) => setUpCodes(part));
  return missing.find((code) => codes.includes(code)) ?? null;
}

function partsAreRight(step: ProcedureStep, session: SessionView): boolean {
  return step.parts !== undefined && session.missing.setUp.length > 0 && missingOfStep(step, session) === null;
}
