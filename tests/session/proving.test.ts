/** During an act of proof the work has not fallen back: the phases that stood before it stand, and whatever else changes shows at once. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import type { BenchState } from '../../src/bench/benchState.ts';
import { initialState } from '../../src/bench/setup.ts';
import { findingsOf } from '../../src/bench/witness.ts';
import { createAlignmentWatch } from '../../src/session/alignment.ts';
import { createProving } from '../../src/session/proving.ts';
import { createSession } from '../../src/session/session.ts';
import { setupOf } from '../technician/oneScenario.ts';
import { stateAfter, wholeJob } from './acts.ts';

const setup = setupOf('first-curve');
const bench = createBench(setup);
const watch = createAlignmentWatch(setup);
const set = (control: 'levelDb' | 'phasingDegrees' | 'blanking', value: number | boolean): BenchEvent => ({
  type: 'controlSet',
  control,
  value,
});

function plain(state: BenchState) {
  const session = createSession(setup);
  session.send({ type: 'BEGIN' });
  const [facts, slugs, findings] = [bench.facts(state), watch.of(state, true), findingsOf(setup, state)];
  session.send({ type: 'FACTS', facts, atSeconds: state.seconds, slugs, findings });
  session.send({ type: 'TICK', elapsedSeconds: state.seconds + 10 });
  return session.view();
}

const job = wholeJob(setup);
const proof = job.findIndex((act) => act.type === 'findingStated') - 2;
const ready = stateAfter(setup, job.slice(0, proof), initialState(setup));

describe('the standing during a proof', () => {
  it('stays at the proofs while the level is down, and says what is still to do', () => {
    const proving = createProving(setup.scenario.proofs);
    expect(proving(ready, plain(ready)).current).toBe('prove');
    const low = stateAfter(setup, [set('levelDb', ready.controls.levelDb - 8)], ready);
    expect(plain(low).current).toBe('setUp');
    const view = proving(low, plain(low));
    expect(view).toMatchObject({ current: 'prove', done: { setUp: true, align: true, prove: false } });
    expect(view.missing.prove).toContain('levelNotHalved');
    expect(proving(low, plain(low)).missing.setUp).toEqual([]);
  });

  it('stays there while the phasing is swung', () => {
    const proving = createProving(setup.scenario.proofs);
    proving(ready, plain(ready));
    const swung = stateAfter(setup, [set('phasingDegrees', ready.controls.phasingDegrees - 15)], ready);
    expect(plain(swung).current).toBe('setUp');
    expect(proving(swung, plain(swung)).current).toBe('prove');
  });

  it.each([
    ['a crystal is pulled that no proof asks for', [{ type: 'crystalPulled', hz: 10_700_000 }]],
    [
      'something else goes as well',
      [set('levelDb', ready.controls.levelDb - 8), set('blanking', false), { type: 'leadRemoved', lead: 'rf' }],
    ],
  ] as const)('falls back where %s', (_, acts) => {
    const proving = createProving(setup.scenario.proofs);
    proving(ready, plain(ready));
    const state = stateAfter(setup, acts, ready);
    expect(proving(state, plain(state))).toEqual(plain(state));
    expect(plain(state).current).not.toBe('prove');
  });

  it('is the plain truth before signing', () => {
    const proving = createProving(setup.scenario.proofs);
    proving(ready, plain(ready));
    const low = stateAfter(setup, [set('levelDb', ready.controls.levelDb - 8)], ready);
    const signing = { ...plain(low), stage: 'signing' } as const;
    expect(proving(low, signing)).toBe(signing);
  });

  it('knows nothing of a bench on which nothing stood yet', () => {
    const proving = createProving(setup.scenario.proofs);
    const low = stateAfter(setup, [set('levelDb', ready.controls.levelDb - 8)], ready);
    expect(proving(low, plain(low)).current).toBe('setUp');
  });
});
