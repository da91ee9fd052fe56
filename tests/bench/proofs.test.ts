/** The watchers: each proof is found from the act alone, and undone when a slug moves. */
import { describe, expect, test } from 'vitest';
import { applyEvent } from '../../src/bench/applyEvent.ts';
import type { BenchEvent, ControlId } from '../../src/bench/benchEvent.ts';
import { type BenchState, NO_PROOFS } from '../../src/bench/benchState.ts';
import { initialState } from '../../src/bench/setup.ts';
import { PROOFS, type ProofId, WHERE_ASKED } from '../../src/scenario/proofId.ts';
import { accepted, play, readySetup, stripSetup } from './fixture.ts';

const ready = readySetup(stripSetup, { proofs: PROOFS });
const start = play(ready, [{ type: 'crystalPlugged', hz: 44e6 }]);
const set = (control: ControlId, value: number | boolean | string): BenchEvent => ({
  type: 'controlSet',
  control,
  value,
});
const off = (lead: 'earth' | 'rf'): BenchEvent => ({ type: 'leadRemoved', lead });
const earthOn: BenchEvent = { type: 'leadConnected', lead: 'earth', to: 'Earth' };
const drag = (control: ControlId, from: number, to: number, steps: number): BenchEvent[] =>
  Array.from({ length: steps }, (_, i) => set(control, from + ((to - from) * (i + 1)) / steps));

function proofsOf(events: readonly BenchEvent[], from: BenchState = start, gapSeconds = 2): readonly ProofId[] {
  let state = from;
  for (const event of events) state = accepted(applyEvent(ready, state, event, state.seconds + gapSeconds)).state;
  return PROOFS.filter((id) => state.proofs[id].done);
}

const meterOn: readonly BenchEvent[] = [{ type: 'leadConnected', lead: 'meter', to: 'AGC' }, set('meterRangeVolts', 3)];

const ACTS: readonly [ProofId, string, readonly BenchEvent[]][] = [
  ['halveLevel', 'down by 6 dB and back', [set('levelDb', -52), set('levelDb', -46)]],
  ['halveLevel', 'down by 5 and back to within 1', [set('levelDb', -51), set('levelDb', -47)]],
  [
    'halveLevel',
    'after the level was first put right',
    [set('levelDb', -60), set('levelDb', -66), set('levelDb', -60)],
  ],
  ['swingPhase', 'out by 10 degrees and back', [set('phasingDegrees', 10), set('phasingDegrees', 0)]],
  ['swingPhase', 'the other way, nearly back', [set('phasingDegrees', -25), set('phasingDegrees', -1)]],
  [
    'swingPhase',
    'through both sides',
    [set('phasingDegrees', 15), set('phasingDegrees', -15), set('phasingDegrees', 0)],
  ],
  ['markersOffOn', 'by the height knob', [set('pipHeightDiv', 0), set('pipHeightDiv', 0.5)]],
  [
    'markersOffOn',
    'by the crystal',
    [
      { type: 'crystalPulled', hz: 44e6 },
      { type: 'crystalPlugged', hz: 44e6 },
    ],
  ],
  ['touchEarth', 'off and on', [off('earth'), earthOn]],
  ['skirts', 'four times the Y gain', [set('yVoltsPerDiv', 0.02), set('yVoltsPerDiv', 0.1)]],
  ['bias', 'the meter on the line and off again', [...meterOn, { type: 'leadRemoved', lead: 'meter' }]],
  ['bias', 'the meter on the line until the power goes', [...meterOn, { type: 'powerSwitched', on: false }]],
  [
    'liftCrystal',
    'out and in again',
    [
      { type: 'crystalPulled', hz: 44e6 },
      { type: 'crystalPlugged', hz: 44e6 },
    ],
  ],
  ['pipDown', 'four times the Y gain', [set('yVoltsPerDiv', 0.02), set('yVoltsPerDiv', 0.1)]],
  ['skirts', '10 dB more level', [set('levelDb', -36), set('levelDb', -46)]],
];

