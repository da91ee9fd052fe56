/**
 * The peeker: a sealed set in which something has failed and the same set sound. Before the signature the bench offers, refuses, keeps and says the same of both; what
 * differs is what an eye sees on the tube. What stands on the page is looked at in tests/e2e/sealed.spec.ts.
 */
import { describe, expect, it } from 'vitest';
import { applyEvent } from '../../src/bench/applyEvent.ts';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import { partsAsked } from '../../src/bench/diagnosis.ts';
import { printedTray } from '../../src/bench/parts.ts';
import { type BenchSetup, initialState } from '../../src/bench/setup.ts';
import { createSession, partsAreOpen } from '../../src/session/session.ts';
import { setupOf } from '../technician/oneScenario.ts';
import { connectionActs, safetyActs, setUpActs, stateAfter, yActs } from './acts.ts';

const failed = setupOf('not-a-word');
const sound: BenchSetup = { ...failed, scenario: { ...failed.scenario, faults: [] } };
const both = [failed, sound] as const;

/** Every act of a kind that touches parts, and some that no bench takes. */
function actsOnParts(setup: BenchSetup): readonly BenchEvent[] {
  const names = [...printedTray(failed).map(({ name }) => name), 'nothing'];
  const slugs = setup.receiver.adjusters.map(({ id }) => id);
  return [
    ...names.map((element): BenchEvent => ({ type: 'partReplaced', element })),
    ...names.map((name): BenchEvent => ({ type: 'diagnosisStated', slugs: [], parts: [name], setUp: [] })),
    ...names.map((element): BenchEvent => ({ type: 'partBridged', element })),
    ...slugs.map((id): BenchEvent => ({ type: 'diagnosisStated', slugs: [id], parts: [], setUp: ['earth'] })),
    { type: 'hintAsked', index: 0 },
  ];
}

/** What the bench answers: the sound it makes, or why not. */
const answers = (setup: BenchSetup, state: ReturnType<typeof initialState>): string[] =>
  actsOnParts(setup).map((act) => {
    const applied = applyEvent(setup, state, act, state.seconds + 1);
    return applied.ok ? JSON.stringify(applied.heard) : applied.reason;
  });

describe('a sealed set with failed parts and the same set without', () => {
  it('are two sets', () => {
    expect(failed.scenario.sealed).toBe(true);
    expect(failed.scenario.faults.length).toBeGreaterThan(0);
  });

  it('have the same tray and the same names to choose from, and neither is empty', () => {
    expect(printedTray(sound)).toEqual(printedTray(failed));
    expect(partsAsked(sound)).toEqual(partsAsked(failed));
    expect(partsAsked(sound).length).toBeGreaterThan(10);
    expect(both.map(({ scenario }) => partsAreOpen(scenario))).toEqual([false, false]);
  });

  it('answer every act on a part alike, at the start and once set up, and some are taken', () => {
    const starts = both.map((setup) => initialState(setup));
    expect(answers(sound, starts[1]!)).toEqual(answers(failed, starts[0]!));
    const acts = [...safetyActs(failed), ...connectionActs(failed, starts[0]!), ...setUpActs(failed)];
    const ready = both.map((setup, i) => stateAfter(setup, acts, starts[i]!));
    const told = answers(sound, ready[1]!);
    expect(told).toEqual(answers(failed, ready[0]!));
    expect(told.filter((one) => one.startsWith('[')).length).toBeGreaterThan(10);
    expect(told).toContain('noSuchPart');
  });

  it('stand the same after the same acts, a lead that was clipped afresh and a good part among them', () => {
    const good = printedTray(failed).find(({ name }) => name.startsWith('R'))!.name;
    const earth = failed.receiver.testPoints.find(({ role }) => role === 'earth')!;
    const states = both.map((setup) => {
      const start = initialState(setup);
      const acts: BenchEvent[] = [
        ...safetyActs(setup),
        ...connectionActs(setup, start),
        { type: 'leadRemoved', lead: 'earth' },
        { type: 'leadConnected', lead: 'earth', to: earth.id },
        { type: 'powerSwitched', on: false },
        { type: 'partReplaced', element: good },
      ];
      return { ...stateAfter(setup, acts, start), incidents: [] };
    });
    expect(states[1]).toEqual(states[0]);
    expect(states[1]!.replaced.length).toBeGreaterThan(0);
  });

  it('are told alike by the session, whatever has been done', () => {
    const views = both.map((setup) => {
      const session = createSession(setup);
      session.send({ type: 'BEGIN' });
      const bench = createBench(setup);
      const start = initialState(setup);
      let state = stateAfter(
        setup,
        [...safetyActs(setup), ...connectionActs(setup, start), ...setUpActs(setup)],
        start,
      );
      state = stateAfter(setup, yActs(setup, state), state);
      const facts = bench.facts(state);
      session.send({ type: 'FACTS', facts, atSeconds: state.seconds, slugs: null, findings: {} });
      return JSON.stringify(session.view());
    });
    expect(views[1]).toBe(views[0]);
    expect(views[0]!.length).toBeGreaterThan(20);
  });
});
