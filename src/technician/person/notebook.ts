/**
 * Worked out on paper, from a curve that was read and the notebook of what each slug does: how far each slug stands from where it belongs, and what the curve would be with slugs
 * turned. Effects are added, in decibels (an S-curve: in its own height): exact for slugs with a valve between them, near enough for those of one can.
 */
import { leastSquares } from './leastSquares.ts';
import type { SlugEffect } from './sheet.ts';

/** Levels under this are not told apart. */
const FLOOR = 0.006;
/** A level read wrong by this share of itself, and by this share of the highest, is read well. */
const READ_SHARE = 0.03;
const READ_ERROR = 0.006;
/** Points of the curve that count: those between say the same again. */
const LOOKS = 90;
/** What as many points as that are worth, for neighbours err together. */
const WORTH = 25;
/** A turn that a slug is thought to be off must explain so much. */
const PRICE = 5;

export interface Notebook {
  readonly slugs: readonly string[];
  /** a level as it is compared: decibels with a floor, or as it is */
  readonly shown: (level: number) => number;
  /** turns in from where each slug belongs, as the curve has it; `before`: as it was thought to be, which is not given up lightly */
  whereSlugsStand(levels: readonly number[], before: readonly number[] | null): readonly number[];
  /** levels with each slug turned by so much from where it is thought to stand */
  withTurned(levels: readonly number[], stand: readonly number[], turns: readonly number[]): number[];
  /** the same, and what of the curve it leaves unexplained and asks for turns; `more`: decibels that something else adds to the right curve */
  fitted(
    levels: readonly number[],
    more?: ArrayLike<number>,
    quick?: boolean,
  ): { readonly turns: readonly number[]; readonly cost: number };
  /** turns, none more than `most`, that make the curve the right one as nearly as may be */
  towardsRight(levels: readonly number[], stand: readonly number[], most: number): readonly number[];
  /** root mean square of the difference from the right curve, in what may be doubted of a reading */
  leftOver(levels: readonly number[]): number;
  /** what turns have really done is added to what the notebook says of turns that way (Broyden, from memory) */
  learn(levels: readonly number[], stand: readonly number[], turns: readonly number[], after: readonly number[]): void;
  forget(): void;
}

export interface Noted {
  readonly hz: readonly number[];
  readonly effects: readonly SlugEffect[];
  readonly isSCurve: boolean;
  /** frequencies at which traps work: beside these nothing is said of the other slugs */
  readonly trapsHz: readonly number[];
}

/** What a slug does to the curve as it is compared: at each of `turns`, against the right curve. */
interface Changes {
  readonly turns: readonly number[];
  readonly by: readonly Float64Array[];
}

/** As far as a slug may be out of place, seen how deep it stands. */
export interface Reach {
  readonly low: number;
  readonly high: number;
}