describe('an act that proves', () => {
  test.each(ACTS)('%s: %s', (id, _how, events) => {
    expect(proofsOf(events)).toContain(id);
    expect(proofsOf(events.slice(0, -1))).not.toContain(id);
  });

  test('is heard once, and dated', () => {
    const low = accepted(applyEvent(ready, start, set('levelDb', -52), 10)).state;
    expect(low.proofs.halveLevel).toMatchObject({ done: false, from: -46 });
    const back = accepted(applyEvent(ready, low, set('levelDb', -46), 12));
    expect(back.heard).toEqual([{ kind: 'proof', proof: 'halveLevel' }]);
    expect(back.state.proofs.halveLevel).toMatchObject({ done: true, doneAtSeconds: 12, from: null });
    const again = accepted(applyEvent(ready, back.state, set('levelDb', -52), 14));
    expect(again.heard).toEqual([]);
    expect(again.state.proofs.halveLevel.doneAtSeconds).toBe(12);
  });

  test('fast dragging counts as one motion and is found as well', () => {
    const events = [...drag('phasingDegrees', 0, 20, 20), ...drag('phasingDegrees', 20, 0, 20)];
    expect(proofsOf(events, start, 1 / 30)).toContain('swingPhase');
    const level = [...drag('levelDb', -46, -54, 4), ...drag('levelDb', -54, -46, 4)];
    expect(proofsOf(level, start, 1 / 30)).toContain('halveLevel');
    expect(proofsOf(level.slice(0, -1), start, 1 / 30)).toEqual([]);
  });
});

describe('what does not prove', () => {
  test.each([
    ['a level lowered too little', [set('levelDb', -50), set('levelDb', -46)]],
    ['a level lowered and left', [set('levelDb', -52)]],
    ['a level raised a little and put back', [set('levelDb', -40), set('levelDb', -46)]],
    ['a phase moved too little', [set('phasingDegrees', 9), set('phasingDegrees', 0)]],
    ['a phase swung and left 2 degrees off', [set('phasingDegrees', 20), set('phasingDegrees', 2)]],
    ['one of two marks silenced', [set('comb', true), set('comb', false)]],
    ['Y gain raised by two and a half', [set('yVoltsPerDiv', 0.05), set('yVoltsPerDiv', 0.1)]],
    ['a strap lifted and left', [off('earth')]],
  ] as [string, BenchEvent[]][])('%s', (_what, events) => {
    expect(proofsOf(events)).toEqual([]);
  });

  test('an act with no curve to look at', () => {
    const dark = play(ready, [off('rf')], start);
    for (const [, , events] of ACTS) expect(proofsOf(events, dark)).toEqual([]);
    const spot = play(ready, [set('spanHz', 0)], start);
    for (const [, , events] of ACTS) expect(proofsOf(events, spot)).toEqual([]);
  });
});

test('all of them, until any slug moves', () => {
  const all = ACTS.filter(([, how]) => !how.includes('power')).flatMap(([, , events]) => events);
  expect(proofsOf(all)).toEqual(PROOFS);
  const proved = play(ready, all, start);
  const turned = play(
    ready,
    [
      { type: 'toolTaken', tool: 'hex' },
      { type: 'slugTurned', slug: 'T4', turns: 1 / 32 },
    ],
    proved,
  );
  expect(turned.proofs).toEqual(NO_PROOFS);
  expect(proofsOf(all, turned)).toEqual(PROOFS);
});

test('a half-done act is forgotten too when a slug moves', () => {
  const turned = play(
    ready,
    [
      set('levelDb', -52),
      { type: 'toolTaken', tool: 'hex' },
      { type: 'slugTurned', slug: 'T4', turns: 0.5 },
      set('levelDb', -46),
    ],
    start,
  );
  expect(turned.proofs.halveLevel.done).toBe(false);
});

test('a wrong head that slips moves no slug and undoes nothing', () => {
  const proved = play(ready, [off('earth'), earthOn], start);
  const slipped = play(
    ready,
    [
      { type: 'toolTaken', tool: 'blade' },
      { type: 'slugTurned', slug: 'T4', turns: 0.5 },
    ],
    proved,
  );
  expect(slipped.proofs.touchEarth.done).toBe(true);
});

test('the start has none', () => {
  expect(initialState(ready).proofs).toEqual(NO_PROOFS);
});

test('what only some scenarios ask for is watched for in those alone', () => {
  const plain = readySetup(stripSetup);
  for (const [id, , events] of ACTS.filter(([proof]) => WHERE_ASKED.includes(proof))) {
    const state = play(plain, events, play(plain, [{ type: 'crystalPlugged', hz: 44e6 }]));
    expect(state.proofs[id], id).toEqual(NO_PROOFS[id]);
  }
});

test('another crystal pulled meanwhile begins it anew', () => {
  const two = play(ready, [{ type: 'crystalPlugged', hz: 45.75e6 }], start);
  const pull = (hz: number): BenchEvent => ({ type: 'crystalPulled', hz });
  const plug = (hz: number): BenchEvent => ({ type: 'crystalPlugged', hz });
  expect(proofsOf([pull(44e6), pull(45.75e6), plug(44e6)], two)).not.toContain('liftCrystal');
  expect(proofsOf([pull(44e6), pull(45.75e6), plug(44e6), plug(45.75e6)], two)).toContain('liftCrystal');
});
