/** Parts of a chassis seen from above, as SVG strings without lettering (that is set later, in the page's own faces). */
import { arc, C, hatch, pol, r1, rng, rr, shadow } from '../theme/ink.ts';

const METAL = '#f1ead9';

/** The pan with its folded rim. */
export function pan(w: number, h: number): string {
  return (
    shadow(0, 0, w, h, { s: 8 }) +
    `<path d="M0 0H${w}V${h}H0Z" fill="#efe6d0" stroke="${C.ink}" stroke-width="2"/>` +
    `<path d="${rr(7, 7, w - 14, h - 14, 2)}" fill="#f6f0e1" stroke="${C.ink}" stroke-width=".9"/>` +
    stroke(`M0 0l7 7M${w} 0l-7 7M0 ${h}l7 -7M${w} ${h}l-7 -7`, 1) +
    hatch(`M${w - 7} 7L${w} 0V${h}H0L7 ${h - 7}H${w - 7}Z`, [0, 0, w, h], { a: 45, gap: 3, sw: 0.7, op: 0.55 })
  );
}

/** The fenced corner: rust dashes and 135 degree hatching mean danger. */
export function cage(x: number, y: number, w: number, h: number): string {
  const d = `M${x} ${y}h${w}v${h}h${-w}Z`;
  return (
    `<path d="${d}" fill="${C.wash}" stroke="${C.rust}" stroke-width="1.8" stroke-dasharray="8 4"/>` +
    hatch(d, [x, y, w, h], { a: -45, gap: 7, sw: 0.7, op: 0.28, col: C.rust })
  );
}

/** The triangle with a bolt, its middle at (x, y), 34 x 29 and its stroke. */
export function liveSign(x: number, y: number, scale = 1, inks = LIVE_INKS): string {
  return (
    `<g transform="translate(${r1(x)} ${r1(y)}) scale(${scale})">` +
    `<path d="M0 -14.5l17 29h-34z" fill="${inks.ground}" stroke="${inks.edge}" stroke-width="2.4" stroke-linejoin="round"/>` +
    `<path d="M1 -6.5l-5 9.5h7l-4 9" fill="none" stroke="${inks.bolt}" stroke-width="2"/></g>`
  );
}

const LIVE_INKS = { ground: C.sheet as string, edge: C.rust as string, bolt: C.rustInk as string };

export function canBody(x: number, y: number, w: number, h: number): string {
  const r = x + w;
  const b = y + h;
  const cy = y + h / 2;
  return (
    shadow(x, y, w, h, { s: 6, gap: 2.7 }) +
    lugs(x, r, cy) +
    `<path d="${rr(x, y, w, h, 5)}" fill="${METAL}" stroke="${C.ink}" stroke-width="1.7"/>` +
    `<path d="${rr(x + 5, y + 5, w - 10, h - 10, 3)}" fill="${C.sheet}" stroke="${C.ink}" stroke-width=".8"/>` +
    stroke(
      `M${x + 1.5} ${y + 1.5}l4 4M${r - 1.5} ${y + 1.5}l-4 4M${x + 1.5} ${b - 1.5}l4 -4M${r - 1.5} ${b - 1.5}l-4 -4`,
      0.8,
    ) +
    hatch(`M${r - 5} ${y + 5}L${r} ${y}V${b}H${x}L${x + 5} ${b - 5}H${r - 5}Z`, [x, y, w, h], {
      a: 45,
      gap: 2.3,
      sw: 0.6,
      op: 0.6,
    })
  );
}

const lugs = (l: number, r: number, cy: number): string =>
  `<path d="M${l - 5} ${cy - 6}h7v12h-7zM${r - 2} ${cy - 6}h7v12h-7z" fill="${C.wash2}" stroke="${C.ink}" stroke-width="1"/>`;

export function trapBody(x: number, y: number, r: number): string {
  let s = shadeRound(x, y, r, 6) + disc(x, y, r, METAL, 1.6);
  for (let i = 0; i < 3; i++) {
    const [px, py] = pol(x, y, r + 1, i * 120 + 60);
    s += disc(px, py, 2.6, C.wash2, 1);
  }
  return s + disc(x, y, r - 4, C.sheet, 0.8) + stroke(arc(x, y, r - 6, 95, 175), 0.7);
}

