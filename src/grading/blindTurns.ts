/**
 * Turns that were made by a picture that lied: at the start of each bout of turning, was there a picture, was it in phase, unforced, at the sheet's bias?
 * It gives no points of its own (the response and the set-up have theirs); the report uses it to say when things went wrong.
 */

import { applyEvent } from '../bench/applyEvent.ts';
import { createBench } from '../bench/bench.ts';
import type { Facts } from '../bench/facts.ts';
import { type BenchSetup, initialState } from '../bench/setup.ts';
import type { Receiver } from '../receiver/receiver.ts';
import type { TimedEvent } from '../run/runFile.ts';
import { roundFigure } from './falling.ts';
import { COMPRESSION_LIMIT_DB, PHASE_TOLERANCE_DEGREES } from './limits.ts';

export type Lie = 'noPicture' | 'overloaded' | 'phaseOff' | 'biasOff';

export interface BlindTurn {
  readonly lie: Lie;
  readonly slug: string;
  /** net turns of the bout, positive = in */
  readonly turns: number;
  readonly atSeconds: number;
}

/** A slug that rests longer than this, or another slug, begins a new bout. */
const BOUT_GAP_MS = 3000;
/** A residual of phase must be this much beyond its tolerance before it fools anybody. */
const FOOLING_PHASE = 2;

export function blindTurns(setup: BenchSetup, events: readonly TimedEvent[]): readonly BlindTurn[] {
  const bench = createBench(setup);
  const found: BlindTurn[] = [];
  let state = initialState(setup);
  let bout: { slug: string; untilMs: number; blind: BlindTurn | null } | null = null;
  for (const timed of events) {
    const { atMs, ...event } = timed;
    if (event.type === 'slugTurned') {
      if (bout === null || bout.slug !== event.slug || atMs - bout.untilMs > BOUT_GAP_MS) {
        if (bout?.blind) found.push(bout.blind);
        const lie = lieOf(bench.facts(state), setup.receiver);
        bout = {
          slug: event.slug,
          untilMs: atMs,
          blind: lie === null ? null : { lie, slug: event.slug, turns: 0, atSeconds: atMs / 1000 },
        };
      }
      const turns = roundFigure((bout.blind?.turns ?? 0) + event.turns, 'turns');
      bout = { ...bout, untilMs: atMs, blind: bout.blind === null ? null : { ...bout.blind, turns } };
    }
    const applied = applyEvent(setup, state, event, atMs / 1000);
    if (!applied.ok) break;
    state = applied.state;
  }
  if (bout?.blind) found.push(bout.blind);
  return found;
}

function lieOf(facts: Facts, receiver: Receiver): Lie | null {
  if (!facts.xConnected || facts.detectedPeakVolts <= 0) return 'noPicture';
  if (facts.compressionDb > COMPRESSION_LIMIT_DB) return 'overloaded';
  if (facts.sweeping && Math.abs(facts.residualPhaseDegrees) > FOOLING_PHASE * PHASE_TOLERANCE_DEGREES)
    return 'phaseOff';
  const tolerance = receiver.setUp.bias?.toleranceVolts ?? null;
  if (tolerance !== null && facts.biasErrorVolts !== null && Math.abs(facts.biasErrorVolts) > tolerance)
    return 'biasOff';
  return null;
}
