/** The reducer: every event, every refusal, and that a refusal changes nothing. */
import { describe, expect, test } from 'vitest';
import { applyEvent } from '../../src/bench/applyEvent.ts';
import type { BenchEvent, Refusal } from '../../src/bench/benchEvent.ts';
import { type BenchState, NO_PROOFS } from '../../src/bench/benchState.ts';
import { MOST_OF_A_KIND } from '../../src/bench/incidents.ts';
import { type BenchSetup, initialState, RESTING_CONTROLS } from '../../src/bench/setup.ts';
import { nominalTurns } from '../../src/receiver/slugLaw.ts';
import { accepted, canSetup, play, readySetup, refusal, stripSetup } from './fixture.ts';

const can = canSetup();
const strip = stripSetup();
const cautions: BenchEvent = { type: 'cautionsAcknowledged' };
const isolate: BenchEvent = { type: 'isolationSwitched', on: true };
const power: BenchEvent = { type: 'powerSwitched', on: true };
const hex: BenchEvent = { type: 'toolTaken', tool: 'hex' };

describe('the start', () => {
  test('stands as the bench rests, slugs at nominal', () => {
    const state = initialState(can);
    expect(state.controls).toEqual(RESTING_CONTROLS);
    expect(state.slugs.T1B?.screwTurns).toBe(nominalTurns(can.receiver.adjusters[0]!));
    expect(Object.values(state.leads).every((end) => end === null)).toBe(true);
  });

  test('a trainer board has no mains: nothing to isolate, always running', () => {
    expect(initialState(can)).toMatchObject({ isolated: false, powered: true });
    expect(initialState(strip)).toMatchObject({ isolated: false, powered: false });
  });

  test('prepared phases are already done', () => {
    const start = { slugs: {}, randomTurns: 0, controls: { spanHz: 8e6 }, prepared: ['safe', 'connect'] as const };
    const state = initialState(stripSetup({ start }));
    expect(state).toMatchObject({ cautionsAcknowledged: true, isolated: true, powered: true });
    expect(state.leads).toEqual({
      rf: 'TP1',
      y: 'TP4',
      x: 'tube',
      earth: 'Earth',
      biasA: 'AGC',
      biasB: null,
      meter: null,
    });
    expect(state.controls).toMatchObject({ rfTerminated: true, rfCapacitor: true, yTip: 'resistor', spanHz: 8e6 });
  });

  test('named slugs stand where the scenario says, the others are scattered by the seed, inside their travel', () => {
    const start = { slugs: { T1: -2, T2: 99 }, randomTurns: 3, controls: {}, prepared: [] };
    const [one, again, other] = [7, 7, 8].map((seed) => initialState(stripSetup({ start, seed })).slugs);
    expect(one).toEqual(again);
    expect(one?.T3).not.toEqual(other?.T3);
    const nominal = nominalTurns(strip.receiver.adjusters[0]!);
    expect(one?.T1?.coreTurns).toBe(nominal - 2);
    expect(one?.T2?.coreTurns).toBe(20);
    for (const adjuster of strip.receiver.adjusters.slice(2)) {
      expect(Math.abs(one![adjuster.id]!.screwTurns - nominalTurns(adjuster))).toBeLessThanOrEqual(3);
    }
  });
});

