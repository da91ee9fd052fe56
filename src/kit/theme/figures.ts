/** Ink figures of a response from real samples: axes, hay, tolerance bars, trap notes, thumbnails. All as SVG strings. */

import { type Curve, within } from '../../present/curves.ts';
import { C, callout, hatch, line, r1, T } from './ink.ts';

export type Scale = (value: number) => number;

export function curvePath(curve: Curve, fromHz: number, toHz: number, X: Scale, Y: Scale, most = 320): string {
  return within(curve, fromHz, toHz, most)
    .map(([f, a], i) => `${i ? 'L' : 'M'}${r1(X(f))} ${r1(Y(a))}`)
    .join('');
}

/** A round step for about `count` marks over a range: 1, 2 or 5 times a power of ten. */
export function axisStep(range: number, count: number): number {
  const raw = range / Math.max(1, count);
  const power = 10 ** Math.floor(Math.log10(raw));
  const unit = raw / power;
  return power * (unit <= 1.0001 ? 1 : unit <= 2.0001 ? 2 : unit <= 5.0001 ? 5 : 10);
}

/** Multiples of the step inside a range, free of rounding dust. */
export function axisMarks(from: number, to: number, count: number): number[] {
  const step = axisStep(to - from, count);
  const marks: number[] = [];
  for (let i = Math.ceil(from / step - 1e-9); i * step <= to + step * 1e-9; i++) marks.push(i * step);
  return marks;
}

/** Figures for such marks, all with the decimals that their step needs. */
export function axisLabels(marks: readonly number[]): string[] {
  const step = marks.length > 1 ? marks[1]! - marks[0]! : 1;
  const decimals = Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
  return marks.map((v) => v.toFixed(decimals));
}

/** A hatched band between an upper and a lower edge. */
export function band(edges: readonly (readonly [x: number, upper: number, lower: number])[]): string {
  if (edges.length < 2) return '';
  const up = edges.map(([x, y], i) => `${i ? 'L' : 'M'}${r1(x)} ${r1(y)}`).join('');
  const down = [...edges]
    .reverse()
    .map(([x, , y]) => `L${r1(x)} ${r1(y)}`)
    .join('');
  const d = `${up}${down}Z`;
  const xs = edges.map(([x]) => x);
  const ys = edges.flatMap(([, a, b]) => [a, b]);
  const x0 = Math.min(...xs);
  const y0 = Math.min(...ys);
  return (
    `<path d="${d}" fill="${C.tolerance}" opacity=".75"/>` +
    hatch(d, [x0, y0, Math.max(...xs) - x0, Math.max(...ys) - y0], {
      a: 45,
      gap: 5,
      sw: 0.8,
      op: 0.55,
      col: C.petrol,
    }) +
    `<path d="${d}" fill="none" stroke="${C.petrol}" stroke-width="1" stroke-dasharray="4 3"/>`
  );
}

export interface HayStyle {
  readonly gap?: number;
  readonly op?: number;
  readonly crossed?: boolean;
}

/** Hay: crossed hatching inside a path. The denser, the better the score. */
export function hay(d: string, box: readonly [number, number, number, number], style: HayStyle = {}): string {
  const { gap = 5, op = 0.6, crossed = true } = style;
  return (
    hatch(d, box, { a: 64, gap, sw: 0.75, op, col: C.brassInk }) +
    (crossed ? hatch(d, box, { a: 116, gap: gap * 1.6, sw: 0.65, op: op * 0.78, col: C.brassInk }) : '')
  );
}

export interface FigureMark {
  readonly hz: number;
  readonly low: number;
  readonly high: number;
  readonly level: number;
  readonly no?: string | number;
  readonly dx?: number;
  readonly dy?: number;
}
export interface FigureTrap {
  readonly hz: number;
  readonly no?: string | number;
  readonly letter?: string;
  readonly dx?: number;
  readonly dy?: number;
  readonly col?: string;
}
export interface TargetFigure {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
  readonly curve: Curve;
  readonly fromHz?: number;
  readonly toHz?: number;
  readonly marks?: readonly FigureMark[];
  readonly traps?: readonly FigureTrap[];
  readonly axis?: boolean;
  readonly hayFill?: boolean;
  /** a second curve, dashed in petrol: what is wanted beside what is */
  readonly wanted?: Curve | null;
  /** divides the frequencies for the axis figures, 1e6 for MHz; the unit is written at the right */
  readonly perUnit?: number;
  readonly unit?: string;
  /** an S-curve: zero stands in the middle */
  readonly signed?: boolean;
}

