/**
 * The least that the worst line of the sheet can be outside, over all settings of the slugs: what has to be known before it is said that no slug makes a failed part good.
 *
 * Minimax by linear models in a trust region (Madsen, J. Inst. Maths Applics 16, 1975; from memory): every line is taken as straight in the slugs, the least worst line of
 * the model is found within so many turns, and the region grows or shrinks by how much of the promise was kept. The model's own minimum: levels are halved between one
 * that all lines come down to and one that they do not, each tried by least squares on what stands over it.
 * It begins from the places it is given and from those where coils do each other's work, which no downhill way leads to: traps the work of any trap, one that is stuck too.
 * From the best end the search leaps, by less from leap to leap, and goes downhill again, as these minima are many. What an endless name makes is looked at so, as it was when the names were
 * given; everything else by the crowd of crowdSearch.ts, which begins from the same places.
 * Validity: no proof; tests/certify/secondOpinion.test.ts asks a search of another kind.
 */
import { seededRandom } from '../base/random.ts';
import { clamp } from '../base/rounding.ts';
import type { Deck } from '../physics/deck.ts';
import type { Adjuster } from '../receiver/receiver.ts';
import { slugHenries, turnsForHenries } from '../receiver/slugLaw.ts';
import type { CoreTurns } from '../receiver/statedResponse.ts';
import { faradsAt } from './coilFarads.ts';
import type { Demands, Standing } from './demands.ts';
import { leastSquares, type Residuals, type SearchBox } from './leastSquares.ts';
import { lowerWorst, trapsAlone, worstOf } from './search.ts';

export interface SlugSetting {
  readonly turns: CoreTurns;
  readonly worst: Standing;
}

/** Half the side of the first trust region, and of the last, turns. */
const REGION = { first: 0.5, most: 2, last: 0.004 } as const;
const SHORT_WAY = 6;
const WHOLE_WAY = 40;
/** The search leaps on from this many ends. */
const CHAINS = 2;
/** This many starts are followed all the way. */
const WHOLE_WAYS = 6;
/** Shares of what the model promises: a step that gives less is not taken, one that gives more widens the region. */
const KEPT = { some: 0.05, most: 0.7 } as const;
const SHRINK = 0.35;
const GROW = 2;
/** A promise of less than this counts as none, tolerances. */
const LEAST_PROMISE = 5e-4;
/** Starts anywhere in the travel. */
const FAR = 20;
const FAR_TURNS = 10;
/** At most so many ways of sharing out the traps are tried. */
const MOST_SHARED = 24;
/** The longest leap and the shortest, turns. */
const LEAPS = { longest: 1.5, shortest: 0.15 } as const;

export interface StartsTask {
  readonly demands: Demands;
  /** what stands on the bench, failed parts and all */
  readonly deck: Deck;
  readonly adjusters: readonly Adjuster[];
  /** of every trap of the set, of those that do not turn too */
  readonly trapsHz: readonly number[];
  /** the first of them is the set's own best place */
  readonly starts: readonly CoreTurns[];
}

export interface LowestTask extends StartsTask {
  readonly seed: number;
  readonly leaps: number;
}

/** The starts of a task, and places where coils do each other's work, and others anywhere; and the exchanges of two coils, for later. */
export function sownStarts(
  { demands, deck, adjusters, trapsHz, starts }: StartsTask,
  chance: () => number,
): { readonly sown: readonly CoreTurns[]; readonly pairs: readonly ((from: CoreTurns) => CoreTurns)[] } {
  const [own] = starts;
  const pairs = exchanges(deck, adjusters);
  const far = Array.from({ length: FAR }, () => leapt(own!, adjusters, FAR_TURNS, chance));
  const exchanged = [...trapsExchanged(demands, adjusters, trapsHz, own!), ...pairs.map((pair) => pair(own!))];
  return { sown: [...starts, ...exchanged, ...far], pairs };
}

