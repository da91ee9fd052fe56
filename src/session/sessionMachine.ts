/**
 * The machine of a session: briefing, working, signing, graded, with suspended, stopped and abandoned. While working,
 * parallel regions follow the measured facts: a step is done while its facts hold and un-does itself when they do not.
 * It owns the procedure and no physics; it has no timers: time comes in with FACTS and TICK.
 */
import { and, assign, not, raise, setup } from 'xstate';
import type { Facts } from '../bench/facts.ts';
import type { SetUpPart } from '../receiver/receiver.ts';
import {
  missingConnection,
  missingProofs,
  missingSafety,
  missingSetUp,
  SETTLE_SECONDS,
  type Wants,
} from './missing.ts';

export interface SessionInput {
  readonly wants: Wants;
  readonly timeLimitSeconds: number | null;
}

export interface SessionContext extends SessionInput {
  readonly facts: Facts | null;
  /** time on the bench */
  readonly elapsedSeconds: number;
  /** when a slug last moved; null = not yet */
  readonly slugMovedAtSeconds: number | null;
}

export type SessionEvent =
  | { readonly type: 'BEGIN' }
  /** the facts after an act, and the bench time of that act */
  | { readonly type: 'FACTS'; readonly facts: Facts; readonly atSeconds: number }
  | { readonly type: 'TICK'; readonly elapsedSeconds: number }
  | { readonly type: 'ASK_TO_SIGN' }
  | { readonly type: 'KEEP_WORKING' }
  | { readonly type: 'SUSPEND' }
  | { readonly type: 'RESUME' }
  | { readonly type: 'ABANDON' }
  /** from a stopped run to its report */
  | { readonly type: 'REPORT' }
  /** raised by the machine's own clock */
  | { readonly type: 'TIME_UP' };

const partIsRight =
  (part: SetUpPart) =>
  ({ context }: { context: SessionContext }): boolean =>
    context.facts !== null && missingSetUp(part, context.facts, context.wants).length === 0;

/** Seconds since a slug last moved; null = none has. */
export function secondsAtRest(context: SessionContext): number | null {
  return context.slugMovedAtSeconds === null ? null : context.elapsedSeconds - context.slugMovedAtSeconds;
}

const machineSetup = setup({
  types: {} as { context: SessionContext; events: SessionEvent; input: SessionInput },
  actions: {
    takeFacts: assign(({ context, event }) => {
      if (event.type !== 'FACTS') return {};
      const since = event.facts.secondsSinceSlugTurn;
      return {
        facts: event.facts,
        elapsedSeconds: Math.max(context.elapsedSeconds, event.atSeconds),
        slugMovedAtSeconds: since === null ? null : event.atSeconds - since,
      };
    }),
    takeTime: assign(({ context, event }) =>
      event.type === 'TICK' ? { elapsedSeconds: Math.max(context.elapsedSeconds, event.elapsedSeconds) } : {},
    ),
  },
  guards: {
    safe: ({ context }) => context.facts !== null && missingSafety(context.facts).length === 0,
    connected: ({ context }) => context.facts !== null && missingConnection(context.facts).length === 0,
    sweepRight: partIsRight('sweep'),
    phasingRight: partIsRight('phasing'),
    blankingRight: partIsRight('blanking'),
    biasRight: partIsRight('bias'),
    levelRight: partIsRight('level'),
    markersRight: partIsRight('markers'),
    traceRight: partIsRight('trace'),
    slugTouched: ({ context }) => context.facts !== null && context.facts.slugsTouched > 0,
    slugRests: ({ context }) => (secondsAtRest(context) ?? SETTLE_SECONDS) >= SETTLE_SECONDS,
    proved: ({ context }) => context.facts !== null && missingProofs(context.facts, context.wants).length === 0,
    signedOff: ({ context }) => context.facts?.signedOff === true,
    stopped: ({ context }) => context.facts?.stopped === true,
    timeIsUp: ({ context }) => context.timeLimitSeconds !== null && context.elapsedSeconds >= context.timeLimitSeconds,
  },
});

