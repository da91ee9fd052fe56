/** What goes on at a bench that nobody touches, and how seldom. Common practice, no source. */
import { expect, test } from 'vitest';
import { createBenchMoment } from '../../src/app/benchMoment.ts';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchState } from '../../src/bench/benchState.ts';
import { type BenchSetup, initialState } from '../../src/bench/setup.ts';
import { type Life, NO_LIFE } from '../../src/scenario/life.ts';
import { play, readySetup, stripSetup } from '../bench/fixture.ts';
import { stateAfter, wholeJob } from '../session/acts.ts';
import { setupOf } from '../technician/oneScenario.ts';

const lively = (life: Partial<Life>): BenchSetup => readySetup(stripSetup, { life: { ...NO_LIFE, ...life } });

function at(life: Partial<Life>, wantsNoMotion = false) {
  const setup = lively(life);
  const state: BenchState = play(setup, [{ type: 'controlSet', control: 'yVoltsPerDiv', value: 0.02 }]);
  let seconds = state.seconds;
  const moment = createBenchMoment(
    setup,
    () => 1000 * seconds,
    () => wantsNoMotion,
  );
  const bench = createBench(setup);
  return {
    state,
    moment,
    bench,
    pass(more: number) {
      seconds += more;
    },
  };
}

test('a clean, warm bench stands still: the very same state whatever the clock says', () => {
  const { state, moment, bench, pass } = at({});
  pass(100);
  expect(moment.of(state)).toBe(state);
  expect(moment.warms(state)).toBe(false);
  expect(moment.stirs(bench.display(state))).toBe(false);
});

test('grass that can be seen is another in the next second, and within a second the same', () => {
  const { state, moment, bench, pass } = at({ noise: 1 });
  expect(moment.stirs(bench.display(state))).toBe(true);
  pass(2);
  const then = moment.of(state);
  expect(then).not.toBe(state);
  expect(moment.of(state)).toBe(then);
  const before = [...bench.display(state).beam.data];
  expect([...bench.display(then).beam.data]).not.toEqual(before);
});

test('for a reader who wants no motion it stands still', () => {
  const { state, moment, bench, pass } = at({ noise: 1 }, true);
  expect(moment.stirs(bench.display(state))).toBe(false);
  pass(2);
  expect(moment.of(state)).toBe(state);
});

test('a cold set goes on warming between the acts, and is done with it after some time', () => {
  const { state, moment, pass } = at({ cold: true, driftFarads: 0.2e-12 });
  expect(moment.warms(state)).toBe(true);
  pass(30);
  expect(moment.of(state).seconds).toBeGreaterThan(state.seconds);
  pass(3000);
  expect(moment.warms(state)).toBe(false);
});

test('a joint that opens by itself does so in its second, with nothing touched, and once', () => {
  const setup = setupOf('right-when-cold');
  const [fault] = setup.scenario.faults;
  const opens = fault!.kind === 'coldJoint' ? fault!.afterSeconds : Number.NaN;
  const state = stateAfter(setup, wholeJob(setup).slice(0, 1), initialState(setup));
  let seconds = opens - 1;
  const moment = createBenchMoment(setup, () => 1000 * seconds);
  expect(moment.of(state)).toBe(state);
  expect(moment.turns(state)).toBe(false);
  seconds = opens;
  expect(moment.turns(state)).toBe(true);
  const open = moment.of(state);
  expect(open.seconds).toBe(opens);
  seconds += 100;
  expect(moment.turns(state)).toBe(false);
  expect(moment.of(state)).toBe(open);
});
