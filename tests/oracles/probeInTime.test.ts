/**
 * The bench's probe, pulse by pulse: the decks that `deck` writes of three jobs, run in time by ngspice (as packaged in eecircuit-engine), against the volts of the bench, of the highest of the curve. A deck has the probe's
 * diode and its 30 pF as they are; whatever its pulses do to the point is ngspice's own finding.
 */

import { describe, expect, test } from 'vitest';
import type { Engine } from '../../src/base/engine.ts';
import { asSheetSays } from '../../src/bench/asSheetSays.ts';
import { createFaultBook } from '../../src/bench/faultsNow.ts';
import { createPictureMaker } from '../../src/bench/picture.ts';
import { firstResponse } from '../../src/bench/setup.ts';
import { NO_LIFE } from '../../src/scenario/life.ts';
import { writtenDeck } from '../cli/writtenDeck.ts';
import { keptMeans } from '../physics/keptSpice.ts';
import { setupOf } from '../technician/oneScenario.ts';

/** Over so many of the run's last periods the mean is taken: whole ones, for at half a megahertz the probe's load has a ripple of its own. */
const PERIODS = 8;

interface Case {
  readonly track: string;
  readonly id: string;
  /** beyond what the sheet has */
  readonly moreDb: number;
  readonly hz: readonly number[];
  /** of the highest of the curve */
  readonly limit: number;
  /** what closed forms, which take load and circuit for short circuits to the pulses, were off at least */
  readonly before: number;
}

const ACROSS = [10.45e6, 10.55e6, 10.65e6, 10.75e6, 10.85e6];

const CASES: readonly Case[] = [
  // A video amplifier under the loose loop, from half a megahertz on: there the 30 pF themselves are too small. Found 0.9 %; 36 % before.
  { track: 'sound-fm', id: 'dots', moreDb: 0, hz: [0.55e6, 1e6, 2.5e6, 3.58e6, 4.8e6], limit: 0.01, before: 0.3 },
  // Two humps off centre, 80 mV at their highest. Found 0.7 % at the lowest of the five, 0.3 % at the others; 4.1 % before.
  { track: 'first-sweep', id: 'off-centre', moreDb: 0, hz: ACROSS, limit: 0.01, before: 0.035 },
  // The same at 20 mV of carrier, and louder than the source goes. Found 0.3 and 0.4 %; 6.6 and 1.5 % before.
  { track: 'first-sweep', id: 'off-centre', moreDb: -16, hz: ACROSS, limit: 0.01, before: 0.05 },
  { track: 'first-sweep', id: 'off-centre', moreDb: 8, hz: ACROSS, limit: 0.01, before: 0.013 },
  // A can near its best, at the sheet's level, 0.4 V of carrier, and at 1 V. Found 0.2 and 0.2 %; 1.1 and 0.7 % before.
  { track: 'first-sweep', id: 'which-way-round', moreDb: 0, hz: ACROSS, limit: 0.01, before: 0.01 },
  { track: 'first-sweep', id: 'which-way-round', moreDb: 8, hz: ACROSS, limit: 0.01, before: 0.006 },
];

const meansOf = keptMeans('probe');

/** Volts at the Y input of the set as found, the source standing still. */
function volts({ id, moreDb, hz }: Case, engine?: Engine): readonly number[] {
  const found = setupOf(id);
  const scenario = { ...found.scenario, life: NO_LIFE };
  const setup = { ...found, scenario, ...(engine === undefined ? {} : { engine }) };
  const response = firstResponse(setup);
  const levelDb = response.setUp.levelDb + moreDb;
  const ready = asSheetSays(setup, response, { spanHz: 0, blanking: false, levelDb });
  const picture = createPictureMaker(setup, createFaultBook(setup));
  return hz.map((one) => {
    const centreHz = one - (scenario.bench.centreErrorHz ?? 0);
    return picture({ ...ready, controls: { ...ready.controls, sourceMode: 'spot', centreHz } }).volts[0]!;
  });
}

async function inTime({ track, id, moreDb, hz }: Case): Promise<readonly number[]> {
  const found: number[] = [];
  for (const one of hz) {
    const out = writtenDeck(track, id, one);
    const seconds = Number(/^\.tran \S+ (\S+) /m.exec(out)![1]);
    const louder = 10 ** (moreDb / 20);
    const deck = out.replace(/sin\(0 (\S+) /, (_, amps: string) => `sin(0 ${Number(amps) * louder} `);
    expect(deck === out).toBe(moreDb === 0);
    const [[mean]] = (await meansOf(deck, ['out'], [[1 - PERIODS / (one * seconds), 1]])) as [[number]];
    found.push(mean);
  }
  return found;
}

describe('the probe has what ngspice finds in time', () => {
  test.each(CASES)('$id, the sheet\u2019s level and $moreDb dB: within $limit of the highest', async (one) => {
    const theirs = await inTime(one);
    const highest = Math.max(...theirs);
    const off = (ours: readonly number[]): number =>
      Math.max(...ours.map((v, i) => Math.abs(v - theirs[i]!))) / highest;
    expect(off(volts(one))).toBeLessThan(one.limit);
    expect(off(volts(one, '0.6.0'))).toBeGreaterThan(one.before);
  });
});
