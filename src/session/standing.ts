/** How far the work is, phase by phase: nothing but what the facts of the moment say. A phase is done while its facts hold and un-does itself when they do not. */
import type { Facts } from '../bench/facts.ts';
import { missingByPhase, type Wants } from './missing.ts';
import { PHASES, type Phase, type SessionView } from './phase.ts';

export type Standing = Pick<SessionView, 'done' | 'current' | 'alignment' | 'missing'>;

/** `secondsAtRest`: since a slug last moved; null = none has. */
export function standingOf(facts: Facts | null, wants: Wants, secondsAtRest: number | null): Standing {
  if (facts === null) return NOTHING_KNOWN;
  const missing = missingByPhase(facts, wants, secondsAtRest);
  const done = byPhase((phase) => missing[phase].length === 0);
  return {
    done,
    current: PHASES.find((phase) => !done[phase]) ?? 'prove',
    alignment: alignmentOf(missing.align),
    missing,
  };
}

function byPhase<T>(of: (phase: Phase) => T): Readonly<Record<Phase, T>> {
  return { safe: of('safe'), connect: of('connect'), setUp: of('setUp'), align: of('align'), prove: of('prove') };
}

/** Before the bench has told its first facts. */
const NOTHING_KNOWN: Standing = {
  done: byPhase(() => false),
  current: 'safe',
  alignment: 'settled',
  missing: byPhase(() => []),
};

function alignmentOf(missing: readonly string[]): SessionView['alignment'] {
  if (missing.includes('noSlugTurned')) return 'idle';
  return missing.includes('slugTurning') ? 'turning' : 'settled';
}
