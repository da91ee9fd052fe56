/** When the card after a proof comes by itself: the order of a sheet, which proves last. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import { initialState } from '../../src/bench/setup.ts';
import { findingsOf } from '../../src/bench/witness.ts';
import { findingComesFolded, findingDue } from '../../src/present/findingDue.ts';
import { createAlignmentWatch } from '../../src/session/alignment.ts';
import { createSession } from '../../src/session/session.ts';
import { connectionActs, setUpActs, stateAfter, wholeJob } from '../session/acts.ts';
import { setupOf } from '../technician/oneScenario.ts';

const setup = setupOf('first-curve');
const phasing = (value: number): BenchEvent => ({ type: 'controlSet', control: 'phasingDegrees', value });

function due(acts: readonly BenchEvent[], sealed = false) {
  const job = { ...setup, scenario: { ...setup.scenario, sealed } };
  const state = stateAfter(job, acts, initialState(job));
  const facts = createBench(job).facts(state);
  const findings = findingsOf(job, state);
  const session = createSession(job);
  session.send({ type: 'BEGIN' });
  session.send({
    type: 'FACTS',
    facts,
    atSeconds: state.seconds,
    slugs: createAlignmentWatch(job).of(state, true),
    findings,
  });
  const { asked, due } = { asked: findings.swingPhase === 'asked', due: findingDue(session.view(), facts) };
  return sealed ? { asked, due, folded: findingComesFolded(session.view(), facts) } : { asked, due };
}

describe('the question of what was seen', () => {
  const clipped: readonly BenchEvent[] = [{ type: 'cautionsAcknowledged' }, ...connectionActs(setup)];
  // Tried the wrong way first, and the right way past where it had stood.
  const looking = [...clipped, phasing(6), phasing(17), phasing(6), phasing(-17)];

  it('is not asked of a hand that looks for the phase', () => {
    expect(due(looking)).toEqual({ asked: true, due: false });
    expect(due([...looking, ...setUpActs(setup)])).toEqual({ asked: true, due: false });
  });

  it('is asked of the proof', () => {
    const job = wholeJob(setup);
    const said = job.findIndex((act) => act.type === 'findingStated' && act.proof === 'swingPhase');
    expect(due(job.slice(0, said))).toEqual({ asked: true, due: true });
  });

  it('is asked at any time where nothing is told of how the work stands', () => {
    expect(due(looking, true)).toEqual({ asked: true, due: true, folded: true });
  });

  it('is asked in full of a sealed run once a slug has been touched', () => {
    const job = wholeJob(setup);
    const said = job.findIndex((act) => act.type === 'findingStated' && act.proof === 'swingPhase');
    expect(due(job.slice(0, said), true)).toEqual({ asked: true, due: true, folded: false });
  });
});