/** The sheet's figure of a response; returns its drawing and its two scales. */
export function targetFig(figure: TargetFigure): { svg: string; X: Scale; Y: Scale } {
  const {
    x,
    y,
    w,
    h,
    curve,
    marks = [],
    traps = [],
    axis = true,
    hayFill = true,
    wanted = null,
    perUnit = 1e6,
    unit = 'MHz',
    signed = false,
  } = figure;
  const f0 = figure.fromHz ?? curve.hz[0] ?? 0;
  const f1 = figure.toHz ?? curve.hz[curve.hz.length - 1] ?? 1;
  const left = axis ? 37 : 4;
  const bottom = axis ? 30 : 6;
  const top = axis ? 12 : 6;
  const right = 8;
  const X: Scale = (f) => x + left + ((f - f0) / (f1 - f0)) * (w - left - right);
  const floor = signed ? -1.05 : 0;
  const roof = signed ? 1.05 : 1;
  const Y: Scale = (a) => y + h - bottom - ((a - floor) / (roof - floor)) * (h - bottom - top);
  const d = curvePath(curve, f0, f1, X, Y);
  let s = '';
  if (axis)
    for (const p of signed ? [-1, 0, 1] : [0, 0.5, 1])
      s +=
        `<path d="M${x + left} ${r1(Y(p))}H${x + w - right}" stroke="${C.ink}" stroke-width=".6"${p ? ' stroke-dasharray="2 3"' : ''} opacity=".6"/>` +
        T(x + left - 6, Y(p) + 4, `${p * 100}${p === 1 ? '%' : ''}`, 'ms', { anchor: 'end' });
  if (hayFill) s += hay(`${d}L${r1(X(f1))} ${r1(Y(0))}L${r1(X(f0))} ${r1(Y(0))}Z`, [x, y, w, h], { gap: 5, op: 0.55 });
  if (wanted)
    s += `<path d="${curvePath(wanted, f0, f1, X, Y)}" fill="none" stroke="${C.petrolInk}" stroke-width="1.6" stroke-dasharray="5 4"/>`;
  s += `<path d="${d}" fill="none" stroke="${C.ink}" stroke-width="2.1" stroke-linejoin="round"/>`;
  if (axis) {
    s +=
      line(x + left, y + 4, x + left, Y(floor), { sw: 1.2, over: 2 }) +
      line(x + left, Y(floor), x + w - right, Y(floor), { sw: 1.4, over: 2 });
    const room = X(f1) - X(f0);
    const figures = axisMarks(f0 / perUnit, f1 / perUnit, Math.max(2, Math.floor((room - 30) / 46)));
    let ticks = '';
    for (const v of axisMarks(f0 / perUnit, f1 / perUnit, room / 20))
      ticks += `M${r1(X(v * perUnit))} ${r1(Y(floor))}v4`;
    s += `<path d="${ticks}" stroke="${C.ink}" stroke-width="1"/>`;
    const labels = axisLabels(figures);
    figures.forEach((v, i) => {
      // Half of its own width, the unit's width and a gap: a figure that would touch the unit is left out.
      if (X(v * perUnit) < x + w - right - 30 - 3.6 * labels[i]!.length)
        s += T(X(v * perUnit), Y(floor) + 18, labels[i]!, 'ms', { anchor: 'middle' });
    });
    s += T(x + w - right, Y(floor) + 18, unit, 'ls', { anchor: 'end' });
  }
  for (const m of marks) {
    const px = r1(X(m.hz));
    s += `<path d="M${px} ${r1(Y(0))}V${r1(Y(m.low))}" stroke="${C.rust}" stroke-width="1" stroke-dasharray="2 2.5"/>`;
    s += `<path d="M${px} ${r1(Y(m.low))}V${r1(Y(m.high))}M${px - 6} ${r1(Y(m.low))}h12M${px - 6} ${r1(Y(m.high))}h12" stroke="${C.rust}" stroke-width="2.4" fill="none"/>`;
    s += `<circle cx="${px}" cy="${r1(Y(m.level))}" r="3" fill="${C.sheet}" stroke="${C.ink}" stroke-width="1.4"/>`;
    if (m.no !== undefined)
      s += callout(px + (m.dx ?? 0), Y(m.level) + (m.dy ?? 0), m.no, { r: 8, fill: C.rust, txt: '#fff' });
  }
  for (const t of traps) {
    const px = r1(X(t.hz));
    s += `<path d="M${px} ${r1(Y(0) - 4)}l-3.5 -7h7z" fill="${C.petrol}" stroke="${C.ink}" stroke-width=".8"/>`;
    if (t.no !== undefined)
      s += callout(px + (t.dx ?? 0), Y(0) - 24 + (t.dy ?? 0), t.no, { r: 8, fill: t.col ?? C.rust, txt: '#fff' });
    if (t.letter !== undefined) s += T(px, Y(0) - 15, t.letter, 'ls', { anchor: 'middle', weight: 700 });
  }
  return { svg: s, X, Y };
}

export interface Thumbnail {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
  readonly curve: Curve;
  /** what is shown; default = all that is sampled */
  readonly band?: readonly [fromHz: number, toHz: number];
  /** best score, which sets how dense the hay is; 0 = bare outline; null = locked, dashed */
  readonly score: number | null;
}

/** Ink thumbnail of a card: the outline is the job, the hay is what has been won. */
export function thumb({ x, y, w, h, curve, band, score }: Thumbnail): string {
  const [f0, f1] = band ?? [curve.hz[0] ?? 0, curve.hz[curve.hz.length - 1] ?? 1];
  // An S-curve that is out of line stands higher on one side of zero than its sheet has it: whatever is highest and lowest must find room.
  const levels = within(curve, f0, f1, 160).map(([, level]) => level);
  const floor = Math.min(0, ...levels);
  const roof = Math.max(floor + 0.01, ...levels);
  const X: Scale = (f) => x + ((f - f0) / (f1 - f0)) * w;
  const Y: Scale = (a) => y + h - 3 - ((a - floor) / (roof - floor)) * (h - 10);
  const d = curvePath(curve, f0, f1, X, Y, 160);
  let s = `<path d="M${x} ${r1(Y(0))}H${x + w}" stroke="${C.ink}" stroke-width="1"/>`;
  if (score) {
    const gap = score > 90 ? 3.4 : score > 75 ? 4.6 : 6.5;
    s += hay(`${d}L${r1(x + w)} ${r1(Y(0))}L${x} ${r1(Y(0))}Z`, [x, y, w, h], { gap, op: 0.8, crossed: score > 75 });
  }
  return `${s}<path d="${d}" fill="none" stroke="${C.ink}" stroke-width="1.9" stroke-linejoin="round"${score === null ? ' stroke-dasharray="3 3"' : ''}/>`;
}
