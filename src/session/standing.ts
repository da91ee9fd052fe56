/** How far the work is, phase by phase: nothing but what the facts of the moment say. A phase is done while its facts hold, and open again when they do not. */
import type { Facts } from '../bench/facts.ts';
import type { Findings } from '../bench/witness.ts';
import type { Alignment } from './alignment.ts';
import { missingByPhase, SETTLE_SECONDS, type Wants } from './missing.ts';
import { PHASES, type Phase, type SessionView } from './phase.ts';

export type Standing = Pick<SessionView, 'done' | 'current' | 'alignment' | 'missing' | 'slugs' | 'ticked'>;

/** `secondsAtRest`: since a slug last moved; null = none has. */
export function standingOf(
  facts: Facts | null,
  wants: Wants,
  secondsAtRest: number | null,
  slugs: Alignment | null,
  findings: Findings,
): Standing {
  if (facts === null) return NOTHING_KNOWN;
  const missing = missingByPhase(facts, wants, secondsAtRest, slugs, findings);
  const done = byPhase((phase) => missing[phase].length === 0);
  return {
    done,
    current: PHASES.find((phase) => !done[phase]) ?? 'prove',
    alignment: alignmentOf(facts, secondsAtRest),
    missing,
    slugs,
    ticked: null,
  };
}

/** A sealed run stands where the learner says. */
export function standingAsTicked(ticked: readonly number[], { steps }: Wants): Standing {
  const done = byPhase((phase) => steps.every((of, step) => of !== phase || ticked.includes(step)));
  return { ...NOTHING_KNOWN, done, current: PHASES.find((phase) => !done[phase]) ?? 'prove', ticked };
}

function byPhase<T>(of: (phase: Phase) => T): Readonly<Record<Phase, T>> {
  return { safe: of('safe'), connect: of('connect'), setUp: of('setUp'), align: of('align'), prove: of('prove') };
}

/** Before the bench has told its first facts. */
const NOTHING_KNOWN: Standing = {
  done: byPhase(() => false),
  current: 'safe',
  alignment: 'idle',
  missing: byPhase(() => []),
  slugs: null,
  ticked: null,
};

function alignmentOf({ slugsTouched }: Facts, secondsAtRest: number | null): SessionView['alignment'] {
  if (slugsTouched === 0) return 'idle';
  return secondsAtRest !== null && secondsAtRest < SETTLE_SECONDS ? 'turning' : 'settled';
}
