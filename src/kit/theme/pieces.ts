/** Drawn pieces that several pages share, as SVG strings: mark, panel, sheet. */
import { C, callout, hatch, line, r1, rect, shadow, T } from './ink.ts';

export interface PanelStyle {
  readonly no?: string | number;
  readonly title?: string;
  readonly sub?: string;
  readonly fill?: string;
  /** depth of the cast shade */
  readonly sh?: number;
  readonly seed?: number;
}

/** An instrument's panel: wash, overshot frame, shade, numbered title. */
export function panel(x: number, y: number, w: number, h: number, style: PanelStyle = {}): string {
  const { no, title, sub, fill = C.wash, sh = 6, seed = 1 } = style;
  let s = shadow(x, y, w, h, { s: sh, seed }) + rect(x, y, w, h, { fill, sw: 1.5, seed });
  if (title === undefined) return s;
  const disc = no !== undefined;
  if (disc) s += callout(x + 18, y + 18, no, { fill: C.ink, col: C.ink, txt: C.paper });
  s += T(x + (disc ? 35 : 14), y + 22.8, title, 'h');
  if (sub !== undefined) s += T(x + w - 12, y + 22.5, sub, 'l2', { anchor: 'end' });
  return s;
}

/** A sheet of paper with a turned corner of `c` px. */
export function sheetPaper(x: number, y: number, w: number, h: number, c = 24): string {
  const fold = `M${r1(x + w - c)} ${r1(y)}V${r1(y + c)}H${r1(x + w)}Z`;
  return (
    shadow(x, y + c - 6, w, h - c + 6, { s: 6 }) +
    `<path d="M${r1(x)} ${r1(y)}H${r1(x + w - c)}L${r1(x + w)} ${r1(y + c)}V${r1(y + h)}H${r1(x)}Z" fill="${C.sheet}"/>` +
    line(x, y, x + w - c, y, { sw: 1.5, over: 1 }) +
    line(x + w, y + c, x + w, y + h, { sw: 1.5, over: 1 }) +
    line(x + w, y + h, x, y + h, { sw: 1.5, over: 2 }) +
    line(x, y + h, x, y, { sw: 1.5, over: 2 }) +
    `<path d="${fold}" fill="${C.wash2}" stroke="${C.ink}" stroke-width="1.4" stroke-linejoin="round"/>` +
    hatch(fold, [x + w - c, y, c, c], { a: 45, gap: 3, sw: 0.7, op: 0.6 })
  );
}

export const tick = (x: number, y: number, k = 1, col: string = C.petrolInk, sw = 2.4): string =>
  `<path d="M${r1(x - 4.5 * k)} ${r1(y)}l${r1(3.4 * k)} ${r1(4 * k)}l${r1(6.6 * k)} ${r1(-8.6 * k)}" fill="none" stroke="${col}" stroke-width="${sw}" stroke-linecap="round" stroke-linejoin="round"/>`;

export const cross = (x: number, y: number, k = 1, col: string = C.rustInk, sw = 2.4): string =>
  `<path d="M${r1(x - 4 * k)} ${r1(y - 4 * k)}l${r1(8 * k)} ${r1(8 * k)}m0 ${r1(-8 * k)}l${r1(-8 * k)} ${r1(8 * k)}" fill="none" stroke="${col}" stroke-width="${sw}" stroke-linecap="round"/>`;

/** A response curve stacked with hay; 42 x 32 at k = 1. */
export function mark(x: number, y: number, k = 1): string {
  const stack = 'M9 26C10.500 22 11 7 20 4C28 4 29 14 34 26Z';
  const d = 'M0 26C6 26 7 24 9.5 16C12 7 14 3 20 3C27 3 28 8 31 14C33.5 20 35 26 42 26';
  return (
    `<g transform="translate(${x} ${y}) scale(${k})">` +
    hatch(stack, [8, 3, 28, 24], { a: 62, gap: 2.7, sw: 1, op: 0.95, col: C.brass }) +
    hatch(stack, [8, 3, 28, 24], { a: 118, gap: 4.6, sw: 0.9, op: 0.9, col: C.brassInk }) +
    `<path d="${d}" fill="none" stroke="${C.ink}" stroke-width="2.4" stroke-linecap="round"/><path d="M0 29.500H42" stroke="${C.ink}" stroke-width="1.2"/></g>`
  );
}
