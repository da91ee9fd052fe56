/**
 * What the sweep source does that its dials do not say.
 *
 * - Its output is not even: over the dial it rises and falls by some tenths of a decibel, in two waves of unequal length whose phases follow from the seed, so that over the band of
 *   one receiver it slopes and bows. A curve that is swept with it leans by as much.
 * - Some of its power gets out beside the attenuator. It has no fixed phase against what the attenuator lets through, so powers add: sqrt(V^2 + L^2). Turned down, the level
 *   has a floor.
 * - It has a second harmonic. Swept at half the frequency of a band the band answers to that: a ghost, as far down as the harmonic is.
 * Sizes: ordinary service generators (common practice, no source).
 */
import { seededRandom } from '../base/random.ts';
import { sourceVolts } from '../receiver/sourceLevel.ts';
import { lifeOf } from '../scenario/life.ts';

export interface SweepSource {
  /** open-circuit volts, peak, at an attenuator setting, leakage and all */
  volts(levelDb: number): number;
  /** level at a frequency over the level that the dial says; null where it is the same everywhere */
  readonly evenness: ((hz: number) => number) | null;
  /** second harmonic over the fundamental */
  readonly harmonic: number;
}

const LONG_WAVE_HZ = 26e6;
const SHORT_WAVE_HZ = 9e6;
const SHORT_SHARE = 0.35;
const NEPERS_PER_DB = Math.LN10 / 20;

export function createSweepSource(scenario: Parameters<typeof lifeOf>[0] & { readonly seed: number }): SweepSource {
  const { unevenDb, leakageDb, harmonicDb } = lifeOf(scenario);
  const chance = seededRandom(scenario.seed + 3);
  const longRadians = 2 * Math.PI * chance();
  const shortRadians = 2 * Math.PI * chance();
  const size = (unevenDb * NEPERS_PER_DB) / (1 + SHORT_SHARE);
  const leak = leakageDb === null ? 0 : sourceVolts(leakageDb);
  return {
    volts: (levelDb) => Math.hypot(sourceVolts(levelDb), leak),
    evenness:
      size === 0
        ? null
        : tabled((hz) => {
            const long = Math.sin((2 * Math.PI * hz) / LONG_WAVE_HZ + longRadians);
            const short = Math.sin((2 * Math.PI * hz) / SHORT_WAVE_HZ + shortRadians);
            return Math.exp(size * (long + SHORT_SHARE * short));
          }),
    harmonic: harmonicDb === null ? 0 : 10 ** (harmonicDb / 20),
  };
}

const TABLE_STEP_HZ = 0.25e6;
/** Above the dial's top there is only what a wide span reaches. */
const TABLE_TOP_HZ = 260e6;

/** Straight lines between samples: it is asked for at every frequency of every sweep. */
function tabled(of: (hz: number) => number): (hz: number) => number {
  const last = TABLE_TOP_HZ / TABLE_STEP_HZ;
  const table = Float64Array.from({ length: last + 2 }, (_, i) => of(i * TABLE_STEP_HZ));
  return (hz) => {
    const place = Math.min(Math.max(hz / TABLE_STEP_HZ, 0), last);
    const i = Math.floor(place);
    return table[i]! + (place - i) * (table[i + 1]! - table[i]!);
  };
}
