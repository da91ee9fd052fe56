/** Where the slips stand that say how far a slug is off: beside its letter, never over a hole, a test point or another letter. Plan units. */
import type { Receiver } from '../receiver/receiver.ts';
import { around, type ChassisPlaces, crowd, type PlanBox, partBox, textBox, textWidth } from './chassisPlaces.ts';

export interface FlagWanted {
  readonly slug: string;
  readonly text: string;
}

const GAP = 2;
const PAD = 5;
/** What a slip costs where it lies: never over what is read or reached, rather not over a part. */
const NEVER = 100;
const RATHER_NOT = 4;

export function slugFlags(
  receiver: Receiver,
  places: ChassisPlaces,
  wanted: readonly FlagWanted[],
  /** what else stands there to be read */
  marks: readonly PlanBox[] = [],
): ReadonlyMap<string, PlanBox> {
  const { plan } = receiver;
  const { textSize, discRadius } = places;
  const clear: PlanBox[] = [...marks];
  for (const slug of places.slugs) clear.push(around(slug.disc, discRadius), around(slug.hole, slug.holeRadius + 2));
  for (const point of places.points) clear.push(around(point.at, 8), textBox(point.label, point.id, textSize));
  const parts = [...places.cans, ...plan.parts.map(partBox)];
  const flags = new Map<string, PlanBox>();
  for (const { slug, text } of wanted) {
    const place = places.slugs.find(({ adjuster }) => adjuster.id === slug);
    if (place === undefined) continue;
    const width = textWidth(text, textSize) + 2 * PAD;
    const height = textSize + 6;
    const { x, y } = place.disc;
    const reach = discRadius + GAP;
    const hindered = [...clear, ...flags.values()];
    const cost = ([dx, dy, dislike]: Try): number => {
      const box = { x: x + dx, y: y + dy, width, height };
      const hit = crowd(box, hindered, plan);
      // A corner is as bad as the whole.
      return (hit > 0 ? NEVER * (1 + hit) : 0) + crowd(box, parts, plan) * RATHER_NOT + dislike;
    };
    const beside: readonly Try[] = [
      [reach, -height / 2, 0],
      [-reach - width, -height / 2, 0],
      [-width / 2, -reach - height, 1],
      [-width / 2, reach, 1],
    ];
    let best = cheapest(beside, cost);
    // Nothing is free right beside the letter: a little further off, as near as may be.
    if (best.cost > SORRY) best = cheapest(further(width, height, reach), cost);
    const [dx, dy] = best.at;
    flags.set(slug, { x: x + dx, y: y + dy, width, height });
  }
  return flags;
}

/** From the letter's middle to the slip's corner, and what is to be said against it. */
type Try = readonly [dx: number, dy: number, dislike: number];

const SORRY = RATHER_NOT + 1;
const STEP = 4;
const FAR = 44;

function further(width: number, height: number, reach: number): readonly Try[] {
  const tries: Try[] = [];
  for (let dx = -FAR - width; dx <= FAR; dx += STEP)
    for (let dy = -FAR - height; dy <= FAR; dy += STEP) {
      const away = Math.hypot(Math.max(dx, -dx - width, 0), Math.max(dy, -dy - height, 0));
      if (away >= reach) tries.push([dx, dy, 1 + away / STEP]);
    }
  return tries;
}

function cheapest(tries: readonly Try[], cost: (one: Try) => number): { readonly at: Try; readonly cost: number } {
  let best = { at: tries[0]!, cost: Number.POSITIVE_INFINITY };
  for (const at of tries) {
    const its = cost(at);
    if (its < best.cost) best = { at, cost: its };
  }
  return best;
}
