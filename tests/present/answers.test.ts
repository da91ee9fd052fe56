/** What the bench answers to an act: in practice a step that has its tick, a line that has come in, a finding that was right, a part that is new, a fault of care, a phase that is done; sealed, the part and the phase alone. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import type { LeadId } from '../../src/bench/benchState.ts';
import { type BenchSetup, initialState } from '../../src/bench/setup.ts';
import { findingsOf, trueFinding } from '../../src/bench/witness.ts';
import { type Answer, createAnswers, soundOf } from '../../src/present/answers.ts';
import { stepMarks } from '../../src/present/steps.ts';
import { jobSheet } from '../../src/receiver/jobSheet.ts';
import { createAlignmentWatch } from '../../src/session/alignment.ts';
import { createSession } from '../../src/session/session.ts';
import { alignmentActs, connectionActs, proofActs, safetyActs, setUpActs, stateAfter, yActs } from '../session/acts.ts';
import { canSetup } from '../session/setups.ts';
import { setupOf } from '../technician/oneScenario.ts';

/** A bench at work, on which acts are done and answered. `atRest`: no slug has just moved. */
function atWork(setup: BenchSetup) {
  const bench = createBench(setup);
  const watch = createAlignmentWatch(setup);
  const session = createSession(setup);
  session.send({ type: 'BEGIN' });
  let state = initialState(setup);
  const tell = (atRest: boolean): void => {
    const [facts, slugs, findings] = [bench.facts(state), watch.of(state, atRest), findingsOf(setup, state)];
    session.send({ type: 'FACTS', facts, atSeconds: state.seconds, slugs, findings });
    session.send({ type: 'TICK', elapsedSeconds: state.seconds + (atRest ? 10 : 0) });
  };
  tell(true);
  const { receiver, scenario } = setup;
  const answers = createAnswers({ receiver, scenario, setup, session: () => session.view(), state: () => state });
  return {
    setup,
    state: () => state,
    ticked: () => stepMarks(jobSheet(receiver, scenario), session.view()).filter((mark) => mark === 'done').length,
    does(acts: readonly BenchEvent[], atRest = true): readonly Answer[] {
      state = stateAfter(setup, acts, state);
      tell(atRest);
      return answers();
    },
  };
}

