/** The tube's body in ink: light spilt on the paper, hood engraved in white line, glass and graticule. All static, as SVG strings. */

import type { WaxMark } from '../../present/wax.ts';
import { C, type InkBox, r1, rng, shadow, superell } from '../theme/ink.ts';

export const TUBE_COLOURS = {
  glass0: '#16302b',
  glass1: '#0b1816',
  glass2: '#060d0c',
  graticule: '#5f9182',
  body: '#b6f7d2',
  warm: '#ffad62',
  wax: '#f0c98a',
  bezel: '#0a100f',
} as const;

export const DIVS_ACROSS = 10;
const DIVS_DOWN = 8;
const EXPONENT = 9;

export interface TubeShape {
  /** CSS pixels to a division */
  readonly cell: number;
  /** breadth of the engraved ring, px */
  readonly hood: number;
  /** height of the lip under the glass that carries the pip tags, px; 0 = no lip */
  readonly lip: number;
}

export interface TubeGeometry extends TubeShape {
  readonly width: number;
  readonly height: number;
  /** middle of the graticule */
  readonly cx: number;
  readonly cy: number;
  /** half axes of the glass */
  readonly glassX: number;
  readonly glassY: number;
  /** box of the glass: where the beam's canvas lies */
  readonly glass: InkBox;
  /** middle line of the tags on the lip */
  readonly tagsY: number;
}

/** Glass beyond the graticule, px: in proportion on the bench, never thin on a small tube. */
const marginX = (cell: number): number => Math.max(12, 0.378 * cell);
const marginY = (cell: number): number => Math.max(11, 0.333 * cell);

export function tubeGeometry(shape: TubeShape): TubeGeometry {
  const { cell, hood, lip } = shape;
  const glassX = (cell * DIVS_ACROSS) / 2 + marginX(cell);
  const glassY = (cell * DIVS_DOWN) / 2 + marginY(cell);
  const cx = glassX + hood;
  const cy = glassY + hood;
  return {
    ...shape,
    width: 2 * cx,
    height: 2 * cy + lip,
    cx,
    cy,
    glassX,
    glassY,
    glass: [hood, hood, 2 * glassX, 2 * glassY],
    tagsY: cy + glassY + hood / 2 + lip / 2 + 1,
  };
}

/** The whole height and width that a tube of this cell takes, for layouts. */
export function tubeSize(shape: TubeShape): { width: number; height: number } {
  const { width, height } = tubeGeometry(shape);
  return { width, height };
}

/** Under the beam: spill, shade, glass, graticule. */
export function underBeam(g: TubeGeometry): string {
  const { cx, cy, glassX, glassY, width, height, cell, lip } = g;
  const spillX = width / 2 + cell;
  const spillY = height / 2 + cell;
  return (
    `<defs><radialGradient id="glass" cx=".5" cy=".46" r=".74"><stop offset="0" stop-color="${TUBE_COLOURS.glass0}"/><stop offset=".55" stop-color="${TUBE_COLOURS.glass1}"/><stop offset="1" stop-color="${TUBE_COLOURS.glass2}"/></radialGradient>` +
    `<radialGradient id="spill"><stop offset=".62" stop-color="#9fe3bd" stop-opacity=".55"/><stop offset="1" stop-color="#9fe3bd" stop-opacity="0"/></radialGradient></defs>` +
    `<ellipse cx="${r1(cx)}" cy="${r1(cy + lip / 2)}" rx="${r1(spillX)}" ry="${r1(spillY)}" fill="url(#spill)" opacity=".45"/>` +
    shadow(8, 8, width - 8, height - 8, { s: 7 }) +
    `<path d="${superell(cx, cy, glassX + 2, glassY + 2, EXPONENT)}" fill="url(#glass)"/>` +
    graticule(g)
  );
}

/** Lines at each division and fifths on the two axes. */
function graticule({ cx, cy, cell }: TubeGeometry): string {
  const x = cx - 5 * cell;
  const y = cy - 4 * cell;
  const right = cx + 5 * cell;
  const bottom = cy + 4 * cell;
  const fifth = cell < 28 ? 2 : 3;
  let lines = '';
  let fifths = '';
  for (let i = 0; i <= DIVS_ACROSS; i++) lines += `M${r1(x + i * cell)} ${r1(y)}V${r1(bottom)}`;
  for (let j = 0; j <= DIVS_DOWN; j++) lines += `M${r1(x)} ${r1(y + j * cell)}H${r1(right)}`;
  for (let i = 0; i <= DIVS_ACROSS * 5; i++) fifths += `M${r1(x + (i * cell) / 5)} ${r1(cy - fifth)}v${2 * fifth}`;
  for (let j = 0; j <= DIVS_DOWN * 5; j++) fifths += `M${r1(cx - fifth)} ${r1(y + (j * cell) / 5)}h${2 * fifth}`;
  const { graticule: ink } = TUBE_COLOURS;
  return (
    `<path d="${lines}" stroke="${ink}" stroke-width=".8" opacity=".42"/>` +
    `<path d="M${r1(x)} ${r1(cy)}H${r1(right)}M${r1(cx)} ${r1(y)}V${r1(bottom)}${fifths}" stroke="${ink}" stroke-width=".9" opacity=".7"/>`
  );
}

