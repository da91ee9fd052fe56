/**
 * Where every lead lies: ends on their points with the handle turned so that slugs, letters and names stay in sight, loose ends beside
 * their jacks (full form) or sticking up behind the shelf's edge (the other forms). Pure; page pixels.
 */

import type { BenchState, LeadEnd, LeadId } from '../../../bench/benchState.ts';
import { TUBE_X } from '../../../bench/benchState.ts';
import type { Rect } from '../../../kit/px.ts';
import { chassisPlaces, textBox } from '../../../present/chassisPlaces.ts';
import type { Receiver } from '../../../receiver/receiver.ts';
import type { BenchLayout, Jack } from '../layout.ts';
import { GRIP_AT, LEADS, type LeadKind, type LeadTip, TIP_LENGTH, tipOf } from './leadKinds.ts';
import { handleEnd, type LeadRoute, leadPolyline, type Polyline, type Spot, step } from './leadPath.ts';

export interface LeadPlace {
  readonly kind: LeadKind;
  readonly tip: LeadTip;
  readonly end: LeadEnd | null;
  readonly route: LeadRoute;
  readonly line: Polyline;
  /** middle of what a hand takes hold of */
  readonly grip: Spot;
}

interface Obstacle extends Spot {
  readonly r: number;
  readonly weight: number;
}

/** What of layout and receiver the leads need; made once for both. */
export interface LeadGround {
  readonly layout: BenchLayout;
  readonly ends: ReadonlyMap<LeadEnd, Spot>;
  /** where the names of the points stand */
  readonly labels: ReadonlyMap<LeadEnd, Rect>;
  readonly obstacles: readonly Obstacle[];
}

export function leadGround(layout: BenchLayout, receiver: Receiver): LeadGround {
  const { x, y, scale } = layout.chassis;
  const at = (p: Spot): Spot => ({ x: x + p.x * scale, y: y + p.y * scale });
  const ends = new Map<LeadEnd, Spot>(receiver.testPoints.map((p) => [p.id, at(p.plan)]));
  ends.set(TUBE_X, layout.jacks.xIn);
  const places = chassisPlaces(receiver, scale);
  const labels = new Map<LeadEnd, Rect>([[TUBE_X, besideJack(layout.jacks.xIn)]]);
  const obstacles: Obstacle[] = [];
  for (const slug of places.slugs) {
    obstacles.push({ ...at(slug.hole), r: 13 * scale + 6, weight: 3 });
    obstacles.push({ ...at(slug.disc), r: 10 * scale + 4, weight: 2 });
  }
  for (const point of places.points) {
    obstacles.push({ ...at(point.at), r: 8, weight: 1 });
    const box = textBox(point.label, point.id, places.textSize);
    labels.set(point.id, { ...at(box), width: box.width * scale, height: box.height * scale });
    const n = Math.max(2, Math.round(box.width / 10));
    for (let i = 0; i <= n; i++)
      obstacles.push({ ...at({ x: box.x + (box.width * i) / n, y: box.y + box.height / 2 }), r: 8, weight: 1.2 });
  }
  return { layout, ends, labels, obstacles };
}

/** Where the name of a jack stands, as wide as the style lets it be. */
function besideJack({ x, y, side }: Jack): Rect {
  const [near, width, height] = [15, 46, 16];
  const left = side === 'right' ? x - near - width : x + near;
  return { x: left, y: y - height / 2, width, height };
}

export function placeLeads(ground: LeadGround, state: Pick<BenchState, 'leads' | 'controls'>): LeadPlace[] {
  const lying: Obstacle[] = [];
  // What has only one way to lie comes first: the rest keep their grips clear of it.
  const grips = LEADS.flatMap((kind) => {
    const tip = tipOf(kind.id, state.controls);
    const route = onlyRoute(ground, kind.id, tip, state.leads[kind.id]);
    return route === null ? [] : [gripOf(route, tip)];
  });
  return LEADS.map((kind) => {
    const tip = tipOf(kind.id, state.controls);
    const end = state.leads[kind.id];
    const only = onlyRoute(ground, kind.id, tip, end);
    const route = only ?? bestRoute(ground, kind.id, tip, ground.ends.get(end!)!, lying, grips);
    const place = placed(kind, tip, end, route);
    if (only === null) grips.push(place.grip);
    for (let d = 0; d <= TIP_LENGTH[tip]; d += 8)
      lying.push({ ...step(route.tip, route.tipDegrees, d), r: 10, weight: 2 });
    return place;
  });
}

