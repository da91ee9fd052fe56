/**
 * Hum that rides on the gain: mains on the volts that the bias supply gives, and twice the mains left on the set's own supply.
 *
 * A line at V + v cos(theta + phi) makes of a controlled stage's exp(-|V| / scale) so much more or less, once for each stage that hangs on it: the carrier gets a factor
 * exp(-n v cos(theta + phi) / scale), 0.1 V on two stages of 5 V being 0.347 dB either way. The sweep goes at mains rate, so what is in step with it leans the
 * curve (0.69 dB from end to end) and lies the other way round on the retrace; twice the mains bows it. How much a node gains by a volt on the clamped lines is found at each
 * frequency by solving with the lines a little to either side, so bias law, detuning and the place of the RF lead are all in it. A line that nobody clamps has none
 * of the supply's hum. Phases follow from the seed.
 * Source: the bias law itself; ripple of a full-wave rectifier at twice the mains, any handbook (from memory).
 */
import { seededRandom } from '../base/random.ts';
import { sweepAngle } from '../physics/sweep.ts';
import { lifeOf } from '../scenario/life.ts';
import { clampedVolts } from './biasLine.ts';
import type { LineVolts } from './conditions.ts';
import { keepLast } from './kept.ts';
import { carrierAt, type Moment, TRACE_POINTS } from './moment.ts';

const NUDGE_VOLTS = 0.02;
/** Below this share of its largest a carrier says nothing of its slope. */
const FLOOR = 1e-6;

/** A node, and its carriers over a whole period. */
export interface Hummed {
  readonly node: string;
  readonly carriers: Float64Array;
}

/** Multiplies the carriers of nodes by what the hum does to the gain, in place; true where it does anything. Both of a pair of diodes are asked about at once: one look beside the line serves both. */
export type HumMaker = (moment: Moment, lineVolts: LineVolts, at: readonly Hummed[]) => boolean;

export function createHum(scenario: Parameters<typeof lifeOf>[0] & { readonly seed: number }): HumMaker {
  const { biasHumVolts, supplyHum } = lifeOf(scenario);
  const chance = seededRandom(scenario.seed + 2);
  const biasRadians = 2 * Math.PI * chance();
  const supplyRadians = 2 * Math.PI * chance();
  const wave = (waves: number, size: number, radians: number): Float64Array =>
    Float64Array.from(
      { length: 2 * TRACE_POINTS },
      (_, i) => size * Math.cos(waves * sweepAngle(i, TRACE_POINTS) + radians),
    );
  const waveTables = keepLast(
    (waves: number) => [waves],
    (waves) => ({ bias: wave(waves, biasHumVolts, biasRadians), supply: wave(2 * waves, supplyHum, supplyRadians) }),
  );

  return (moment, lineVolts, at) => {
    const { sweepHz, setup, running } = moment;
    if (!running || (biasHumVolts === 0 && supplyHum === 0)) return false;
    const slopesOf = biasHumVolts === 0 ? null : slopesAt(moment, lineVolts, at);
    // A slow sweep has several waves of hum in it.
    const waves = Math.round(setup.scenario.bench.mainsHz / sweepHz);
    const { bias, supply } = waveTables(waves);
    let did = false;
    for (const [k, { carriers }] of at.entries()) {
      const slopes = slopesOf?.[k] ?? null;
      if (slopes === null && supplyHum === 0) continue;
      did = true;
      for (let i = 0; i < carriers.length; i++) {
        const place = i < TRACE_POINTS ? i : 2 * TRACE_POINTS - 1 - i;
        const x = supply[i]! + (slopes === null ? 0 : slopeAt(slopes, place) * bias[i]!);
        // exp(x), which is small: the next term is x^4 / 24.
        carriers[i] = carriers[i]! * (1 + x * (1 + (x / 2) * (1 + x / 3)));
      }
    }
    return did;
  };
}

/** Natural logarithm of each node's gain per volt on the clamped lines, at the thin scan's frequencies; null where no line is clamped or nothing comes. */
function slopesAt(
  moment: Moment,
  lineVolts: LineVolts,
  at: readonly Hummed[],
): readonly (Float64Array | null)[] | null {
  const { thin, setup, state, connections } = moment;
  const clamped = setup.receiver.biasLines.filter((law) => clampedVolts(law.at, state) !== null).map((law) => law.at);
  if (clamped.length === 0 || connections.rf === null) return null;
  const besides = [NUDGE_VOLTS, -NUDGE_VOLTS].map((by) => {
    const nudged = Object.fromEntries(clamped.map((line) => [line, (lineVolts[line] ?? 0) + by]));
    thin.solvers.solve(thin.hz, moment.conditions({ ...lineVolts, ...nudged }));
    return at.map(({ node }) => {
      const out = new Float64Array(thin.hz.length);
      carrierAt(moment, thin, node, out);
      return out;
    });
  });
  const [up, down] = besides as [Float64Array[], Float64Array[]];
  return at.map((_, k) => slopesOf(up[k]!, down[k]!));
}

function slopesOf(up: Float64Array, down: Float64Array): Float64Array | null {
  const most = up.reduce((a, v) => Math.max(a, v), 0);
  if (most === 0) return null;
  return up.map((v, i) => Math.log((v + FLOOR * most) / (down[i]! + FLOOR * most)) / (2 * NUDGE_VOLTS));
}

/** The thin scan's samples lie as evenly in time as the full one's. */
function slopeAt(slopes: Float64Array, sample: number): number {
  if (slopes.length === 1) return slopes[0]!;
  const place = Math.min(Math.max(((sample + 0.5) * slopes.length) / TRACE_POINTS - 0.5, 0), slopes.length - 1);
  const i = Math.min(Math.floor(place), slopes.length - 2);
  return slopes[i]! + (place - i) * (slopes[i + 1]! - slopes[i]!);
}
