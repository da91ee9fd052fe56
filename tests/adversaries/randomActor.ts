/** An actor who does anything that can be done at a bench, by seeded chance, turns of slugs among it, and signs. */
import { seededRandom } from '../../src/base/random.ts';
import { applyEvent } from '../../src/bench/applyEvent.ts';
import type { BenchEvent, ControlId } from '../../src/bench/benchEvent.ts';
import { type BenchState, LEAD_IDS, TOOL_IDS, TUBE_X } from '../../src/bench/benchState.ts';
import { controlRange } from '../../src/bench/controlRange.ts';
import { accepts } from '../../src/bench/leads.ts';
import { type BenchSetup, initialState, RESTING_CONTROLS } from '../../src/bench/setup.ts';
import { MOST_TURNS_PER_EVENT } from '../../src/bench/slugTurning.ts';
import type { TimedEvent } from '../../src/files/runFile.ts';
import { partsTray } from '../../src/receiver/faults/partsTray.ts';
import { SET_UP_MATTERS } from '../../src/scenario/diagnosis.ts';
import { ANSWERS } from '../../src/scenario/findingAnswer.ts';
import { PROOFS } from '../../src/scenario/proofId.ts';

const MOST_ACTS = 80;
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
  if (kind < 0.975) return { type: 'hintAsked', index: 0 };
  if (kind < 0.985) {
    const proof = oneOf(PROOFS);
    return { type: 'findingStated', proof, answer: oneOf(ANSWERS[proof]), figure: 8 * chance() };
  }
  if (kind < 0.99) {
    const parts = chance() < 0.5 ? [] : [oneOf(partsTray(receiver, deck)).name];
    return { type: 'diagnosisStated', slugs: [oneOf(receiver.adjusters).id], parts, setUp: [oneOf(SET_UP_MATTERS)] };
  }
  return { type: 'partReplaced', element: oneOf(partsTray(receiver, deck)).name };
}

/** A run of acts that the bench took, signed off at its end where there was something to sign. */
export function randomActor(setup: BenchSetup, seed: number): readonly TimedEvent[] {
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
