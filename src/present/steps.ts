/**
 * Ticks on the steps of the sheet: a step is ticked while what it asks for is so, and no longer. A step of the set-up looks at the parts that it is about; one of
 * alignment at its own slugs and at the response that they shape; every other at its phase. In a sealed run the learner ticks the steps. Pure.
 */
import type { ProcedureStep, Receiver } from '../receiver/receiver.ts';
import { mainResponse, responseById } from '../receiver/responses.ts';
import type { OffLine } from '../session/alignment.ts';
import { type MissingCode, setUpCodes } from '../session/missing.ts';
import { PHASES, type SessionView } from '../session/phase.ts';

export type StepMark = 'done' | 'now' | 'toCome';

/** What keeps a step from its tick; of a line of the sheet that is missed, which, and the slug of this step that would mend it (turns in from where it belongs). */
export interface StepLack {
  readonly code: MissingCode;
  readonly line?: OffLine;
  readonly slug?: { readonly id: string; readonly turns: number };
}

export function stepMarks(receiver: Receiver, session: SessionView): readonly StepMark[] {
  const { ticked } = session;
  const done = receiver.procedure.map((_, i) => ticked?.includes(i) ?? lackOfStep(receiver, i, session) === null);
  const now = done.indexOf(false);
  return done.map((isDone, i) => (isDone ? 'done' : i === now ? 'now' : 'toCome'));
}

/** What still keeps the job from standing whole, phase by phase; null: nothing does, or (in a sealed run) nobody is told. */
export function firstMissing({ missing }: SessionView): string | null {
  return PHASES.flatMap((phase) => missing[phase])[0] ?? null;
}

/** Every line, every proof and the set-up stand: nothing is missing that a pass asks for. Never in a sealed run. */
export function everythingStands({ done, ticked }: SessionView): boolean {
  return ticked === null && PHASES.every((phase) => done[phase]);
}

/** Number of the step to do now, from 0; the last one when all are done. */
export function stepNow(marks: readonly StepMark[]): number {
  const at = marks.indexOf('now');
  return at >= 0 ? at : marks.length - 1;
}

/** The first thing that keeps step number `at` from its tick; null when nothing does. */
export function lackOfStep(receiver: Receiver, at: number, session: SessionView): StepLack | null {
  const step = receiver.procedure[at]!;
  if (step.phase === 'align') return lackOfAlignment(receiver, at, session);
  const missing = session.missing[step.phase] as readonly MissingCode[];
  if (step.parts === undefined) return first(missing);
  const about = step.parts.flatMap((part) => setUpCodes(part));
  return first(missing.filter((code) => about.includes(code)));
}

function first([code]: readonly MissingCode[]): StepLack | null {
  return code === undefined ? null : { code };
}

function lackOfAlignment(receiver: Receiver, at: number, { missing, slugs }: SessionView): StepLack | null {
  const step = receiver.procedure[at]!;
  if (missing.align.includes('nothingOnTube')) return { code: 'nothingOnTube' };
  if (slugs === null || step.slugs.some((id) => slugs.moved.includes(id))) return { code: 'slugTurning' };
  // A slug may shape more curves than the one that its step looks at.
  const caused = plainest(
    receiver,
    slugs.off.filter(({ cause }) => cause !== null && step.slugs.includes(cause.slug)),
  );
  if (caused !== undefined) return lackOf(caused);
  const worst = slugs.off.find((line) => isAbout(receiver, step, line));
  if (worst === undefined) return leftOver(receiver, at, slugs.off);
  const astray = step.slugs.find((id) => slugs.away[id] !== undefined);
  if (astray !== undefined) {
    return { code: 'linesOutside', line: worst, slug: { id: astray, turns: slugs.away[astray]! } };
  }
  // The last step about a response stands for the whole of it.
  return at === lastAbout(receiver, worst) ? lackOf(worst) : leftOver(receiver, at, slugs.off);
}

/** Of lines, the worst first, the one that is easiest to see: a height at a pip of the sheet before any other, and last a width, which nobody can read off at a glance. */
function plainest(receiver: Receiver, lines: readonly OffLine[]): OffLine | undefined {
  const atPip = ({ item, response }: OffLine): boolean =>
    item.toHz === null && responseById(receiver, response).setUp.markersHz.includes(item.hz ?? 0);
  return lines.find(atPip) ?? lines.find(({ item }) => item.kind !== 'bandwidth') ?? lines[0];
}

/** Lines of responses that no step is about fall to the last step of the alignment. */
function leftOver(receiver: Receiver, at: number, off: readonly OffLine[]): StepLack | null {
  const line = off.find((one) => lastAbout(receiver, one) === null);
  return line !== undefined && at === receiver.procedure.findLastIndex(({ phase }) => phase === 'align')
    ? lackOf(line)
    : null;
}

function lackOf(line: OffLine): StepLack {
  const { cause } = line;
  return { code: 'linesOutside', line, ...(cause === null ? {} : { slug: { id: cause.slug, turns: cause.turns } }) };
}

function isAbout(receiver: Receiver, { response }: ProcedureStep, line: OffLine): boolean {
  return (response ?? mainResponse(receiver).id) === line.response;
}

function lastAbout(receiver: Receiver, line: OffLine): number | null {
  const at = receiver.procedure.findLastIndex((step) => step.phase === 'align' && isAbout(receiver, step, line));
  return at < 0 ? null : at;
}