/** The way of a loose lead or of the one to the tube; null for a lead on a point of the chassis, which may lie in many ways. */
function onlyRoute(ground: LeadGround, lead: LeadId, tip: LeadTip, end: LeadEnd | null): LeadRoute | null {
  const at = end === null ? undefined : ground.ends.get(end);
  if (at === undefined) return looseRoute(ground.layout, lead, tip);
  return end === TUBE_X ? tubeRoute(ground.layout, at, tip) : null;
}

function gripOf(route: LeadRoute, tip: LeadTip): Spot {
  return step(route.tip, route.tipDegrees, GRIP_AT[tip]);
}

/** A lead held by its grip at `hand`. */
export function carriedLead(ground: LeadGround, lead: LeadId, tip: LeadTip, hand: Spot): LeadPlace {
  return shownOn(ground, lead, tip, step(hand, CARRIED_DEGREES, -GRIP_AT[tip]));
}

/** A lead tried on a point, before it is put down there. */
export function shownOn(ground: LeadGround, lead: LeadId, tip: LeadTip, at: Spot): LeadPlace {
  const kind = LEADS.find((k) => k.id === lead)!;
  return placed(kind, tip, null, plain(ground.layout, kind.id, tip, at, CARRIED_DEGREES));
}

const CARRIED_DEGREES = 168;

function placed(kind: LeadKind, tip: LeadTip, end: LeadEnd | null, route: LeadRoute): LeadPlace {
  return { kind, tip, end, route, line: leadPolyline(route), grip: gripOf(route, tip) };
}

const ANGLES = [168, 178, 158, 188, 148, 198, 138, 210, 125, 225, 110, 245, 90, 270];
const LEAVES = [6, 24, -20, 44, -40, 70, -64, 100, -92, 140, -130];

/** Grips that are nearer than this both across and down leave less of each other than the least target (24 px: WCAG 2.2, 2.5.8, from memory). */
const GRIP_APART = 24.5;

function bestRoute(
  ground: LeadGround,
  lead: LeadId,
  tip: LeadTip,
  at: Spot,
  lying: readonly Obstacle[],
  grips: readonly Spot[],
): LeadRoute {
  const obstacles = [...ground.obstacles, ...lying].filter((o) => Math.hypot(o.x - at.x, o.y - at.y) > 7);
  const lowest = ground.layout.shelf === null ? ground.layout.page.height : ground.layout.shelf.y - 8;
  let best: LeadRoute | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const degrees of ANGLES) {
    const straight = plain(ground.layout, lead, tip, at, degrees);
    const grip = step(at, degrees, GRIP_AT[tip]);
    const tooNear = grips.filter(
      (other) => Math.max(Math.abs(grip.x - other.x), Math.abs(grip.y - other.y)) < GRIP_APART,
    ).length;
    for (const leaveDy of LEAVES) {
      const route = { ...straight, leaveDy };
      const before = step(handleEnd(route), degrees, 12);
      if (before.y + leaveDy > lowest || (straight.laneX === null && leaveDy !== LEAVES[0])) continue;
      const cost =
        40 * tooNear +
        Math.abs(degrees - 168) / 20 +
        Math.abs(leaveDy - 6) / 40 +
        hits(route, obstacles, ground.layout.chassis.x);
      if (cost < least) {
        least = cost;
        best = route;
      }
    }
  }
  return best ?? plain(ground.layout, lead, tip, at, 168);
}

/** How much of what should stay in sight the lead and its tip lie on. */
function hits(route: LeadRoute, obstacles: readonly Obstacle[], chassisX: number): number {
  let sum = 0;
  const count = (x: number, y: number, half: number): void => {
    for (const o of obstacles) {
      const gap = Math.hypot(o.x - x, o.y - y) - o.r - half;
      if (gap < 0) sum += o.weight * Math.min(1, -gap / 6);
    }
  };
  for (let d = 4; d <= route.tipLength; d += 6) {
    const p = step(route.tip, route.tipDegrees, d);
    count(p.x, p.y, 5);
  }
  const line = leadPolyline(route);
  for (let i = 0; i < line.length; i += 4) if (line[i]! > chassisX - 4) count(line[i]!, line[i + 1]!, 3);
  return sum;
}

/** The direct way from a lead's jack to a tip at `at`. */
function plain(layout: BenchLayout, lead: LeadId, tip: LeadTip, at: Spot, tipDegrees: number): LeadRoute {
  const { jack, jackDegrees } = jackOf(layout, lead);
  const route = { jack, jackDegrees, tip: at, tipDegrees, tipLength: TIP_LENGTH[tip], leaveDy: 6 };
  const level = Math.abs(handleEnd(route).y - jack.y) < 60 && jackDegrees === 0;
  return { ...route, laneX: level ? null : laneOf(layout, lead, jack) };
}

