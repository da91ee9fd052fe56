/**
 * The least that the worst line of the sheet can be outside, over all settings of the slugs, by a crowd of places: what a certificate says of a fault that no slug makes good.
 *
 * Each place goes downhill as in lowestWorst.ts, with two differences. The step inside the trust region is the exact one of the straight lines (straightModel.ts). And a line of the sheet may have a
 * bend that its own slope does not tell, as where the highest place of the curve changes from one hump to the other: the slopes at a step that was not worth taking are kept beside those of the place
 * (a bundle; Lemarechal 1975, from memory).
 * From the starts of lowestWorst.ts a crowd of the best ends is kept and bred from: one of them moved by the difference of two others (Storn and Price, Journal of Global Optimization 11, 1997; from
 * memory), one slug of one of them anywhere in its travel, the best one leapt from. It ends early where the better half of the crowd agrees; where the ends lie tolerances apart, other crowds begin
 * anew and the best of them are bred together. All of it on a coarse grid of frequencies (`rough`); the last way down, of the best few, on the sheet's own.
 * Validity: no proof; tests/certify/secondOpinion.test.ts asks a search of another kind.
 */
import { seededRandom } from '../base/random.ts';
import { clamp } from '../base/rounding.ts';
import type { Adjuster } from '../receiver/receiver.ts';
import type { CoreTurns } from '../receiver/statedResponse.ts';
import type { Demands, Standing } from './demands.ts';
import type { Residuals } from './leastSquares.ts';
import { better, leapt, lengthOf, type SlugSetting, type StartsTask, sownStarts, stepsAbout } from './lowestWorst.ts';
import { lowerWorst, worstOf } from './search.ts';
import { leastTop } from './straightModel.ts';

/** Even points of the coarse grid; `specificationGrid.ts` is four times finer. */
export const ROUGH_POINTS = 141;

/** So many ends; a short way from each start, the whole way from the best few, a middling one from the rest. */
const CROWD = { ends: 16, short: 6, whole: 40, middling: 12, followed: 6 } as const;
/** Bred from a crowd at most; before so many nobody asks whether it agrees. */
const BIRTHS = { most: 96, least: 24 } as const;
/** The better half agrees where it lies within this, tolerances, or this share of the least where that is more than one. */
const AGREED = 0.004;
/** With the best end so many tolerances outside there is no breeding: how far it is does not matter then. */
const FAR_OUTSIDE = 6;
/** Where the better half of the ends lies further apart than this, tolerances, so many crowds are bred. */
const APART = 2;
const CROWDS_APART = 3;
/** Starts of another crowd: leaps from the set's own best place, turns, by turns so long. */
const OTHER_STARTS = 30;
const OTHER_LEAPS = [1.5, 3, 6] as const;
/** Common values: differences weigh so much, and so many coordinates in all are crossed. */
const WEIGHT = 0.7;
const CROSSED = 0.9;
/** Ends that are followed on the sheet's own grid, each further from the rest than this, turns. */
const LAST = { ends: 3, apart: 0.1 } as const;

/** Half the side of the trust region, turns. */
const REGION = { first: 0.5, most: 2, last: 0.004 } as const;
const KEPT = { some: 0.05, most: 0.7 } as const;
const SHRINK = { withSlopes: 0.6, without: 0.35 } as const;
const GROW = 2;
/** A promise of less than this counts as none, tolerances. */
const LEAST_PROMISE = 5e-4;
/** Slopes kept beside a place's own, of steps that came out no further outside than this, tolerances. */
const BUNDLE = { most: 4, within: 1 } as const;

export interface CrowdTask extends StartsTask {
  /** the same sheet read on the coarse grid */
  readonly rough: Demands;
  readonly seed: number;
}

/** The worst line where the crowd's best end comes down to; the search stops once the sheet is met. */
export function crowdSearch({ rough, seed, ...task }: CrowdTask): Standing {
  const { demands, adjusters, starts } = task;
  const chance = seededRandom(seed);
  const down = (from: CoreTurns, steps: number, on = rough): SlugSetting => downhill(on, adjusters, from, steps);
  const crowdFrom = (sown: readonly CoreTurns[]): SlugSetting[] =>
    sown
      .map((start) => down(start, CROWD.short))
      .sort(byExcess)
      .slice(0, CROWD.ends)
      .map(({ turns }, i) => down(turns, i < CROWD.followed ? CROWD.whole : CROWD.middling));

  let ends = crowdFrom(sownStarts(task, chance).sown);
  const [first] = [...ends].sort(byExcess);
  if (first!.worst.excess < FAR_OUTSIDE) {
    const crowds = spreadOf(ends) > APART ? CROWDS_APART : 1;
    bred(ends, adjusters, chance, down);
    for (let crowd = 1; crowd < crowds && ends.reduce(better).worst.excess > 0; crowd++) {
      const others = Array.from({ length: OTHER_STARTS }, (_, i) =>
        leapt(starts[0]!, adjusters, OTHER_LEAPS[i % OTHER_LEAPS.length]!, chance),
      );
      const other = bred(crowdFrom(others), adjusters, chance, down);
      const half = CROWD.ends / 2;
      ends = [...ends.sort(byExcess).slice(0, half), ...other.sort(byExcess).slice(0, half)];
      bred(ends, adjusters, chance, down);
    }
  }
  const last: SlugSetting[] = [];
  for (const end of ends.sort(byExcess)) {
    const near = ({ turns }: SlugSetting): boolean =>
      adjusters.every(({ id }) => Math.abs(turns[id]! - end.turns[id]!) <= LAST.apart);
    if (last.length < LAST.ends && !last.some(near)) last.push(end);
  }
  const best = last.map(({ turns }) => down(turns, CROWD.whole, demands)).reduce(better);
  return best.worst.excess <= 0 ? best.worst : lowerWorst(demands, adjusters, best.turns).worst;
}