/** A shielded can without a slug: a detector, a filter. */
export function plainCan(x: number, y: number): string {
  return (
    shadow(x - 25, y - 25, 50, 50, { s: 6, gap: 2.7 }) +
    `<path d="${rr(x - 25, y - 25, 50, 50, 5)}" fill="${METAL}" stroke="${C.ink}" stroke-width="1.6"/>` +
    `<path d="${rr(x - 20, y - 20, 40, 40, 3)}" fill="${C.sheet}" stroke="${C.ink}" stroke-width=".8"/>`
  );
}

export function valve(x: number, y: number): string {
  const r = 23;
  let s = shadeRound(x, y, r + 4, 6) + disc(x, y, r + 4, C.wash2, 1.3);
  for (let i = 0; i < 7; i++) {
    const [px, py] = pol(x, y, r + 1.2, i * 40 + 60);
    s += `<circle cx="${r1(px)}" cy="${r1(py)}" r="1.3" fill="${C.ink}"/>`;
  }
  s += disc(x, y, r - 2, C.sheet, 1.5);
  const [ax, ay] = pol(x, y, r - 5, 60);
  const [bx, by] = pol(x, y, r - 5, 215);
  s += hatch(
    `M${r1(ax)} ${r1(ay)}A${r - 5} ${r - 5} 0 0 1 ${r1(bx)} ${r1(by)}Q${r1(x + 4)} ${r1(y + 4)} ${r1(ax)} ${r1(ay)}Z`,
    [x - r, y - r, 2 * r, 2 * r],
    { a: 45, gap: 2.2, sw: 0.7, op: 0.75 },
  );
  return (
    s +
    stroke(arc(x, y, r - 5, -75, -15), 0.9) +
    `<rect x="${x - 11}" y="${y - 7.5}" width="22" height="15" fill="${C.sheet}"/>`
  );
}

export function electrolytic(x: number, y: number): string {
  return (
    shadeRound(x, y, 22, 6) +
    disc(x, y, 22, METAL, 1.6) +
    disc(x, y, 17, 'none', 0.8) +
    `<path d="M${x - 17} ${y}h34M${x} ${y - 17}v34" stroke="${C.ink}" stroke-width=".5" opacity=".5"/>` +
    `<rect x="${x - 13}" y="${y - 7}" width="26" height="14" fill="${METAL}"/>`
  );
}

export function transformer(x: number, y: number): string {
  const l = x - 44;
  const t = y - 38;
  let laminations = '';
  for (let i = 0; i < 11; i++) laminations += `M${l} ${r1(t + 5 + i * 6.6)}h88`;
  const bobbin = rr(x - 26, y - 25, 52, 50, 8);
  return (
    shadow(l, t, 88, 76, { s: 7 }) +
    `<path d="${rr(l, t, 88, 76, 2)}" fill="${METAL}" stroke="${C.ink}" stroke-width="1.7"/>` +
    `<path d="${laminations}" stroke="${C.ink}" stroke-width=".6" opacity=".7"/>` +
    `<path d="${bobbin}" fill="${C.hay}" stroke="${C.ink}" stroke-width="1.4"/>` +
    hatch(bobbin, [x - 26, y - 25, 52, 50], { a: 90, gap: 3, sw: 0.7, op: 0.6 })
  );
}

/** A paper label of the given half width, for lettering on a hatched ground. */
export const plate = (x: number, y: number, half: number, height = 18): string =>
  `<rect x="${r1(x - half)}" y="${r1(y - height / 2)}" width="${r1(2 * half)}" height="${r1(height)}" fill="${C.sheet}" stroke="${C.ink}" stroke-width=".8"/>`;

