/**
 * Ticks of the sheet are true: for every step of every shipped sheet, states of the real bench in which what it asks for is not so leave it unticked, and the
 * job done as the sheet says ticks them all. What counts as so is the sheet itself; no other source.
 */

import { describe, expect, it } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import type { BenchState, LeadId } from '../../src/bench/benchState.ts';
import { controlRange } from '../../src/bench/controlRange.ts';
import { type BenchSetup, initialState } from '../../src/bench/setup.ts';
import { toolFor } from '../../src/bench/tools.ts';
import { findingsOf, trueFinding } from '../../src/bench/witness.ts';
import { lackStages } from '../../src/describe/lack.ts';
import { spotOfMissing } from '../../src/present/liveSpot.ts';
import { lackOfStep, stepMarks, stepNow } from '../../src/present/steps.ts';
import type { SetUpPart } from '../../src/receiver/receiver.ts';
import { responseById, workResponses } from '../../src/receiver/responses.ts';
import { createAlignmentWatch } from '../../src/session/alignment.ts';
import type { SessionView } from '../../src/session/phase.ts';
import { createSession } from '../../src/session/session.ts';
import { demonstrate } from '../../src/technician/atBench.ts';
import { en } from '../../src/words/en/index.ts';
import { SETUPS } from '../rooms/sceneSets.ts';
import { connectionActs, proofActs, proofsOn, safetyActs, setUpActs, stateAfter, yActs } from '../session/acts.ts';
import { setupOf } from '../technician/oneScenario.ts';

const REST = 10;
/** where the level knob ends */
const LEAST_DB = -80;

interface Seat {
  readonly setup: BenchSetup;
  /** as the page sees it, with everything at rest */
  view(state: BenchState): SessionView;
  /** for the response that the bench is set up for: the whole job, slugs right from the start */
  readonly done: BenchState;
}

function seat(shipped: BenchSetup): Seat {
  const start = { slugs: {}, randomTurns: 0, controls: {}, prepared: [] };
  const setup: BenchSetup = {
    ...shipped,
    scenario: { ...shipped.scenario, start, faults: [], proofs: proofsOn(shipped), sealed: false, toleranceFactor: 1 },
  };
  const bench = createBench(setup);
  const watch = createAlignmentWatch(setup);
  const view = (state: BenchState): SessionView => {
    const session = createSession(setup);
    session.send({ type: 'BEGIN' });
    session.send({
      type: 'FACTS',
      facts: bench.facts(state),
      atSeconds: state.seconds,
      slugs: watch.of(state, true),
      findings: findingsOf(setup, state),
    });
    session.send({ type: 'TICK', elapsedSeconds: state.seconds + REST });
    return session.view();
  };
  let state = stateAfter(setup, safetyActs(setup), initialState(setup));
  state = stateAfter(setup, connectionActs(setup, state), state);
  state = stateAfter(setup, setUpActs(setup), state);
  state = stateAfter(setup, yActs(setup, state), state);
  for (const proof of proofsOn(setup)) {
    state = stateAfter(setup, proofActs(proof, setup, state), state);
    state = stateAfter(setup, [trueFinding(setup, state, proof)], state);
  }
  return { setup, view, done: state };
}

const marksOf = ({ setup, view }: Seat, state: BenchState) => stepMarks(setup.receiver, view(state));

/** Every act here is possible: a test that cannot spoil anything finds nothing. */
function spoilt({ setup }: Seat, state: BenchState, acts: readonly BenchEvent[]): BenchState {
  return stateAfter(setup, acts, state);
}

const set = (control: Extract<BenchEvent, { type: 'controlSet' }>['control'], value: number | boolean | string) =>
  ({ type: 'controlSet', control, value }) as const;

function wrongFor(part: SetUpPart, { done, setup }: Seat): readonly BenchEvent[] | null {
  const { controls } = done;
  switch (part) {
    case 'sweep':
      return [set('spanHz', controls.spanHz / 4)];
    case 'phasing':
      return [set('phasingDegrees', controls.phasingDegrees + 6)];
    case 'blanking':
      return [set('blanking', false)];
    case 'bias':
      return done.leads.biasA === null ? null : [set('biasAVolts', controls.biasAVolts + 1)];
    case 'level':
      return [set('levelDb', Math.max(LEAST_DB, controls.levelDb - 24))];
    case 'markers':
      return [{ type: 'crystalPulled', hz: done.crystals[0]! }];
    case 'trace':
      return [set('mirror', !controls.mirror)];
    default:
      throw new Error(`${setup.receiver.id}: what is wrong with ${String(part)}?`);
  }
}

