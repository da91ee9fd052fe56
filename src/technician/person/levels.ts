/**
 * Levels of the carrier, read off the tube by the detector's own curve, which the sheet prints as volts beside levels. What noise adds is taken out, and what more from the source
 * changes about the curve, as the sheet has it.
 */
import { type Axis, FLOOR_VOLTS, type Height, readHeights } from './eyes.ts';
import type { Hands } from './hands.ts';
import type { PrintedCurve } from './sheet.ts';

/** Of the printed pairs one in every so much of a ratio of volts is kept (natural logarithm): nearer ones differ by how they were drawn, not by the detector. */
const APART = 0.05;
/** Printed levels under this are not held against each other: there the line of the face says nothing. */
const LEAST_PRINTED = 0.002;
/** So many times more or less than by the attenuator a level shows at most, with more from the source. */
const MOST_CHANGED = 4;

/** From volts at the Y input to the level of the carrier against the printed peak. */
export function levelBy({ volts, levels }: PrintedCurve): (volts: number) => number {
  const printed = volts
    .map((v, i) => [Math.log(Math.max(Math.abs(v), FLOOR_VOLTS)), Math.log(Math.max(levels[i] ?? 0, 1e-5))] as const)
    .sort((a, b) => b[0] - a[0]);
  const pairs: (readonly [v: number, level: number])[] = [];
  for (const [v, level] of printed) {
    const last = pairs.at(-1);
    if (last === undefined || (last[0] - v > APART && level < last[1])) pairs.push([v, level]);
  }
  pairs.reverse();
  return (seen) => {
    const v = Math.log(Math.max(Math.abs(seen), FLOOR_VOLTS));
    const [top, topLevel] = pairs.at(-1)!;
    // Beyond the tallest that is printed a detector is straight.
    if (v >= top || pairs.length < 2) return Math.exp(topLevel + v - top);
    const i = Math.max(
      1,
      pairs.findIndex(([at]) => at >= v),
    );
    const [[v0, l0], [v1, l1]] = [pairs[i - 1]!, pairs[i]!];
    // Between those that are printed by the slope between them; the low end goes on as it came.
    return Math.exp(l0 + ((l1 - l0) * (v - v0)) / (v1 - v0));
  };
}

/**
 * Levels at some frequencies as the tube shows them now: as they would be at the sheet's level, whatever more the source gives. `faint`: more only makes up for what the set
 * lacks, and its detector is driven no harder than the sheet has it.
 */
export function readLevels(
  hands: Hands,
  curve: PrintedCurve,
  hz: readonly number[],
  axis: Axis,
  faint = false,
): number[] {
  const level = withoutNoise(levelBy(curve));
  const heights = readHeights(hands, hz, axis);
  // Volts without the sign that the detector gives them: what lies under the base line is nothing.
  const up = heights.reduce((sum, { volts }) => sum + volts, 0) < 0 ? -1 : 1;
  const byDb = hands.knobs().levelDb - curve.levelDb;
  const times = 10 ** (byDb / 20);
  const changed = byDb === 0 || faint ? () => 1 : louderBy(curve, byDb);
  return heights.map(({ volts, lift }, i) => level({ volts: up * volts, lift: up * lift }) / times / changed(hz[i]!));
}

/**
 * The power of noise taken out of that of a height. A detector that goes by the square gives volts by power, and what it gives for noise alone is all of it; a straight one gives
 * the envelope, whose square noise lifts by 2/pi of the square of what it makes of noise alone (mean of the envelope of a sine in noise, Rice; from memory). Which of the two it
 * is at some height is seen in its printed curve.
 */
function withoutNoise(level: (volts: number) => number): (height: Height) => number {
  return ({ volts, lift }) => {
    if (lift <= FLOOR_VOLTS) return level(Math.max(volts - lift, FLOOR_VOLTS));
    if (volts <= lift) return level(FLOOR_VOLTS);
    const there = level(volts);
    const power = Math.log(STEP) / Math.log(level(STEP * volts) / there);
    const share = 2 / Math.PI + (1 - 2 / Math.PI) * Math.min(Math.max(power - 1, 0), 1);
    return Math.sqrt(Math.max(there ** 2 - share * level(lift) ** 2, level(FLOOR_VOLTS) ** 2));
  };
}

const STEP = 1.2;

/** How many times more than by the attenuator a sound set shows at a frequency with so many decibels more from the source: a detector driven harder loads its circuit otherwise. */
function louderBy(curve: PrintedCurve, byDb: number): (hz: number) => number {
  const { hz, levels, louder, trapsHz } = curve;
  const [nearest] = [...louder].sort((a, b) => Math.abs(a.byDb - byDb) - Math.abs(b.byDb - byDb));
  if (nearest === undefined) return () => 1;
  const level = levelBy(curve);
  const times = 10 ** (nearest.byDb / 20);
  const known = hz.flatMap((f, i) => {
    const shown = level(nearest.volts[i]!) / times;
    // Where a trap works next to nothing is left to compare, and nor is anything where even the printed peak would not be reached.
    const clear = trapsHz.every((trap) => Math.abs(f / trap - 1) > BESIDE_TRAP);
    if (!clear || levels[i]! < LEAST_PRINTED) return [];
    return [{ f, log: Math.log(Math.min(Math.max(shown / levels[i]!, 1 / MOST_CHANGED), MOST_CHANGED)) }];
  });
  return (at) => {
    const next = known.findIndex(({ f }) => f >= at);
    if (known.length === 0) return 1;
    if (next <= 0) return Math.exp(known.at(next)!.log);
    const a = known[next - 1]!;
    const b = known[next]!;
    return Math.exp(a.log + ((b.log - a.log) * (at - a.f)) / (b.f - a.f));
  };
}

/** So near a trap's frequency, as a share of it, a level is the trap's. */
const BESIDE_TRAP = 0.003;
