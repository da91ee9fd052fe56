/**
 * Aligning by the notebook: one look at the tube, then with a pencil how far each slug stands from its place and which turns bring every demand of the sheet well inside, then those
 * turns, and a look again. What reads inside is left alone.
 */
import type { Hands } from './hands.ts';
import { leastSquares } from './leastSquares.ts';
import { createNotebook, type Notebook, type Reach } from './notebook.ts';
import type { JudgedDemand, PrintedCurve, PrintedResponse, PrintedSlug } from './sheet.ts';
import { away, isTrap, levelsNow } from './toLimits.ts';
import type { Turner } from './turner.ts';

/** Nearer to what is wanted than this, in tolerances, nobody goes; and from here on a demand is called well inside. */
const AIM = 0.35;
const GOOD = 0.55;
/** A sound set may not come nearer than this either. */
const LEAST_SPARE = 0.2;
const ROUNDS = 12;
const PATIENCE = 3;
/** So near a demand reads inside, whatever the eye does. */
const SURE = 0.75;
/** And what reads so before anybody has turned a slug is left as it is. */
const LEFT_ALONE = 0.85;
const MANY_ROUNDS = 4;
const TRIAL_TURNS = 0.25;
const MOST_TRIED = 1;
export const MOST_TURNS = 5;
export const LEAST_TURNS = 1 / 24;
/** What a tolerance outside the aim weighs against a turn. */
const OUTSIDE = 4;
const PRICE = 0.1;
const NEAR_LIMIT = 0.8;
const PRESSING = 3;

/** The notebook for one curve, with what this set has taught, and whether its slugs have been tried one by one. */
export interface Pad {
  readonly notebook: Notebook;
  readonly tried: { once: boolean };
}

/** A coil is wound so that its core belongs somewhere in this part of its travel. */
const BELONGS_FROM = 0.15;
const MOST_ASTRAY = 6;

export function reachOf(turner: Turner, slugs: readonly PrintedSlug[]): readonly Reach[] {
  return slugs.map(({ id, travelTurns }) => {
    const depth = turner.depthOf(id);
    return {
      low: Math.max(-MOST_ASTRAY, Math.min(depth - (1 - BELONGS_FROM) * travelTurns, 0)),
      high: Math.min(
        MOST_ASTRAY,
        Math.max(depth - BELONGS_FROM * travelTurns, depth > BELONGS_FROM * travelTurns ? 0 : -MOST_ASTRAY),
      ),
    };
  });
}

export function newPad(
  turner: Turner,
  response: PrintedResponse,
  slugs: readonly PrintedSlug[],
  trapsHz: readonly number[],
): Pad {
  const { lookAtHz: hz, effects, specification } = response;
  return {
    notebook: createNotebook(
      { hz, effects, isSCurve: specification.sCurve !== null, trapsHz },
      slugs.map(({ id }) => id),
      reachOf(turner, slugs),
    ),
    tried: { once: false },
  };
}

/**
 * How far the worst demand reads from what is wanted at the end, in tolerances. `inOneGo` false: where too much is out of place for one curve to tell which slug it is, nothing is
 * touched, and there is no end to it. `untouched`: nobody has turned anything yet, and what surely reads inside stays so.
 */
export function byNotebook(
  hands: Hands,
  turner: Turner,
  response: PrintedResponse,
  curve: PrintedCurve,
  { notebook, tried }: Pad,
  inOneGo: boolean,
  timeLeft: () => boolean,
  untouched = false,
): number {
  const { slugs } = notebook;
  const aims = aimsOf(response);
  const home = slugs.map((id) => turner.depthOf(id));
  const depths = (): number[] => slugs.map((id, i) => turner.depthOf(id) - home[i]!);
  /** false where there is nothing to turn */
  const go = (kind: 'turns' | 'back', to: readonly number[]): boolean => {
    const now = depths();
    noteTurns(hands, kind, slugs, minus(to, now));
    const made = slugs.map((id, i) =>
      Math.abs(to[i]! - now[i]!) < LEAST_TURNS ? 0 : turner.turn(id, to[i]! - now[i]!),
    );
    return made.some((t) => t !== 0);
  };
  const eachTried = (from: Look): Look => {
    let now = from;
    slugs.forEach((id, i) => {
      const made = turner.turn(id, TRIAL_TURNS * (now.stand[i]! > 0 ? -1 : 1));
      if (made === 0 || !timeLeft()) return;
      const levels = levelsNow(hands, response, curve);
      const turns = now.at.map((_, k) => (k === i ? made : 0));
      notebook.learn(now.levels, now.stand, turns, levels);
      const worst = worstOver(response.judge(levels), aims);
      const there = { worst, levels, at: depths(), stand: now.stand.map((t, k) => t + turns[k]!) };
      // Where it was better it may stay.
      if (worst < now.worst) now = there;
      else turner.turn(id, -made);
    });
    return now;
  };
  let best: Look | null = null;
  let most = tried.once ? MOST_TRIED : MOST_TURNS;
  let poor = 0;
  for (let round = 0; round < ROUNDS && timeLeft(); round++) {
    const levels = levelsNow(hands, response, curve);
    const at = depths();
    const worst = worstOver(response.judge(levels), aims);
    if (best !== null) notebook.learn(best.levels, best.stand, minus(at, best.at), levels);
    if (best === null || worst < best.worst) {
      poor = best !== null && worst > 0.85 * best.worst ? poor + 1 : 0;
      const thought: readonly number[] | null =
        best === null ? null : best.stand.map((s, i) => s + at[i]! - best!.at[i]!);
      best = { worst, levels, at, stand: notebook.whereSlugsStand(levels, thought) };
    } else {
      most *= 0.4;
      poor++;
    }
    noteReading(hands, response.judge(levels), aims);
    if (best.worst < GOOD || (untouched && round === 0 && best.worst < LEFT_ALONE)) break;
    if (!tried.once && best.worst > SURE && (poor >= 2 || round >= MANY_ROUNDS)) {
      // The notebook does not hold for this set as it stands: each slug is tried a little.
      tried.once = true;
      poor = 0;
      most = MOST_TRIED;
      hands.note({ kind: 'tries' });
      go('back', best.at);
      notebook.forget();
      best = eachTried(best);
      if (best.worst < GOOD) break;
    } else if (poor > PATIENCE || round === ROUNDS - 1) break;
    if (!inOneGo && round === 0 && best.worst > 1 && isTangled(best)) return Number.POSITIVE_INFINITY;
    const turns = planned(notebook, response, aims, best, most);
    if (
      !go(
        'turns',
        best.at.map((t, i) => t + turns[i]!),
      )
    )
      break;
  }
  if (best === null) return Number.POSITIVE_INFINITY;
  // Out of time, or a core would not turn: what was turned last stays so.
  if (timeLeft()) go('back', best.at);
  return best.worst;
}