describe.each(SETUPS.map((setup) => [setup.receiver.id, setup] as const))('the steps of %s', (_, shipped) => {
  const seated = seat(shipped);
  const { setup, done } = seated;
  const { receiver } = setup;
  const steps = receiver.procedure;
  const mains = receiver.mains !== null;

  it('are all ticked when the job is done, and the last one is where it ends', () => {
    const view = seated.view(done);
    const left = steps.flatMap((step, i) => {
      const lack = lackOfStep(receiver, i, view);
      return lack === null ? [] : [`${i + 1}, ${step.phase}: ${lack.code}`];
    });
    expect(left).toEqual([]);
    expect(Object.values(view.done)).toEqual([true, true, true, true, true]);
    expect(stepNow(marksOf(seated, done))).toBe(steps.length - 1);
  });

  it('lose the tick of the sweep where the span is more than twice the sheet’s, and the span is what is lit', () => {
    const { response } = createBench(setup).facts(done);
    const { spanHz } = responseById(receiver, response).setUp;
    const range = controlRange(setup, 'spanHz');
    const most = range.kind === 'number' ? range.max : 0;
    // One source sweeps no wider than a little less than twice what its sheet asks.
    const wide = spoilt(seated, done, [set('spanHz', Math.min(2.1 * spanHz, most))]);
    if (most <= 2 * spanHz) {
      expect(seated.view(wide).missing.setUp).not.toContain('sweepTooWide');
      return;
    }
    const { missing } = seated.view(wide);
    expect(missing.setUp).toContain('sweepTooWide');
    expect(spotOfMissing(setup, createBench(setup).facts(wide), wide, 'sweepTooWide')).toEqual({
      kind: 'control',
      control: 'spanHz',
    });
    expect(seated.view(done).missing.setUp).not.toContain('sweepTooWide');
  });

  it('are none of them ticked on a bare bench, and the first is the one to do', () => {
    const marks = marksOf(seated, initialState(setup));
    expect(marks).toEqual(steps.map((__, i) => (i === 0 ? 'now' : 'toCome')));
  });

  it('lose every tick that needs a curve when nothing is on the tube', () => {
    const lost: (readonly [string, readonly BenchEvent[]])[] = [
      ['RF lead off', [{ type: 'leadRemoved', lead: 'rf' }]],
      ['Y lead off', [{ type: 'leadRemoved', lead: 'y' }]],
      ['X lead off', [{ type: 'leadRemoved', lead: 'x' }]],
      ['no gain', [set('yVoltsPerDiv', 2), set('levelDb', LEAST_DB)]],
      ...(mains ? [['power off', [{ type: 'powerSwitched', on: false }]] as const] : []),
    ];
    for (const [why, acts] of lost) {
      const marks = marksOf(seated, spoilt(seated, done, acts));
      steps.forEach((step, i) => {
        const clampOnly = step.parts?.every((part) => part === 'bias') === true;
        const needsCurve = ['setUp', 'align', 'prove'].includes(step.phase) && !clampOnly;
        if (needsCurve) expect(marks[i], `${why}: step ${i + 1}`).not.toBe('done');
        if (step.phase === 'safe') expect(marks[i], `${why}: step ${i + 1}`).toBe('done');
      });
    }
  });

  it('lose the tick of the leads when one is off, elsewhere or ends wrongly, and of nothing before it', () => {
    const at = steps.findIndex(({ phase }) => phase === 'connect');
    const off = (Object.keys(done.leads) as LeadId[]).filter((lead) => done.leads[lead] !== null);
    const wrong: (readonly BenchEvent[])[] = [
      ...off.map((lead): readonly BenchEvent[] => [{ type: 'leadRemoved', lead }]),
      [set('rfTerminated', false)],
      [set('rfCapacitor', false)],
      [set('yTip', 'plain')],
    ];
    expect(off.length).toBeGreaterThanOrEqual(4);
    for (const acts of wrong) {
      const marks = marksOf(seated, spoilt(seated, done, acts));
      expect(marks[at], JSON.stringify(acts)).toBe('now');
    }
  });

  it('lose the tick of the set-up by the control that they are about', () => {
    steps.forEach((step, i) => {
      for (const part of step.parts ?? []) {
        const acts = wrongFor(part, seated);
        if (acts === null) continue;
        const view = seated.view(spoilt(seated, done, acts));
        expect(lackOfStep(receiver, i, view), `step ${i + 1}, ${part}`).not.toBeNull();
      }
    });
    const asked = new Set(steps.flatMap(({ parts }) => parts ?? []));
    expect(asked.size).toBeGreaterThanOrEqual(5);
  });

  it('lose the tick of the clamp with its lead', () => {
    const at = steps.findIndex(({ parts }) => parts?.includes('bias') === true);
    if (at < 0) {
      expect(workResponses(receiver, setup.scenario).every((r) => r.setUp.biases.length === 0)).toBe(true);
      return;
    }
    const view = seated.view(spoilt(seated, done, [{ type: 'leadRemoved', lead: 'biasA' }]));
    expect(lackOfStep(receiver, at, view)).not.toBeNull();
  });

  it('lose the tick of every step about a slug that stands astray, with its name and which way', () => {
    const about = steps.flatMap((step, i) => (step.phase === 'align' ? step.slugs.map((id) => [i, id] as const) : []));
    expect(new Set(about.map(([, id]) => id))).toEqual(new Set(receiver.adjusters.map(({ id }) => id)));
    for (const id of new Set(about.map(([, slug]) => slug))) {
      const adjuster = receiver.adjusters.find((one) => one.id === id)!;
      const way = done.slugs[id]!.screwTurns > adjuster.travelTurns / 2 ? -1 : 1;
      const half = { type: 'slugTurned', slug: id, turns: way / 2 } as const;
      let state = spoilt(seated, done, [{ type: 'toolTaken', tool: toolFor(adjuster.head) }]);
      // Some lines are wide: as far as it takes to leave one of them.
      for (let n = 0; n < 20 && seated.view(state).slugs!.off.length === 0; n++) state = spoilt(seated, state, [half]);
      state = spoilt(seated, state, [half]);
      const view = seated.view(state);
      expect(view.missing.align, id).toEqual(['linesOutside']);
      const lacks = about.filter(([, one]) => one === id).map(([i]) => lackOfStep(receiver, i, view));
      for (const lack of lacks) {
        expect(lack?.slug, id).toMatchObject({ id });
        expect(Math.sign(lack!.slug!.turns)).toBe(way);
        const stages = lackStages(en, setup, createBench(setup).facts(state), state, lack!);
        expect(stages).toHaveLength(3);
        expect(stages[2]).toMatch(way > 0 ? /^Turn .* out\.$/ : /^Turn .* in\.$/);
      }
    }
  });

  it('lose the tick of the proofs when a slug moves', () => {
    const at = steps.findIndex(({ phase }) => phase === 'prove');
    const [first] = receiver.adjusters;
    const touched = spoilt(seated, done, [
      { type: 'toolTaken', tool: toolFor(first!.head) },
      { type: 'slugTurned', slug: first!.id, turns: 1 / 32 },
    ]);
    expect(lackOfStep(receiver, at, seated.view(touched))).not.toBeNull();
  });

  it('say what is missing in a sentence for every code that they meet', () => {
    const bench = createBench(setup);
    const start = initialState(setup);
    const view = seated.view(start);
    steps.forEach((__, i) => {
      const lack = lackOfStep(receiver, i, view)!;
      for (const text of lackStages(en, setup, bench.facts(start), start, lack)) expect(text).toMatch(/^[A-Z].*\.$/);
    });
  });
});

