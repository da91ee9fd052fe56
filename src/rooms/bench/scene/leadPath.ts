/**
 * The way of a lead over the bench as plain geometry: from its jack along the gully to the handle of its tip, corners rounded,
 * flattened to a polyline whose points are evenly spaced, so that weaves and the swing of a settling lead are simple sums.
 * CSS pixels; y grows downwards; directions in degrees, 0 = right, 90 = down.
 */

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** x, y pairs. */
export type Polyline = Float64Array;

export interface LeadRoute {
  readonly jack: Spot;
  /** the way the plug sticks out, degrees */
  readonly jackDegrees: number;
  /** the upright lane in the gully that the lead climbs; null: straight across */
  readonly laneX: number | null;
  /** the very end of the tip */
  readonly tip: Spot;
  /** from the tip back along its handle, degrees */
  readonly tipDegrees: number;
  readonly tipLength: number;
  /** height at which the lead leaves its lane, against the handle's end; lets it pass above or below what stands in the way */
  readonly leaveDy: number;
  /** points between lane and handle, where a lead must find its way past something */
  readonly via?: readonly Spot[];
}

const SPACING = 4;
const PLUG = 18;
const CORNER = 30;

/** From the plug's end to the handle's end. */
export function leadPolyline(route: LeadRoute): Polyline {
  return flatten(wayPoints(route), CORNER);
}

export function handleEnd(route: Pick<LeadRoute, 'tip' | 'tipDegrees' | 'tipLength'>): Spot {
  return step(route.tip, route.tipDegrees, route.tipLength);
}

export const step = (from: Spot, degrees: number, length: number): Spot => ({
  x: from.x + Math.cos((degrees * Math.PI) / 180) * length,
  y: from.y + Math.sin((degrees * Math.PI) / 180) * length,
});

function wayPoints(route: LeadRoute): Spot[] {
  const { jack, jackDegrees, laneX } = route;
  const start = step(jack, jackDegrees, jackDegrees === -90 ? 0 : PLUG);
  const end = handleEnd(route);
  const before = step(end, route.tipDegrees, 12);
  if (laneX === null) return [start, step(start, jackDegrees, 12), before, end];
  const leaveY = before.y + route.leaveDy;
  const points: Spot[] = [start];
  // A lead that leaves its jack sideways first reaches its lane; one that comes up from behind the shelf is in it already.
  if (Math.abs(start.x - laneX) > 1) points.push({ x: laneX, y: start.y });
  points.push(...(route.via ?? [{ x: laneX, y: leaveY }]), before, end);
  return points;
}

/** Rounds the corners of a polyline and gives points about 4 px apart. */
function flatten(points: readonly Spot[], corner: number): Polyline {
  const raw: number[] = [];
  const push = (x: number, y: number): void => {
    raw.push(x, y);
  };
  const first = points[0]!;
  push(first.x, first.y);
  for (let i = 1; i < points.length; i++) {
    const b = points[i]!;
    const c = points[i + 1];
    if (c === undefined) {
      push(b.x, b.y);
      break;
    }
    const a = points[i - 1]!;
    const inLength = Math.hypot(b.x - a.x, b.y - a.y);
    const outLength = Math.hypot(c.x - b.x, c.y - b.y);
    // The two legs of a corner may differ: beside a jack there is little room across, but plenty along the gully.
    const rIn = Math.min(corner, i === 1 ? inLength : inLength / 2);
    const rOut = Math.min(corner, i === points.length - 2 ? outLength : outLength / 2);
    if (rIn < 0.5 || rOut < 0.5) {
      push(b.x, b.y);
      continue;
    }
    const p = { x: b.x - ((b.x - a.x) / inLength) * rIn, y: b.y - ((b.y - a.y) / inLength) * rIn };
    const q = { x: b.x + ((c.x - b.x) / outLength) * rOut, y: b.y + ((c.y - b.y) / outLength) * rOut };
    for (let k = 0; k <= 8; k++) {
      const t = k / 8;
      const u = 1 - t;
      push(u * u * p.x + 2 * u * t * b.x + t * t * q.x, u * u * p.y + 2 * u * t * b.y + t * t * q.y);
    }
  }
  return evenly(raw, SPACING);
}

export function lengthOf(line: ArrayLike<number>): number {
  let total = 0;
  for (let i = 2; i < line.length; i += 2) total += Math.hypot(line[i]! - line[i - 2]!, line[i + 1]! - line[i - 1]!);
  return total;
}

function evenly(raw: readonly number[], spacing: number): Polyline {
  const total = lengthOf(raw);
  const n = Math.max(2, Math.round(total / spacing) + 1);
  const out = new Float64Array(2 * n);
  let i = 0;
  let done = 0;
  let piece = Math.hypot(raw[2]! - raw[0]!, raw[3]! - raw[1]!);
  for (let k = 0; k < n; k++) {
    const at = (total * k) / (n - 1);
    while (at > done + piece + 1e-9 && i + 4 < raw.length) {
      done += piece;
      i += 2;
      piece = Math.hypot(raw[i + 2]! - raw[i]!, raw[i + 3]! - raw[i + 1]!);
    }
    const t = piece === 0 ? 0 : Math.min(1, (at - done) / piece);
    out[2 * k] = raw[i]! + (raw[i + 2]! - raw[i]!) * t;
    out[2 * k + 1] = raw[i + 1]! + (raw[i + 3]! - raw[i + 1]!) * t;
  }
  return out;
}

/** Pieces of a polyline for a weave: `on` px drawn, `off` px left out. The pieces keep the polyline's own corners. */
export function dashes(line: Polyline, on: number, off: number): number[][] {
  const pieces: number[][] = [];
  let drawn: number[] | null = null;
  let left = on;
  let drawing = true;
  for (let i = 2; i < line.length; i += 2) {
    let ax = line[i - 2]!;
    let ay = line[i - 1]!;
    const bx = line[i]!;
    const by = line[i + 1]!;
    let length = Math.hypot(bx - ax, by - ay);
    while (length > 1e-9) {
      const take = Math.min(left, length);
      const nx = ax + ((bx - ax) * take) / length;
      const ny = ay + ((by - ay) * take) / length;
      if (drawing) {
        if (drawn === null) {
          drawn = [ax, ay];
          pieces.push(drawn);
        }
        drawn.push(nx, ny);
      }
      ax = nx;
      ay = ny;
      length -= take;
      left -= take;
      if (left <= 1e-9) {
        drawing = !drawing;
        left = drawing ? on : off;
        drawn = null;
      }
    }
  }
  return pieces;
}

/** How far, of a settling lead's 260 ms, its middle hangs off its place: one small swing and rest. `t` from 0 to 1. */
export function swing(t: number): number {
  if (t <= 0 || t >= 1) return 0;
  return Math.sin(2 * Math.PI * t) * (1 - t) ** 1.5;
}

/** The polyline bent by `px` at its middle, ends fixed. */
export function bent(line: Polyline, px: number): Polyline {
  if (px === 0) return line;
  const out = Float64Array.from(line);
  const n = line.length / 2;
  for (let k = 0; k < n; k++) {
    const hang = Math.sin((Math.PI * k) / (n - 1)) * px;
    out[2 * k] = out[2 * k]! + hang * 0.6;
    out[2 * k + 1] = out[2 * k + 1]! + hang * 0.8;
  }
  return out;
}
