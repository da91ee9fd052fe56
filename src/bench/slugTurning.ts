/**
 * Slugs and the tools that turn them.
 *
 * Screw and core: the core follows the screw with a dead band of `backlashTurns` (half of it on either side), so a change of direction
 * is lost motion until the band is taken up. Stops: past either end the slug is forced; half a turn of force in all cracks the core.
 * Wrong head: it slips, nothing turns, the slot wears. Steel: it turns anything, but wears the core as it goes, and shifts the coil while it
 * stands in it (that is the circuit's business). At full wear the core cracks. A cracked slug stays where it is.
 */
import { clamp } from '../base/rounding.ts';
import type { Adjuster } from '../receiver/receiver.ts';
import type { Applied, BenchSound } from './benchEvent.ts';
import { type BenchState, NO_PROOFS, type SlugState, type ToolId } from './benchState.ts';
import { withClusteredIncident, withIncident } from './incidents.ts';
import { done, refused } from './outcome.ts';
import type { BenchSetup } from './setup.ts';
import { fits } from './tools.ts';

/** One event may carry at most this much turning, either way. */
export const MOST_TURNS_PER_EVENT = 2;

/** The smallest number of equal turns, each of which one event can carry. */
export function inPieces(turns: number): readonly number[] {
  const pieces = Math.ceil(Math.abs(turns) / MOST_TURNS_PER_EVENT);
  return Array.from({ length: pieces }, () => turns / pieces);
}

const CRACKING_FORCE_TURNS = 0.5;
const STEEL_WEAR_PER_TURN = 0.08;
const SLIP_WEAR_PER_TURN = 0.2;
const DETENT_TURNS = 0.25;
const NEAR_STOP_TURNS = 0.5;

export function turnSlug(setup: BenchSetup, state: BenchState, slug: string, turns: number): Applied {
  const adjuster = setup.receiver.adjusters.find((a) => a.id === slug);
  if (adjuster === undefined) return refused('noSuchSlug');
  if (!Number.isFinite(turns) || Math.abs(turns) > MOST_TURNS_PER_EVENT) return refused('valueOutOfRange');
  if (turns === 0) return refused('noTurn');
  if (state.tool === null) return refused('noToolInHand');
  if (slugOf(state, slug).cracked) return refused('slugCracked');
  const heard: BenchSound[] = state.toolIn === slug ? [] : [{ kind: 'blade' }];
  const placed = withToolIn(state, state.tool, slug);
  if (!fits(state.tool, adjuster.head)) return slip(placed, slug, Math.abs(turns), heard);
  return drive(placed, adjuster, turns, state.tool === 'steel', heard);
}

export function placeTool(setup: BenchSetup, state: BenchState, slug: string | null): Applied {
  if (slug !== null && !setup.receiver.adjusters.some((a) => a.id === slug)) return refused('noSuchSlug');
  if (state.toolIn === slug) return refused('alreadySo');
  if (slug === null) return done({ ...state, toolIn: null }, { kind: 'blade' });
  if (state.tool === null) return refused('noToolInHand');
  return done(withToolIn(state, state.tool, slug), { kind: 'blade' });
}

export function takeTool(state: BenchState, tool: ToolId | null): Applied {
  if (state.tool === tool) return refused('alreadySo');
  return done({ ...state, tool, toolIn: null });
}

/** Where the core stands after its screw has come to `screwTurns`. */
export function followScrew(coreTurns: number, screwTurns: number, backlashTurns: number): number {
  return clamp(coreTurns, screwTurns - backlashTurns / 2, screwTurns + backlashTurns / 2);
}

function withToolIn(state: BenchState, tool: ToolId, slug: string): BenchState {
  if (state.toolIn === slug) return state;
  const placed = { ...state, toolIn: slug };
  return tool === 'steel' ? withClusteredIncident(placed, 'steelTool', slug) : placed;
}

function slip(state: BenchState, slug: string, turns: number, heard: readonly BenchSound[]): Applied {
  const noted = withClusteredIncident(state, 'wrongHead', slug);
  const worn = wornBy(slugOf(state, slug), turns * SLIP_WEAR_PER_TURN);
  return settle(noted, slug, worn, [...heard, { kind: 'slip' }]);
}

function drive(
  state: BenchState,
  adjuster: Adjuster,
  turns: number,
  steel: boolean,
  heard: readonly BenchSound[],
): Applied {
  const { id, travelTurns, backlashTurns } = adjuster;
  const before = slugOf(state, id);
  const wanted = before.screwTurns + turns;
  const screwTurns = clamp(wanted, 0, travelTurns);
  const forced = Math.abs(wanted - screwTurns);
  const moved = Math.abs(screwTurns - before.screwTurns);
  const turned: SlugState = {
    ...before,
    screwTurns,
    coreTurns: clamp(followScrew(before.coreTurns, screwTurns, backlashTurns), 0, travelTurns),
    forcedTurns: before.forcedTurns + forced,
  };
  const worn = steel ? wornBy(turned, moved * STEEL_WEAR_PER_TURN) : turned;
  let after = state;
  if (moved > 0) {
    const turnsMade = state.turnsMade + moved;
    after = { ...after, turnsMade, lastSlugTurnSeconds: state.seconds, proofs: NO_PROOFS };
  }
  if (forced > 0) after = withClusteredIncident(after, 'forcedStop', id);
  const cracked = worn.forcedTurns >= CRACKING_FORCE_TURNS ? { ...worn, cracked: true } : worn;
  const stop: readonly BenchSound[] = forced > 0 ? [{ kind: 'stop' }] : [];
  return settle(after, id, cracked, [...heard, ...detents(adjuster, before.screwTurns, screwTurns), ...stop]);
}

/** Puts the slug back into the bench; a core that has just cracked is written down and heard. */
function settle(state: BenchState, id: string, slug: SlugState, heard: readonly BenchSound[]): Applied {
  const after = { ...state, slugs: { ...state.slugs, [id]: slug } };
  return slug.cracked
    ? done(withIncident(after, 'crackedSlug', id), ...heard, { kind: 'crack' })
    : done(after, ...heard);
}

function wornBy(slug: SlugState, more: number): SlugState {
  const wear = Math.min(1, slug.wear + more);
  return { ...slug, wear, cracked: slug.cracked || wear >= 1 };
}

/** A click for each quarter turn that was passed. */
function detents(adjuster: Adjuster, from: number, to: number): BenchSound[] {
  const clicks = Math.abs(Math.floor(to / DETENT_TURNS) - Math.floor(from / DETENT_TURNS));
  const nearStop = to < NEAR_STOP_TURNS || to > adjuster.travelTurns - NEAR_STOP_TURNS;
  return Array.from({ length: clicks }, () => ({ kind: 'detent', slug: adjuster.id, nearStop }));
}

function slugOf(state: BenchState, slug: string): SlugState {
  const found = state.slugs[slug];
  if (found === undefined) throw new Error(`the bench has no slug ${slug}`);
  return found;
}
