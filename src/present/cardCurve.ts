/** The curve on a card as drawn lines in a box of its own: wide as the band that is worth showing, and high enough for whatever stands highest and lowest. */
import { bandOf, type Curve, within } from './curves.ts';

/** Width and height of the box, in its own units; y counts downwards. */
export const CARD_BOX = 1000;

export interface CardCurve {
  /** SVG paths of whole numbers: one absolute move, then relative lines, from the left edge of the box to the right */
  readonly found: string;
  readonly wanted: string;
  /** y of the line that stands for no signal */
  readonly zero: number;
}

type Point = readonly [x: number, y: number];

/** Points further than this from the line that would leave them out are kept: less than a quarter of a pixel on most cards. */
const KEPT_FROM = 1;

export function drawCardCurve(found: Curve, wanted: Curve): CardCurve {
  const [fromHz, toHz] = bandOf([found, wanted]);
  const lines = [found, wanted].map((curve) => within(curve, fromHz, toHz));
  const levels = lines.flatMap((line) => line.map(([, level]) => level));
  const low = Math.min(0, ...levels);
  // A set that gives nothing at all still has a line to draw.
  const high = Math.max(...levels) > low ? Math.max(0, ...levels) : low + 1;
  const Y = (level: number): number => Math.round(((high - level) / (high - low)) * CARD_BOX);
  const X = (hz: number): number => Math.round(((hz - fromHz) / (toHz - fromHz)) * CARD_BOX);
  const [foundPath, wantedPath] = lines.map((line) => path(thinned(line.map(([hz, level]) => [X(hz), Y(level)]))));
  return { found: foundPath!, wanted: wantedPath!, zero: Y(0) };
}

/** A path of the box at another size. */
export function scaledPath(path: string, width: number, height: number): string {
  const tenth = (units: number, size: number): number => Math.round((units / CARD_BOX) * size * 10) / 10;
  return path.replace(/(-?\d+) ?(-?\d+)/g, (_, x: string, y: string) => {
    return `${tenth(Number(x), width)} ${tenth(Number(y), height)}`;
  });
}

function path(points: readonly Point[]): string {
  const [first, ...rest] = points;
  let [x, y] = first!;
  let d = `M${x} ${y}l`;
  for (const [toX, toY] of rest) {
    const dy = toY - y;
    d += `${d.endsWith('l') ? '' : ' '}${toX - x}${dy < 0 ? '' : ' '}${dy}`;
    [x, y] = [toX, toY];
  }
  return d;
}

/** Leaves out what lies on the way (Douglas and Peucker's rule, from memory): the ends stay, and whichever point lies furthest from the line between them. */
function thinned(points: readonly Point[]): readonly Point[] {
  const kept = new Set([0, points.length - 1]);
  const spans: (readonly [number, number])[] = [[0, points.length - 1]];
  for (let span = spans.pop(); span !== undefined; span = spans.pop()) {
    const [from, to] = span;
    let furthest = from;
    let most = KEPT_FROM;
    for (let i = from + 1; i < to; i++) {
      const away = distance(points[i]!, points[from]!, points[to]!);
      if (away > most) [furthest, most] = [i, away];
    }
    if (furthest === from) continue;
    kept.add(furthest);
    spans.push([from, furthest], [furthest, to]);
  }
  return points.filter((_, i) => kept.has(i));
}

function distance([x, y]: Point, [x1, y1]: Point, [x2, y2]: Point): number {
  const length = Math.hypot(x2 - x1, y2 - y1);
  if (length === 0) return Math.hypot(x - x1, y - y1);
  return Math.abs((x2 - x1) * (y1 - y) - (x1 - x) * (y2 - y1)) / length;
}
