/**
 * Ticks of practice and verdict agree: on a bench where the job is done, whatever one thing is then set wrong, a line of the set-up that the score would miss takes a tick
 * away, and says why. Every knob at its ends and between, every switch, every choice, every lead off and at each point that takes it, every crystal.
 */
import { describe, expect, it } from 'vitest';
import { limitPassed } from '../../src/base/limits.ts';
import { applyEvent } from '../../src/bench/applyEvent.ts';
import { createBench } from '../../src/bench/bench.ts';
import type { Applied, BenchEvent, ControlId } from '../../src/bench/benchEvent.ts';
import { type BenchState, LEAD_IDS, TUBE_X } from '../../src/bench/benchState.ts';
import { controlRange } from '../../src/bench/controlRange.ts';
import { accepts } from '../../src/bench/leads.ts';
import { type BenchSetup, initialState, RESTING_CONTROLS } from '../../src/bench/setup.ts';
import { findingsOf, trueFinding } from '../../src/bench/witness.ts';
import { lackStages } from '../../src/describe/lack.ts';
import { setUpLines } from '../../src/grading/standing.ts';
import { lackOfStep, type StepLack } from '../../src/present/steps.ts';
import { createAlignmentWatch } from '../../src/session/alignment.ts';
import { createSession } from '../../src/session/session.ts';
import { en } from '../../src/words/en/index.ts';
import { SETUPS } from '../rooms/sceneSets.ts';
import { connectionActs, proofActs, proofsOn, safetyActs, setUpActs, stateAfter, yActs } from '../session/acts.ts';

type Acts = readonly BenchEvent[];

function wrongs(setup: BenchSetup, { controls, leads, crystals }: BenchState): readonly (readonly [string, Acts])[] {
  const knobs = (Object.keys(RESTING_CONTROLS) as ControlId[]).flatMap((control) => {
    const range = controlRange(setup, control);
    const now = controls[control];
    const valuesOf = (): readonly (number | boolean | string)[] => {
      if (range.kind === 'switch') return [!now];
      if (range.kind === 'choice') return range.choices;
      const between = [0, 0.25, 0.5, 0.75, 1].map((share) => range.min + share * (range.max - range.min));
      const near = [0.9, 1.1].map((factor) => factor * Number(now));
      return [...between, ...near].map((value) => (range.stepped ? Math.round(value) : value));
    };
    return valuesOf()
      .filter((value) => value !== now)
      .map((value) => [`${control} ${value}`, [{ type: 'controlSet', control, value }]] as const);
  });
  const clips = LEAD_IDS.flatMap((lead) => {
    const off: Acts = leads[lead] === null ? [] : [{ type: 'leadRemoved', lead }];
    const ends = [TUBE_X, ...setup.receiver.testPoints.map(({ id }) => id)];
    const others = ends.filter((to) => to !== leads[lead] && accepts(setup, lead, to));
    return [
      ...(off.length === 0 ? [] : [[`${lead} off`, off] as const]),
      ...others.map((to) => [`${lead} at ${to}`, [...off, { type: 'leadConnected', lead, to } as const]] as const),
    ];
  });
  const pulled = crystals.map((hz) => [`${hz} out`, [{ type: 'crystalPulled', hz } as const]] as const);
  return [...knobs, ...clips, ...pulled, ['power off', [{ type: 'powerSwitched', on: false }]]];
}

const BENCHES = SETUPS.flatMap((shipped) =>
  shipped.receiver.responses.slice(0, 2).map(({ id }) => [id, shipped] as const),
)
  .map(([response, shipped]) => [`${shipped.receiver.id}, ${response}`, shipped, response] as const)
  // A set of four responses takes as long as all the others.
  .filter(([, { receiver }]) => receiver.responses.length < 4);

describe.each(BENCHES)('on the bench of %s', (_, shipped, response) => {
  const start = { slugs: {}, randomTurns: 0, controls: {}, prepared: [] };
  const plain = { ...shipped.scenario, responses: [response], start, faults: [], sealed: false, toleranceFactor: 1 };
  const setup: BenchSetup = { ...shipped, scenario: { ...plain, proofs: proofsOn(shipped) } };
  const bench = createBench(setup);
  const watch = createAlignmentWatch(setup);
  const lacks = (state: BenchState): readonly StepLack[] => {
    const session = createSession(setup);
    session.send({ type: 'BEGIN' });
    const [facts, slugs, findings] = [bench.facts(state), watch.of(state, true), findingsOf(setup, state)];
    session.send({ type: 'FACTS', facts, atSeconds: state.seconds, slugs, findings });
    session.send({ type: 'TICK', elapsedSeconds: state.seconds + 10 });
    return setup.receiver.procedure.flatMap((__, i) => lackOfStep(setup.receiver, i, session.view()) ?? []);
  };
  const missed = (state: BenchState): readonly string[] =>
    setUpLines(bench.facts(state), setup.receiver)
      .filter((line) => limitPassed(line, line.measured) !== null)
      .map(({ rule }) => rule);

  it('no line of the set-up is missed with every step ticked', () => {
    let done = stateAfter(setup, safetyActs(setup), initialState(setup));
    done = stateAfter(setup, connectionActs(setup, done), done);
    done = stateAfter(setup, setUpActs(setup), done);
    done = stateAfter(setup, yActs(setup, done), done);
    for (const proof of setup.scenario.proofs) {
      done = stateAfter(setup, proofActs(proof, setup, done), done);
      done = stateAfter(setup, [trueFinding(setup, done, proof)], done);
    }
    expect(missed(done)).toEqual([]);
    const before = lacks(done).length;
    expect(before).toBeLessThan(setup.receiver.procedure.length / 2);
    let told = 0;
    for (const [what, acts] of wrongs(setup, done)) {
      let state: BenchState | null = done;
      for (const act of acts) {
        const applied: Applied | null = state === null ? null : applyEvent(setup, state, act, state.seconds + 1);
        state = applied?.ok ? applied.state : null;
      }
      if (state === null || missed(state).length === 0) continue;
      const now = lacks(state);
      expect(now.length, `${what}: ${missed(state).join(', ')}`).toBeGreaterThan(before);
      const stages = now.flatMap((lack) => lackStages(en, setup, bench.facts(state!), state!, lack));
      for (const text of stages) expect(text, what).toMatch(/^[A-Z].*\.$/);
      told++;
    }
    expect(told).toBeGreaterThan(15);
  });
});
