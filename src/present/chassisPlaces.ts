/**
 * Where everything on a chassis plan stands, worked out from the receiver file alone: drawn cans, slug holes and the areas
 * that answer to a finger, letters and the names of test points. Plan units throughout; no drawing here.
 */
import {
  CAN,
  DISC_RADIUS,
  ELECTROLYTIC_RADIUS,
  TRANSFORMER,
  TRAP_RADIUS,
  VALVE_RADIUS,
} from '../receiver/planSizes.ts';
import type { Adjuster, PlanPart, PlanPoint, Receiver } from '../receiver/receiver.ts';
import { slugLetters } from '../receiver/slugLetters.ts';

export interface PlanBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** One drawn can with the holes of its slugs, or a round trap. */
export interface Can extends PlanBox {
  readonly id: string;
  readonly shape: 'can' | 'trap';
  readonly slugs: readonly Adjuster[];
}

export interface SlugPlace {
  readonly adjuster: Adjuster;
  readonly letter: string;
  readonly hole: PlanPoint;
  readonly holeRadius: number;
  /** middle of the letter's disc */
  readonly disc: PlanPoint;
  /** what answers to pointer and finger; no two overlap */
  readonly touch: PlanBox;
}

export interface PointPlace {
  readonly id: string;
  readonly at: PlanPoint;
  readonly label: { readonly x: number; readonly y: number; readonly anchor: 'start' | 'middle' | 'end' };
}

export interface ChassisPlaces {
  readonly cans: readonly Can[];
  readonly slugs: readonly SlugPlace[];
  readonly points: readonly PointPlace[];
  /** of a letter's disc */
  readonly discRadius: number;
  /** height of 12 px lettering in plan units */
  readonly textSize: number;
}

const LEAST_TOUCH_PX = 46;

export function chassisPlaces(receiver: Receiver, scale: number): ChassisPlaces {
  const textSize = 12 * Math.max(1, 1 / scale);
  const cans = cansOf(receiver.adjusters);
  const letters = slugLetters(receiver);
  const taken: PlanBox[] = [
    ...cans,
    ...receiver.plan.parts.map(partBox),
    ...receiver.testPoints.map((p) => around(p.plan, 9)),
    ...(receiver.plan.hot ? [receiver.plan.hot] : []),
  ];
  for (const a of receiver.adjusters) if (a.plan.letter) taken.push(around(a.plan.letter, DISC_RADIUS));
  const along = pathPoints(receiver);
  const points = receiver.testPoints.map((point): PointPlace => {
    const label = labelPlace(point.plan, point.id, textSize, taken, along, receiver.plan);
    taken.push(textBox(label, point.id, textSize));
    return { id: point.id, at: point.plan, label };
  });
  const touches = touchAreas(cans, scale);
  const slugs = receiver.adjusters.map((adjuster): SlugPlace => {
    const can = cans.find((c) => c.slugs.includes(adjuster))!;
    const disc = adjuster.plan.letter ?? discPlace(adjuster.plan, can, taken, along, receiver.plan);
    if (!adjuster.plan.letter) taken.push(around(disc, DISC_RADIUS));
    return {
      adjuster,
      letter: letters.get(adjuster.id)!,
      hole: { x: adjuster.plan.x, y: adjuster.plan.y },
      holeRadius: can.shape === 'trap' ? 5.6 : 7,
      disc,
      touch: touches.get(adjuster.id)!,
    };
  });
  return { cans, slugs, points, discRadius: DISC_RADIUS, textSize };
}

export function partBox(part: PlanPart): PlanBox {
  switch (part.kind) {
    case 'valve':
      return around(part, VALVE_RADIUS);
    case 'electrolytic':
      return around(part, ELECTROLYTIC_RADIUS);
    case 'can':
      return around(part, 25);
    case 'transformer':
      return { x: part.x - TRANSFORMER.width / 2, y: part.y - TRANSFORMER.height / 2, ...TRANSFORMER };
    case 'box':
      return { x: part.x, y: part.y, width: part.width, height: part.height };
    case 'resistor':
      return part.upright
        ? { x: part.x - 6, y: part.y - 19, width: 12, height: 38 }
        : { x: part.x - 19, y: part.y - 6, width: 38, height: 12 };
  }
}

/** Width of condensed lettering, near enough to keep things apart. */
export const textWidth = (words: string, size: number): number => words.length * size * 0.44;

function cansOf(adjusters: readonly Adjuster[]): Can[] {
  const groups = new Map<string, Adjuster[]>();
  for (const a of adjusters) groups.set(a.plan.can, [...(groups.get(a.plan.can) ?? []), a]);
  return [...groups].map(([id, slugs]) => {
    if (slugs.length === 1 && slugs[0]!.plan.shape === 'trap')
      return { id, shape: 'trap', slugs, ...around(slugs[0]!.plan, TRAP_RADIUS) };
    const xs = slugs.map((s) => s.plan.x);
    const ys = slugs.map((s) => s.plan.y);
    const left = Math.min(...xs) - CAN / 2;
    const top = Math.min(...ys) - CAN / 2;
    return {
      id,
      shape: 'can',
      slugs,
      x: left,
      y: top,
      width: Math.max(...xs) + CAN / 2 - left,
      height: Math.max(...ys) + CAN / 2 - top,
    };
  });
}