/** `rim`: how far in its folded edge lies; four screws where they leave room for the lettering. */
export function box(x: number, y: number, w: number, h: number, rim: number, screws: boolean): string {
  let s =
    shadow(x, y, w, h, { s: 6 }) +
    `<path d="${rr(x, y, w, h, 2)}" fill="${METAL}" stroke="${C.ink}" stroke-width="1.7"/>` +
    stroke(`M${x + rim} ${y + rim}h${w - 2 * rim}v${h - 2 * rim}h${-(w - 2 * rim)}Z`, 0.7);
  if (!screws) return s;
  for (const [a, b] of [
    [x + 12, y + 12],
    [x + w - 12, y + 12],
    [x + 12, y + h - 12],
    [x + w - 12, y + h - 12],
  ] as const)
    s += disc(a, b, 2.4, C.sheet, 0.9) + stroke(`M${a - 1.6} ${b - 1.6}l3.2 3.2`, 0.8);
  return s;
}

export function resistor(x: number, y: number, upright: boolean): string {
  return (
    `<g transform="translate(${x} ${y})${upright ? ' rotate(90)' : ''}">${stroke('M-19 0H19', 1)}` +
    `<rect x="-11" y="-4.5" width="22" height="9" rx="3" fill="${C.wash2}" stroke="${C.ink}" stroke-width="1.1"/>` +
    `${stroke('M-11 2.4H11', 0.6)}</g>`
  );
}

export const testPoint = (x: number, y: number): string =>
  `${disc(x, y, 7, C.sheet, 1.4)}<circle cx="${x}" cy="${y}" r="2.6" fill="${C.ink}"/>`;

/** Dotted petrol line with an arrowhead on each long stretch; corners are rounded. */
export function signalPath(points: readonly { readonly x: number; readonly y: number }[]): string {
  const first = points[0];
  if (first === undefined || points.length < 2) return '';
  let d = `M${first.x} ${first.y}`;
  let heads = '';
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1]!;
    const b = points[i]!;
    const c = points[i + 1];
    const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
    const ux = (b.x - a.x) / length;
    const uy = (b.y - a.y) / length;
    if (c === undefined) d += `L${b.x} ${b.y}`;
    else {
      const next = Math.hypot(c.x - b.x, c.y - b.y) || 1;
      const r = Math.min(34, length / 2, next / 2);
      d += `L${r1(b.x - ux * r)} ${r1(b.y - uy * r)}Q${b.x} ${b.y} ${r1(b.x + ((c.x - b.x) / next) * r)} ${r1(b.y + ((c.y - b.y) / next) * r)}`;
    }
    if (length >= 60) heads += arrow(a.x + ux * length * 0.5, a.y + uy * length * 0.5, ux, uy);
  }
  return (
    `<path d="${d}" fill="none" stroke="${C.petrol}" stroke-width="1.8" stroke-dasharray="1.5 5" stroke-linecap="round"/>` +
    `<path d="${heads}" fill="${C.petrol}"/>`
  );
}

const arrow = (x: number, y: number, ux: number, uy: number): string =>
  `M${r1(x - ux * 4 - uy * 5)} ${r1(y - uy * 4 + ux * 5)}L${r1(x + ux * 4)} ${r1(y + uy * 4)}L${r1(x - ux * 4 + uy * 5)} ${r1(y - uy * 4 - ux * 5)}Z`;

/** Engraved cast shade of a round part: strokes at the lower right. */
function shadeRound(x: number, y: number, r: number, depth: number): string {
  const n = Math.round(r * 0.9);
  const chance = rng(Math.round(x * 3 + y));
  let d = '';
  for (let i = 0; i < n; i++) {
    const [px, py] = pol(x, y, r, 85 + (i / (n - 1)) * 100);
    const k = depth * (0.35 + 0.75 * Math.sin((i / (n - 1)) * Math.PI)) * (0.7 + 0.2 * chance());
    d += `M${r1(px)} ${r1(py)}l${r1(k)} ${r1(k)}`;
  }
  return `<path d="${d}" stroke="${C.ink}" stroke-width=".8" opacity=".7"/>`;
}

const disc = (x: number, y: number, r: number, fill: string, sw: number): string =>
  `<circle cx="${r1(x)}" cy="${r1(y)}" r="${r1(r)}" fill="${fill}" stroke="${C.ink}" stroke-width="${sw}"/>`;

const stroke = (d: string, sw: number): string => `<path d="${d}" fill="none" stroke="${C.ink}" stroke-width="${sw}"/>`;