const REFUSALS: readonly [string, Refusal, () => [ReturnType<typeof canSetup>, BenchState], BenchEvent][] = [
  ['cautions twice', 'alreadySo', () => [strip, play(strip, [cautions])], cautions],
  ['isolation on a board without mains', 'notInThisScenario', () => [can, initialState(can)], isolate],
  ['isolation twice', 'alreadySo', () => [strip, play(strip, [isolate])], isolate],
  ['power on a board without mains', 'notInThisScenario', () => [can, initialState(can)], power],
  ['power before the cautions', 'cautionsFirst', () => [strip, play(strip, [isolate])], power],
  ['power twice', 'alreadySo', () => [strip, play(strip, [cautions, isolate, power])], power],
  ['a lead before the cautions', 'cautionsFirst', () => [strip, initialState(strip)], connect('rf', 'TP1')],
  ['the cage before the cautions', 'cautionsFirst', () => [strip, initialState(strip)], connect('rf', 'hot')],
  ['a lead there is not', 'noSuchLead', () => [can, initialState(can)], connect('constructor', 'TP1')],
  ['a point there is not', 'noSuchPoint', () => [can, initialState(can)], connect('y', 'TP9')],
  ['the cage on a board that has none', 'noSuchPoint', () => [can, initialState(can)], connect('y', 'hot')],
  ['RF where it has no business', 'pointRefusesLead', () => [can, initialState(can)], connect('rf', 'TP1')],
  ['Y on earth', 'pointRefusesLead', () => [can, initialState(can)], connect('y', 'Earth')],
  ['Y on the AGC line', 'pointRefusesLead', () => [strip, play(strip, [cautions])], connect('y', 'AGC')],
  ['X on the set', 'pointRefusesLead', () => [can, initialState(can)], connect('x', 'TP1')],
  ['Y on the tube', 'pointRefusesLead', () => [can, initialState(can)], connect('y', 'tube')],
  ['earth on a signal point', 'pointRefusesLead', () => [can, initialState(can)], connect('earth', 'TP1')],
  ['bias on a signal point', 'pointRefusesLead', () => [strip, play(strip, [cautions])], connect('biasA', 'TP1')],
  ['a lead where it is', 'alreadySo', () => [can, play(can, [connect('y', 'TP1')])], connect('y', 'TP1')],
  [
    'two bias outputs on one line',
    'pointTaken',
    () => [strip, play(strip, [cautions, isolate, connect('biasA', 'AGC')])],
    connect('biasB', 'AGC'),
  ],
  ['a lead that is off', 'leadNotConnected', () => [can, initialState(can)], { type: 'leadRemoved', lead: 'y' }],
  [
    'taking off a lead there is not',
    'noSuchLead',
    () => [can, initialState(can)],
    { type: 'leadRemoved', lead: 'toString' as 'y' },
  ],
  ['a knob there is not', 'noSuchControl', () => [can, initialState(can)], set('__proto__', 1)],
  ['past the end of a knob', 'valueOutOfRange', () => [can, initialState(can)], set('levelDb', 1)],
  ['between the steps of the attenuator', 'valueOutOfRange', () => [can, initialState(can)], set('levelDb', -6.5)],
  ['not a number', 'valueOutOfRange', () => [can, initialState(can)], set('centreHz', Number.NaN)],
  ['a word on a knob', 'valueOutOfRange', () => [can, initialState(can)], set('spanHz', '1e6')],
  ['a number on a switch', 'valueOutOfRange', () => [can, initialState(can)], set('blanking', 1)],
  ['a range that the meter lacks', 'valueOutOfRange', () => [can, initialState(can)], set('meterRangeVolts', 5)],
  ['a sweep of video', 'notInThisScenario', () => [can, initialState(can)], set('sourceMode', 'video')],
  ['a crystal not in the box', 'noSuchCrystal', () => [can, initialState(can)], plug(10.71e6)],
  ['a crystal twice', 'crystalAlreadyIn', () => [can, play(can, [plug(10.7e6)])], plug(10.7e6)],
  ['a ninth crystal', 'rackFull', () => [can, play(can, can.receiver.crystalsHz.slice(0, 8).map(plug))], plug(10.4e6)],
  [
    'pulling a crystal that is out',
    'crystalNotIn',
    () => [can, initialState(can)],
    { type: 'crystalPulled', hz: 10.7e6 },
  ],
  ['pulling a crystal there is not', 'noSuchCrystal', () => [can, initialState(can)], { type: 'crystalPulled', hz: 1 }],
  ['the tool in the hand', 'alreadySo', () => [can, play(can, [hex])], hex],
  ['no tool to lay down', 'alreadySo', () => [can, initialState(can)], { type: 'toolTaken', tool: null }],
  ['setting no tool into a slug', 'noToolInHand', () => [can, initialState(can)], { type: 'toolPlaced', slug: 'T1B' }],
  ['a tool into no slug', 'noSuchSlug', () => [can, play(can, [hex])], { type: 'toolPlaced', slug: 'toString' }],
  ['the tool is out already', 'alreadySo', () => [can, play(can, [hex])], { type: 'toolPlaced', slug: null }],
  ['a slug there is not', 'noSuchSlug', () => [can, play(can, [hex])], turn('valueOf', 0.1)],
  ['turning by hand', 'noToolInHand', () => [can, initialState(can)], turn('T1B', 0.1)],
  ['no turn', 'noTurn', () => [can, play(can, [hex])], turn('T1B', 0)],
  ['too much at once', 'valueOutOfRange', () => [can, play(can, [hex])], turn('T1B', 2.01)],
  ['a turn that is not a number', 'valueOutOfRange', () => [can, play(can, [hex])], turn('T1B', Number.NaN)],
  [
    'a reading that is not a number',
    'valueOutOfRange',
    () => [can, initialState(can)],
    { type: 'readingTaken', what: 'meter', value: Number.POSITIVE_INFINITY },
  ],
  [
    'a reading with an endless name',
    'valueOutOfRange',
    () => [can, initialState(can)],
    { type: 'readingTaken', what: 'x'.repeat(81), value: 1 },
  ],
  [
    'a part where nothing is broken',
    'notInThisScenario',
    () => [can, initialState(can)],
    { type: 'partReplaced', element: 'RQ1' },
  ],
  ['a hint too many', 'noHint', () => [can, initialState(can)], { type: 'hintAsked', index: 2 }],
  ['half a hint', 'noHint', () => [can, initialState(can)], { type: 'hintAsked', index: 0.5 }],
  ['nothing was done', 'nothingToSign', () => [can, initialState(can)], { type: 'signedOff' }],
];

