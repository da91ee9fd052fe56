/** Drawings of slugs as SVG strings: the hole on the pan, the magnified ring with its turning parts, the section through the coil. */
import type { ToolId } from '../../../bench/benchState.ts';
import { bar, hexagon } from '../../../kit/chassis/slugHole.ts';
import { arc, C, hatch, pol, r1, T } from '../../../kit/theme/ink.ts';
import type { ToolHead } from '../../../receiver/receiver.ts';

const CORE = '#77807f';
export const TOOL_COLOUR: Readonly<Record<ToolId, string>> = { hex: C.petrol, blade: C.brass, steel: '#7a8790' };

const circle = (r: number): string => `M${-r} 0a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`;

export const holeCrack = (r: number): string =>
  `<path d="M${r1(-r * 0.2)} ${r1(-r * 1.3)}L${r1(r * 0.25)} ${r1(-r * 0.45)}L${r1(-r * 0.3)} ${r1(r * 0.2)}L${r1(r * 0.2)} ${r1(r * 1.3)}" fill="none" stroke="${C.rust}" stroke-width="2.2" stroke-linejoin="round"/>`;

/** The tool's end in a hole on the chassis. */
export const holeTool = (r: number): string =>
  `<circle r="${r * 0.5}" fill="${C.petrol}" stroke="${C.paper}" stroke-width=".9"/>`;

/** How far a head on the chassis stands round, degrees. */
export const headDegrees = (turns: number): number => Math.round(turns * 3600) / 10;

/** The ring that stands still: shade, scale in eighths, the track of the arc. Middle at the origin. */
export function ringFace(R: number): string {
  let small = '';
  let large = '';
  for (let i = 0; i < 64; i++) {
    const degrees = (i * 360) / 64;
    const [x0, y0] = pol(0, 0, R - 4, degrees);
    const [x1, y1] = pol(0, 0, R - (i % 8 === 0 ? 13 : i % 4 === 0 ? 9.5 : 7.5), degrees);
    const d = `M${r1(x0)} ${r1(y0)}L${r1(x1)} ${r1(y1)}`;
    if (i % 8 === 0) large += d;
    else small += d;
  }
  let s =
    `<circle cx="4" cy="5" r="${R}" fill="${C.ink}" opacity=".14"/><circle r="${R}" fill="${C.sheet}" stroke="${C.ink}" stroke-width="2.2"/>` +
    `<path d="${small}" stroke="${C.ink}" stroke-width=".8"/><path d="${large}" stroke="${C.ink}" stroke-width="1.7"/>`;
  for (let i = 0; i < 8; i += 2) {
    const [x, y] = pol(0, 0, R - 22, i * 45);
    s += T(x, y + 4.5, i, 'ls', { anchor: 'middle', weight: 600, size: 14 });
  }
  const r0 = formerRadius(R);
  s += `<circle r="${R - 31}" fill="none" stroke="${C.ink}" stroke-width=".8"/><circle r="${r1(r0)}" fill="#e9dcc0" stroke="${C.ink}" stroke-width="1.6"/>`;
  for (let i = 0; i < (R < 66 ? 2 : 3); i++)
    s += `<path d="${arc(0, 0, r1(r0 - 2.6 - i * 2.4), 70 + i * 8, 205 - i * 8)}" fill="none" stroke="${C.ink}" stroke-width=".8" opacity=".8"/>`;
  return s;
}

/** The rust arc as a circle whose dashes are set while turning; 0 at the top, clockwise. */
export const ringArcRadius = (R: number): number => R - 31;

/** The core from above; turns as one piece. Cracked and worn marks belong to it. */
export function core(R: number, head: ToolHead, cracked: boolean, wear: number): string {
  const r = coreRadius(R);
  const disc = circle(r1(r));
  let s =
    `<circle r="${r1(r)}" fill="${CORE}" stroke="${C.ink}" stroke-width="1.6"/>` +
    hatch(disc, [-r, -r, 2 * r, 2 * r], { a: 45, gap: 3.2, sw: 0.9, op: 0.65 }) +
    hatch(disc, [-r, -r, 2 * r, 2 * r], { a: -45, gap: 4.4, sw: 0.6, op: 0.5 });
  const slot = head === 'hex' ? hexagon(0, 0, r * 0.62) : bar(r1(r * 0.86), r1(r * 0.16));
  s += `<path d="${slot}" fill="${C.ink}" stroke="${C.paper}" stroke-width="1"/>`;
  if (wear > 0.02) s += scratches(r, wear);
  s += `<path d="M0 ${r1(-(r - 3))}V${r1(-(R - 27))}" stroke="${C.rust}" stroke-width="2.4"/>`;
  if (cracked)
    s += `<path d="M${r1(-r * 0.35)} ${r1(-r)}L${r1(r * 0.1)} ${r1(-r * 0.4)}L${r1(-r * 0.25)} ${r1(r * 0.1)}L${r1(r * 0.2)} ${r1(r * 0.5)}L${r1(r * 0.05)} ${r1(r)}" fill="none" stroke="${C.sheet}" stroke-width="5" stroke-linejoin="round"/><path d="M${r1(-r * 0.35)} ${r1(-r)}L${r1(r * 0.1)} ${r1(-r * 0.4)}L${r1(-r * 0.25)} ${r1(r * 0.1)}L${r1(r * 0.2)} ${r1(r * 0.5)}L${r1(r * 0.05)} ${r1(r)}" fill="none" stroke="${C.rust}" stroke-width="2.8" stroke-linejoin="round"/>`;
  return s;
}

