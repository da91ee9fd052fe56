/** Where the names of drawn cans stand: in a corner that no letter's line runs through. Plan units. */
import type { PlanPoint } from '../receiver/receiver.ts';
import { type Can, type ChassisPlaces, type PlanBox, textWidth } from './chassisPlaces.ts';

/** Of a letter's line: from the disc's rim to short of the hole. */
const SHORT_OF_HOLE = 14;
const ASIDE = 7.5;
const UP = 7;
/** From a name to a line that passes it by. */
const CLEAR = 1;

export interface CanName {
  readonly id: string;
  /** where it begins, on the line that it is written on */
  readonly at: PlanPoint;
  readonly box: PlanBox;
}

export type Line = readonly [PlanPoint, PlanPoint];

/** The line from a letter to its hole; null: they stand so near that there is none. */
export function letterLine(disc: PlanPoint, hole: PlanPoint, radius: number): Line | null {
  const length = Math.hypot(hole.x - disc.x, hole.y - disc.y) || 1;
  const reach = Math.max(0, length - SHORT_OF_HOLE);
  if (reach <= radius) return null;
  const along = (far: number): PlanPoint => ({
    x: disc.x + ((hole.x - disc.x) / length) * far,
    y: disc.y + ((hole.y - disc.y) / length) * far,
  });
  return [along(radius), along(reach)];
}

/** Of every can but the round traps. By habit of the plan at the lower left, elsewhere only where a line, a letter or a hole is in the way there. */
export function canNames(places: ChassisPlaces): readonly CanName[] {
  const lines = places.slugs
    .map(({ disc, hole }) => letterLine(disc, hole, places.discRadius))
    .filter((line) => line !== null);
  return places.cans.filter(({ shape }) => shape === 'can').map((can) => placed(can, places, lines));
}

function placed(can: Can, { slugs, discRadius, textSize }: ChassisPlaces, lines: readonly Line[]): CanName {
  const width = textWidth(can.id, textSize) + 0.03 * textSize * can.id.length;
  const [left, right] = [can.x + ASIDE, can.x + can.width - ASIDE - width];
  const [low, high] = [can.y + can.height - UP, can.y + UP + 0.72 * textSize];
  const corners: readonly PlanPoint[] = [
    { x: left, y: low },
    { x: right, y: low },
    { x: left, y: high },
    { x: right, y: high },
  ];
  const boxAt = ({ x, y }: PlanPoint): PlanBox => ({ x, y: y - 0.72 * textSize, width, height: 0.72 * textSize });
  const hindered = (box: PlanBox): number =>
    lines.filter((line) => runsThrough(line, box)).length +
    slugs.filter(({ disc }) => away(disc, box) < discRadius).length +
    slugs.filter(({ hole, holeRadius }) => away(hole, box) < holeRadius).length;
  const counted = corners.map((at) => ({ id: can.id, at, box: boxAt(at), hits: hindered(boxAt(at)) }));
  const { hits: _, ...best } = counted.reduce((one, other) => (other.hits < one.hits ? other : one));
  return best;
}

const away = ({ x, y }: PlanPoint, box: PlanBox): number =>
  Math.hypot(Math.max(box.x - x, 0, x - box.x - box.width), Math.max(box.y - y, 0, y - box.y - box.height));

/** Whether a line comes within a unit of a box: clipped against each side in turn (Liang and Barsky's way). */
function runsThrough([from, to]: Line, box: PlanBox): boolean {
  let [enters, leaves] = [0, 1];
  const sides: readonly (readonly [number, number])[] = [
    [from.x - to.x, from.x - box.x + CLEAR],
    [to.x - from.x, box.x + box.width + CLEAR - from.x],
    [from.y - to.y, from.y - box.y + CLEAR],
    [to.y - from.y, box.y + box.height + CLEAR - from.y],
  ];
  for (const [step, room] of sides) {
    if (step === 0 && room < 0) return false;
    if (step < 0) enters = Math.max(enters, room / step);
    if (step > 0) leaves = Math.min(leaves, room / step);
  }
  return enters <= leaves;
}