type GuardName =
  | 'sweepRight'
  | 'phasingRight'
  | 'blankingRight'
  | 'biasRight'
  | 'levelRight'
  | 'markersRight'
  | 'traceRight';

/** A part of the set-up: wrong or right, as the facts have it. */
const part = (right: GuardName) =>
  machineSetup.createStateConfig({
    initial: 'wrong',
    states: {
      wrong: { always: { guard: right, target: 'right' } },
      right: { always: { guard: not(right), target: 'wrong' } },
    },
  });

const runEnds = [
  { guard: 'stopped', target: '#session.stopped' },
  { guard: 'signedOff', target: '#session.graded' },
] as const;

export const sessionMachine = machineSetup.createMachine({
  id: 'session',
  context: ({ input }) => ({ ...input, facts: null, elapsedSeconds: 0, slugMovedAtSeconds: null }),
  initial: 'briefing',
  on: { FACTS: { actions: 'takeFacts' } },
  states: {
    briefing: { on: { BEGIN: 'working', ABANDON: 'abandoned' } },
    working: {
      type: 'parallel',
      always: runEnds,
      on: { ASK_TO_SIGN: 'signing', TIME_UP: 'signing.timeUp', SUSPEND: 'suspended', ABANDON: 'abandoned' },
      states: {
        safety: {
          initial: 'open',
          states: {
            open: { always: { guard: 'safe', target: 'made' } },
            made: { always: { guard: not('safe'), target: 'open' } },
          },
        },
        connection: {
          initial: 'open',
          states: {
            open: { always: { guard: 'connected', target: 'made' } },
            made: { always: { guard: not('connected'), target: 'open' } },
          },
        },
        setUp: {
          type: 'parallel',
          states: {
            sweep: part('sweepRight'),
            phasing: part('phasingRight'),
            blanking: part('blankingRight'),
            bias: part('biasRight'),
            level: part('levelRight'),
            markers: part('markersRight'),
            trace: part('traceRight'),
          },
        },
        alignment: {
          initial: 'idle',
          states: {
            idle: {
              always: [
                { guard: and(['slugTouched', 'slugRests']), target: 'settled' },
                { guard: 'slugTouched', target: 'turning' },
              ],
            },
            turning: {
              always: [
                { guard: not('slugTouched'), target: 'idle' },
                { guard: 'slugRests', target: 'settled' },
              ],
            },
            settled: {
              always: [
                { guard: not('slugTouched'), target: 'idle' },
                { guard: not('slugRests'), target: 'turning' },
              ],
            },
          },
        },
        proof: {
          initial: 'open',
          states: {
            open: { always: { guard: 'proved', target: 'proved' } },
            proved: { always: { guard: not('proved'), target: 'open' } },
          },
        },
        clock: {
          initial: 'running',
          states: {
            running: {
              always: { guard: 'timeIsUp', target: 'timeUp' },
              on: { TICK: { actions: 'takeTime' } },
            },
            timeUp: { entry: raise({ type: 'TIME_UP' }) },
          },
        },
      },
    },
    signing: {
      initial: 'asking',
      always: runEnds,
      on: { ABANDON: 'abandoned' },
      states: {
        asking: {
          always: { guard: 'timeIsUp', target: 'timeUp' },
          on: { TICK: { actions: 'takeTime' }, KEEP_WORKING: '#session.working', SUSPEND: '#session.suspended' },
        },
        // Nothing is left but to sign.
        timeUp: {},
      },
    },
    suspended: { on: { RESUME: 'working', ABANDON: 'abandoned' } },
    stopped: { on: { REPORT: 'graded', ABANDON: 'abandoned' } },
    graded: { type: 'final' },
    abandoned: { type: 'final' },
  },
});
