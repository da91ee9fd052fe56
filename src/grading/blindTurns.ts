/**
 * Turns that were made by a picture that lied: at the start of each bout of turning, in which of the known ways did the bench deceive?
 * It gives no points of its own (the response and the set-up have theirs); the report uses it to say when things went wrong.
 */

import { applyEvent } from '../bench/applyEvent.ts';
import { createBench } from '../bench/bench.ts';
import type { Facts } from '../bench/facts.ts';
import { type BenchSetup, initialState } from '../bench/setup.ts';
import type { TimedEvent } from '../files/runFile.ts';
import type { Receiver } from '../receiver/receiver.ts';
import { roundMeasured } from './falling.ts';
import { isOff, type SetUpRuleNumber, standingBy } from './standing.ts';

/** The ways in which a bench deceives, worst first: of several at once the first is told. */
export const LIES = [
  'noPicture',
  'wrongPoint',
  'overloaded',
  'phaseOff',
  'tooFast',
  'agcFree',
  'biasOff',
  'probeLoads',
  'steelIn',
  'bridged',
  'notEarthed',
  'hum',
  'unterminated',
  'markersThrough',
  'pipsTooHigh',
  'acCoupled',
  'verticalLag',
  'retraceShown',
  'xReversed',
  'dialOff',
] as const;
export type Lie = (typeof LIES)[number];

export interface BlindTurn {
  readonly lie: Lie;
  readonly slug: string;
  /** net turns of the bout, positive = in */
  readonly turns: number;
  readonly atSeconds: number;
}

/** A slug that rests longer than this, or another slug, starts a new bout. */
const BOUT_GAP_MS = 3000;
/** No honest run comes near so many bouts; each costs a look at the bench. */
const MOST_BOUTS = 1000;
/** A residual of phase must be this far beyond its tolerance before it fools anybody. */
const FOOLING_PHASE_DEGREES = 2;

export function blindTurns(setup: BenchSetup, events: readonly TimedEvent[]): readonly BlindTurn[] {
  const bench = createBench(setup);
  const found: BlindTurn[] = [];
  let state = initialState(setup);
  let bouts = 0;
  let bout: { slug: string; untilMs: number; blind: BlindTurn | null } | null = null;
  for (const timed of events) {
    const { atMs, ...event } = timed;
    if (event.type === 'slugTurned') {
      if (bout === null || bout.slug !== event.slug || atMs - bout.untilMs > BOUT_GAP_MS) {
        if (bout?.blind) found.push(bout.blind);
        bouts++;
        if (bouts > MOST_BOUTS) return found;
        const lie = lieOf(bench.facts(state), setup.receiver);
        bout = {
          slug: event.slug,
          untilMs: atMs,
          blind: lie === null ? null : { lie, slug: event.slug, turns: 0, atSeconds: atMs / 1000 },
        };
      }
      const turns = roundMeasured((bout.blind?.turns ?? 0) + event.turns, 'turns');
      bout = { ...bout, untilMs: atMs, blind: bout.blind === null ? null : { ...bout.blind, turns } };
    }
    const applied = applyEvent(setup, state, event, atMs / 1000);
    if (!applied.ok) break;
    state = applied.state;
  }
  if (bout?.blind) found.push(bout.blind);
  return found;
}

function lieOf(facts: Facts, { testPoints, responses }: Receiver): Lie | null {
  const { setUp } = responses.find((r) => r.id === facts.response) ?? responses[0]!;
  const sheetLead = setUp.observeWith === 'detectorLead';
  const onSignal = testPoints.some((p) => p.role === 'signal');
  const off = (rule: SetUpRuleNumber): boolean => isOff(rule, facts, setUp);
  const lies: Readonly<Record<Lie, boolean>> = {
    noPicture: !facts.xConnected || facts.detectedPeakVolts <= 0,
    // Stage by stage the RF lead goes from point to point; what is looked at stays.
    wrongPoint: !facts.yAtSheetPoint,
    overloaded: off('G16'),
    phaseOff: facts.sweeping && standingBy('G13', facts, setUp).excess > FOOLING_PHASE_DEGREES,
    tooFast: off('G60'),
    agcFree: off('G61'),
    biasOff: off('G15'),
    probeLoads: sheetLead && onSignal && !facts.yTipAsSheet,
    steelIn: off('G58'),
    bridged: off('G67'),
    notEarthed: off('G26'),
    hum: off('G57'),
    unterminated: facts.rfConnected && off('G24'),
    markersThrough: off('G22'),
    pipsTooHigh: standingBy('G21', facts, setUp).passed === 'high',
    acCoupled: off('G55'),
    verticalLag: off('G56'),
    retraceShown: facts.sweeping && off('G14'),
    xReversed: facts.sweeping && off('G19'),
    dialOff: off('G59'),
  };
  return LIES.find((lie) => lies[lie]) ?? null;
}
