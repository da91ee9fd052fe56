/** The small figure of an opened run: found, left and the corridor of tolerance, with its axes. */
import type { CurveSet } from '../../grading/report.ts';
import { axisLabels, axisMarks, band, curvePath } from '../../kit/theme/figures.ts';
import { C, line, r1, T } from '../../kit/theme/ink.ts';
import { toleranceCorridor } from '../../present/corridor.ts';
import { within } from '../../present/curves.ts';
import type { Specification } from '../../receiver/receiver.ts';

export interface LookWords {
  readonly asFound: string;
  readonly asLeft: string;
}

/** A curve that goes farther is cut. */
const HIGHEST = 1.6;

export function lookFigure(w: number, h: number, set: CurveSet, sheet: Specification, words: LookWords): string {
  const [left, right, top, bottom] = [42, w - 12, 40, h - 24];
  const { fromHz, toHz } = sheet;
  const levels = [set.before, set.after].flatMap((curve) => within(curve, fromHz, toHz).map(([, level]) => level));
  const roof = Math.min(HIGHEST, Math.max(1.07, ...levels) + 0.03);
  const floor = sheet.sCurve === null ? 0 : Math.max(-HIGHEST, Math.min(-1.07, ...levels) - 0.03);
  const X = (hz: number): number => left + ((hz - fromHz) / (toHz - fromHz)) * (right - left);
  const Y = (level: number): number =>
    bottom - ((Math.min(HIGHEST, Math.max(-HIGHEST, level)) - floor) / (roof - floor)) * (bottom - top);
  const corridor = toleranceCorridor(sheet, set.nominal).map(
    (p) => [X(p.hz), Y(Math.min(p.high, roof)), Y(Math.max(p.low, floor))] as const,
  );
  const path = (curve: CurveSet['after']): string => curvePath(curve, fromHz, toHz, X, Y, 240);
  return (
    axes(left, right, bottom, sheet, X, Y) +
    band(corridor) +
    `<path d="${path(set.before)}" fill="none" stroke="${C.rust}" stroke-width="1.7" stroke-dasharray="6 4"/>` +
    `<path d="${path(set.after)}" fill="none" stroke="${C.ink}" stroke-width="2.3" stroke-linejoin="round"/>` +
    line(left, top - 4, left, bottom, { sw: 1.3 }) +
    line(left, bottom, right, bottom, { sw: 1.3 }) +
    `<path d="M${left} 9h22" stroke="${C.rust}" stroke-width="1.7" stroke-dasharray="6 4"/>${T(left + 28, 13, words.asFound, 'ls', { size: 13 })}` +
    `<path d="M${left} 26h22" stroke="${C.ink}" stroke-width="2.3"/>${T(left + 28, 30, words.asLeft, 'ls', { size: 13 })}`
  );
}

function axes(
  left: number,
  right: number,
  bottom: number,
  { fromHz, toHz, sCurve }: Specification,
  X: (hz: number) => number,
  Y: (level: number) => number,
): string {
  const grid = (sCurve === null ? [0.5, 1] : [-1, 0, 1])
    .map(
      (level) =>
        `<path d="M${left} ${r1(Y(level))}H${right}" stroke="${C.ink}" stroke-width=".6" stroke-dasharray="2 4" opacity=".6"/>${T(left - 6, Y(level) + 4, `${100 * level}${level === 1 ? '%' : ''}`, 'ms', { anchor: 'end' })}`,
    )
    .join('');
  const unit = (fromHz + toHz) / 2 >= 2e6 ? 1e6 : 1e3;
  const marks = axisMarks(fromHz / unit, toHz / unit, Math.max(2, Math.floor((right - left) / 80)));
  const labels = axisLabels(marks);
  // The unit stands behind the last number, where there is always room for it.
  const feet = marks
    .map(
      (mark, i) =>
        `<path d="M${r1(X(mark * unit))} ${r1(bottom)}v5" stroke="${C.ink}"/>${T(X(mark * unit), bottom + 18, labels[i]!, 'ms', { anchor: 'middle' })}`,
    )
    .join('');
  return `${grid}${feet}${T(right, 13, unit === 1e6 ? 'MHz' : 'kHz', 'l2', { anchor: 'end' })}`;
}