describe('the first job', () => {
  const seated = seat(SETUPS.find(({ receiver }) => receiver.id === 'loose-can-10m7')!);
  const { setup, done } = seated;
  const aligned = setup.receiver.procedure.flatMap(({ phase }, i) => (phase === 'align' ? [i] : []));
  const eighth: readonly BenchEvent[] = [
    { type: 'toolTaken', tool: 'hex' },
    { type: 'slugTurned', slug: 'T1B', turns: 1 / 8 },
  ];

  it('ticks no step of the alignment for an eighth of a turn before anything is connected', () => {
    const marks = marksOf(seated, stateAfter(setup, eighth, initialState(setup)));
    for (const i of aligned) expect(marks[i]).not.toBe('done');
    expect(seated.view(stateAfter(setup, eighth, initialState(setup))).done.align).toBe(false);
  });

  it('speaks of the height at a pip before the width of the hump, though the width is worse', () => {
    const view = seated.view(
      stateAfter(
        setup,
        [
          { type: 'toolTaken', tool: 'hex' },
          { type: 'slugTurned', slug: 'T1B', turns: -1 },
          { type: 'slugTurned', slug: 'T1T', turns: 0.75 },
        ],
        done,
      ),
    );
    expect(view.slugs!.off[0]!.item.kind).toBe('bandwidth');
    expect(lackOfStep(setup.receiver, aligned[0]!, view)).toMatchObject({ line: { item: { hz: 10_700_000 } } });
  });

  it('says of a hump that stands 300 kHz off how far, and which core brings it back', () => {
    const turns = Array.from({ length: 6 }, (): BenchEvent => ({ type: 'slugTurned', slug: 'T1B', turns: -1 / 2 }));
    const state = stateAfter(setup, [{ type: 'toolTaken', tool: 'hex' }, ...turns], done);
    const lack = lackOfStep(setup.receiver, aligned[0]!, seated.view(state))!;
    const [look, what, way] = lackStages(en, setup, createBench(setup).facts(state), state, lack);
    expect(look).toMatch(/^Look at the tube: /);
    expect(what).toMatch(/\d/);
    expect(way).toBe('Turn slug A (T1B) in.');
  });

  it('is ticked to the end by the technician, on the set that the course deals', () => {
    const dealt = setupOf('first-curve');
    const end = demonstrate(dealt).state;
    const bench = createBench(dealt);
    const session = createSession(dealt);
    session.send({ type: 'BEGIN' });
    const slugs = createAlignmentWatch(dealt).of(end, true);
    session.send({
      type: 'FACTS',
      facts: { ...bench.facts(end), signedOff: false },
      atSeconds: end.seconds,
      slugs,
      findings: findingsOf(dealt, end),
    });
    session.send({ type: 'TICK', elapsedSeconds: end.seconds + REST });
    const marks = stepMarks(dealt.receiver, session.view());
    expect(
      marks.every((mark) => mark === 'done'),
      marks.join(),
    ).toBe(true);
  });
});
