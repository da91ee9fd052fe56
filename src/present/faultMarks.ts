/** Where the numbers of faults stand on the plan: close to what has failed, never over a letter, a hole, a test point, its name or one another. Plan units. */
import type { Receiver } from '../receiver/receiver.ts';
import { canNames } from './canNames.ts';
import { around, type ChassisPlaces, crowd, type PlanBox, partBox, textBox } from './chassisPlaces.ts';
import type { FaultSpot } from './faultSpots.ts';

export interface FaultMark extends FaultSpot {
  readonly mark: PlanBox;
}

const STEP = 4;
/** how far from what has failed a number may stand */
const FAR = 60;
/** What it costs to lie over what is read or reached, and over another part, which would seem to be the one that has failed. */
const NEVER = 100;
const RATHER_NOT = 12;

/** `size`: of a mark's side, in plan units. */
export function faultMarks(
  receiver: Receiver,
  places: ChassisPlaces,
  spots: readonly FaultSpot[],
  size: number,
): readonly FaultMark[] {
  const { plan } = receiver;
  const clear: PlanBox[] = [...lettered(receiver, places)];
  for (const slug of places.slugs)
    clear.push(around(slug.disc, places.discRadius + 1), around(slug.hole, slug.holeRadius + 3));
  for (const point of places.points) clear.push(around(point.at, 9), textBox(point.label, point.id, places.textSize));
  const parts = [...places.cans, ...plan.parts.map(partBox)];
  return spots.map((spot) => {
    const { box } = spot;
    const others = parts.filter((part) => part.x !== box.x || part.y !== box.y);
    let best: PlanBox = { x: box.x, y: box.y, width: size, height: size };
    let least = Number.POSITIVE_INFINITY;
    // From the corner at the upper right on, where a label would be stuck.
    for (let dy = -FAR - size; dy <= box.height + FAR; dy += STEP)
      for (let dx = box.width + FAR; dx >= -FAR - size; dx -= STEP) {
        const at = { x: box.x + dx, y: box.y + dy, width: size, height: size };
        const away = Math.hypot(at.x + size / 2 - (box.x + box.width), at.y + size / 2 - box.y);
        const out = Math.hypot(
          Math.max(0, box.x - at.x - size / 2, at.x + size / 2 - box.x - box.width),
          Math.max(0, box.y - at.y - size / 2, at.y + size / 2 - box.y - box.height),
        );
        const hit = crowd(at, clear, plan);
        const cost =
          (hit > 0 ? NEVER * (1 + hit) : 0) + RATHER_NOT * crowd(at, others, plan) + away / STEP / 4 + (2 * out) / STEP;
        if (cost < least - 1e-9) {
          least = cost;
          best = at;
        }
      }
    clear.push(best);
    return { ...spot, mark: best };
  });
}

/** Names on cans, and what is lettered in the middle of valves and boxes, on two lines at most. */
function lettered({ plan }: Receiver, places: ChassisPlaces): readonly PlanBox[] {
  const { textSize } = places;
  const names = canNames(places).map(({ box }) => box);
  return [
    ...names,
    ...plan.parts.flatMap((part) => {
      if (part.kind === 'resistor') return [];
      const box = partBox(part);
      const height = Math.min(box.height, (part.kind === 'box' ? 2.6 : 1.3) * textSize);
      return [{ x: box.x + 3, y: box.y + (box.height - height) / 2, width: box.width - 6, height }];
    }),
  ];
}
