/**
 * The machine of a session: briefing, working, signing, graded, with suspended, stopped and abandoned. It owns the procedure and no physics, and it has no
 * timers: time comes in with FACTS and TICK. How far the work is, phase by phase, is no state of the machine: it follows from the facts (standing.ts).
 */
import { assign, setup } from 'xstate';
import type { Facts } from '../bench/facts.ts';
import type { Findings } from '../bench/witness.ts';
import type { Alignment } from './alignment.ts';
import type { Wants } from './missing.ts';

export interface SessionInput {
  /** the learner ticks the sheet, and nothing is told of how the work stands */
  readonly sealed: boolean;
  readonly wants: Wants;
  readonly timeLimitSeconds: number | null;
}

export interface SessionContext extends SessionInput {
  readonly facts: Facts | null;
  /** how the slugs stood when they were last looked at; null = never, or nobody may know */
  readonly slugs: Alignment | null;
  /** how the findings stood, proof by proof */
  readonly findings: Findings;
  /** steps that the learner has ticked, from 0, in order */
  readonly ticked: readonly number[];
  /** time on the bench */
  readonly elapsedSeconds: number;
  /** when a slug last moved; null = not yet */
  readonly slugMovedAtSeconds: number | null;
}

export type SessionEvent =
  | { readonly type: 'BEGIN' }
  /** the facts after an act, and the bench time of that act */
  | {
      readonly type: 'FACTS';
      readonly facts: Facts;
      readonly atSeconds: number;
      readonly slugs?: Alignment | null;
      /** left out: nothing has been said */
      readonly findings?: Findings;
    }
  /** the slugs have come to rest by the passing of time */
  | { readonly type: 'LOOKED'; readonly slugs: Alignment }
  | { readonly type: 'TICK'; readonly elapsedSeconds: number }
  /** the learner ticks a step of a sealed run, or takes the tick back */
  | { readonly type: 'TICK_STEP'; readonly step: number }
  | { readonly type: 'ASK_TO_SIGN' }
  | { readonly type: 'KEEP_WORKING' }
  | { readonly type: 'SUSPEND' }
  | { readonly type: 'RESUME' }
  | { readonly type: 'ABANDON' }
  /** from a stopped run to its report */
  | { readonly type: 'REPORT' };

/** Seconds since a slug last moved; null = none has. */
export function secondsAtRest(context: SessionContext): number | null {
  return context.slugMovedAtSeconds === null ? null : context.elapsedSeconds - context.slugMovedAtSeconds;
}

const inOrder = (a: number, b: number): number => a - b;

const machineSetup = setup({
  types: {} as { context: SessionContext; events: SessionEvent; input: SessionInput },
  actions: {
    takeFacts: assign(({ context, event }) => {
      if (event.type !== 'FACTS') return {};
      const since = event.facts.secondsSinceSlugTurn;
      return {
        facts: event.facts,
        slugs: event.slugs ?? null,
        findings: event.findings ?? {},
        elapsedSeconds: Math.max(context.elapsedSeconds, event.atSeconds),
        slugMovedAtSeconds: since === null ? null : event.atSeconds - since,
      };
    }),
    takeSlugs: assign(({ event }) => (event.type === 'LOOKED' ? { slugs: event.slugs } : {})),
    tickStep: assign(({ context: { ticked }, event }) => {
      if (event.type !== 'TICK_STEP') return {};
      const { step } = event;
      return { ticked: ticked.includes(step) ? ticked.filter((one) => one !== step) : [...ticked, step].sort(inOrder) };
    }),
    takeTime: assign(({ context, event }) =>
      event.type === 'TICK' ? { elapsedSeconds: Math.max(context.elapsedSeconds, event.elapsedSeconds) } : {},
    ),
  },
  guards: {
    isSealed: ({ context }) => context.sealed,
    signedOff: ({ context }) => context.facts?.signedOff === true,
    stopped: ({ context }) => context.facts?.stopped === true,
    timeIsUp: ({ context }) => context.timeLimitSeconds !== null && context.elapsedSeconds >= context.timeLimitSeconds,
  },
});

const runEnds = [
  { guard: 'stopped', target: '#session.stopped' },
  { guard: 'signedOff', target: '#session.graded' },
] as const;

export const sessionMachine = machineSetup.createMachine({
  id: 'session',
  context: ({ input }) => ({
    ...input,
    facts: null,
    slugs: null,
    findings: {},
    ticked: [],
    elapsedSeconds: 0,
    slugMovedAtSeconds: null,
  }),
  initial: 'briefing',
  on: { FACTS: { actions: 'takeFacts' }, LOOKED: { actions: 'takeSlugs' } },
  states: {
    briefing: { on: { BEGIN: 'working', ABANDON: 'abandoned' } },
    working: {
      always: [...runEnds, { guard: 'timeIsUp', target: 'signing.timeUp' }],
      on: {
        TICK: { actions: 'takeTime' },
        TICK_STEP: { guard: 'isSealed', actions: 'tickStep' },
        ASK_TO_SIGN: 'signing',
        SUSPEND: 'suspended',
        ABANDON: 'abandoned',
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