export function createNotebook(
  { hz, effects, isSCurve: linear, trapsHz: clearOf }: Noted,
  slugs: readonly string[],
  reach: readonly Reach[],
): Notebook {
  const { shown, level } = linear ? AS_IT_IS : DECIBELS;
  const kept = slugs.map((slug) => effects.find((effect) => effect.slug === slug)!);
  const right = Array.from(rightOf(effects[0]!), shown);
  const changes = kept.map(({ turns, levels }) => ({
    turns,
    by: levels.map((curve) => Float64Array.from(curve, (v, i) => shown(v) - right[i]!)),
  }));
  const change = ({ turns: at, by }: Changes, turns: number, out: Float64Array, times: number): void => {
    const t = Math.min(Math.max(turns, at[0]!), at.at(-1)!);
    let k = 0;
    while (k + 2 < at.length && at[k + 1]! < t) k++;
    const share = (t - at[k]!) / (at[k + 1]! - at[k]!);
    const a = by[k]!;
    const b = by[k + 1]!;
    for (let m = 0; m < out.length; m++) out[m] = out[m]! + times * (a[m]! + share * (b[m]! - a[m]!));
  };
  const learnt: { readonly turns: readonly number[]; readonly missed: Float64Array }[] = [];
  const foretold = (stand: readonly number[], turns: readonly number[]): Float64Array => {
    const sum = new Float64Array(hz.length);
    turns.forEach((t, i) => {
      if (t === 0) return;
      change(changes[i]!, stand[i]! + t, sum, 1);
      change(changes[i]!, stand[i]!, sum, -1);
    });
    for (const { turns: way, missed } of learnt) {
      const along = turns.reduce((all, t, i) => all + t * way[i]!, 0);
      if (along !== 0) for (let m = 0; m < sum.length; m++) sum[m] = sum[m]! + along * missed[m]!;
    }
    return sum;
  };
  const stride = Math.max(1, Math.floor(hz.length / LOOKS));
  const looked = hz.flatMap((f, i) =>
    i % stride === 0 && clearOf.every((trap) => Math.abs(f / trap - 1) > NOTCH) ? [i] : [],
  );
  const rightLevels = right.map(level);
  /** How much each frequency that is looked at counts, by the levels that were read. */
  const weightsOf = (levels: readonly number[]): Float64Array =>
    Float64Array.from(looked, (m) => {
      const v = Math.max(Math.abs(levels[m]!), Math.abs(rightLevels[m]!));
      const doubt = linear
        ? READ_ERROR * 2 + READ_SHARE * v
        : DB * Math.hypot(READ_SHARE, READ_ERROR / Math.max(v, FLOOR));
      return Math.sqrt(WORTH / looked.length) / doubt;
    });
  /** `off`: how far each frequency that is looked at is from right. */
  const apartFrom = (weights: Float64Array, off: Float64Array): Float64Array => {
    // The set as a whole may be louder or softer than the printed one.
    const louder = linear ? 0 : Math.min(Math.max(mean(off, weights), -LOUDER_DB), LOUDER_DB);
    const apart = new Float64Array(off.length);
    for (let k = 0; k < apart.length; k++) apart[k] = (off[k]! - louder) * weights[k]!;
    return apart;
  };
  const lookedChanges = changes.map(({ turns, by }) => ({
    turns,
    by: by.map((curve) => Float64Array.from(looked, (m) => curve[m]!)),
  }));
  const wrongOf = (
    levels: readonly number[],
    more?: ArrayLike<number>,
  ): ((stand: readonly number[]) => Float64Array) => {
    const seen = Float64Array.from(looked, (m) => shown(levels[m]!) - (more?.[m] ?? 0) - right[m]!);
    const weights = weightsOf(levels);
    const sum = new Float64Array(looked.length);
    const off = new Float64Array(looked.length);
    return (stand) => {
      sum.fill(0);
      for (let i = 0; i < slugs.length; i++) if (stand[i] !== 0) change(lookedChanges[i]!, stand[i]!, sum, 1);
      for (let k = 0; k < off.length; k++) off[k] = seen[k]! - sum[k]!;
      const apart = apartFrom(weights, off);
      for (let k = 0; k < apart.length; k++) apart[k] = soft(apart[k]!);
      return apart;
    };
  };
  return {
    slugs,
    shown,
    fitted: (levels, more, quick = false) => {
      const wrong = wrongOf(levels, more);
      const problem = { wrong, price: PRICE, low: reach.map(({ low }) => low), high: reach.map(({ high }) => high) };
      const asFound = reach.map(({ low, high }) => Math.min(Math.max(0, low), high));
      const starts = quick ? [asFound] : [asFound, oneByOne(wrong, kept, reach)];
      return starts.map((start) => leastSquares(start, problem)).reduce((best, s) => (s.cost < best.cost ? s : best));
    },
    whereSlugsStand(levels, before) {
      if (before === null) return this.fitted(levels).turns;
      const wrong = wrongOf(levels);
      const changed = leastSquares(
        kept.map(() => 0),
        {
          wrong: (more) => wrong(more.map((t, i) => t + before[i]!)),
          price: SURE * PRICE,
          low: reach.map(({ low }, i) => Math.min(0, low - before[i]!)),
          high: reach.map(({ high }, i) => Math.max(0, high - before[i]!)),
        },
      );
      return changed.turns.map((t, i) => t + before[i]!);
    },
    withTurned: (levels, stand, turns) => {
      const sum = foretold(stand, turns);
      return levels.map((v, m) => (sum[m] === 0 ? v : level(shown(v) + sum[m]!)));
    },
    towardsRight(levels, stand, most) {
      const seen = levels.map(shown);
      const weights = weightsOf(levels);
      const wrong = (turns: readonly number[]): Float64Array => {
        const sum = foretold(stand, turns);
        return apartFrom(
          weights,
          Float64Array.from(looked, (m) => seen[m]! + sum[m]! - right[m]!),
        );
      };
      const start = stand.map((t) => Math.min(Math.max(-t, -most), most));
      return leastSquares(start, { wrong, price: PRICE, low: stand.map(() => -most), high: stand.map(() => most) })
        .turns;
    },
    leftOver(levels) {
      const off = Float64Array.from(looked, (m) => shown(levels[m]!) - right[m]!);
      const apart = apartFrom(weightsOf(levels), off);
      return Math.sqrt(apart.reduce((sum, v) => sum + v * v, 0) / WORTH);
    },
    forget() {
      learnt.length = 0;
    },
    learn(levels, stand, turns, after) {
      const size = turns.reduce((all, t) => all + t * t, 0);
      if (size < LEAST_LEARNT ** 2) return;
      const sum = foretold(stand, turns);
      learnt.push({
        turns: turns.map((t) => t / size),
        missed: sum.map((v, m) => shown(after[m]!) - shown(levels[m]!) - v),
      });
    },
  };
}