const byExcess = (a: SlugSetting, b: SlugSetting): number => a.worst.excess - b.worst.excess;

/** How far the better half of the ends lies apart, tolerances. */
function spreadOf(ends: readonly SlugSetting[]): number {
  const excess = ends.map(({ worst }) => worst.excess).sort((a, b) => a - b);
  return excess[Math.ceil(excess.length / 2) - 1]! - excess[0]!;
}

/** Breeds from `ends`, which it betters in their places, until they agree or the sheet is met. */
function bred(
  ends: SlugSetting[],
  adjusters: readonly Adjuster[],
  chance: () => number,
  down: (from: CoreTurns, steps: number) => SlugSetting,
): SlugSetting[] {
  const one = (): CoreTurns => ends[Math.floor(chance() * ends.length)]!.turns;
  for (let birth = 0; birth < BIRTHS.most; birth++) {
    const best = ends.reduce(better);
    const { excess } = best.worst;
    if (excess <= 0 || (birth >= BIRTHS.least && spreadOf(ends) < AGREED * Math.max(1, excess))) break;
    const i = birth % ends.length;
    const child =
      birth % 2 === 0
        ? crossed(ends[i]!.turns, one(), one(), one(), adjusters, chance)
        : birth % 4 === 1
          ? elsewhere(one(), adjusters, chance)
          : leapt(best.turns, adjusters, lengthOf(birth, BIRTHS.most), chance);
    ends[i] = better(ends[i]!, down(child, CROWD.whole));
  }
  return ends;
}

/** One slug anywhere in its travel. */
function elsewhere(from: CoreTurns, adjusters: readonly Adjuster[], chance: () => number): CoreTurns {
  const { id, travelTurns } = adjusters[Math.floor(chance() * adjusters.length)]!;
  return { ...from, [id]: chance() * travelTurns };
}

/** `a` moved by the difference of `b` and `c`, here and there as it was before. */
function crossed(
  before: CoreTurns,
  a: CoreTurns,
  b: CoreTurns,
  c: CoreTurns,
  adjusters: readonly Adjuster[],
  chance: () => number,
): CoreTurns {
  const moved = ({ id, travelTurns }: Adjuster): number =>
    chance() < CROSSED ? clamp(a[id]! + WEIGHT * (b[id]! - c[id]!), 0, travelTurns) : before[id]!;
  return { ...a, ...Object.fromEntries(adjusters.map((each) => [each.id, moved(each)])) };
}

function downhill(demands: Demands, adjusters: readonly Adjuster[], from: CoreTurns, mostSteps: number): SlugSetting {
  let at: SlugSetting = { turns: from, worst: worstOf(demands.standings(from)) };
  let region: number = REGION.first;
  let model: Residuals | null = null;
  let bundle: Residuals[] = [];
  for (let step = 0; step < mostSteps && region > REGION.last && at.worst.excess > 0; step++) {
    model ??= demands.excessSlopes(at.turns);
    const { x, box } = stepsAbout(at.turns, adjusters, region);
    const { d, worst: promised } = leastTop(together([model, ...bundle]), box);
    const promise = at.worst.excess - promised;
    if (promise < LEAST_PROMISE) {
      if (bundle.length === 0) break;
      // What was seen further off says nothing of so small a step.
      bundle = [];
      region *= SHRINK.without;
      continue;
    }
    const turns = { ...at.turns, ...Object.fromEntries(adjusters.map((a, j) => [a.id, x[j]! + d[j]!])) };
    const worst = worstOf(demands.standings(turns));
    const kept = (at.worst.excess - worst.excess) / promise;
    if (kept < KEPT.some) {
      region *= SHRINK.withSlopes;
      const tells = worst.excess < at.worst.excess + BUNDLE.within && bundle.length < BUNDLE.most;
      if (tells) bundle.push(seenFrom(demands.excessSlopes(turns), d));
    } else {
      at = { turns, worst };
      model = null;
      bundle = [];
      if (kept > KEPT.most) region = Math.min(GROW * region, REGION.most);
    }
  }
  return at;
}

/** Lines and slopes at the end of the step `d`, as straight lines from where it began. */
function seenFrom({ r, jacobian }: Residuals, d: Float64Array): Residuals {
  const n = d.length;
  const back = r.map((v, i) => {
    let sum = v;
    for (let j = 0; j < n; j++) sum -= jacobian[i * n + j]! * d[j]!;
    return sum;
  });
  return { r: back, jacobian };
}

function together(parts: readonly Residuals[]): Residuals {
  if (parts.length === 1) return parts[0]!;
  const r = new Float64Array(parts.reduce((sum, part) => sum + part.r.length, 0));
  const jacobian = new Float64Array(parts.reduce((sum, part) => sum + part.jacobian.length, 0));
  let [line, slope] = [0, 0];
  for (const part of parts) {
    r.set(part.r, line);
    jacobian.set(part.jacobian, slope);
    line += part.r.length;
    slope += part.jacobian.length;
  }
  return { r, jacobian };
}
