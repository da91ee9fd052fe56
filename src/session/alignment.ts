/**
 * How the slugs stand beside the sheet, for the ticks of practice: which of its lines the true response misses, and which slug stands astray. It is looked at
 * while the slugs rest; while one moves, what was last seen is good for all the others.
 */

import { excessOver } from '../base/limits.ts';
import type { BenchState } from '../bench/benchState.ts';
import type { BenchSetup } from '../bench/setup.ts';
import { statedOn } from '../bench/statedOn.ts';
import { uncured } from '../grading/faultLines.ts';
import { createSheetJudge, type SheetJudge } from '../grading/response.ts';
import type { Subjects } from '../grading/rules/rule.ts';
import { faultEffects } from '../receiver/faults/faultEffects.ts';
import { workResponses } from '../receiver/responses.ts';
import { nominalTurns } from '../receiver/slugLaw.ts';
import { isInside } from '../receiver/specification.ts';

/** A line of the sheet that is missed, and the slug that would mend it most. */
export type OffLine = Subjects['demand'];

export interface Alignment {
  /** lines outside their limits, the worst first */
  readonly off: readonly OffLine[];
  /** slugs that stand far from where they belong in this set, turns in from there */
  readonly away: Readonly<Record<string, number>>;
  /** slugs that have moved since the last look */
  readonly moved: readonly string[];
}

/** A slug nearer than this is where a step of the procedure can leave it; touching up does the rest. */
const AWAY_TURNS = 0.5;

export interface AlignmentWatch {
  /** `atRest`: no slug has just moved. null: never looked */
  of(state: BenchState, atRest: boolean): Alignment | null;
}

type Stood = Pick<BenchState, 'slugs' | 'replaced'>;

export function createAlignmentWatch(setup: BenchSetup): AlignmentWatch {
  const judges = new Map<string, SheetJudge>();
  let seen: { readonly at: Stood; readonly alignment: Alignment } | null = null;
  const judgeOf = (replaced: readonly string[]): SheetJudge => {
    const key = [...replaced].sort().join('|');
    const known = judges.get(key) ?? judgeFor(setup, replaced);
    judges.set(key, known);
    return known;
  };
  return {
    of(state, atRest) {
      const { slugs, replaced } = state;
      if (seen !== null && seen.at.slugs === slugs && seen.at.replaced === replaced) return seen.alignment;
      if (!atRest) return seen === null ? null : { ...seen.alignment, moved: movedSince(seen.at, state) };
      seen = { at: { slugs, replaced }, alignment: look(setup, judgeOf(replaced), state) };
      return seen.alignment;
    },
  };
}

function judgeFor({ receiver, deck, scenario, engine }: BenchSetup, replaced: readonly string[]): SheetJudge {
  // A wrong load or a turned diode is no part of the deck.
  const faulty = faultEffects(receiver, deck, scenario.faults, replaced);
  const stated = workResponses(receiver, scenario).map((response) => statedOn(engine, faulty, response));
  return createSheetJudge(receiver, stated, scenario.toleranceFactor);
}

function look(setup: BenchSetup, judge: SheetJudge, { slugs, replaced }: Stood): Alignment {
  const cores = Object.fromEntries(Object.entries(slugs).map(([id, slug]) => [id, slug.coreTurns]));
  const missed = judge.demands(cores, false).some(({ item }) => !isInside(item));
  if (!missed) return { off: [], away: {}, moved: [] };
  // Where a part has failed no slug is to blame.
  const failed = uncured(setup, replaced).length > 0;
  const off = judge
    .demands(cores, true)
    .filter(({ item }) => !isInside(item))
    .map((line): OffLine => (failed ? { ...line, cause: null } : line))
    .sort((a, b) => share(b) - share(a));
  const away = setup.receiver.adjusters.flatMap((adjuster) => {
    const turns = (cores[adjuster.id] ?? 0) - nominalTurns(adjuster);
    return Math.abs(turns) > AWAY_TURNS ? [[adjuster.id, turns] as const] : [];
  });
  return { off, away: Object.fromEntries(away), moved: [] };
}

/** How far outside, counted in tolerances. */
function share({ item }: OffLine): number {
  return excessOver(item, item.measured) / item.tolerance;
}

function movedSince(then: Stood, now: Stood): readonly string[] {
  return Object.keys(now.slugs).filter((id) => now.slugs[id] !== then.slugs[id]);
}