/** At least 46 px square round each hole where its neighbours leave the room; two that would overlap share the gap between them. */
function touchAreas(cans: readonly Can[], scale: number): Map<string, PlanBox> {
  const half = Math.max(CAN, LEAST_TOUCH_PX / scale) / 2;
  const areas = cans.flatMap((can) =>
    can.slugs.map(({ id, plan }) => ({
      id,
      cx: plan.x,
      cy: plan.y,
      left: plan.x - half,
      right: plan.x + half,
      top: plan.y - half,
      bottom: plan.y + half,
    })),
  );
  for (let i = 0; i < areas.length; i++) {
    for (let j = i + 1; j < areas.length; j++) {
      const a = areas[i]!;
      const b = areas[j]!;
      if (a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top) continue;
      if (Math.abs(a.cx - b.cx) >= Math.abs(a.cy - b.cy)) {
        const [l, r] = a.cx <= b.cx ? [a, b] : [b, a];
        l.right = r.left = (l.cx + r.cx) / 2;
      } else {
        const [t, u] = a.cy <= b.cy ? [a, b] : [b, a];
        t.bottom = u.top = (t.cy + u.cy) / 2;
      }
    }
  }
  return new Map(areas.map((a) => [a.id, { x: a.left, y: a.top, width: a.right - a.left, height: a.bottom - a.top }]));
}

function discPlace(
  hole: PlanPoint,
  can: Can,
  taken: readonly PlanBox[],
  along: readonly PlanPoint[],
  plan: { readonly width: number; readonly height: number },
): PlanPoint {
  const middle = { x: can.x + can.width / 2, y: can.y + can.height / 2 };
  const out = can.shape === 'trap' ? 34 : 46;
  let best = hole;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 24; i++) {
    const degrees = i * 15;
    const ux = Math.sin((degrees * Math.PI) / 180);
    const uy = -Math.cos((degrees * Math.PI) / 180);
    for (const more of [0, 8]) {
      const at = { x: hole.x + ux * (out + more), y: hole.y + uy * (out + more) };
      const outward = (hole.x - middle.x) * ux + (hole.y - middle.y) * uy;
      const cost =
        crowd(around(at, DISC_RADIUS + 2), taken, plan) * 40 +
        near(at, along, 14) * 4 +
        // By habit letters on a plan stand above and to the left; a can with two holes wants each letter on its own side.
        Math.abs(((degrees + 45 + 180) % 360) - 180) / 40 +
        more / 4 -
        outward / 6;
      if (cost < least - 1e-9) {
        least = cost;
        best = at;
      }
    }
  }
  return best;
}

function labelPlace(
  at: PlanPoint,
  words: string,
  size: number,
  taken: readonly PlanBox[],
  along: readonly PlanPoint[],
  plan: { readonly width: number; readonly height: number },
): PointPlace['label'] {
  const drop = size * 0.36;
  const candidates: (PointPlace['label'] & { readonly dislike: number })[] = [
    { x: at.x + 12, y: at.y + drop, anchor: 'start', dislike: 0 },
    { x: at.x + 11, y: at.y + 13 + drop, anchor: 'start', dislike: 2 },
    { x: at.x + 11, y: at.y - 13 + drop, anchor: 'start', dislike: 2 },
    { x: at.x, y: at.y - 12, anchor: 'middle', dislike: 3 },
    { x: at.x, y: at.y + 12 + size * 0.72, anchor: 'middle', dislike: 3 },
    { x: at.x - 12, y: at.y + drop, anchor: 'end', dislike: 5 },
  ];
  let best = candidates[0]!;
  let least = Number.POSITIVE_INFINITY;
  for (const c of candidates) {
    const box = textBox(c, words, size);
    const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    const cost =
      c.dislike +
      crowd(box, taken, plan) * 40 +
      near(middle, along, 11) * 6 +
      near({ x: box.x + 4, y: middle.y }, along, 9) * 6;
    if (cost < least) {
      least = cost;
      best = c;
    }
  }
  return { x: best.x, y: best.y, anchor: best.anchor };
}

export function textBox(label: PointPlace['label'], words: string, size: number): PlanBox {
  const width = textWidth(words, size);
  const x = label.anchor === 'start' ? label.x : label.anchor === 'end' ? label.x - width : label.x - width / 2;
  return { x, y: label.y - size * 0.78, width, height: size };
}

export const around = (p: PlanPoint, r: number): PlanBox => ({ x: p.x - r, y: p.y - r, width: 2 * r, height: 2 * r });

/** Share of a box that others cover, with a heavy charge for what leaves the plan. */
export function crowd(
  box: PlanBox,
  taken: readonly PlanBox[],
  plan: { readonly width: number; readonly height: number },
): number {
  let covered = 0;
  for (const t of taken) {
    const w = Math.min(box.x + box.width, t.x + t.width) - Math.max(box.x, t.x);
    const h = Math.min(box.y + box.height, t.y + t.height) - Math.max(box.y, t.y);
    if (w > 0 && h > 0) covered += (w * h) / (box.width * box.height);
  }
  const inside =
    box.x >= 9 && box.y >= 9 && box.x + box.width <= plan.width - 9 && box.y + box.height <= plan.height - 9;
  return covered + (inside ? 0 : 3);
}

const near = (p: PlanPoint, others: readonly PlanPoint[], reach: number): number =>
  others.some((o) => Math.hypot(o.x - p.x, o.y - p.y) < reach) ? 1 : 0;

/** The dotted signal path as points a few units apart. */
function pathPoints(receiver: Receiver): PlanPoint[] {
  const points: PlanPoint[] = [];
  for (const polyline of receiver.plan.path) {
    for (let i = 1; i < polyline.length; i++) {
      const a = polyline[i - 1]!;
      const b = polyline[i]!;
      const n = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / 6));
      for (let k = 0; k <= n; k++) points.push({ x: a.x + ((b.x - a.x) * k) / n, y: a.y + ((b.y - a.y) * k) / n });
    }
  }
  return points;
}
