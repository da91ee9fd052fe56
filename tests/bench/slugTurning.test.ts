/** Screws, cores, stops, heads and steel. The limits are this bench's own (no source), save where a line says otherwise. */
import { describe, expect, test } from 'vitest';
import { applyEvent } from '../../src/bench/applyEvent.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import type { BenchState, ToolId } from '../../src/bench/benchState.ts';
import { initialState } from '../../src/bench/setup.ts';
import { followScrew } from '../../src/bench/slugTurning.ts';
import { nominalTurns } from '../../src/receiver/slugLaw.ts';
import { accepted, canSetup, play, readySetup, refusal } from './fixture.ts';

const can = canSetup();
const nominal = nominalTurns(can.receiver.adjusters[0]!);
const take = (tool: ToolId): BenchEvent => ({ type: 'toolTaken', tool });
const turn = (slug: string, turns: number): BenchEvent => ({ type: 'slugTurned', slug, turns });
const inHand = (tool: ToolId): BenchState => play(can, [take(tool)]);
const near = (turnsFromOuterStop: number): BenchState =>
  play(
    canSetup({ start: { slugs: { T1B: turnsFromOuterStop - nominal }, randomTurns: 0, controls: {}, prepared: [] } }),
    [take('hex')],
  );

describe('turning', () => {
  test('moves the screw, counts turns, sets the tool in', () => {
    const state = play(can, [turn('T1B', 1.5), turn('T1B', -0.5)], inHand('hex'));
    expect(state.slugs.T1B?.screwTurns).toBeCloseTo(nominal + 1, 12);
    expect(state.turnsMade).toBeCloseTo(2, 12);
    expect(state).toMatchObject({ toolIn: 'T1B', lastSlugTurnSeconds: 3, incidents: [] });
  });

  test('the core follows with a dead band: a change of direction is lost motion until it is taken up', () => {
    const half = 0.02 / 2;
    const inward = play(can, [turn('T1B', 1)], inHand('hex'));
    expect(inward.slugs.T1B!.coreTurns).toBeCloseTo(nominal + 1 - half, 12);
    const back = play(can, [turn('T1B', -0.015)], inward);
    expect(back.slugs.T1B!.coreTurns).toBe(inward.slugs.T1B!.coreTurns);
    const further = play(can, [turn('T1B', -0.015)], back);
    expect(further.slugs.T1B!.coreTurns).toBeCloseTo(nominal + 1 - 0.03 + half, 12);
  });

  test('the core is never further from the screw than half the band', () => {
    expect(followScrew(5, 6, 0.2)).toBeCloseTo(5.9, 12);
    expect(followScrew(5, 4, 0.2)).toBeCloseTo(4.1, 12);
    expect(followScrew(5, 5.05, 0.2)).toBe(5);
    expect(followScrew(5, 6, 0)).toBe(6);
  });

  test('a click for each quarter turn, told when the stop is near', () => {
    const heard = accepted(applyEvent(can, inHand('hex'), turn('T1B', 1), 2)).heard;
    expect(heard.filter((s) => s.kind === 'detent')).toHaveLength(4);
    expect(heard.find((s) => s.kind === 'detent')).toEqual({ kind: 'detent', slug: 'T1B', nearStop: false });
    const low = accepted(applyEvent(can, near(0.6), turn('T1B', -0.4), 2)).heard;
    expect(low.find((s) => s.kind === 'detent')).toMatchObject({ nearStop: true });
  });
});

