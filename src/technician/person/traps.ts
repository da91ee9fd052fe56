/** Setting a trap alone: its notch is looked for beside the pip and brought to it, then the slug is rocked for the lowest line. */
import { type Axis, axisOf, readVolts } from './eyes.ts';
import { type Hands, set } from './hands.ts';
import type { Turner } from './turner.ts';

/** How far either side of its frequency a notch is looked for, as a share of it. */
const SEARCH = 0.05;
const LOOKS = 41;
/** A core moves a trap by about a hundredth of its frequency a turn: what any trade text says of a slug of twenty turns. */
const SHARE_A_TURN = 0.01;
const ROCKS = [1, 0.5, 0.25, 0.125, 1 / 16, 1 / 32] as const;
const FLOOR_VOLTS = 1e-6;

/** So much more level shows what lies deep in a notch, decibels. */
const RAISED_DB = 20;

export function setTrap(hands: Hands, turner: Turner, slug: string, hz: number): void {
  const { levelDb } = hands.knobs();
  set(hands, 'levelDb', Math.min(levelDb + RAISED_DB, hands.scale('levelDb').high));
  bringNotch(hands, turner, slug, hz);
  set(hands, 'levelDb', levelDb);
}

function bringNotch(hands: Hands, turner: Turner, slug: string, hz: number): void {
  const axis = axisOf(hands);
  const notch = notchNear(hands, axis, hz);
  if (notch !== null) {
    // Further in is more inductance, and lower.
    const turns = (notch - hz) / (SHARE_A_TURN * hz);
    const before = levelAt(hands, axis, hz);
    const made = turner.turn(slug, turns);
    if (levelAt(hands, axis, hz) > before) turner.turn(slug, -made);
  }
  let level = levelAt(hands, axis, hz);
  for (const step of ROCKS) {
    for (const way of [1, -1]) {
      for (let moves = 0; moves < 6; moves++) {
        const made = turner.turn(slug, way * step);
        const now = levelAt(hands, axis, hz);
        if (now < 0.97 * level) level = now;
        else {
          turner.turn(slug, -made);
          break;
        }
      }
    }
  }
}

function levelAt(hands: Hands, axis: Axis, hz: number): number {
  return Math.max(Math.abs(readVolts(hands, [hz], axis)[0]!), FLOOR_VOLTS);
}

/** The deepest dip between two higher places; null where the line only rises or falls. */
function notchNear(hands: Hands, axis: Axis, hz: number): number | null {
  const places = Array.from({ length: LOOKS }, (_, i) => hz * (1 + SEARCH * ((2 * i) / (LOOKS - 1) - 1)));
  const levels = readVolts(hands, places, axis).map((v) => 20 * Math.log10(Math.max(Math.abs(v), FLOOR_VOLTS)));
  let best: number | null = null;
  let depth = 3;
  for (let i = 1; i + 1 < LOOKS; i++) {
    const left = Math.max(...levels.slice(0, i));
    const right = Math.max(...levels.slice(i + 1));
    const dip = Math.min(left, right) - levels[i]!;
    if (dip > depth) {
      depth = dip;
      best = places[i]!;
    }
  }
  return best;
}
