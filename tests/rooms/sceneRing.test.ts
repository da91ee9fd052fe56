/** Turning by hand: angles of the ring, steps of the wheel, what is shown while the hand is ahead of the log, and how turns are written. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { initialState } from '../../src/bench/setup.ts';
import {
  arcDegrees,
  EIGHTH,
  FINE,
  readTurns,
  ringDegrees,
  TurnFollower,
  turnsBetween,
  WheelSteps,
  wheelTravel,
} from '../../src/kit/chassis/ringTurns.ts';
import { slugLetters } from '../../src/receiver/slugLetters.ts';
import { slugNote } from '../../src/rooms/bench/scene/handTurn.ts';
import { en } from '../../src/words/en/index.ts';
import { canSetup } from '../bench/fixture.ts';

describe('the ring', () => {
  it('has its zero at the top and runs clockwise', () => {
    expect(ringDegrees(0, -10)).toBeCloseTo(0, 12);
    expect(ringDegrees(10, 0)).toBeCloseTo(90, 12);
    expect(ringDegrees(0, 10)).toBeCloseTo(180, 12);
    expect(ringDegrees(-10, 0)).toBeCloseTo(270, 12);
  });

  it('goes the short way round, through the top too', () => {
    expect(turnsBetween(350, 10)).toBeCloseTo(20 / 360, 12);
    expect(turnsBetween(10, 350)).toBeCloseTo(-20 / 360, 12);
    expect(turnsBetween(0, 180)).toBe(0.5);
    expect(turnsBetween(180, 0)).toBe(0.5);
  });

  it('adds up to what the hand went, in any number of small moves', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -170, max: 170, noNaN: true }), { minLength: 1, maxLength: 60 }),
        fc.double({ min: 0, max: 360, noNaN: true }),
        (moves, from) => {
          let at = from;
          let turns = 0;
          for (const move of moves) {
            const to = at + move;
            turns += turnsBetween(((at % 360) + 360) % 360, ((to % 360) + 360) % 360);
            at = to;
          }
          expect(turns).toBeCloseTo((at - from) / 360, 9);
        },
      ),
    );
  });

  it('shows the turn under way as an arc and leaves whole turns to the figures', () => {
    expect(arcDegrees(1.375)).toBeCloseTo(135, 9);
    expect(arcDegrees(-0.25)).toBeCloseTo(-90, 9);
    expect(arcDegrees(3)).toBe(0);
    expect(Object.is(arcDegrees(-2), 0)).toBe(true);
  });

  it('is read to 1/32', () => {
    expect(EIGHTH / FINE).toBe(4);
    expect(readTurns(1.3755)).toBe(1.375);
    expect(Object.is(readTurns(-0.001), 0)).toBe(true);
  });
});

describe('the wheel', () => {
  it('gathers small travel into whole steps and loses none', () => {
    const wheel = new WheelSteps();
    let steps = 0;
    for (let i = 0; i < 100; i++) steps += wheel.take(7, 0);
    expect(steps).toBe(7);
    expect(wheel.take(-300, 0)).toBe(-3);
    expect(new WheelSteps().take(3, 1)).toBe(1);
    expect(new WheelSteps().take(-2, 2)).toBe(-2);
  });
});

describe('the travel of a wheel', () => {
  it('is the same with shift, whichever way the browser sends it', () => {
    expect(wheelTravel({ deltaX: 0, deltaY: 100, shiftKey: true })).toBe(100);
    expect(wheelTravel({ deltaX: 100, deltaY: 0, shiftKey: true })).toBe(100);
    // A sideways wheel turns nothing.
    expect(wheelTravel({ deltaX: 100, deltaY: 0, shiftKey: false })).toBe(0);
  });
});

describe('the follower', () => {
  it('shows the log while no hand turns', () => {
    expect(new TurnFollower().shown(4.5)).toBe(4.5);
  });

  it('keeps up with the hand before the log does', () => {
    const follower = new TurnFollower();
    follower.grasp(4, 20, true);
    follower.turn(0.25);
    follower.turn(0.25);
    expect(follower.shown(4.1)).toBeCloseTo(4.5, 12);
    follower.letGo();
    expect(follower.shown(4.5)).toBe(4.5);
  });

  it('stops at both ends of the thread and comes back from there', () => {
    const follower = new TurnFollower();
    follower.grasp(19.5, 20, true);
    follower.turn(2);
    expect(follower.shown(19.5)).toBe(20);
    follower.turn(-0.25);
    expect(follower.shown(20)).toBe(19.75);
    follower.grasp(0.5, 20, true);
    follower.turn(-3);
    expect(follower.shown(0.5)).toBe(0);
  });

  it('leaves a slipping head and a cracked core where the log has them', () => {
    const follower = new TurnFollower();
    follower.grasp(4, 20, false);
    follower.turn(1);
    expect(follower.shown(4)).toBe(4);
    follower.grasp(4, 20, true);
    follower.turn(1);
    follower.slip();
    expect(follower.shown(4.2)).toBe(4.2);
  });
});

describe('what the hand meets', () => {
  const setup = canSetup();
  const [first] = setup.receiver.adjusters;
  const adjuster = { ...first!, head: 'hex' as const };
  const state = initialState(setup);
  const withSlug = (change: object) => ({
    ...state,
    slugs: { ...state.slugs, [adjuster.id]: { ...state.slugs[adjuster.id]!, ...change } },
  });

  it('is told the gravest thing first', () => {
    expect(slugNote(state, adjuster)).toBeNull();
    expect(slugNote(withSlug({ screwTurns: 0 }), adjuster)).toBe('outerStop');
    expect(slugNote(withSlug({ screwTurns: adjuster.travelTurns }), adjuster)).toBe('innerStop');
    const placed = { ...withSlug({}), tool: 'blade' as const, toolIn: adjuster.id };
    expect(slugNote(placed, adjuster)).toBe('slips');
    expect(slugNote({ ...placed, tool: 'steel' }, adjuster)).toBe('steelIn');
    expect(slugNote({ ...placed, tool: 'steel', toolIn: null }, adjuster)).toBeNull();
    expect(slugNote({ ...withSlug({ cracked: true }), tool: 'blade', toolIn: adjuster.id }, adjuster)).toBe('cracked');
  });
});

describe('words for turns', () => {
  it('are whole turns and the plainest fraction', () => {
    expect([0, 0.125, 0.5, 1.375, 2, 5 / 32, 3 + 30 / 32].map(en.format.turnsFine)).toEqual([
      '0',
      '1/8',
      '1/2',
      '1 3/8',
      '2',
      '5/32',
      '3 15/16',
    ]);
    expect(en.format.turnsFine(-1.375)).toBe('1 3/8');
    expect(en.format.turnsFine(0.999)).toBe('1');
  });

  it('say which way', () => {
    expect(en.scene.turned(1.375)).toBe('1 3/8 turns in');
    expect(en.scene.turned(-0.125)).toBe('1/8 turn out');
    expect(en.scene.turned(1)).toBe('1 turn in');
    expect(en.scene.turned(0.001)).toBe('as found');
    expect(en.scene.turnedShort(-1.5)).toBe('1 1/2 out');
    expect(en.scene.turnedShort(0)).toBe('0 turns');
  });
});

describe('letters of slugs', () => {
  it('leave out I and O', () => {
    const adjusters = Array.from({ length: 16 }, (_, i) => ({ id: `L${i}` }));
    expect([...slugLetters({ adjusters }).values()].join('')).toBe('ABCDEFGHJKLMNPQR');
  });
});
