/** Who may have a helper: counted from the runs that are kept. */
import { describe, expect, it, test } from 'vitest';
import { ownSetUp, SET_UPS_FIRST, setUpsShown } from '../../src/app/madeReady.ts';
import { kindOfSetUp } from '../../src/bench/madeReady.ts';
import { grade } from '../../src/grading/grade.ts';
import { replay } from '../../src/run/replay.ts';
import { entryOfReport } from '../../src/services/store/indexEntry.ts';
import { readKept } from '../../src/services/store/records.ts';
import { wholeJob } from '../session/acts.ts';
import { canSetup, stripSetup } from '../session/setups.ts';
import { setupOf } from '../technician/oneScenario.ts';

const setup = canSetup();
const kind = kindOfSetUp(setup);
const acts = wholeJob(setup);

/** The kind that a run shows, as it is kept. */
function shownBy(events: typeof acts, at = setup): string | null {
  const timed = events.map((act, i) => ({ atMs: 1000 * i, ...act }));
  return ownSetUp(at, replay(at, timed).state, grade(at, timed));
}

describe('a run shows its kind of set-up', () => {
  it('where all of it was true at the end', () => {
    expect(shownBy(acts)).toBe(kind);
    const blind = acts.filter((act) => !(act.type === 'controlSet' && act.control === 'blanking'));
    expect(shownBy(blind)).toBeNull();
  });

  it('and nobody helped: no hint, no helper, no guide, no lead that was on before', () => {
    expect(shownBy([{ type: 'hintAsked', index: 0 }, ...acts])).toBeNull();
    expect(shownBy([{ type: 'setUpByHelper' }, ...acts.filter(({ type }) => type !== 'leadConnected')])).toBeNull();
    const guided = setupOf('first-curve');
    expect(shownBy(wholeJob(guided), guided)).toBeNull();
    const prepared = canSetup({ start: { ...setup.scenario.start, prepared: ['safe', 'connect'] } });
    expect(shownBy(wholeJob(prepared), prepared)).toBeNull();
  });
});

test('it is kept with the run, and read again', () => {
  const timed = acts.map((act, i) => ({ atMs: 1000 * i, ...act }));
  const entry = entryOfReport('a', { scenario: setup.scenario, learner: null }, grade(setup, timed), 1, kind);
  expect(readKept({ ...entry, serial: 1 })).toMatchObject({ setUp: kind });
  const { setUp: _, ...before } = entry;
  expect(readKept({ ...before, serial: 1 })).not.toHaveProperty('setUp');
  expect(readKept({ ...entry, setUp: 7, serial: 1 })).toBeNull();
});

test('a helper comes after three of the kind, in practice alone', () => {
  const kept = (times: number) => Array.from({ length: times }, () => ({ setUp: kind }));
  expect(setUpsShown(setup, kept(SET_UPS_FIRST - 1))).toBeNull();
  expect(setUpsShown(setup, [...kept(SET_UPS_FIRST - 1), { setUp: kindOfSetUp(stripSetup()) }, {}])).toBeNull();
  expect(setUpsShown(setup, kept(SET_UPS_FIRST))).toBe(SET_UPS_FIRST);
  expect(setUpsShown(canSetup({ sealed: true }), kept(9))).toBeNull();
  expect(setUpsShown(setupOf('free-line'), kept(9))).toBeNull();
});