/** The curve of a sound set with one slug so many turns deeper than right, between the pages that were noted. */
export function levelsWith({ turns: at, levels }: SlugEffect, turns: number): number[] {
  const t = Math.min(Math.max(turns, at[0]!), at.at(-1)!);
  let k = 0;
  while (k + 2 < at.length && at[k + 1]! < t) k++;
  const share = (t - at[k]!) / (at[k + 1]! - at[k]!);
  const a = levels[k]!;
  const b = levels[k + 1]!;
  return Array.from(a, (v, m) => v + share * (b[m]! - v));
}

const LEAST_LEARNT = 0.05;
const SURE = 2;

const LOUDER_DB = 8;

function mean(values: Float64Array, weights: Float64Array): number {
  let [sum, all] = [0, 0];
  for (let i = 0; i < values.length; i++) {
    sum += weights[i]! ** 2 * values[i]!;
    all += weights[i]! ** 2;
  }
  return sum / all;
}

/** So near a notch the curve belongs to the trap. */
const NOTCH = 0.008;
const DB = 20 / Math.LN10;

const DECIBELS = {
  shown: (v: number): number => 10 * Math.log10(v * v + FLOOR * FLOOR),
  level: (db: number): number => Math.sqrt(Math.max(10 ** (db / 10) - FLOOR * FLOOR, 1e-10)),
};
const AS_IT_IS = { shown: (v: number): number => v, level: (v: number): number => v };

function rightOf({ turns, levels }: SlugEffect): Float64Array {
  return levels[turns.indexOf(0)]!;
}

/** What stands far off the rest does not pull with its whole weight. */
function soft(v: number): number {
  return v / Math.sqrt(1 + Math.abs(v) / FAR_OFF);
}
const FAR_OFF = 10;

/** The slug that explains most, then the one that explains most of what is left, and each once more. */
function oneByOne(
  wrong: (stand: readonly number[]) => Float64Array,
  kept: readonly SlugEffect[],
  reach: readonly Reach[],
): readonly number[] {
  const left = (stand: readonly number[]): number => wrong(stand).reduce((sum, v) => sum + v * v, 0);
  let stand = reach.map(({ low, high }) => Math.min(Math.max(0, low), high));
  let now = left(stand);
  for (let n = 0; n < 2 * kept.length; n++) {
    let best = { left: now - PRICE, stand };
    kept.forEach(({ turns }, i) => {
      for (const t of turns) {
        if (t < reach[i]!.low || t > reach[i]!.high) continue;
        const tried = stand.with(i, t);
        const there = left(tried) + PRICE * tried.reduce((sum, v) => sum + Math.abs(v), 0);
        if (there < best.left) best = { left: there, stand: tried };
      }
    });
    if (best.stand === stand) break;
    stand = best.stand;
    now = best.left;
  }
  return stand;
}