describe('what is refused', () => {
  test.each(REFUSALS)('%s', (_what, reason, start, event) => {
    const [setup, state] = start();
    const frozen = structuredClone(state);
    expect(refusal(setup, state, event)).toBe(reason);
    expect(state).toEqual(frozen);
  });

  test('hints where there are none to be had', () => {
    const ask: BenchEvent = { type: 'hintAsked', index: 0 };
    const closed = canSetup({ sealed: true });
    expect(refusal(closed, initialState(closed), ask)).toBe('notInThisScenario');
    const without = canSetup({ aids: { hints: false, toleranceMarks: false } });
    expect(refusal(without, initialState(without), ask)).toBe('notInThisScenario');
  });

  test('parts that are not in the deck, or new already, where there are faults', () => {
    const broken = canSetup({ faults: [{ kind: 'screwedIn' }] });
    const state = play(broken, [{ type: 'partReplaced', element: 'RQ1' }]);
    expect(state.replaced).toEqual(['RQ1']);
    expect(refusal(broken, state, { type: 'partReplaced', element: 'RQ1' })).toBe('alreadySo');
    expect(refusal(broken, state, { type: 'partReplaced', element: 'R99' })).toBe('noSuchPart');
  });

  test('time that runs backwards or is no time', () => {
    const state = play(can, [cautions]);
    expect(refusal(can, state, hex, 0.5)).toBe('badTime');
    expect(refusal(can, state, hex, Number.NaN)).toBe('badTime');
    expect(refusal(can, state, hex, Number.POSITIVE_INFINITY)).toBe('badTime');
    expect(refusal(can, state, hex, state.seconds)).toBe(null);
  });

  test('anything after signing off', () => {
    const state = play(can, [hex, turn('T1B', 0.5), { type: 'signedOff' }]);
    expect(state.signedOff).toBe(true);
    for (const event of [hex, turn('T1B', 0.5), { type: 'readingTaken', what: 'x', value: 1 } as const]) {
      expect(refusal(can, state, event)).toBe('runIsOver');
    }
  });

  test('acts after the time limit, save a reading and signing off', () => {
    const short = readySetup(canSetup, { timeLimitSeconds: 60 });
    const state = play(short, [hex]);
    expect(refusal(short, state, turn('T1B', 0.1), 60)).toBe(null);
    expect(refusal(short, state, turn('T1B', 0.1), 60.001)).toBe('runIsOver');
    expect(refusal(short, state, { type: 'readingTaken', what: 'x', value: 1 }, 61)).toBe(null);
    expect(refusal(short, state, { type: 'signedOff' }, 61)).toBe(null);
  });
});

describe('what is done', () => {
  test('controls take their value, and a switch is heard', () => {
    const state = play(can, [set('centreHz', 10.7e6), set('yCoupling', 'AC'), set('phasingDegrees', -0)]);
    expect(state.controls).toMatchObject({ centreHz: 10.7e6, yCoupling: 'AC', phasingDegrees: 0 });
    expect(heard(can, state, set('blanking', true))).toEqual(['switch']);
    expect(heard(can, state, set('centreHz', 10.71e6))).toEqual([]);
  });

  test('leads go on, move and come off', () => {
    const on = play(can, [connect('y', 'TP1'), connect('y', 'TP2'), connect('x', 'tube'), connect('meter', 'TP2')]);
    expect(on.leads).toMatchObject({ y: 'TP2', x: 'tube', meter: 'TP2' });
    expect(play(can, [{ type: 'leadRemoved', lead: 'y' }], on).leads.y).toBe(null);
    expect(on.incidents).toEqual([]);
  });

  test('crystals, hints, and a reading that a run of before may hold: time passes, and nothing else comes of it', () => {
    const state = play(can, [
      plug(10.7e6),
      plug(10.6e6),
      { type: 'crystalPulled', hz: 10.7e6 },
      { type: 'readingTaken', what: 'meter', value: 1.5 },
      { type: 'hintAsked', index: 1 },
      { type: 'hintAsked', index: 0 },
    ]);
    expect(state.crystals).toEqual([10.6e6]);
    expect(state.hintsTaken).toBe(2);
    expect(state.seconds).toBe(6);
    const read = play(can, [{ type: 'readingTaken', what: 'meter', value: 1.5 }]);
    expect(read).toEqual({ ...initialState(can), seconds: read.seconds });
  });

  test('a curve that needs no turning can be signed', () => {
    const ready = readySetup(canSetup);
    expect(play(ready, [{ type: 'signedOff' }]).signedOff).toBe(true);
  });

  test('a tool is set in, laid down and taken out', () => {
    const placed = play(can, [hex, { type: 'toolPlaced', slug: 'T1B' }]);
    expect(placed).toMatchObject({ tool: 'hex', toolIn: 'T1B' });
    expect(play(can, [{ type: 'toolPlaced', slug: null }], placed).toolIn).toBe(null);
    expect(play(can, [{ type: 'toolTaken', tool: 'blade' }], placed)).toMatchObject({ tool: 'blade', toolIn: null });
  });
});

