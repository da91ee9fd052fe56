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
import { roundFigure } from './falling.ts';
import {
  COMPRESSION_LIMIT_DB,
  DIAL_SHARE,
  HUM_SHARE,
  PHASE_TOLERANCE_DEGREES,
  PIP_SHARE,
  SWEEP_LAG_LIMIT,
  VERTICAL_LAG_LIMIT_DEGREES,
} from './limits.ts';

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

function lieOf(facts: Facts, { testPoints, responses }: Receiver): Lie | null {
  const { setUp } = responses.find((r) => r.id === facts.response) ?? responses[0]!;
  const sheetLead = setUp.observeWith === 'detectorLead';
  const onSignal = testPoints.some((p) => p.role === 'signal');
  const lies: Readonly<Record<Lie, boolean>> = {
    noPicture: !facts.xConnected || facts.detectedPeakVolts <= 0,
    // Stage by stage the RF lead goes from point to point; what is looked at stays.
    wrongPoint: !facts.yAtSheetPoint,
    overloaded: facts.compressionDb > COMPRESSION_LIMIT_DB,
    phaseOff: facts.sweeping && Math.abs(facts.residualPhaseDegrees) > FOOLING_PHASE * PHASE_TOLERANCE_DEGREES,
    tooFast: facts.sweepLag > SWEEP_LAG_LIMIT,
    agcFree: facts.biases.some((bias) => !bias.clamped),
    biasOff: facts.biases.some((bias) => Math.abs(bias.errorVolts) > bias.toleranceVolts),
    probeLoads: sheetLead && onSignal && !facts.yTipAsSheet,
    steelIn: facts.steelIn !== null,
    notEarthed: !facts.earthed,
    hum: facts.humRatio > HUM_SHARE,
    unterminated: facts.rfConnected && !facts.rfTerminated,
    markersThrough: !facts.markersAdded,
    pipsTooHigh: facts.pipHeightRatio > PIP_SHARE.high,
    acCoupled: !facts.dcCoupled,
    verticalLag: facts.verticalLagDegrees > VERTICAL_LAG_LIMIT_DEGREES,
    retraceShown: facts.sweeping && !facts.blanking,
    xReversed: facts.sweeping && !facts.xDirectionAsSheet,
    dialOff: facts.dialErrorHz !== null && Math.abs(facts.dialErrorHz) > DIAL_SHARE * setUp.spanHz,
  };
  return LIES.find((lie) => lies[lie]) ?? null;
}
