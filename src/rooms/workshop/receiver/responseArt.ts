/** The tube with the response of the design and, in grease pencil, what the sheet asks of it. */

import { axisLabels, axisMarks } from '../../../kit/theme/figures.ts';
import { r1 } from '../../../kit/theme/ink.ts';
import {
  DIVS_ACROSS,
  overBeam,
  TUBE_COLOURS,
  type TubeGeometry,
  tubeGeometry,
  underBeam,
  waxMarks,
} from '../../../kit/tube/hood.ts';
import type { Drawn } from '../../../making/standing.ts';
import type { Specification } from '../../../receiver/receiver.ts';

const HOOD = 18;
/** Divisions: the sheet's stretch lies inside these, its top and its zero here. */
const HALF_ACROSS = 4.7;
const TOP = 3;
const ZERO = -3.2;
/** px, of a figure under the curve; and divisions from the middle to where the glass curves */
const [FIGURE, EDGE] = [8, 4.7];

export function responseGeometry(width: number): TubeGeometry {
  const cell = Math.max(18, Math.min(42, Math.floor((width - 2 * HOOD) / (DIVS_ACROSS + 0.8))));
  return tubeGeometry({ cell, hood: HOOD, lip: 0 });
}

const across = ({ fromHz, toHz }: Specification, hz: number): number =>
  ((hz - fromHz) / (toHz - fromHz) - 0.5) * 2 * HALF_ACROSS;
const zeroOf = (spec: Specification): number => (spec.sCurve === null ? ZERO : 0);
const up = (spec: Specification, level: number): number => zeroOf(spec) + level * (TOP - zeroOf(spec));

/** The frequency under a place on the drawing; null: beside the sheet. */
export function hzAt(g: TubeGeometry, spec: Specification, x: number): number | null {
  const share = (x - g.cx) / g.cell / (2 * HALF_ACROSS) + 0.5;
  return share < 0 || share > 1 ? null : spec.fromHz + share * (spec.toHz - spec.fromHz);
}

export function responseArt(g: TubeGeometry, spec: Specification, { curve, top, items }: Drawn): string {
  const X = (hz: number): number => g.cx + across(spec, hz) * g.cell;
  const Y = (level: number): number => g.cy - up(spec, level) * g.cell;
  let d = '';
  curve.hz.forEach((hz, i) => {
    if (hz < spec.fromHz || hz > spec.toHz) return;
    d += `${d === '' ? 'M' : 'L'}${r1(X(hz))} ${r1(Y(top > 0 ? curve.volts[i]! / top : 0))}`;
  });
  const marks = spec.points.map((p) => ({
    xDiv: across(spec, p.hz),
    lowDiv: up(spec, p.low),
    highDiv: up(spec, p.high),
  }));
  const windows = spec.windows.map((w) => {
    const lowest = 10 ** (-w.maxRippleDb / 20);
    return `<path d="M${r1(X(w.fromHz))} ${r1(Y(1.06))}V${r1(Y(lowest))}H${r1(X(w.toHz))}V${r1(Y(1.06))}" fill="none" stroke="${TUBE_COLOURS.wax}" stroke-width="1.4" stroke-dasharray="5 4"/>`;
  });
  const traps = spec.traps.map(
    (t) =>
      `<path d="M${r1(X(t.hz) - 7)} ${r1(Y(10 ** (t.maxDb / 20)))}h14M${r1(X(t.hz))} ${r1(Y(10 ** (t.maxDb / 20)))}v-14" stroke="${TUBE_COLOURS.wax}" stroke-width="2"/>`,
  );
  const figures = axisMarks(spec.fromHz / 1e3, spec.toHz / 1e3, 5);
  const labels = axisLabels(figures);
  const lettering = figures
    .map((k, i) =>
      // Cut by the glass a figure would be read as another.
      Math.abs(X(k * 1e3) - g.cx) + (labels[i]!.length * FIGURE) / 2 > EDGE * g.cell
        ? ''
        : `<text x="${r1(X(k * 1e3))}" y="${r1(g.cy + 3.85 * g.cell)}" text-anchor="middle" class="ms" fill="#9cc4b6">${labels[i]}</text>`,
    )
    .join('');
  const base = `<path d="M${r1(X(spec.fromHz))} ${r1(Y(0))}H${r1(X(spec.toHz))}" stroke="${TUBE_COLOURS.body}" stroke-width="1.4" opacity=".8"/>`;
  const beam = `<g fill="none" stroke-linejoin="round"><path d="${d}" stroke="#5fe0a2" stroke-width="6" opacity=".28"/><path d="${d}" stroke="${TUBE_COLOURS.body}" stroke-width="2.4"/></g>`;
  // A point outside its limits is the maker's affair, and is told of in words.
  void items;
  return underBeam(g) + base + beam + waxMarks(g, marks) + windows.join('') + traps.join('') + lettering + overBeam(g);
}
