/**
 * A standing carrier with the 400 Hz tone on it, 30 per cent: what comes out at the point looked at.
 *
 * The tone is slow against every circuit, so the set is solved at levels between trough and crest, each stage saturating as it does at that level: a limiter
 * takes the tone off, a ratio detector's reservoir holds its sum while the tone swings (its time constant is some tenths of a second), and what is left is
 * heard. Between the levels solved, straight lines.
 */
import type { LineVolts } from './conditions.ts';
import { standingVolts } from './detection.ts';
import { TONE_DEPTH } from './instruments.ts';
import { carrierAt, type Moment } from './moment.ts';
import type { Observation } from './observation.ts';

export interface Tone {
  /** volts at the Y input while the modulation stands at `swing`, -1 (trough) to 1 (crest); the carrier's own for the raw input */
  at(swing: number): number;
  /** volts rms of the tone: half the swing between crest and trough, over root two */
  readonly rmsVolts: number;
}

/** Levels that are solved, trough and crest among them. */
const LEVELS = 9;

export function createTone(): (moment: Moment, lineVolts: LineVolts, observation: Observation) => Tone {
  const table = new Float64Array(LEVELS);
  const plus = new Float64Array(LEVELS);
  const minus = new Float64Array(LEVELS);
  const one = new Float64Array(1);

  return (moment, lineVolts, observation) => {
    const { full } = moment;
    for (let k = 0; k < LEVELS; k++) {
      full.solvers.solve(full.hz, moment.conditions(lineVolts, 1 + TONE_DEPTH * swingOf(k)));
      carrierAt(moment, full, observation.node, one);
      plus[k] = one[0]!;
      if (observation.minusNode !== null) carrierAt(moment, full, observation.minusNode, one);
      minus[k] = one[0]!;
    }
    // The scan is left as it was found: at the carrier's own level.
    full.solvers.solve(full.hz, moment.conditions(lineVolts));
    const held = heldSum(observation, plus, minus);
    for (let k = 0; k < LEVELS; k++) {
      table[k] = observation.raw ? plus[k]! : standingVolts(observation, plus[k]!, minus[k]!, held, 0);
    }
    const levels = Float64Array.from(table);
    return {
      at: (swing) => between(levels, swing),
      rmsVolts: observation.raw ? 0 : Math.abs(levels[LEVELS - 1]! - levels[0]!) / 2 / Math.SQRT2,
    };
  };
}

function swingOf(k: number): number {
  return (2 * k) / (LEVELS - 1) - 1;
}

/** The reservoir stands at the mean of the sum over the tone; undefined where there is no reservoir. */
function heldSum(
  { detect, pair, minus: other }: Observation,
  plus: Float64Array,
  minus: Float64Array,
): number | undefined {
  if (pair?.kind !== 'ratio') return undefined;
  const sums = plus.map((v, k) => detect(v, 0) + (other?.detect ?? detect)(minus[k]!, 0));
  const steps = 64;
  let sum = 0;
  for (let i = 0; i < steps; i++) sum += between(sums, Math.sin((2 * Math.PI * (i + 0.5)) / steps));
  return sum / steps;
}

function between(levels: Float64Array, swing: number): number {
  const at = ((Math.min(Math.max(swing, -1), 1) + 1) / 2) * (LEVELS - 1);
  const k = Math.min(Math.floor(at), LEVELS - 2);
  return levels[k]! + (levels[k + 1]! - levels[k]!) * (at - k);
}