describe('in practice', () => {
  const work = atWork(canSetup());
  const { setup } = work;

  it('a step is answered when it has its tick, and not again while it keeps it', () => {
    const before = work.ticked();
    const answers = work.does([...safetyActs(setup), ...connectionActs(setup, work.state())]);
    const steps = answers.flatMap((answer) => (answer.kind === 'steps' ? answer.steps : []));
    expect(steps.length).toBeGreaterThan(0);
    expect(work.ticked()).toBe(before + steps.length);
    expect(work.does([])).toEqual([]);
  });

  it('a phase that an eighth of a turn leaves done is not answered anew when the slug has come to rest', () => {
    const other = atWork(canSetup());
    for (const acts of [safetyActs, connectionActs, setUpActs, yActs]) other.does(acts(other.setup, other.state()));
    const told = other.does(alignmentActs(other.setup, other.state()));
    expect(told).toContainEqual({ kind: 'phases', phases: ['align'] });
    const [slug] = other.setup.receiver.adjusters;
    const eighth = (turns: number) => [{ type: 'slugTurned', slug: slug!.id, turns } as const];
    other.does([{ type: 'toolTaken', tool: 'hex' }, { type: 'toolPlaced', slug: slug!.id }, ...eighth(1 / 32)], false);
    expect(other.does([]).filter(({ kind }) => kind === 'phases')).toEqual([]);
  });

  it('a phase that is done is answered once, with the steps that end it', () => {
    const fresh = atWork(canSetup());
    const answers = fresh.does(safetyActs(fresh.setup));
    expect(answers).toContainEqual({ kind: 'phases', phases: ['safe'] });
    expect(answers.filter(({ kind }) => kind === 'steps')).toHaveLength(1);
    expect(fresh.does([])).toEqual([]);
  });

  it('a line is answered when its slug has come to rest inside its limits, and what is still outside is counted', () => {
    work.does(setUpActs(setup));
    work.does(yActs(setup, work.state()));
    const [first, ...rest] = alignmentActs(setup, work.state());
    const turning = work.does([first!], false);
    expect(turning.filter(({ kind }) => kind === 'lines')).toEqual([]);
    const lines = work.does(rest).filter((answer) => answer.kind === 'lines');
    expect(lines).toEqual([{ kind: 'lines', came: expect.any(Number), outside: 0 }]);
    expect(lines[0]!.came).toBeGreaterThan(1);
  });

  it('a right finding is answered, a wrong one is not', () => {
    const [proof] = setup.scenario.proofs;
    work.does(proofActs(proof!, setup, work.state()));
    const right = trueFinding(setup, work.state(), proof!);
    if (right.type !== 'findingStated') throw new Error('no finding');
    expect(work.does([{ ...right, figure: (right.figure ?? 0) + 3 }])).toEqual([]);
    const answers = work.does([right]);
    expect(answers).toContainEqual({ kind: 'finding', proof });
  });

  it('the last answer that does not fit is told once, and the next act with it', () => {
    const other = atWork(canSetup());
    for (const acts of [safetyActs, connectionActs, setUpActs, yActs, alignmentActs])
      other.does(acts(other.setup, other.state()));
    const [proof] = other.setup.scenario.proofs;
    other.does(proofActs(proof!, other.setup, other.state()));
    const right = trueFinding(other.setup, other.state(), proof!);
    if (right.type !== 'findingStated') throw new Error('no finding');
    const wrong = { ...right, figure: (right.figure ?? 0) + 3 };
    expect(other.does([wrong])).toEqual([]);
    expect(other.does([wrong])).toContainEqual({ kind: 'spent', proof });
    expect(other.does([])).toEqual([]);
    other.does(proofActs(proof!, other.setup, other.state()));
    expect(other.does([trueFinding(other.setup, other.state(), proof!)])).toContainEqual({ kind: 'finding', proof });
  });

  it('a lead put on a set that is on is answered each time, and so is one put on before the earth strap; the RF lead, once on, moves for nothing behind its capacitor', () => {
    const setup = setupOf('from-cold');
    const clips = connectionActs(setup).filter((act) => act.type === 'leadConnected');
    const clip = (lead: LeadId) => clips.filter((act) => act.lead === lead);
    const cares = (answers: readonly Answer[]) => answers.filter(({ kind }) => kind === 'care');
    const live = atWork(setup);
    live.does([...safetyActs(setup), { type: 'powerSwitched', on: true }]);
    const both = { kind: 'care', incidents: ['wrongPowerOrder', 'beforeEarth'] };
    expect(cares(live.does(clip('y')))).toEqual([both]);
    expect(cares(live.does(clip('earth')))).toEqual([]);
    const first = { kind: 'care', incidents: ['wrongPowerOrder'] };
    expect(cares(live.does(clip('rf')))).toEqual([first]);
    const [, other] = setup.receiver.testPoints.filter(({ inject }) => inject !== null);
    const move: readonly BenchEvent[] = [{ type: 'leadConnected', lead: 'rf', to: other!.id }];
    live.does([{ type: 'controlSet', control: 'rfCapacitor', value: true }]);
    expect(cares(live.does(move))).toEqual([]);
    live.does([{ type: 'controlSet', control: 'rfCapacitor', value: false }]);
    expect(cares(live.does([{ type: 'leadRemoved', lead: 'rf' }]))).toEqual([first]);
    const off = atWork(setup);
    off.does(safetyActs(setup));
    expect(cares(off.does(clips))).toEqual([]);
  });

  it('each has a sound of its own but the part, which is heard as its clip, the phase, which is heard as its step, and the answer that does not fit', () => {
    const kinds: readonly Answer[] = [
      { kind: 'steps', steps: [0] },
      { kind: 'lines', came: 1, outside: 2 },
      { kind: 'finding', proof: 'halveLevel' },
      { kind: 'part', part: 'C1' },
      { kind: 'phases', phases: ['safe'] },
      { kind: 'spent', proof: 'halveLevel' },
      { kind: 'care', incidents: ['hotTouch'] },
    ];
    expect(kinds.map(soundOf)).toEqual(['stepDone', 'lineIn', 'foundRight', null, null, null, null]);
  });
});

describe('sealed', () => {
  it('nothing is answered of steps, lines or findings while the whole job is done; a part that is replaced is', () => {
    const work = atWork(canSetup({ sealed: true }));
    const { setup } = work;
    const told = [
      ...work.does([...safetyActs(setup), ...connectionActs(setup, work.state())]),
      ...work.does(setUpActs(setup)),
      ...work.does(yActs(setup, work.state())),
      ...work.does(alignmentActs(setup, work.state())),
    ];
    const [proof] = setup.scenario.proofs;
    told.push(...work.does(proofActs(proof!, setup, work.state())));
    told.push(...work.does([trueFinding(setup, work.state(), proof!)]));
    expect(told).toEqual([]);

    // A lead put on a set that is on is in the report, and nowhere before.
    const sealed = setupOf('brent-sealed');
    const live = atWork(sealed);
    live.does([...safetyActs(sealed), { type: 'powerSwitched', on: true }]);
    const clipped = live.does(connectionActs(sealed, live.state()).filter(({ type }) => type === 'leadConnected'));
    expect(live.state().incidents.map(({ kind }) => kind)).toContain('wrongPowerOrder');
    expect(clipped.filter(({ kind }) => kind === 'care')).toEqual([]);

    const parts = atWork(setupOf('not-a-word'));
    const [fault] = parts.setup.scenario.faults;
    if (fault?.kind !== 'driftedCapacitor') throw new Error('no part has failed');
    const { element } = fault;
    expect(parts.does([{ type: 'partReplaced', element }])).toEqual([{ kind: 'part', part: element }]);
  });
});
