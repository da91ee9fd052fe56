/** A helper who sets the bench up: one act that leaves it as the sheet says, and is not to be had where it would tell or prove something. Common practice, no source. */
import { describe, expect, it, test } from 'vitest';
import { haveItSetUp } from '../../src/app/madeReady.ts';
import { applyEvent } from '../../src/bench/applyEvent.ts';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import { NO_PROOFS } from '../../src/bench/benchState.ts';
import { kindOfSetUp } from '../../src/bench/madeReady.ts';
import { type BenchSetup, initialState } from '../../src/bench/setup.ts';
import { SET_UP_RULES } from '../../src/grading/rules/setUpRules.ts';
import { isOff, type SetUpRuleNumber } from '../../src/grading/standing.ts';
import { responseById } from '../../src/receiver/responses.ts';
import { tooFast } from '../../src/run/pace.ts';
import { replay } from '../../src/run/replay.ts';
import { appendEvent, createRun, type Run } from '../../src/run/runLog.ts';
import { canSetup, stripSetup } from '../session/setups.ts';
import { setupOf } from '../technician/oneScenario.ts';

const HELP: BenchEvent = { type: 'setUpByHelper' };
const READ: BenchEvent = { type: 'cautionsAcknowledged' };

/** As the page has it done. */
function helped(setup: BenchSetup): Run {
  let run = createRun(setup, null);
  const act = (event: BenchEvent) => {
    const appended = appendEvent(run, event, 1000);
    if (appended.ok) run = appended.run;
    return appended;
  };
  act(READ);
  haveItSetUp({ setup, state: () => run.state, act });
  return run;
}

/** Practice jobs of the course that leave the leads to the learner, one of each kind and more. */
const JOBS = [
  'off-centre',
  'the-dial-lies',
  'tone-and-needle',
  'six-in-a-row',
  'from-cold',
  'hill-and-ditch',
  'antenna-to-diode',
];

describe.each(JOBS)('%s', (id) => {
  const setup = setupOf(id);
  const run = helped(setup);

  it('is set up as the sheet says: no rule of the set-up is off', () => {
    const facts = createBench(setup).facts(run.state);
    const sheet = responseById(setup.receiver, facts.response).setUp;
    const off = SET_UP_RULES.map(({ number }) => number).filter((rule) => isOff(rule as SetUpRuleNumber, facts, sheet));
    // A set that is cold or far out of tune may be too weak until it is neither.
    expect(off.filter((rule) => rule !== 'G17')).toEqual([]);
    expect(facts.traceOnScreen).toBe(true);
  });

  it('is in the log, comes out the same again, and no hand is said to have been too quick', () => {
    expect(run.events.filter(({ type }) => type === 'setUpByHelper')).toHaveLength(1);
    expect(replay(setup, run.events)).toMatchObject({ refused: null, state: run.state });
    expect(tooFast(run.events)).toBeNull();
  });

  it('breaks no rule of care and proves nothing', () => {
    expect(run.state.incidents).toEqual([]);
    expect(Object.values(run.state.proofs).some(({ done }) => done)).toBe(false);
    expect(run.state.turnsMade).toBe(0);
  });
});

test('what was proved before, or half proved, is forgotten', () => {
  const setup = canSetup();
  const half = applyEvent(setup, initialState(setup), { type: 'controlSet', control: 'levelDb', value: -40 }, 1);
  if (!half.ok) throw new Error(half.reason);
  const after = applyEvent(setup, half.state, HELP, 2);
  expect(after.ok && after.state.proofs).toBe(NO_PROOFS);
});

const point = canSetup().receiver.responses[0]!.setUp.observeAt;
test.each<[string, string, BenchSetup, readonly BenchEvent[]]>([
  ['a sealed job', 'notInThisScenario', canSetup({ sealed: true }), []],
  ['leads that are on already', 'notInThisScenario', setupOf('free-line'), []],
  ['a second time', 'alreadySo', canSetup(), [HELP]],
  ['a lead clipped on', 'alreadyBegun', canSetup(), [{ type: 'leadConnected', lead: 'y', to: point }]],
  [
    'a slug turned',
    'alreadyBegun',
    canSetup(),
    [
      { type: 'toolTaken', tool: 'hex' },
      { type: 'slugTurned', slug: 'T1B', turns: 0.25 },
    ],
  ],
  ['cautions unread', 'cautionsFirst', stripSetup(), []],
])('no helper: %s', (_, reason, setup, acts) => {
  let state = initialState(setup);
  acts.forEach((act, i) => {
    const applied = applyEvent(setup, state, act, i);
    if (!applied.ok) throw new Error(applied.reason);
    state = applied.state;
  });
  expect(applyEvent(setup, state, HELP, 60)).toEqual({ ok: false, reason });
});

test('set-ups are of one kind where the same things are clipped on and set', () => {
  const kinds = Object.fromEntries(
    ['off-centre', 'both-ways', 'six-in-a-row', 'from-cold', 'tone-and-needle'].map((id) => [
      id,
      kindOfSetUp(setupOf(id)),
    ]),
  );
  expect(kinds['off-centre']).toBe(kinds['both-ways']);
  expect(kinds['six-in-a-row']).toBe(kinds['from-cold']);
  expect(new Set(Object.values(kinds)).size).toBe(3);
});
