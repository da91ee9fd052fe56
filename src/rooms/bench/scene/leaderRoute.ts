/** The way of the single leader from a chosen slug to its magnified view: upright from its letter or hole, then level out of the pan, past what it can. */

import { type ChassisPlaces, type PlanBox, partBox, type SlugPlace } from '../../../present/chassisPlaces.ts';
import { DISC_RADIUS } from '../../../receiver/planSizes.ts';
import type { Receiver } from '../../../receiver/receiver.ts';
import type { BenchLayout } from '../layout.ts';
import { ringOnPage } from './insetPlaces.ts';

interface Corner {
  readonly x: number;
  readonly y: number;
}

/** Corners in page pixels, from the slug to the ring's left edge. */
export function leaderRoute(
  { chassis, ...rest }: BenchLayout,
  { plan }: Pick<Receiver, 'plan'>,
  places: ChassisPlaces,
  place: SlugPlace,
): Corner[] {
  const layout = { chassis, ...rest };
  const ring = ringOnPage(layout);
  const outside = plan.width + 9 / chassis.scale;
  const starts = [
    { ...place.disc, r: DISC_RADIUS, cost: 0 },
    { ...place.hole, r: place.holeRadius + 8, cost: 1.5 },
  ];
  const solid: PlanBox[] = [...plan.parts.map(partBox), ...places.cans, ...(plan.hot ? [plan.hot] : [])];
  let best: Corner[] = [];
  let least = Number.POSITIVE_INFINITY;
  for (const start of starts) {
    for (let y = 4; y <= plan.height + 6; y += 4) {
      const level = Math.abs(y - start.y) < 4;
      const from = level
        ? { x: start.x + start.r, y: start.y }
        : { x: start.x, y: start.y + Math.sign(y - start.y) * start.r };
      const turn = { x: start.x, y: level ? start.y : y };
      const out = { x: outside, y: turn.y };
      const cost =
        start.cost +
        crossings(from, turn, place, places, solid) +
        crossings(turn, out, place, places, solid) +
        Math.abs(turn.y - start.y) / 60 +
        (level ? 0 : 0.5) +
        Math.abs((ring.y - chassis.y) / chassis.scale - turn.y) / 200;
      if (cost < least) {
        least = cost;
        best = level ? [from, out] : [from, turn, out];
      }
    }
  }
  const onPage = best.map((p) => ({ x: chassis.x + p.x * chassis.scale, y: chassis.y + p.y * chassis.scale }));
  const last = onPage[onPage.length - 1]!;
  return [...onPage, { x: last.x, y: ring.y }, { x: ring.x - ring.r, y: ring.y }];
}

/** What an upright or level line would cross: letters and holes weigh most, then names, then parts by the length crossed. */
function crossings(a: Corner, b: Corner, own: SlugPlace, places: ChassisPlaces, solid: readonly PlanBox[]): number {
  const line: PlanBox = {
    x: Math.min(a.x, b.x) - 1,
    y: Math.min(a.y, b.y) - 1,
    width: Math.abs(b.x - a.x) + 2,
    height: Math.abs(b.y - a.y) + 2,
  };
  let sum = 0;
  for (const slug of places.slugs) {
    if (slug !== own && touches(line, { x: slug.disc.x - 13, y: slug.disc.y - 13, width: 26, height: 26 })) sum += 4;
    if (slug !== own && touches(line, { x: slug.hole.x - 13, y: slug.hole.y - 13, width: 26, height: 26 })) sum += 4;
  }
  for (const box of solid) {
    if (!touches(line, box)) continue;
    const w = Math.min(line.x + line.width, box.x + box.width) - Math.max(line.x, box.x);
    const h = Math.min(line.y + line.height, box.y + box.height) - Math.max(line.y, box.y);
    sum += Math.max(w, h) / 30;
  }
  return sum;
}

const touches = (a: PlanBox, b: PlanBox): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