/** Over the beam: bezel and hood, with a hole for the glass, so that stray light never lies on the hood. */
export function overBeam(g: TubeGeometry): string {
  const { cx, cy, glassX, glassY, hood } = g;
  const hole = superell(cx, cy, glassX, glassY, EXPONENT);
  const bezel = superell(cx, cy, glassX + 2, glassY + 2, EXPONENT);
  return (
    `<path d="${outline(g)}${bezel}" fill="${C.ink}" fill-rule="evenodd"/>` +
    `<path d="${outline(g)}" fill="none" stroke="${C.ink}" stroke-width="1.5"/>` +
    engraving(cx, cy, glassX, glassY, hood) +
    `<path d="${bezel}${hole}" fill="${TUBE_COLOURS.bezel}" fill-rule="evenodd"/>` +
    `<path d="${bezel}" fill="none" stroke="${C.paper}" stroke-opacity=".35" stroke-width=".8"/>`
  );
}

function outline({ cx, cy, glassX, glassY, hood, lip }: TubeGeometry): string {
  const hx = glassX + hood;
  const hy = glassY + hood;
  if (lip === 0) return superell(cx, cy, hx, hy, 11);
  const [l, r, t, b] = [r1(cx - hx), r1(cx + hx), r1(cy - hy), r1(cy + hy + lip)];
  return (
    `M${l} ${r1(t + 26)}Q${l} ${t} ${r1(l + 26)} ${t}H${r1(r - 26)}Q${r} ${t} ${r} ${r1(t + 26)}` +
    `V${r1(b - 14)}Q${r} ${b} ${r1(r - 14)} ${b}H${r1(l + 14)}Q${l} ${b} ${l} ${r1(b - 14)}Z`
  );
}

/** White strokes square to the glass's edge, 4.1 px apart, long where the light comes from: upper left. */
function engraving(cx: number, cy: number, a: number, b: number, hood: number): string {
  const chance = rng(9);
  let lit = '';
  let dim = '';
  for (const [ux, uy] of evenlyAround(a, b, 4.1)) {
    let nx = (Math.sign(ux) * Math.abs(ux) ** (EXPONENT - 1)) / a;
    let ny = (Math.sign(uy) * Math.abs(uy) ** (EXPONENT - 1)) / b;
    const length = Math.hypot(nx, ny);
    nx /= length;
    ny /= length;
    const light = (-nx * 0.6 - ny * 0.8 + 1) / 2;
    const from = 3 + chance() * 1.2;
    const to = Math.min(hood - 1.5, from + 2.5 + (hood - 5) * (0.12 + light * 0.85) + chance() * 1.6);
    const px = cx + ux * a;
    const py = cy + uy * b;
    const stroke = `M${r1(px + nx * from)} ${r1(py + ny * from)}L${r1(px + nx * to)} ${r1(py + ny * to)}`;
    if (light > 0.5) lit += stroke;
    else dim += stroke;
  }
  return (
    `<path d="${lit}" stroke="${C.paper}" stroke-width=".9" opacity=".7"/>` +
    `<path d="${dim}" stroke="${C.paper}" stroke-width=".7" opacity=".32"/>`
  );
}

/** Points of the unit superellipse that lie `gap` px apart along its edge of half axes a and b. */
function evenlyAround(a: number, b: number, gap: number): [number, number][] {
  const at = (t: number): [number, number] => {
    const c = Math.cos(t);
    const s = Math.sin(t);
    return [Math.sign(c) * Math.abs(c) ** (2 / EXPONENT), Math.sign(s) * Math.abs(s) ** (2 / EXPONENT)];
  };
  const points: [number, number][] = [];
  let gone = 0;
  let next = 0;
  let [px, py] = at(0);
  for (let i = 1; i <= 6000; i++) {
    const [ux, uy] = at((i / 6000) * 2 * Math.PI);
    const stretch = Math.hypot((ux - px) * a, (uy - py) * b);
    while (next <= gone + stretch) {
      const k = stretch > 0 ? (next - gone) / stretch : 0;
      points.push([px + (ux - px) * k, py + (uy - py) * k]);
      next += gap;
    }
    gone += stretch;
    px = ux;
    py = uy;
  }
  return points;
}

/** Tolerance brackets in grease pencil, on the glass, under the beam. What of a bracket lies off the graticule is left away. */
export function waxMarks({ cx, cy, cell }: TubeGeometry, marks: readonly WaxMark[]): string {
  const edge = DIVS_DOWN / 2;
  let s = '';
  for (const { xDiv, lowDiv, highDiv } of marks) {
    if (Math.abs(xDiv) > DIVS_ACROSS / 2 || lowDiv > edge || highDiv < -edge) continue;
    const x = r1(cx + xDiv * cell);
    const low = r1(cy - Math.max(lowDiv, -edge) * cell);
    const high = r1(cy - Math.min(highDiv, edge) * cell);
    const ends = [...(highDiv <= edge ? [high] : []), ...(lowDiv >= -edge ? [low] : [])];
    const caps = ends.map((y) => `M${x - 7} ${y}h14`).join('');
    s += `<g stroke="${TUBE_COLOURS.wax}" fill="none" stroke-width="2" stroke-linecap="round" opacity=".85"><path d="${caps}"/><path d="M${x} ${high}V${low}" stroke-dasharray="2 4" stroke-width="1.3"/></g>`;
  }
  return s;
}
