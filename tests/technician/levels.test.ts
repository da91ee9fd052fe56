/** Levels read off a made-up tube: a curve that is known, a detector whose law is known, noise of a known size. */
import { describe, expect, it } from 'vitest';
import type { Controls } from '../../src/bench/benchState.ts';
import { axisOf } from '../../src/technician/person/eyes.ts';
import type { Hands } from '../../src/technician/person/hands.ts';
import { readLevels } from '../../src/technician/person/levels.ts';
import type { PrintedCurve } from '../../src/technician/person/sheet.ts';

const CENTRE = 44e6;
const SPAN = 10e6;
const SHEET_DB = -40;
const HZ = Array.from({ length: 41 }, (_, i) => CENTRE + 0.46 * SPAN * ((2 * i) / 40 - 1));
const POINTS = 2000;

/** A hump that falls to a hundredth at its skirts. */
const carrier = (hz: number): number => 1 / (1 + ((hz - CENTRE) / 460e3) ** 2);

interface Tube {
  /** volts at the Y input for a level, a noise beside it and so many decibels more than the sheet's */
  readonly volts: (level: number, noise: number, byDb: number, hz: number) => number;
  readonly noise: number;
}

/** Hands at a tube that shows it so. Nothing but the Y knobs, the sweep and the level can be set. */
function handsAt({ volts, noise }: Tube): Hands {
  const knobs = {
    yVoltsPerDiv: 0.2,
    yPositionDiv: -3.5,
    yInvert: false,
    centreHz: CENTRE,
    spanHz: SPAN,
    xGain: 1,
    xPositionDiv: 0,
    levelDb: SHEET_DB,
  } as Controls;
  const clicks = [0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10];
  const beam = { data: new Float32Array(3 * 2 * POINTS), count: 2 * POINTS };
  return {
    act(event) {
      if (event.type === 'controlSet') Object.assign(knobs, { [event.control]: event.value });
      return null;
    },
    look() {
      const byDb = knobs.levelDb - SHEET_DB;
      for (let i = 0; i < 2 * POINTS; i++) {
        const x = i < POINTS ? -5 + (10 * i) / POINTS : 5 - (10 * (i - POINTS)) / POINTS;
        const hz = CENTRE + (x * SPAN) / 10;
        const level = i < POINTS ? carrier(hz) * 10 ** (byDb / 20) : 0;
        beam.data[3 * i] = x;
        beam.data[3 * i + 1] = knobs.yPositionDiv + volts(level, noise, byDb, hz) / knobs.yVoltsPerDiv;
      }
      return {
        beam,
        tags: [],
        meterVolts: 0,
        meterPinned: false,
        toneVolts: 0,
        beatHz: null,
        humDiv: 0,
        grassDiv: 0,
        note: 'none',
      };
    },
    note() {},
    wait() {},
    knobs: () => knobs,
    scale: () => ({ low: clicks[0]!, high: clicks.at(-1)!, clicks }),
    clockSeconds: () => 0,
    pipAskedFor: () => null,
    placeAskedFor: () => null,
    leads: () => ({}) as ReturnType<Hands['leads']>,
  };
}

/** Printed from a set without noise. */
function printed({ volts }: Tube, louderDb: readonly number[] = []): PrintedCurve {
  const at = (byDb: number): number[] => HZ.map((f) => volts(carrier(f) * 10 ** (byDb / 20), 0, byDb, f));
  return {
    response: 'if',
    injectAt: 'TP1',
    levelDb: SHEET_DB,
    hz: HZ,
    volts: at(0),
    levels: HZ.map(carrier),
    louder: louderDb.map((byDb) => ({ byDb, volts: at(byDb) })),
    trapsHz: [],
    effects: [],
    besides: [],
  };
}

/** By the square: noise adds its power (square law of a detector, from memory). */
const SQUARE = (level: number, noise: number): number => level ** 2 + noise ** 2;
/** The mean of the envelope of a sine of so many times the noise, in noise of one volt rms (S. O. Rice, 1945, from memory): the integral over the plane. */
function meanEnvelope(times: number): number {
  let sum = 0;
  for (let x = -6; x <= 6; x += 0.25)
    for (let y = -6; y <= 6; y += 0.25)
      sum += (Math.hypot(times + x, y) * Math.exp(-(x * x + y * y) / 2) * 0.0625) / (2 * Math.PI);
  return sum;
}
const ENVELOPES = Array.from({ length: 121 }, (_, i) => meanEnvelope(i / 4));

/** Straight: the envelope, between the places that were worked out by a straight line. */
const STRAIGHT = (level: number, noise: number): number => {
  if (noise === 0) return level;
  const at = (4 * level) / noise;
  const i = Math.min(Math.floor(at), ENVELOPES.length - 2);
  return noise * (ENVELOPES[i]! + (at - i) * (ENVELOPES[i + 1]! - ENVELOPES[i]!));
};

const PLACES = [0.3e6, 0.6e6, 1e6, 1.5e6, 2e6];

describe('a level is read', () => {
  it.each([
    ['by a detector that goes by the square', SQUARE],
    ['by a straight one', STRAIGHT],
  ] as const)('within six per cent through noise of five per cent of the peak, %s', (_, law) => {
    const tube = { volts: law, noise: 0.05 };
    const hands = handsAt(tube);
    const hz = PLACES.map((off) => CENTRE + off).filter((f) => carrier(f) > 0.08);
    const read = readLevels(hands, printed(tube), hz, axisOf(hands));
    expect(hz.length).toBeGreaterThan(3);
    hz.forEach((f, i) => {
      expect(Math.abs(read[i]! / carrier(f) - 1), `${f}`).toBeLessThan(0.06);
    });
  });

  it('as it would be at the sheet’s level, where more from the source changes the curve as the sheet has it', () => {
    /** A detector that loads its circuit less when it is driven: half as much again with twenty decibels more, and more to one side. */
    const volts = (level: number, _noise: number, byDb: number, hz: number): number =>
      level * (1 + (byDb / 20) * (0.5 + (hz - CENTRE) / SPAN));
    const tube = { volts, noise: 0 };
    const hands = handsAt(tube);
    const curve = printed(tube, [16, 20]);
    hands.act({ type: 'controlSet', control: 'levelDb', value: SHEET_DB + 20 });
    const hz = PLACES.filter((off) => off >= 1e6).flatMap((off) => [CENTRE - off, CENTRE + off]);
    const read = readLevels(hands, curve, hz, axisOf(hands));
    const plain = readLevels(hands, { ...curve, louder: [] }, hz, axisOf(hands));
    hz.forEach((f, i) => {
      expect(Math.abs(read[i]! / carrier(f) - 1), `${f}`).toBeLessThan(0.05);
      expect(plain[i]! / carrier(f), `${f} without it`).toBeGreaterThan(1.2);
    });
  });
});
