/**
 * Par: what a good hand needs. A model of ours, no source: its figures are round ones for somebody who knows the work and the sheet.
 *
 * Turns: two and a half times the straight route (past the place and back, each slug rocked through its peak, and a second time round), and a quarter turn for each slug to find its top.
 * Never less than LEAST_TURNS: where no slug is astray, or one by a fifth of a turn, a slug may still be tried and put back, which takes a turn however short the way was.
 * Seconds: making safe, connecting and setting up once, a shorter set-up for each further response, each slug found and followed, each turn, each part found and
 * replaced, each proof, ten minutes for a set that stands cold. Rounded up to eighths of a turn and quarters of a minute.
 */
import type { RouteStep } from './certificate.ts';

const TURNS_OVER = 2.5;
/** What was handed out by a name of the endless track has the par of its day. */
const AS_NAMED = { turnsOver: 1.5, slug: 30 };
const TURNS_A_SLUG = 0.25;
const LEAST_TURNS = 1;
const EIGHTH = 0.125;

const SECONDS = {
  safe: 60,
  connect: 120,
  setUp: 180,
  further: 120,
  slug: 60,
  trap: 15,
  turn: 8,
  cure: 240,
  proof: 15,
  warmUp: 600,
};
const QUARTER_MINUTE = 15;

export interface Work {
  readonly asNamed: boolean;
  readonly route: readonly RouteStep[];
  readonly traps: number;
  readonly responses: number;
  readonly cures: number;
  readonly proofs: number;
  /** the set stands cold */
  readonly warmsUp: boolean;
  readonly prepared: readonly ('safe' | 'connect')[];
}

export function parOf(work: Work): { readonly turns: number; readonly seconds: number } {
  const { route, traps, responses, cures, proofs, warmsUp, prepared } = work;
  const straight = route.reduce((sum, step) => sum + Math.abs(step.turns), 0);
  const turns = Math.max(
    LEAST_TURNS,
    (work.asNamed ? AS_NAMED.turnsOver : TURNS_OVER) * straight + TURNS_A_SLUG * route.length,
  );
  const seconds =
    (prepared.includes('safe') ? 0 : SECONDS.safe) +
    (prepared.includes('connect') ? 0 : SECONDS.connect) +
    SECONDS.setUp +
    SECONDS.further * Math.max(responses - 1, 0) +
    (work.asNamed ? AS_NAMED.slug : SECONDS.slug) * route.length +
    SECONDS.trap * traps +
    SECONDS.turn * turns +
    SECONDS.cure * cures +
    SECONDS.proof * proofs +
    (warmsUp ? SECONDS.warmUp : 0);
  return {
    turns: Math.ceil(turns / EIGHTH - 1e-9) * EIGHTH,
    seconds: Math.ceil(seconds / QUARTER_MINUTE - 1e-9) * QUARTER_MINUTE,
  };
}
