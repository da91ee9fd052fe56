/** The tool and the screw: a slug is turned with the tool that fits, in turns that a hand can make, never past where it has been felt to stop. */
import type { Hands } from './hands.ts';
import type { PrintedSheet, PrintedSlug } from './sheet.ts';

export interface Turner {
  /** turns that were made, positive = core in; less than asked for near a stop, none for a slug that will not turn */
  turn(slug: string, turns: number): number;
  /** slugs that would not turn at all */
  readonly stuck: ReadonlySet<string>;
  /** how deep a screw is seen to stand, turns from the outer stop */
  depthOf(slug: string): number;
  /** a new coil turns again */
  renewed(slug: string): void;
}

const LEAST_TURNS = 1 / 64;
/** Kept clear of the stops. */
const MARGIN_TURNS = 0.3;

/**
 * `mostAtOnce`: turns that a hand makes in one go. `depthOf` is how deep a core is seen to stand, turns from the outer stop: the dial ring beside each slug
 * shows it.
 */
export function createTurner(
  hands: Hands,
  sheet: PrintedSheet,
  mostAtOnce: number,
  depthOf: (slug: string) => number,
): Turner {
  const stuck = new Set<string>();
  const slugOf = (id: string): PrintedSlug => {
    const found = sheet.slugs.find((s) => s.id === id);
    if (found === undefined) throw new Error(`the sheet has no slug ${id}`);
    return found;
  };
  let inHand: string | null = null;
  return {
    stuck,
    depthOf,
    renewed: (slug) => {
      stuck.delete(slug);
    },
    turn(id, turns) {
      const slug = slugOf(id);
      const depth = depthOf(id);
      const low = Math.min(depth, MARGIN_TURNS);
      const high = Math.max(depth, slug.travelTurns - MARGIN_TURNS);
      const wanted = Math.min(Math.max(depth + turns, low), high) - depth;
      const whole = Math.round(wanted / LEAST_TURNS) * LEAST_TURNS;
      if (whole === 0 || stuck.has(id)) return 0;
      if (inHand !== slug.head) {
        hands.act({ type: 'toolTaken', tool: slug.head });
        inHand = slug.head;
      }
      const pieces = Math.ceil(Math.abs(whole) / mostAtOnce);
      let made = 0;
      for (let i = 0; i < pieces; i++) {
        if (hands.act({ type: 'slugTurned', slug: id, turns: whole / pieces }) !== null) {
          stuck.add(id);
          break;
        }
        made += whole / pieces;
      }
      // A hand at the coil is seen on the curve.
      hands.act({ type: 'toolPlaced', slug: null });
      return made;
    },
  };
}

/** A move of this many turns or more is rocked; so far to either side. */
const ROCKED_TURNS = 0.5;
const ROCK_TURNS = 0.125;

/** Hands that feel for the peak: past it, back before it, and on to where it was, so that the screw comes to rest the way that it went. */
export function rocking(turner: Turner): Turner {
  return {
    ...turner,
    turn(id, turns) {
      let made = turner.turn(id, turns);
      if (Math.abs(made) < ROCKED_TURNS) return made;
      const there = made;
      const past = Math.sign(made) * ROCK_TURNS;
      for (const by of [past, -2 * past]) made += turner.turn(id, by);
      return made + turner.turn(id, there - made);
    },
  };
}
