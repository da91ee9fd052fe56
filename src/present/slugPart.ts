/**
 * What one slug moves: the response that the bench is set up for, of this very set with its slugs as they stand, and the same with this slug a turn further in and a turn further
 * out. Help for practice; a sealed job is never asked for it. Pure.
 */
import type { BenchState } from '../bench/benchState.ts';
import { createFaultBook } from '../bench/faultsNow.ts';
import { keepByKey } from '../bench/kept.ts';
import type { BenchSetup } from '../bench/setup.ts';
import type { SheetResponse } from '../receiver/receiver.ts';
import { createStatedResponse, type StatedResponse } from '../receiver/statedResponse.ts';
import { acrossSweep, type Curve, highest } from './curves.ts';

export interface SlugPart {
  /** levels over the highest place of the curve as it is now, linear, with their sign */
  readonly now: Curve;
  /** with the slug a turn further that way; null where it comes to its stop before */
  readonly in: Curve | null;
  readonly out: Curve | null;
  /** where a turn moves the curve by four tenths or more of what it moves it at most */
  readonly fromHz: number;
  readonly toHz: number;
  /** where it moves it most */
  readonly mostHz: number;
}

/** A slug that moves the curve by less than this, of its height, has no part in it. */
const LEAST = 0.02;
const SHARE_OF_MOST = 0.4;
const POINTS = 301;

type Stood = Pick<BenchState, 'slugs' | 'replaced' | 'seconds'>;

/** Null: a turn moves no part of the curve, or there is none. */
export type SlugParts = (state: Stood, slug: string, response: SheetResponse) => SlugPart | null;

export function createSlugParts(setup: BenchSetup): SlugParts {
  const { receiver } = setup;
  const faults = createFaultBook(setup);
  const stated = keepByKey<StatedResponse>(Number.POSITIVE_INFINITY);
  const statedOf = (state: Stood, response: SheetResponse): StatedResponse => {
    const { key, effects } = faults(state);
    const make = () => createStatedResponse(effects.receiver, effects.deck, response, acrossSweep(response, POINTS));
    return stated(`${key}#${response.id}`, make);
  };
  return (state, slug, response) => {
    const { slugs } = state;
    const adjuster = receiver.adjusters.find(({ id }) => id === slug);
    if (adjuster === undefined || slugs[slug]!.cracked) return null;
    const { solve } = statedOf(state, response);
    const cores = Object.fromEntries(Object.entries(slugs).map(([id, { coreTurns }]) => [id, coreTurns]));
    const curve = (coreTurns: number) => solve({ ...cores, [slug]: coreTurns });
    const stands = cores[slug]!;
    const { hz, volts } = curve(stands);
    const top = highest(volts);
    if (!(top > 0)) return null;
    const relative = (all: Float64Array): Curve => ({ hz, relative: all.map((v) => v / top) });
    const now = relative(volts);
    const turned = (by: 1 | -1): Curve | null => {
      const to = stands + by;
      return to < 0 || to > adjuster.travelTurns ? null : relative(curve(to).volts);
    };
    const ways = { in: turned(1), out: turned(-1) };
    const moved = hz.map((_, i) => Math.max(change(ways.in, now, i), change(ways.out, now, i)));
    const most = highest(moved);
    if (most < LEAST) return null;
    const much = (v: number): boolean => v >= SHARE_OF_MOST * most;
    return {
      now,
      ...ways,
      fromHz: hz[moved.findIndex(much)]!,
      toHz: hz[moved.findLastIndex(much)]!,
      mostHz: hz[moved.indexOf(most)]!,
    };
  };
}

function change(turned: Curve | null, now: Curve, i: number): number {
  return turned === null ? 0 : Math.abs(turned.relative[i]! - now.relative[i]!);
}
