/**
 * Nobody passes by accident: a thousand random learners over the whole course, each with its own number of random acts that the bench takes, turns of slugs
 * among them. None of them passes, nor does a set that was signed off untouched; the job done as it should be is worth 100 on every receiver.
 */
import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import { applyEvent } from '../../src/bench/applyEvent.ts';
import type { BenchEvent, ControlId } from '../../src/bench/benchEvent.ts';
import { type BenchState, LEAD_IDS, TOOL_IDS, TUBE_X } from '../../src/bench/benchState.ts';
import { controlRange } from '../../src/bench/controlRange.ts';
import { accepts } from '../../src/bench/leads.ts';
import { type BenchSetup, initialState, RESTING_CONTROLS } from '../../src/bench/setup.ts';
import { MOST_TURNS_PER_EVENT } from '../../src/bench/slugTurning.ts';
import type { TimedEvent } from '../../src/files/runFile.ts';
import { grade } from '../../src/grading/grade.ts';
import { partsTray } from '../../src/receiver/faults/partsTray.ts';
import { PROOFS } from '../../src/scenario/proofId.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { wholeJob } from '../session/acts.ts';

const LEARNERS = 1000;
const MOST_ACTS = 80;

const library = shippedLibrary();
const setups = library.scenarios.map((scenario): BenchSetup => {
  return { ...library.receivers.get(scenario.receiver)!, scenario };
});
const CONTROLS = Object.keys(RESTING_CONTROLS) as readonly ControlId[];
const TOOLS = [...TOOL_IDS, null];

/** An act of whatever kind; the bench may refuse it. Half of all are turns with the tool that fits, or what makes them possible. */
function anyAct({ receiver, deck }: BenchSetup, state: BenchState, chance: () => number): BenchEvent {
  const oneOf = <T>(list: readonly T[]): T => list[Math.floor(chance() * list.length)]!;
  const kind = chance();
  if (kind < 0.5) {
    const { id, head } = oneOf(receiver.adjusters);
    if (state.tool !== head) return { type: 'toolTaken', tool: head };
    return { type: 'slugTurned', slug: id, turns: (2 * chance() - 1) * MOST_TURNS_PER_EVENT };
  }
  if (kind < 0.7) {
    const control = oneOf(CONTROLS);
    const range = controlRange({ receiver }, control);
    if (range.kind === 'switch') return { type: 'controlSet', control, value: chance() < 0.5 };
    if (range.kind === 'choice') return { type: 'controlSet', control, value: oneOf(range.choices) };
    const value = range.min + chance() * (range.max - range.min);
    return { type: 'controlSet', control, value: range.stepped ? Math.round(value) : value };
  }
  if (kind < 0.8) {
    const lead = oneOf(LEAD_IDS);
    const ends = [TUBE_X, ...receiver.testPoints.map((point) => point.id)];
    const fit = ends.filter((end) => accepts({ receiver } as BenchSetup, lead, end));
    return { type: 'leadConnected', lead, to: oneOf(fit.length > 0 ? fit : ends) };
  }
  if (kind < 0.82) return { type: 'leadRemoved', lead: oneOf(LEAD_IDS) };
  if (kind < 0.88) return { type: 'crystalPlugged', hz: oneOf(receiver.crystalsHz) };
  if (kind < 0.89) return { type: 'crystalPulled', hz: oneOf(receiver.crystalsHz) };
  if (kind < 0.91) return { type: 'cautionsAcknowledged' };
  if (kind < 0.93) return { type: 'isolationSwitched', on: chance() < 0.8 };
  if (kind < 0.95) return { type: 'powerSwitched', on: chance() < 0.6 };
  if (kind < 0.97) return { type: 'toolTaken', tool: oneOf(TOOLS) };
  if (kind < 0.98) return { type: 'hintAsked', index: 0 };
  return { type: 'partReplaced', element: oneOf(partsTray(receiver, deck)).name };
}

/** A run of acts that the bench took, signed off at its end where there was something to sign. */
function learner(setup: BenchSetup, seed: number): readonly TimedEvent[] {
  const chance = seededRandom(seed);
  const events: TimedEvent[] = [];
  let state = initialState(setup);
  let atMs = 0;
  const take = (event: BenchEvent): void => {
    const applied = applyEvent(setup, state, event, atMs / 1000);
    if (!applied.ok) return;
    state = applied.state;
    events.push({ atMs, ...event });
  };
  const acts = 1 + Math.floor(chance() * MOST_ACTS);
  for (let tries = 0; events.length < acts && tries < 4 * MOST_ACTS; tries++) {
    atMs += Math.floor(chance() * 6000);
    take(anyAct(setup, state, chance));
  }
  take({ type: 'signedOff' });
  return events;
}

test('there is a course to walk over', () => {
  expect(setups.length).toBeGreaterThanOrEqual(50);
  expect(PROOFS.length).toBe(5);
});

test(`of ${LEARNERS} random learners none passes`, { timeout: 0 }, () => {
  const passed: string[] = [];
  let signed = 0;
  let turned = 0;
  let best = 0;
  for (let n = 0; n < LEARNERS; n++) {
    const setup = setups[n % setups.length]!;
    const events = learner(setup, 40_000 + n);
    const report = grade(setup, events);
    if (events.at(-1)?.type === 'signedOff') signed++;
    if (report.turns > 0) turned++;
    best = Math.max(best, report.total);
    if (report.passed) passed.push(`${setup.scenario.id}, seed ${40_000 + n}: ${report.total}`);
  }
  expect(passed).toEqual([]);
  expect(best).toBeLessThan(90);
  // They were learners, not statues.
  expect(signed).toBeGreaterThan(0.8 * LEARNERS);
  expect(turned).toBeGreaterThan(0.8 * LEARNERS);
});

describe('untouched', () => {
  test.each(setups.map((setup) => [setup.scenario.id, setup] as const))('%s, signed off, does not pass', (_, setup) => {
    const report = grade(setup, [{ atMs: 1000, type: 'signedOff' }]);
    expect(report.passed).toBe(false);
    expect(report.total).toBeLessThan(70);
  });
});

const firstOfEach = [...library.receivers.keys()].flatMap((id) => {
  const setup = setups.find((one) => one.scenario.receiver === id);
  return setup === undefined ? [] : [[id, setup] as const];
});

describe('done as it should be', () => {
  test('every receiver has a scenario', () => {
    expect(firstOfEach.map(([id]) => id)).toEqual([...library.receivers.keys()]);
  });

  test.each(firstOfEach)('on %s it is worth 100', (_, setup) => {
    const report = grade(
      setup,
      wholeJob(setup).map((event, i) => ({ atMs: 500 * i, ...event })),
    );
    expect(report.lines.filter((line) => line.points !== line.max)).toEqual([]);
    expect(report).toMatchObject({ total: 100, passed: true });
  });
});