/** Across the gully of the full form, counted from the panels' edge. */
const FULL_LANES: Readonly<Record<LeadId, number>> = {
  x: 17,
  biasA: 21,
  meter: 12,
  biasB: 24,
  y: 25,
  rf: 28,
  earth: 33,
};

function laneOf(layout: BenchLayout, lead: LeadId, jack: Jack): number {
  if (jack.hidden) return jack.x;
  if (layout.form === 'upright') return jack.x - 9;
  if (layout.form === 'shelf') return jack.x + (lead === 'y' ? 22 : 17);
  return layout.jacks.rf.x + FULL_LANES[lead];
}

function jackOf(layout: BenchLayout, lead: LeadId): { jack: Jack; jackDegrees: number } {
  const jack = layout.jacks[LEADS.find((k) => k.id === lead)!.jack];
  return { jack, jackDegrees: plugDegrees(layout, jack) };
}

/** Which way a plug sticks out; in the upright form there is no room to the left of the tube, so it hangs down. */
function plugDegrees(layout: BenchLayout, jack: Jack): number {
  if (jack.side === 'top') return -90;
  if (jack.side === 'bottom') return 90;
  if (jack.side === 'right') return 0;
  return layout.form === 'upright' ? 90 : 180;
}

function tubeRoute(layout: BenchLayout, at: Spot, tip: LeadTip): LeadRoute {
  const { jack, jackDegrees } = jackOf(layout, 'x');
  const tipDegrees = plugDegrees(layout, layout.jacks.xIn);
  const route = { jack, jackDegrees, laneX: jack.x, tip: at, tipDegrees, tipLength: TIP_LENGTH[tip] + 3, leaveDy: 26 };
  if (layout.form === 'full') return { ...route, laneX: layout.jacks.rf.x + FULL_LANES.x };
  if (layout.form === 'shelf') return route;
  // Upright, the Y jack lies on the way.
  const y = layout.jacks.y.y;
  const past = at.x + 11;
  return {
    ...route,
    via: [
      { x: jack.x, y: y + 74 },
      { x: past, y: y + 44 },
      { x: past, y: at.y + 44 },
    ],
  };
}

const TRAY_ORDER: readonly LeadId[] = ['x', 'rf', 'biasA', 'biasB', 'meter', 'earth'];
/** kept free at the right end of the tray for the button that opens the list of leads */
export const TRAY_BUTTON = 76;

function looseRoute(layout: BenchLayout, lead: LeadId, tip: LeadTip): LeadRoute {
  const { jack, jackDegrees } = jackOf(layout, lead);
  const tipLength = TIP_LENGTH[tip];
  if (jack.hidden) {
    const tray = layout.leadTray;
    const pitch = (tray.width - TRAY_BUTTON) / TRAY_ORDER.length;
    const x = tray.x + pitch * TRAY_ORDER.indexOf(lead) + 8;
    const handle = { x, y: jack.y - 5 };
    return {
      jack: { x: x - 6, y: jack.y + 4 },
      jackDegrees,
      laneX: null,
      tip: step(handle, -30, tipLength),
      tipDegrees: 150,
      tipLength,
      leaveDy: 0,
    };
  }
  const hook = (x: number, dy: number, tipDegrees: number): LeadRoute => ({
    jack,
    jackDegrees,
    laneX: null,
    tip: { x, y: jack.y + dy - Math.sin((tipDegrees * Math.PI) / 180) * tipLength },
    tipDegrees,
    tipLength,
    leaveDy: 0,
  });
  if (layout.form === 'upright') return hook(jack.x - 10, 34, -90);
  if (layout.form === 'shelf') return hook(jack.x + 26, 22, -90);
  return fullLoose(layout, lead, jack, hook);
}

/** The gully is seen from above like the rest: ends lie there pointing up or down, wherever there is a gap beside their jack. */
function fullLoose(
  layout: BenchLayout,
  lead: LeadId,
  jack: Jack,
  hook: (x: number, dy: number, tipDegrees: number) => LeadRoute,
): LeadRoute {
  const edge = layout.jacks.rf.x;
  // Two columns of ends with a lane between them.
  const [left, lane, right] = [edge + 7, edge + 19, edge + 31];
  const under = layout.jacks.earth.y - jack.y + 11;
  switch (lead) {
    case 'y':
    case 'rf':
      return hook(right, -18, 90);
    case 'x':
      return hook(right, 16, -90);
    case 'earth':
      return hook(right, 18, -90);
    case 'biasA':
      return hook(right, -17, 90);
    case 'biasB':
      return { ...hook(left, layout.jacks.biasA.y - jack.y - 7, 90), laneX: left, leaveDy: 12 };
    case 'meter':
      return { ...hook(left, under + TIP_LENGTH.probe, 90), laneX: lane, leaveDy: 10 };
  }
}
