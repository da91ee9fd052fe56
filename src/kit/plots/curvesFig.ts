/** Two or three curves of one scale in a small frame: where a curve goes when something is turned, or has failed. An SVG string. */
import type { Curve } from '../../present/curves.ts';
import { curvePath, type Scale } from '../theme/figures.ts';
import { C } from '../theme/ink.ts';

export interface CurvesFig {
  readonly svg: string;
  readonly X: Scale;
  /** px of the frame's lower edge */
  readonly bottom: number;
}

/** How each line is drawn: as an SVG path is told. */
const LINES = {
  now: `stroke="${C.ink}" stroke-width="2"`,
  dotted: `stroke="${C.petrolInk}" stroke-width="1.7" stroke-dasharray="1.5 3.5" stroke-linecap="round"`,
  dashed: `stroke="${C.brassInk}" stroke-width="1.6" stroke-dasharray="6 4"`,
} as const;

export interface DrawnCurve {
  readonly curve: Curve;
  readonly line: keyof typeof LINES;
}

/** `foot`: px kept free under the frame. `under`: what lies behind the curves. The first curve gives the frequencies. */
export function curvesFig(
  w: number,
  h: number,
  foot: number,
  curves: readonly DrawnCurve[],
  under: (fig: Omit<CurvesFig, 'svg'>) => string = () => '',
): CurvesFig {
  const { hz } = curves[0]!.curve;
  const levels = curves.flatMap(({ curve }) => [...curve.relative]);
  const highest = Math.max(...levels);
  const lowest = Math.min(0, ...levels);
  const [first, last] = [hz[0]!, hz.at(-1)!];
  const bottom = h - foot;
  const X = (f: number): number => 3 + ((w - 6) * (f - first)) / (last - first);
  const Y = (level: number): number => 6 + ((bottom - 12) * (highest - level)) / (highest - lowest);
  const svg =
    `<rect x="0.6" y="0.6" width="${w - 1.2}" height="${bottom}" fill="${C.sheet}" stroke="${C.ink}" stroke-width="1.2"/>` +
    under({ X, bottom }) +
    `<path d="M3 ${Y(0).toFixed(1)}H${w - 3}" stroke="${C.ink2}" stroke-width="1"/>` +
    curves
      .map(({ curve, line }) => `<path d="${curvePath(curve, first, last, X, Y)}" fill="none" ${LINES[line]}/>`)
      .join('');
  return { svg, X, bottom };
}