/** From each of the starts, and by seeded leaps from the best end; stops once the sheet is met. */
export function lowestWorst({ seed, leaps, ...task }: LowestTask): Standing {
  const { demands, adjusters } = task;
  const chance = seededRandom(seed);
  const { sown, pairs } = sownStarts(task, chance);
  let met: SlugSetting | null = null;
  const down = (from: CoreTurns, steps: number): SlugSetting => {
    const end = met ?? downhill(demands, adjusters, from, steps);
    if (end.worst.excess <= 0) met = end;
    return end;
  };
  // A short way from each tells which of them are worth the whole way.
  const begun = sown.map((start) => down(start, SHORT_WAY)).sort((a, b) => a.worst.excess - b.worst.excess);
  const ends = begun.slice(0, WHOLE_WAYS).map(({ turns }) => down(turns, WHOLE_WAY));
  ends.sort((a, b) => a.worst.excess - b.worst.excess);
  for (let leap = 0; leap < leaps && met === null; leap++) {
    // By turns from the best end and from the one after it: the best may lie in a dead valley.
    const from = leap % Math.min(CHAINS, ends.length);
    const length = lengthOf(leap, leaps);
    // Every third leap of each is to two coils at each other's work.
    const pair = Math.floor(leap / CHAINS) % 3 === 2 ? pairs[Math.floor(chance() * pairs.length)] : undefined;
    const { turns } = ends[from]!;
    ends[from] = better(ends[from]!, down(pair?.(turns) ?? leapt(turns, adjusters, length, chance), WHOLE_WAY));
  }
  const best = met ?? ends.reduce(better);
  return met === null ? lowerWorst(demands, adjusters, best.turns).worst : best.worst;
}

/** By less from one to the next. */
export function lengthOf(leap: number, leaps: number): number {
  return LEAPS.longest * (LEAPS.shortest / LEAPS.longest) ** (leap / Math.max(leaps - 1, 1));
}

export function better(one: SlugSetting, other: SlugSetting): SlugSetting {
  return other.worst.excess < one.worst.excess ? other : one;
}

/** `from` with every trap at its least where it may work: each way in which the coils that turn can share out the frequencies of all traps, a stuck one's too, but for their own. */
function trapsExchanged(
  demands: Demands,
  adjusters: readonly Adjuster[],
  trapsHz: readonly number[],
  from: CoreTurns,
): readonly CoreTurns[] {
  const traps = adjusters.filter((a) => a.kind === 'trap' && a.trapHz !== null);
  return sharedOut(traps.length, trapsHz)
    .filter((hz) => hz.some((f, i) => f !== traps[i]!.trapHz))
    .slice(0, MOST_SHARED)
    .map((hz) =>
      trapsAlone(
        demands,
        traps.map((a, i) => ({ ...a, trapHz: hz[i]! })),
        from,
      ),
    );
}

/** Ways to give `count` things one of `all` each, no one of them twice; ways that look alike once. */
function sharedOut(count: number, all: readonly number[]): readonly (readonly number[])[] {
  if (count === 0) return [[]];
  return [...new Set(all)].flatMap((one) => {
    const rest = all.toSpliced(all.indexOf(one), 1);
    return sharedOut(count - 1, rest).map((others) => [one, ...others]);
  });
}

/** Each pair of coils that are no traps put to each other's frequency, or as near as their stops let them. */
function exchanges(deck: Deck, adjusters: readonly Adjuster[]): readonly ((from: CoreTurns) => CoreTurns)[] {
  const coils = adjusters.filter((a) => a.kind !== 'trap' && faradsAt(deck, a.element) > 0);
  return pairsOf(coils).map(([one, other]) => (from) => {
    const share = faradsAt(deck, one.element) / faradsAt(deck, other.element);
    const turnsFor = (a: Adjuster, henries: number): number =>
      turnsForHenries(a, henries) ?? (henries > slugHenries(a, a.travelTurns) ? a.travelTurns : 0);
    return {
      ...from,
      [one.id]: turnsFor(one, slugHenries(other, from[other.id]!) / share),
      [other.id]: turnsFor(other, slugHenries(one, from[one.id]!) * share),
    };
  });
}

function pairsOf<T>(all: readonly T[]): readonly (readonly [T, T])[] {
  return all.flatMap((one, i) => all.slice(i + 1).map((other) => [one, other] as const));
}

