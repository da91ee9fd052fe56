/**
 * Ink primitives as SVG strings: lines with a slight bow, overshot corners, hatching, callouts.
 * Every wobble comes from a seed made of the shape itself and every id from its content, so that a redraw never shimmers.
 */
import { seededRandom } from '../../base/random.ts';

/** The palette for drawings; `tokens.css` holds the same colours for the pages. */
export const C = {
  paper: '#f4ecd9',
  sheet: '#fcf7ea',
  wash: '#ebe0c7',
  wash2: '#dfd2b3',
  ink: '#1f2d38',
  ink2: '#46535e',
  rust: '#b5482e',
  rustInk: '#963820',
  brass: '#b98b3e',
  brassInk: '#6f5117',
  petrol: '#2b6f6d',
  petrolInk: '#1f5a58',
  tolerance: '#d5e2da',
  danger: '#ecd0bf',
  hay: '#e3cfa0',
} as const;

export const rng = seededRandom;
export const r1 = (v: number): number => Math.round(v * 10) / 10;

export type InkBox = readonly [x: number, y: number, w: number, h: number];

export interface LineStyle {
  readonly amp?: number;
  readonly over?: number;
  readonly seed?: number;
  readonly sw?: number;
  readonly col?: string;
  readonly op?: number;
  readonly cap?: 'round' | 'butt' | 'square';
  readonly dash?: string;
}

export function line(x1: number, y1: number, x2: number, y2: number, style: LineStyle = {}): string {
  const { amp = 0.5, over = 0, seed = 1, sw = 1.3, col = C.ink, op = 1, cap = 'round', dash } = style;
  const chance = rng(seed * 7919 + Math.round(x1 * 3 + y1 * 5 + x2 * 7 + y2 * 11));
  const length = Math.hypot(x2 - x1, y2 - y1) || 1;
  const ux = (x2 - x1) / length;
  const uy = (y2 - y1) / length;
  const o1 = over * (0.4 + chance());
  const o2 = over * (0.4 + chance());
  const ax = x1 - ux * o1;
  const ay = y1 - uy * o1;
  const bx = x2 + ux * o2;
  const by = y2 + uy * o2;
  const pieces = Math.max(1, Math.round(length / 170));
  let d = `M${r1(ax)} ${r1(ay)}`;
  for (let i = 0; i < pieces; i++) {
    const t1 = (i + 1) / pieces;
    const tm = (i + 0.5) / pieces;
    const bow = (chance() - 0.5) * 2 * amp;
    const end = i === pieces - 1 ? 0 : (chance() - 0.5) * amp * 0.6;
    d += `Q${r1(ax + (bx - ax) * tm - uy * bow)} ${r1(ay + (by - ay) * tm + ux * bow)} `;
    d += `${r1(ax + (bx - ax) * t1 - uy * end)} ${r1(ay + (by - ay) * t1 + ux * end)}`;
  }
  const extra = `${op < 1 ? ` opacity="${op}"` : ''}${dash ? ` stroke-dasharray="${dash}"` : ''}`;
  return `<path d="${d}" fill="none" stroke="${col}" stroke-width="${sw}" stroke-linecap="${cap}"${extra}/>`;
}

/** A frame of four ruled lines whose corners overshoot. */
export function rect(
  x: number,
  y: number,
  w: number,
  h: number,
  style: LineStyle & { readonly fill?: string } = {},
): string {
  const { over = 2, sw = 1.4, fill, seed = 1, amp = 0.6, col = C.ink, op = 1 } = style;
  const o = { over, sw, seed, amp, col, op };
  return (
    (fill ? `<rect x="${r1(x)}" y="${r1(y)}" width="${r1(w)}" height="${r1(h)}" fill="${fill}"/>` : '') +
    line(x, y, x + w, y, o) +
    line(x + w, y, x + w, y + h, o) +
    line(x + w, y + h, x, y + h, o) +
    line(x, y + h, x, y, o)
  );
}

export interface ShadowStyle {
  readonly s?: number;
  readonly gap?: number;
  readonly sw?: number;
  readonly op?: number;
  readonly seed?: number;
}

/** Short 45 degree strokes along the right and bottom edges: the plate's cast shade. */
export function shadow(x: number, y: number, w: number, h: number, style: ShadowStyle = {}): string {
  const { s = 6, gap = 3.1, sw = 0.75, op = 0.62, seed = 3 } = style;
  const chance = rng(seed + Math.round(x + y + w + h));
  let d = '';
  for (let t = y + s * 0.6; t < y + h + 0.1; t += gap) {
    const k = s * (0.72 + chance() * 0.34);
    d += `M${r1(x + w)} ${r1(t)}l${r1(k)} ${r1(k)}`;
  }
  for (let t = x + w; t > x + s * 0.6; t -= gap) {
    const k = s * (0.72 + chance() * 0.34);
    d += `M${r1(t)} ${r1(y + h)}l${r1(k)} ${r1(k)}`;
  }
  return `<path d="${d}" stroke="${C.ink}" stroke-width="${sw}" opacity="${op}" fill="none" stroke-linecap="round"/>`;
}

export interface HatchStyle {
  /** angle of the strokes, degrees */
  readonly a?: number;
  readonly gap?: number;
  readonly sw?: number;
  readonly op?: number;
  readonly col?: string;
  readonly seed?: number;
  /** share of strokes left out, 0 to 1 */
  readonly skip?: number;
}