describe('power and safety on a live chassis', () => {
  test('what goes wrong again and again is written down so often and no more, and nothing else is hidden by it', () => {
    const on = play(strip, [cautions, isolate, connect('earth', 'Earth'), power]);
    const swaps = Array.from({ length: 3 * MOST_OF_A_KIND }, (_, i) =>
      i % 2 === 0 ? connect('rf', 'TP1') : ({ type: 'leadRemoved', lead: 'rf' } as const),
    );
    const often = play(strip, swaps, on);
    expect(often.incidents).toHaveLength(MOST_OF_A_KIND);
    const touched = play(strip, [connect('rf', 'hot')], often);
    expect(touched.incidents.slice(MOST_OF_A_KIND).map((i) => i.kind)).not.toContain('wrongPowerOrder');
    expect(touched.incidents.length).toBeGreaterThan(MOST_OF_A_KIND);
  });

  test('in the right order nothing is written down', () => {
    const state = play(strip, [cautions, isolate, connect('earth', 'Earth'), connect('rf', 'TP1'), power]);
    expect(state).toMatchObject({ powered: true, stopped: null, incidents: [] });
  });

  test.each([
    ['power without the transformer', [cautions, power], 'power'],
    ['a clip without the transformer', [cautions, connect('earth', 'Earth')], 'earth'],
    ['the meter without the transformer', [cautions, connect('meter', 'TP1')], 'meter'],
    [
      'the transformer taken out under clipped leads',
      [cautions, isolate, connect('rf', 'TP1'), { type: 'isolationSwitched', on: false }],
      'isolation',
    ],
  ] as [string, BenchEvent[], string][])('%s stops the run', (_what, events, subject) => {
    const state = play(strip, events);
    expect(state.stopped).toBe('hotChassis');
    expect(state.incidents).toContainEqual({ kind: 'hotChassis', atSeconds: events.length, subject });
    expect(refusal(strip, state, hex)).toBe('runIsOver');
    expect(refusal(strip, state, { type: 'signedOff' })).toBe('runIsOver');
    expect(refusal(strip, state, { type: 'readingTaken', what: 'x', value: 1 })).toBe(null);
  });

  test('the X lead joins two instruments and touches no chassis', () => {
    expect(play(strip, [connect('x', 'tube')]).stopped).toBe(null);
  });

  test('RF, Y and bias handled with the power on are written down; earth, meter and X are not', () => {
    const on = play(strip, [cautions, isolate, connect('earth', 'Earth'), power]);
    const state = play(
      strip,
      [
        connect('rf', 'TP1'),
        connect('y', 'TP4'),
        connect('biasA', 'AGC'),
        { type: 'leadRemoved', lead: 'earth' },
        connect('earth', 'Earth'),
        connect('meter', 'AGC'),
        connect('x', 'tube'),
        { type: 'leadRemoved', lead: 'rf' },
      ],
      on,
    );
    expect(state.incidents.map((i) => [i.kind, i.subject])).toEqual([
      ['wrongPowerOrder', 'rf'],
      ['wrongPowerOrder', 'y'],
      ['wrongPowerOrder', 'biasA'],
      ['wrongPowerOrder', 'rf'],
    ]);
  });

  test('the generator lead may be moved on an isolated live set through its capacitor, once it has been clipped on', () => {
    const moves = [
      { type: 'leadRemoved', lead: 'rf' },
      connect('rf', 'TP1'),
      { type: 'leadRemoved', lead: 'rf' },
    ] as const;
    const capacitor = { type: 'controlSet', control: 'rfCapacitor', value: true } as const;
    const noted = (start: readonly BenchEvent[]) =>
      play(strip, [...moves], play(strip, [...start, power])).incidents.map(({ subject }) => subject);
    const strap = connect('earth', 'Earth');
    expect(noted([cautions, isolate, strap, capacitor, connect('rf', 'TP1')])).toEqual([]);
    expect(noted([cautions, isolate, strap, connect('rf', 'TP1')])).toEqual(['rf', 'rf', 'rf']);
    const first = play(strip, [cautions, isolate, strap, capacitor, power, connect('rf', 'TP1')]);
    expect(first.incidents.map(({ subject }) => subject)).toEqual(['rf']);
    const cold = { ...strip, receiver: { ...strip.receiver, mains: { ...strip.receiver.mains!, hotChassis: false } } };
    const moved = play(cold, [cautions, strap, capacitor, connect('rf', 'TP1'), power, ...moves]);
    expect(moved.incidents.map(({ subject }) => subject)).toEqual(['rf', 'rf', 'rf']);
  });

  test('the earth strap goes on first where a chassis may be live or the set is on', () => {
    const early = (setup: BenchSetup, acts: readonly BenchEvent[]) =>
      play(setup, [cautions, ...acts])
        .incidents.filter(({ kind }) => kind === 'beforeEarth')
        .map(({ subject }) => subject);
    const strap = connect('earth', 'Earth');
    const leads = [connect('meter', 'AGC'), connect('x', 'tube'), connect('rf', 'TP1'), connect('y', 'TP4')];
    const bias = connect('biasA', 'AGC');
    expect(early(strip, [isolate, strap, ...leads, bias])).toEqual([]);
    expect(early(strip, [isolate, ...leads, bias, strap])).toEqual(['rf', 'y', 'biasA']);
    expect(early(strip, [isolate, ...leads, strap, bias])).toEqual(['rf', 'y']);
    // Off with the strap again, a lead that stays where it is costs nothing, and one that is moved does.
    const lifted = [isolate, strap, ...leads, { type: 'leadRemoved', lead: 'earth' }] as const;
    expect(early(strip, lifted)).toEqual([]);
    expect(early(strip, [...lifted, connect('rf', 'TP2'), strap])).toEqual(['rf']);
    const cold = { ...strip, receiver: { ...strip.receiver, mains: { ...strip.receiver.mains!, hotChassis: false } } };
    expect(early(cold, [...leads, bias, strap])).toEqual([]);
    expect(early(cold, [power, ...leads, strap, bias])).toEqual(['rf', 'y']);
  });

  test('isolation changed under power is written down, and on a live chassis ends the run', () => {
    const state = play(strip, [cautions, isolate, power, { type: 'isolationSwitched', on: false }]);
    expect(state.incidents.map((i) => i.kind)).toEqual(['wrongPowerOrder', 'hotChassis']);
    const cold = { ...strip, receiver: { ...strip.receiver, mains: { ...strip.receiver.mains!, hotChassis: false } } };
    const kept = play(cold, [cautions, isolate, power, { type: 'isolationSwitched', on: false }]);
    expect(kept.incidents.map((i) => i.kind)).toEqual(['wrongPowerOrder']);
    expect(kept.stopped).toBe(null);
  });

  test('a lead put on the cage is written down and falls back into the tray', () => {
    const state = play(strip, [cautions, isolate, connect('earth', 'Earth'), connect('y', 'TP4'), connect('y', 'hot')]);
    expect(state.leads.y).toBe(null);
    expect(state.incidents.map((i) => [i.kind, i.subject])).toEqual([['hotTouch', 'y']]);
  });
});

test('a fresh start has no proof', () => {
  expect(initialState(can).proofs).toEqual(NO_PROOFS);
});

function connect(lead: string, to: string): BenchEvent {
  return { type: 'leadConnected', lead: lead as 'y', to };
}
function set(control: string, value: number | boolean | string): BenchEvent {
  return { type: 'controlSet', control: control as 'centreHz', value };
}
function plug(hz: number): BenchEvent {
  return { type: 'crystalPlugged', hz };
}
function turn(slug: string, turns: number): BenchEvent {
  return { type: 'slugTurned', slug, turns };
}
function heard(setup: ReturnType<typeof canSetup>, state: BenchState, event: BenchEvent): string[] {
  return accepted(applyEvent(setup, state, event, state.seconds)).heard.map((sound) => sound.kind);
}