/** Where the slugs stand, in the order of `adjusters`, and the steps that keep each within `region` of that and in its travel; all in turns. */
export function stepsAbout(
  turns: CoreTurns,
  adjusters: readonly Adjuster[],
  region: number,
): { readonly x: readonly number[]; readonly box: SearchBox } {
  const x = adjusters.map(({ id }) => turns[id]!);
  return {
    x,
    box: {
      low: x.map((v) => Math.max(-region, -v)),
      high: adjusters.map(({ travelTurns }, j) => Math.min(region, travelTurns - x[j]!)),
    },
  };
}

function downhill(demands: Demands, adjusters: readonly Adjuster[], from: CoreTurns, mostSteps: number): SlugSetting {
  let at: SlugSetting = { turns: from, worst: worstOf(demands.standings(from)) };
  let region: number = REGION.first;
  let model: Residuals | null = null;
  for (let step = 0; step < mostSteps && region > REGION.last && at.worst.excess > 0; step++) {
    model ??= demands.excessSlopes(at.turns);
    const { x, box } = stepsAbout(at.turns, adjusters, region);
    const { d, worst: promised } = leastOfModel(model, box);
    const promise = at.worst.excess - promised;
    if (promise < LEAST_PROMISE) break;
    const turns = { ...at.turns, ...Object.fromEntries(adjusters.map((a, j) => [a.id, x[j]! + d[j]!])) };
    const worst = worstOf(demands.standings(turns));
    const kept = (at.worst.excess - worst.excess) / promise;
    if (kept < KEPT.some) region *= SHRINK;
    else {
      at = { turns, worst };
      model = null;
      if (kept > KEPT.most) region = Math.min(GROW * region, REGION.most);
    }
  }
  return at;
}

const LEVELS_APART = 0.003;
const MOST_LEVELS = 16;

/** The step inside `box` whose highest line of the straight model is least. */
function leastOfModel(
  { r, jacobian }: Residuals,
  box: SearchBox,
): { readonly d: Float64Array; readonly worst: number } {
  const n = box.low.length;
  // Asked some thousand times for one model: nothing is made anew.
  const tried = new Float64Array(r.length);
  const stands = { r: new Float64Array(r.length), jacobian: new Float64Array(jacobian.length) };
  /** The lines at `d`, or what of them stands over a level. */
  const lines = (d: Float64Array, out: Float64Array, level = Number.NEGATIVE_INFINITY): Float64Array => {
    for (let i = 0, at = 0; i < out.length; i++) {
      let sum = r[i]!;
      for (let j = 0; j < n; j++, at++) sum += jacobian[at]! * d[j]!;
      out[i] = level === Number.NEGATIVE_INFINITY ? sum : Math.max(sum - level, 0);
    }
    return out;
  };
  let d = new Float64Array(n);
  let worst = Math.max(...r);
  // A line can fall by no more than its slopes allow in the box: under that no level is reached.
  let low = r.reduce((most, v, i) => {
    let least = v;
    for (let j = 0; j < n; j++)
      least += Math.min(jacobian[i * n + j]! * box.low[j]!, jacobian[i * n + j]! * box.high[j]!);
    return Math.max(most, least);
  }, Number.NEGATIVE_INFINITY);
  for (let levels = 0; levels < MOST_LEVELS && worst - low > LEVELS_APART; levels++) {
    const level = (worst + low) / 2;
    const { x } = leastSquares(
      {
        residuals: (at) => lines(at, tried, level),
        slopes: (at) => {
          lines(at, stands.r, level);
          for (let i = 0, k = 0; i < r.length; i++) {
            const above = stands.r[i]! > 0;
            for (let j = 0; j < n; j++, k++) stands.jacobian[k] = above ? jacobian[k]! : 0;
          }
          return stands;
        },
        box,
        mostIterations: 30,
        enough: (LEVELS_APART / 3) ** 2,
      },
      d,
    );
    const top = Math.max(...lines(x, tried));
    if (top < worst) [d, worst] = [Float64Array.from(x), top];
    if (top > level + LEVELS_APART / 2) low = level;
  }
  return { d, worst };
}

export function leapt(from: CoreTurns, adjusters: readonly Adjuster[], turns: number, chance: () => number): CoreTurns {
  const off = (a: Adjuster): number => clamp(from[a.id]! + turns * (2 * chance() - 1), 0, a.travelTurns);
  return { ...from, ...Object.fromEntries(adjusters.map((a) => [a.id, off(a)])) };
}
