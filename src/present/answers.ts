/**
 * What the bench answers to what has just been done: steps that have their tick, lines that have come inside their limits, a proof whose finding was right, a part that was
 * replaced, an act that the care of the set forbids and nothing else tells of, and phases that are done.
 * A sealed job answers nothing of what only its report may tell. Pure.
 */
import { unreachable } from '../base/never.ts';
import type { IncidentKind } from '../bench/benchState.ts';
import { mostSaid } from '../bench/mostSaid.ts';
import { findingsOf, unreadable } from '../bench/witness.ts';
import { isPartOfSet } from '../receiver/faults/cure.ts';
import { jobSheet } from '../receiver/jobSheet.ts';
import type { ProofId } from '../scenario/proofId.ts';
import { PHASES, type Phase } from '../session/phase.ts';
import type { BenchPort } from './ports.ts';
import { stepMarks } from './steps.ts';

/** A tool that harms a slug is told beside the slug, and a live chassis ends the run. */
const TOLD = ['wrongPowerOrder', 'beforeEarth', 'hotTouch'] as const;
type ToldIncident = (typeof TOLD)[number];

export type Answer =
  /** counted from 0 */
  | { readonly kind: 'steps'; readonly steps: readonly number[] }
  | { readonly kind: 'lines'; readonly came: number; readonly outside: number }
  | { readonly kind: 'finding'; readonly proof: ProofId }
  /** the last answer did not fit: the act is to be done again */
  | { readonly kind: 'spent'; readonly proof: ProofId }
  | { readonly kind: 'part'; readonly part: string }
  | { readonly kind: 'care'; readonly incidents: readonly ToldIncident[] }
  /** phases that are done; only spoken, as the rail shows them */
  | { readonly kind: 'phases'; readonly phases: readonly Phase[] };

/** What is heard of it; a part that is replaced has the sound of its clip. `missed`: a lead let go beside every point. */
export type AnswerSound = 'stepDone' | 'lineIn' | 'foundRight' | 'missed';

export function soundOf({ kind }: Answer): AnswerSound | null {
  switch (kind) {
    case 'steps':
      return 'stepDone';
    case 'lines':
      return 'lineIn';
    case 'finding':
      return 'foundRight';
    case 'part':
    case 'phases':
    case 'spent':
    case 'care':
      return null;
    default:
      return unreachable(kind);
  }
}

/** How the job stands, as far as an answer depends on it. */
interface JobStanding {
  /** steps of the sheet that the bench has ticked, from 0 */
  readonly ticked: readonly number[];
  /** lines outside their limits when it was looked last, by name; null: not looked, or not told */
  readonly outside: readonly string[] | null;
  readonly foundRight: readonly ProofId[];
  readonly spent: readonly ProofId[];
  readonly replaced: readonly string[];
  /** one after the other, as they were written down */
  readonly incidents: readonly IncidentKind[];
  readonly phases: readonly Phase[];
  /** a slug has only just moved */
  readonly settling: boolean;
}

type Bench = Pick<BenchPort, 'receiver' | 'scenario' | 'setup' | 'session' | 'state'>;

function jobStanding({ receiver, scenario, setup, session, state }: Bench): JobStanding {
  const replaced = state().replaced.filter(isPartOfSet);
  const view = session();
  const phases = PHASES.filter((phase) => view.done[phase]);
  const settling = view.slugs !== null && view.slugs.moved.length > 0;
  if (scenario.sealed)
    return { ticked: [], outside: null, foundRight: [], spent: [], replaced, incidents: [], phases, settling };
  const findings = findingsOf(setup, state());
  return {
    ticked: stepMarks(jobSheet(receiver, scenario), view).flatMap((mark, step) => (mark === 'done' ? [step] : [])),
    outside: view.slugs === null || settling ? null : view.slugs.off.map(({ item }) => item.id),
    foundRight: scenario.proofs.filter((proof) => findings[proof] === 'right'),
    spent: scenario.proofs.filter(
      (proof) =>
        findings[proof] === 'again' &&
        (state().proofs[proof].finding?.said ?? 0) >= mostSaid(scenario) &&
        unreadable(setup, state(), proof) === null,
    ),
    replaced,
    incidents: state().incidents.map(({ kind }) => kind),
    phases,
    settling,
  };
}

/** `before`: how it stood last, with the lines as at the last look. What was done on purpose is told first. */
function answersTo(before: JobStanding, now: JobStanding): readonly Answer[] {
  const answers: Answer[] = [];
  for (const part of fresh(before.replaced, now.replaced)) answers.push({ kind: 'part', part });
  for (const proof of fresh(before.foundRight, now.foundRight)) answers.push({ kind: 'finding', proof });
  for (const proof of fresh(before.spent, now.spent)) answers.push({ kind: 'spent', proof });
  if (before.outside !== null && now.outside !== null) {
    const came = fresh(now.outside, before.outside).length;
    if (came > 0) answers.push({ kind: 'lines', came, outside: now.outside.length });
  }
  const steps = fresh(before.ticked, now.ticked);
  if (steps.length > 0) answers.push({ kind: 'steps', steps });
  const written = now.incidents.slice(before.incidents.length);
  const incidents = TOLD.filter((kind) => written.includes(kind));
  if (incidents.length > 0) answers.push({ kind: 'care', incidents });
  const phases = fresh(before.phases, now.phases);
  if (phases.length > 0) answers.push({ kind: 'phases', phases });
  return answers;
}

function fresh<T>(before: readonly T[], now: readonly T[]): readonly T[] {
  return now.filter((one) => !before.includes(one));
}

/** Each call tells what has come since the one before. */
export function createAnswers(bench: Bench): () => readonly Answer[] {
  let before = jobStanding(bench);
  return () => {
    if (bench.session().stage !== 'working') return [];
    const stands = jobStanding(bench);
    // While a slug moves nothing is known of the lines, nor of what hangs on them: they are compared with the last look, and a phase that still stands afterwards is not told again.
    const now = {
      ...stands,
      outside: stands.outside ?? before.outside,
      phases: stands.settling ? before.phases : stands.phases,
    };
    const answers = answersTo(before, now);
    before = now;
    return answers;
  };
}