/** Parallel strokes clipped to the path `d`; `box` must hold the path. */
export function hatch(d: string, [x, y, w, h]: InkBox, style: HatchStyle = {}): string {
  const { a = 45, gap = 4, sw = 0.7, op = 0.6, col = C.ink, seed = 5, skip = 0 } = style;
  const chance = rng(seed + Math.round(w * h));
  const cx = x + w / 2;
  const cy = y + h / 2;
  const reach = Math.hypot(w, h) / 2 + 4;
  const ca = Math.cos((a * Math.PI) / 180);
  const sa = Math.sin((a * Math.PI) / 180);
  let p = '';
  for (let t = -reach; t <= reach; t += gap) {
    if (skip && chance() < skip) continue;
    const px = cx - sa * t;
    const py = cy + ca * t;
    const q = (chance() - 0.5) * gap * 0.25;
    p += `M${r1(px - ca * reach + q)} ${r1(py - sa * reach + q)}L${r1(px + ca * reach + q)} ${r1(py + sa * reach + q)}`;
  }
  const id = contentId('h', d);
  return `<clipPath id="${id}"><path d="${d}"/></clipPath><path d="${p}" clip-path="url(#${id})" stroke="${col}" stroke-width="${sw}" opacity="${op}" fill="none"/>`;
}

/** An id made from the content (FNV-1a, Fowler, Noll and Vo's hash; from memory): equal shapes share one, redraws keep theirs. */
export function contentId(prefix: string, content: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < content.length; i++) hash = Math.imul(hash ^ content.charCodeAt(i), 0x01000193);
  return `${prefix}-${(hash >>> 0).toString(36)}`;
}

/** Rounded rectangle as a path. */
export const rr = (x: number, y: number, w: number, h: number, r: number): string =>
  `M${r1(x + r)} ${r1(y)}h${r1(w - 2 * r)}a${r} ${r} 0 0 1 ${r} ${r}v${r1(h - 2 * r)}a${r} ${r} 0 0 1 ${-r} ${r}h${r1(-(w - 2 * r))}a${r} ${r} 0 0 1 ${-r} ${-r}v${r1(-(h - 2 * r))}a${r} ${r} 0 0 1 ${r} ${-r}z`;

/** A point on a circle; 0 degrees is at the top, clockwise positive. */
export const pol = (cx: number, cy: number, r: number, degrees: number): [number, number] => [
  cx + r * Math.sin((degrees * Math.PI) / 180),
  cy - r * Math.cos((degrees * Math.PI) / 180),
];

export function arc(cx: number, cy: number, r: number, fromDegrees: number, toDegrees: number): string {
  const [a0, a1] = toDegrees < fromDegrees ? [toDegrees, fromDegrees] : [fromDegrees, toDegrees];
  const [x0, y0] = pol(cx, cy, r, a0);
  const [x1, y1] = pol(cx, cy, r, a1);
  return `M${r1(x0)} ${r1(y0)}A${r} ${r} 0 ${a1 - a0 > 180 ? 1 : 0} 1 ${r1(x1)} ${r1(y1)}`;
}

export function superell(cx: number, cy: number, a: number, b: number, exponent = 8, steps = 160): string {
  let d = '';
  for (let i = 0; i <= steps; i++) {
    const t = (i / steps) * 2 * Math.PI;
    const c = Math.cos(t);
    const s = Math.sin(t);
    const x = cx + a * Math.sign(c) * Math.abs(c) ** (2 / exponent);
    const y = cy + b * Math.sign(s) * Math.abs(s) ** (2 / exponent);
    d += `${i ? 'L' : 'M'}${r1(x)} ${r1(y)}`;
  }
  return `${d}Z`;
}

export const escapeText = (text: string): string =>
  text.replace(/[&<>"]/g, (c) => (c === '&' ? '&amp;' : c === '<' ? '&lt;' : c === '>' ? '&gt;' : '&quot;'));

export interface TextStyle {
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly fill?: string;
  /** px, where it is not that of the class */
  readonly size?: 13 | 14;
  readonly weight?: 500 | 600 | 700;
  /** letters stand closer than the class has them: not spaced at all, or a little */
  readonly tracking?: 'none' | 'slight';
  /** further attributes, each after a space */
  readonly more?: string;
}

/**
 * Text in one of the classes of tokens.css. The words are escaped: files from strangers may name things. What differs from the class is said by further classes: the
 * page's policy lets no drawing bring a style of its own.
 */
export const T = (
  x: number,
  y: number,
  words: string | number,
  cls = 'l',
  { anchor = 'start', fill, size, weight, tracking, more = '' }: TextStyle = {},
): string =>
  `<text x="${r1(x)}" y="${r1(y)}" class="${[
    cls,
    ...(size === undefined ? [] : [`size-${size}`]),
    ...(weight === undefined ? [] : [`weight-${weight}`]),
    ...(tracking === undefined ? [] : [`tracking-${tracking}`]),
  ].join(' ')}"${anchor !== 'start' ? ` text-anchor="${anchor}"` : ''}${
    fill === undefined ? '' : ` fill="${fill}"`
  }${more}>${escapeText(String(words))}</text>`;

export const G = (x: number, y: number, svg: string, extra = ''): string =>
  `<g transform="translate(${r1(x)} ${r1(y)})"${extra ? ` ${extra}` : ''}>${svg}</g>`;

export interface CalloutStyle {
  readonly r?: number;
  readonly fill?: string;
  readonly col?: string;
  readonly txt?: string;
  readonly sw?: number;
}

/** A numbered or lettered disc. */
export function callout(x: number, y: number, words: string | number, style: CalloutStyle = {}): string {
  const { r = 9.5, fill = C.sheet, col = C.ink, txt = C.ink, sw = 1.2 } = style;
  return `<circle cx="${r1(x)}" cy="${r1(y)}" r="${r}" fill="${fill}" stroke="${col}" stroke-width="${sw}"/>${T(x, y + 4.4, words, 'co', { anchor: 'middle', fill: txt })}`;
}
