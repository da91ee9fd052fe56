/** Finds a place for each callout box of a figure: near its point, off the curves, off the other boxes. Pure and the same each time. */

export interface BoxWanted {
  /** the point that the box speaks of */
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}
export interface BoxPlaced {
  readonly x: number;
  readonly y: number;
  /** where the leader leaves the box */
  readonly fromX: number;
  readonly fromY: number;
}
export interface Room {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}
export interface Ink {
  readonly points: readonly (readonly [x: number, y: number])[];
  /** how bad it is to lie on one of these points */
  readonly cost: number;
  /** how bad it is for a leader to cross the line through them */
  readonly crossing: number;
}

const AWAY = [30, 48, 70, 96, 126, 160, 200, 244];
const TURNS = 24;

/** A stretch of a curve as one box sees it. */
interface Stretch {
  readonly x: number;
  readonly y: number;
  /** where it leads; null: the curve ends here, or the stretch lies so near the box's own point that every leader touches it */
  readonly next: readonly [x: number, y: number] | null;
  readonly cost: number;
  readonly crossing: number;
}

/** Each box is placed in turn, then again twice with all the others known. Null where no place is bearable. */
export function placeBoxes(wanted: readonly BoxWanted[], room: Room, inks: readonly Ink[]): (BoxPlaced | null)[] {
  const placed: (BoxPlaced | null)[] = wanted.map(() => null);
  const seen = wanted.map((box) => stretchesFrom(box, inks));
  for (let pass = 0; pass < PASSES; pass++)
    wanted.forEach((box, i) => {
      placed[i] = null;
      const others = wanted.flatMap((other, k) => {
        const at = placed[k];
        return at ? [{ ...at, w: other.w, h: other.h, toX: other.x, toY: other.y }] : [];
      });
      placed[i] = bestPlace(box, room, seen[i]!, others, wanted);
    });
  return placed;
}

function stretchesFrom(box: BoxWanted, inks: readonly Ink[]): readonly Stretch[] {
  return inks.flatMap(({ points, cost, crossing }) =>
    points.map(([x, y], i) => {
      const isOff = Math.hypot(x - box.x, y - box.y) > 12;
      return { x, y, next: isOff ? (points[i + 1] ?? null) : null, cost, crossing };
    }),
  );
}

const PASSES = 3;
const UNBEARABLE = 400;

interface Taken extends BoxPlaced {
  readonly w: number;
  readonly h: number;
  readonly toX: number;
  readonly toY: number;
}

function bestPlace(
  box: BoxWanted,
  room: Room,
  stretches: readonly Stretch[],
  others: readonly Taken[],
  wanted: readonly BoxWanted[],
): BoxPlaced | null {
  let best: BoxPlaced | null = null;
  let least = UNBEARABLE;
  for (const away of AWAY)
    for (let i = 0; i < TURNS; i++) {
      const turn = (i / TURNS) * 2 * Math.PI;
      for (const candidate of boxesAt(box, box.x + Math.cos(turn) * away, box.y + Math.sin(turn) * away)) {
        const far = away * 0.12;
        const cost = costOf(candidate, box, room, stretches, others, wanted, least - far) + far;
        if (cost < least) {
          least = cost;
          best = candidate;
        }
      }
    }
  return best;
}

/** Boxes whose leader ends at (ax, ay), on the far side of that place: beside it, or over or under it and slid to either side. */
function boxesAt(box: BoxWanted, ax: number, ay: number): BoxPlaced[] {
  const at = (x: number, y: number): BoxPlaced => ({ x: Math.round(x), y: Math.round(y), fromX: ax, fromY: ay });
  const boxes: BoxPlaced[] = [];
  if (Math.abs(ax - box.x) > 12) boxes.push(at(ax > box.x ? ax : ax - box.w, ay - box.h / 2));
  if (Math.abs(ay - box.y) > 12)
    for (const slide of [0.5, 0.15, 0.85]) boxes.push(at(ax - box.w * slide, ay > box.y ? ay : ay - box.h));
  return boxes;
}

/** Nothing makes a place cheaper: from `most` on it is not the best, and how bad it is beyond that is not counted. */
function costOf(
  at: BoxPlaced,
  box: BoxWanted,
  room: Room,
  stretches: readonly Stretch[],
  others: readonly Taken[],
  wanted: readonly BoxWanted[],
  most: number,
): number {
  const right = at.x + box.w;
  const bottom = at.y + box.h;
  if (at.x < room.left || at.y < room.top || right > room.right || bottom > room.bottom)
    return Number.POSITIVE_INFINITY;
  let cost = 0;
  for (const p of others) {
    const over = Math.min(right, p.x + p.w) - Math.max(at.x, p.x) + 8;
    const down = Math.min(bottom, p.y + p.h) - Math.max(at.y, p.y) + 8;
    if (over > 0 && down > 0) cost += 500 + over * down;
    if (crossesBox(at.fromX, at.fromY, box.x, box.y, p)) cost += 120;
    if (crossesBox(p.fromX, p.fromY, p.toX, p.toY, { ...at, w: box.w, h: box.h })) cost += 120;
    if (cuts(at.fromX, at.fromY, box.x, box.y, p.fromX, p.fromY, p.toX, p.toY)) cost += 120;
    if (cost > most) return cost;
  }
  // The other points' discs must stay seen.
  for (const o of wanted)
    if (o !== box && o.x > at.x - 8 && o.x < right + 8 && o.y > at.y - 8 && o.y < bottom + 8) cost += 90;
  // What lies beside the leader's own rectangle cannot cross it.
  const left = Math.min(at.fromX, box.x);
  const top = Math.min(at.fromY, box.y);
  const far = Math.max(at.fromX, box.x);
  const low = Math.max(at.fromY, box.y);
  for (const { x, y, next, cost: each, crossing } of stretches) {
    if (x > at.x - 5 && x < right + 5 && y > at.y - 5 && y < bottom + 5) cost += each;
    if (
      next !== null &&
      (x > left || next[0] > left) &&
      (x < far || next[0] < far) &&
      (y > top || next[1] > top) &&
      (y < low || next[1] < low) &&
      cuts(at.fromX, at.fromY, box.x, box.y, x, y, next[0], next[1])
    )
      cost += crossing;
    if (cost > most) return cost;
  }
  return cost;
}

function crossesBox(
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  box: BoxPlaced & { w: number; h: number },
): boolean {
  for (let i = 1; i < 12; i++) {
    const x = x0 + ((x1 - x0) * i) / 12;
    const y = y0 + ((y1 - y0) * i) / 12;
    if (x > box.x && x < box.x + box.w && y > box.y && y < box.y + box.h) return true;
  }
  return false;
}

/** Whether the stretches a-b and c-d cross. */
function cuts(ax: number, ay: number, bx: number, by: number, cx: number, cy: number, dx: number, dy: number): boolean {
  const side = (px: number, py: number, qx: number, qy: number, rx: number, ry: number): number =>
    (qx - px) * (ry - py) - (qy - py) * (rx - px);
  return (
    side(ax, ay, bx, by, cx, cy) * side(ax, ay, bx, by, dx, dy) < 0 &&
    side(cx, cy, dx, dy, ax, ay) * side(cx, cy, dx, dy, bx, by) < 0
  );
}