/** The tube as it was with the slugs at some place. */
export interface Look {
  readonly worst: number;
  readonly levels: readonly number[];
  /** turns in from where they were found */
  readonly at: readonly number[];
  /** turns in from where they are thought to belong */
  readonly stand: readonly number[];
}

/** So much is out of place that one curve cannot tell which slug it is. */
function isTangled({ worst, stand }: Look): boolean {
  return worst > FAR_OUT || stand.reduce((sum, t) => sum + Math.abs(t), 0) > MANY_TURNS;
}

const FAR_OUT = 8;
const MANY_TURNS = 8;

export function minus(a: readonly number[], b: readonly number[]): number[] {
  return a.map((v, i) => v - b[i]!);
}

/** The demand that stands farthest from what a sound set gives, as it reads. */
function noteReading(hands: Hands, demands: readonly JudgedDemand[], aims: ReadonlyMap<string, number>): void {
  const [worst] = demands
    .filter((demand) => !isTrap(demand))
    .map((demand) => ({ demand, off: worstOver([demand], aims) }))
    .sort((a, b) => b.off - a.off);
  if (worst === undefined) return;
  const standing = Math.abs(away(worst.demand)) > 1 ? 'outside' : worst.off < GOOD ? 'inside' : 'close';
  hands.note({ kind: 'reads', demand: worst.demand, standing });
}

export function noteTurns(
  hands: Hands,
  kind: 'turns' | 'back',
  slugs: readonly string[],
  far: readonly number[],
): void {
  const turns = slugs
    .map((slug, i) => ({ slug, turns: far[i]! }))
    .filter(({ turns }) => Math.abs(turns) >= LEAST_TURNS);
  if (turns.length > 0) hands.note({ kind, turns });
}

/** How near each demand: as a sound set with its slugs right has it, or nearer. */
function aimsOf({ effects, judge }: PrintedResponse): ReadonlyMap<string, number> {
  const { turns, levels } = effects[0]!;
  const sound = judge([...levels[turns.indexOf(0)]!]);
  return new Map(sound.map((demand) => [demand.id, Math.min(Math.max(AIM, Math.abs(away(demand))), 1 - LEAST_SPARE)]));
}

/** The worst, each held against its own aim: at one it is outside, at GOOD or less as well as a sound set or better. */
function worstOver(demands: readonly JudgedDemand[], aims: ReadonlyMap<string, number>): number {
  return demands.reduce((worst, demand) => {
    if (isTrap(demand)) return worst;
    const aim = aims.get(demand.id) ?? AIM;
    const off = Math.abs(away(demand));
    return Math.max(worst, off > 1 ? off : AIM + ((off - aim) * (1 - AIM)) / (1 - aim));
  }, 0);
}

/** The turns from the best look that bring most, by the notebook and what the trials since have shown. */
function planned(
  notebook: Notebook,
  response: PrintedResponse,
  aims: ReadonlyMap<string, number>,
  { levels, stand }: Look,
  most: number,
): readonly number[] {
  const wrong = (turns: readonly number[]): Float64Array => {
    const off: number[] = [];
    for (const demand of response.judge(notebook.withTurned(levels, stand, turns))) {
      if (isTrap(demand)) continue;
      const far = away(demand);
      const over = Math.max(0, Math.abs(far) - aims.get(demand.id)!);
      const pressed = over + PRESSING * Math.max(0, Math.abs(far) - NEAR_LIMIT);
      off.push(OUTSIDE * Math.sign(far) * (pressed / (1 + 0.1 * pressed)));
    }
    return Float64Array.from(off);
  };
  const problem = { wrong, price: PRICE, low: stand.map(() => -most), high: stand.map(() => most) };
  const starts = [stand.map((s) => Math.min(Math.max(-s, -most), most)), stand.map(() => 0)];
  return starts.map((start) => leastSquares(start, problem)).reduce((best, s) => (s.cost < best.cost ? s : best)).turns;
}