describe('stops', () => {
  test('past a stop the slug is forced, not turned', () => {
    const state = play(can, [turn('T1B', -0.5)], near(0.25));
    expect(state.slugs.T1B).toMatchObject({ screwTurns: 0, forcedTurns: 0.25, cracked: false });
    expect(state.turnsMade).toBeCloseTo(0.25, 12);
    expect(state.incidents).toEqual([{ kind: 'forcedStop', atSeconds: 2, subject: 'T1B' }]);
    expect(accepted(applyEvent(can, near(0.25), turn('T1B', -0.5), 2)).heard.at(-1)).toEqual({ kind: 'stop' });
  });

  test('half a turn of force in all cracks the core, and then it stays where it is', () => {
    const events = [turn('T1B', -0.5), turn('T1B', 0.5), turn('T1B', -0.7), turn('T1B', -0.1)];
    const state = play(can, events, near(0.25));
    expect(state.slugs.T1B?.cracked).toBe(true);
    expect(state.incidents.map((i) => i.kind)).toEqual(['forcedStop', 'crackedSlug']);
    expect(refusal(can, state, turn('T1B', 1))).toBe('slugCracked');
    expect(refusal(can, play(can, [take('blade')], state), turn('T1T', 1))).toBe(null);
  });

  test('the inner stop is the travel', () => {
    const state = play(can, [turn('T1B', 1)], near(19.5));
    expect(state.slugs.T1B).toMatchObject({ screwTurns: 20, cracked: true });
  });
});

describe('the wrong head', () => {
  test('slips: nothing turns, the slot wears, one entry for a cluster of tries', () => {
    const state = play(can, [turn('T1B', 0.5), turn('T1B', 0.5), turn('T1B', -0.5)], inHand('blade'));
    expect(state.slugs.T1B).toMatchObject({ screwTurns: nominal, coreTurns: nominal });
    expect(state.slugs.T1B!.wear).toBeCloseTo(0.3, 12);
    expect(state.turnsMade).toBe(0);
    expect(state.lastSlugTurnSeconds).toBe(null);
    expect(state.incidents).toEqual([{ kind: 'wrongHead', atSeconds: 2, subject: 'T1B' }]);
    const later = accepted(applyEvent(can, state, turn('T1B', 0.1), 30));
    expect(later.state.incidents).toHaveLength(2);
    expect(later.heard).toEqual([{ kind: 'slip' }]);
  });

  test('a slot that is worn out cracks', () => {
    const tries = Array.from({ length: 3 }, () => turn('T1B', 2));
    const state = play(can, tries, inHand('blade'));
    expect(state.slugs.T1B).toMatchObject({ wear: 1, cracked: true, screwTurns: nominal });
    expect(state.incidents.map((i) => i.kind)).toEqual(['wrongHead', 'crackedSlug']);
  });
});

describe('steel', () => {
  test('turns any head, is written down once, and wears the core', () => {
    const state = play(can, [turn('T1B', 1), turn('T1T', 0.5), turn('T1B', -1)], inHand('steel'));
    expect(state.slugs.T1B!.screwTurns).toBeCloseTo(nominal, 12);
    expect(state.slugs.T1B!.wear).toBeCloseTo(0.16, 12);
    expect(state.incidents.map((i) => [i.kind, i.subject])).toEqual([
      ['steelTool', 'T1B'],
      ['steelTool', 'T1T'],
    ]);
  });

  test('cracks the core after twelve and a half turns, always the same', () => {
    const turns = Array.from({ length: 13 }, (_, i) => turn('T1B', i % 2 === 0 ? 1 : -1));
    const whole = play(can, turns.slice(0, 12), inHand('steel'));
    expect(whole.slugs.T1B?.cracked).toBe(false);
    const cracked = play(can, turns, inHand('steel'));
    expect(cracked.slugs.T1B?.cracked).toBe(true);
    expect(cracked.incidents.at(-1)).toMatchObject({ kind: 'crackedSlug', subject: 'T1B' });
  });

  test('set into a slug it is written down even if nothing is turned', () => {
    const state = play(can, [{ type: 'toolPlaced', slug: 'T1T' }], inHand('steel'));
    expect(state.incidents.map((i) => i.kind)).toEqual(['steelTool']);
  });
});

test('a motion in many small events ends where one large one ends', () => {
  const ready = readySetup(canSetup);
  const small = play(
    ready,
    Array.from({ length: 64 }, () => turn('T1B', 1 / 32)),
    play(ready, [take('hex')], initialState(ready)),
  );
  const large = play(ready, [take('hex'), turn('T1B', 2)]);
  expect(small.slugs.T1B!.coreTurns).toBeCloseTo(large.slugs.T1B!.coreTurns, 12);
  expect(small.turnsMade).toBeCloseTo(large.turnsMade, 12);
});