/** The tool's end, seen along its shaft; turns with the hand. */
export function toolEnd(R: number, tool: ToolId): string {
  const r = coreRadius(R);
  if (tool === 'hex')
    return `<path d="${hexagon(0, 0, r * 0.5)}" fill="${C.petrol}" stroke="${C.paper}" stroke-width="1.1"/><circle r="${r1(r * 0.22)}" fill="${C.paper}" stroke="${C.ink}" stroke-width="1"/>`;
  return `<circle r="${r1(r * 0.44)}" fill="${C.sheet}" stroke="${C.ink}" stroke-width="1.1"/><path d="${bar(r1(r * 0.74), r1(r * 0.12))}" fill="${TOOL_COLOUR[tool]}" stroke="${C.paper}" stroke-width="1"/><circle r="${r1(r * 0.14)}" fill="${C.paper}" stroke="${C.ink}" stroke-width="1"/>`;
}

const formerRadius = (R: number): number => (R < 66 ? R - 34 : R - 38);
export const coreRadius = (R: number): number => formerRadius(R) - (R < 66 ? 7 : 11);

/** Bright bites at the edge of the slot; more of them, the more it is worn. */
function scratches(r: number, wear: number): string {
  let d = '';
  const n = Math.ceil(wear * 10);
  for (let i = 0; i < n; i++) {
    const degrees = i * 137.5;
    const [x, y] = pol(0, 0, r * (0.5 + 0.3 * ((i * 0.618) % 1)), degrees);
    const [ex, ey] = pol(x, y, r * 0.2, degrees + 60);
    d += `M${r1(x)} ${r1(y)}L${r1(ex)} ${r1(ey)}`;
  }
  return `<path d="${d}" stroke="${C.sheet}" stroke-width="1.3" stroke-linecap="round"/>`;
}

export interface SectionArt {
  /** former, windings, depth scale */
  readonly still: string;
  /** core and pointer with their top at y = 0; moved down by depth */
  readonly moving: string;
  /** tool above the core, tip at y = 0 of the moving part */
  readonly tool: string;
  /** how far the core's top travels, px, and where it starts */
  readonly from: number;
  readonly way: number;
}

/** Section through the coil in a box of w x h: how deep the core sits and how much thread is left. */
export function section(w: number, h: number, toolKind: ToolId | null): SectionArt {
  const middle = w / 2;
  const fx = middle - 13;
  const fw = 26;
  const long = h * 0.34;
  const from = 6;
  const way = h - 12 - long;
  const walls = `M${fx} 0V${h}M${fx + fw} 0V${h}`;
  let still = `<path d="${walls}" stroke="${C.ink}" stroke-width="3.4"/><path d="${walls}" stroke="${C.wash2}" stroke-width="1.4"/>`;
  const pitch = Math.min(8.2, (h * 0.58) / 7);
  for (let i = 0; i < 7; i++) {
    const y = h * 0.36 + i * pitch;
    for (const x of [fx - 7, fx + fw + 7])
      still += `<circle cx="${x}" cy="${r1(y)}" r="${r1(Math.min(3.9, pitch / 2 - 0.2))}" fill="${C.brass}" stroke="${C.ink}" stroke-width="1"/><path d="M${x - 2} ${r1(y + 1.6)}l3.4 -3.4" stroke="${C.ink}" stroke-width=".6"/>`;
  }
  let ticks = '';
  for (let i = 0; i <= 10; i++) ticks += `M${w + 9} ${r1(from + long / 2 + (way * i) / 10)}h${i % 5 === 0 ? 7 : 4}`;
  still += `<path d="${ticks}M${w + 9} ${r1(from + long / 2)}V${r1(from + way + long / 2)}" stroke="${C.ink}" stroke-width="1" fill="none"/>`;
  const teeth = 9;
  let d = `M${fx + 3} 0`;
  for (let i = 0; i < teeth; i++) d += `l${i % 2 ? -1.6 : 1.6} ${r1(long / teeth)}`;
  d += `H${fx + fw - 3}`;
  for (let i = 0; i < teeth; i++) d += `l${i % 2 ? -1.6 : 1.6} ${r1(-long / teeth)}`;
  d += 'Z';
  const moving =
    `<path d="${d}" fill="${CORE}" stroke="${C.ink}" stroke-width="1.4"/>` +
    hatch(d, [fx, 0, fw, long], { a: 45, gap: 2.8, sw: 0.8, op: 0.7 }) +
    `<path d="M${middle - 3.4} 0v${r1(long * 0.5)}h6.8v${r1(-long * 0.5)}z" fill="${C.ink}"/>` +
    `<path d="M${w - 1} ${r1(long / 2)}l8 -4.5v9z" fill="${C.rust}" stroke="${C.ink}" stroke-width=".9"/>`;
  const tool =
    toolKind === null
      ? ''
      : `<path d="M${middle - 2.6} ${-h}V${r1(long * 0.42)}h5.2V${-h}z" fill="${TOOL_COLOUR[toolKind]}" stroke="${C.ink}" stroke-width="1.1"/>`;
  return { still, moving, tool, from, way };
}
