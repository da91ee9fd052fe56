/** The large figure of a report: as found, as left, the corridor of tolerance, and a callout at each point and trap of the sheet. */
import { type CurveSet, lineIsMet, type Report, type ScoreLine } from '../../grading/report.ts';
import { DRAWN_RULES } from '../../grading/rules/rules.ts';
import { axisLabels, axisMarks, band, curvePath } from '../../kit/theme/figures.ts';
import { C, callout, hatch, line, r1, rr, T } from '../../kit/theme/ink.ts';
import { cross, tick } from '../../kit/theme/pieces.ts';
import { squeezedText } from '../../kit/theme/squeeze.ts';
import { toleranceCorridor } from '../../present/corridor.ts';
import { type Curve, levelAt, within } from '../../present/curves.ts';
import type { Specification } from '../../receiver/receiver.ts';
import { placeBoxes } from './placeBoxes.ts';

export interface FigureWords {
  readonly frequency: (hz: number) => string;
  readonly wants: (line: ScoreLine) => string;
  readonly asFound: string;
  readonly asLeft: string;
  readonly tolerance: string;
}

export interface SheetPoint {
  /** by frequency, for the points that are told of; null for the rest, which get a plain dot */
  readonly no: number | null;
  readonly hz: number;
  readonly line: ScoreLine;
  readonly met: boolean;
}

/** A sheet may ask for a dozen points: these many are told of, the missed ones first, then the weightiest. */
const MOST_TOLD = 6;

/** Points and traps of the sheet, and whatever else a rule wants drawn, by frequency. */
export function sheetPoints(report: Report, response: string): readonly SheetPoint[] {
  const lines = report.lines.filter(
    (l): l is ScoreLine & { hz: number } => l.hz !== null && l.response === response && DRAWN_RULES.includes(l.rule),
  );
  const told = new Set(
    [...lines]
      .sort((a, b) => Number(lineIsMet(a)) - Number(lineIsMet(b)) || b.max - a.max || a.hz - b.hz)
      .slice(0, MOST_TOLD),
  );
  let no = 0;
  return lines
    .sort((a, b) => a.hz - b.hz)
    .map((line) => ({ no: told.has(line) ? ++no : null, hz: line.hz, line, met: lineIsMet(line) }));
}

const BOX_HEIGHT = 42;
/** narrower figures carry numbers only; the page lists them below */
const BOXES_FROM_PX = 620;

export function responseFigure(
  w: number,
  h: number,
  report: Report,
  set: CurveSet,
  spec: Specification,
  words: FigureWords,
): string {
  const narrow = w < BOXES_FROM_PX;
  const left = narrow ? 44 : 54;
  // Half of the last figure under the axis stands beyond it.
  const right = w - 18;
  const top = narrow ? 40 : 30;
  const bottom = h - 44;
  const { fromHz, toHz } = spec;
  const X = (hz: number): number => left + ((hz - fromHz) / (toHz - fromHz)) * (right - left);
  const [floor, roof] = levelsShown(set, spec);
  const Y = (level: number): number => bottom - ((level - floor) / (roof - floor)) * (bottom - top);
  const path = (curve: Curve): string => curvePath(curve, fromHz, toHz, X, Y, 360);
  const corridor = toleranceCorridor(spec, set.nominal);
  return (
    axes(left, right, bottom, fromHz, toHz, X, Y, spec.sCurve !== null) +
    band(corridor.map((p) => [X(p.hz), Y(Math.min(p.high, 1.065)), Y(p.low)] as const)) +
    `<clipPath id="plot"><rect x="${left}" y="${top - 4}" width="${r1(right - left)}" height="${r1(bottom - top + 6)}"/></clipPath><g clip-path="url(#plot)">` +
    `<path d="${path(set.before)}" fill="none" stroke="${C.rust}" stroke-width="2" stroke-dasharray="7 4"/>` +
    `<path d="${path(set.after)}" fill="none" stroke="${C.sheet}" stroke-width="6" opacity=".8"/>` +
    `<path d="${path(set.after)}" fill="none" stroke="${C.ink}" stroke-width="2.8" stroke-linejoin="round"/></g>` +
    line(left, top - 4, left, bottom, { sw: 1.5, over: 2 }) +
    line(left, bottom, right, bottom, { sw: 1.6, over: 3 }) +
    callouts(report, set, spec, narrow, X, Y, { left: left + 8, top, right, bottom: bottom - 4 }, words) +
    legend(right, narrow ? 12 : 6, words)
  );
}

/** Lowest and highest level of the figure: those of the sheet, or as far as the two curves go; a curve that goes very far is cut. */
function levelsShown({ before, after }: CurveSet, { fromHz, toHz, sCurve }: Specification): readonly [number, number] {
  const levels = [before, after].flatMap((curve) => within(curve, fromHz, toHz).map(([, level]) => level));
  const lowest = sCurve === null ? 0 : Math.max(-1.6, Math.min(-1.07, Math.min(...levels) - 0.03));
  return [lowest, Math.min(1.6, Math.max(1.07, Math.max(...levels) + 0.03))];
}

function axes(
  left: number,
  right: number,
  bottom: number,
  fromHz: number,
  toHz: number,
  X: (hz: number) => number,
  Y: (a: number) => number,
  signed: boolean,
): string {
  let s = '';
  for (const p of signed ? [-1, -0.5, 0, 0.5, 1] : [0, 0.25, 0.5, 0.75, 1])
    s +=
      `<path d="M${left} ${r1(Y(p))}H${right}" stroke="${C.ink}" stroke-width=".7"${p ? ' stroke-dasharray="2 4"' : ''} opacity=".55"/>` +
      T(left - 8, Y(p) + 4.5, `${p * 100}${p === 1 ? '%' : ''}`, 'm', { anchor: 'end' });
  const mega = (fromHz + toHz) / 2 >= 2e6;
  const unit = mega ? 1e6 : 1e3;
  const marks = axisMarks(fromHz / unit, toHz / unit, Math.max(3, Math.floor((right - left) / 76)));
  let ticks = '';
  const labels = axisLabels(marks);
  marks.forEach((v, i) => {
    ticks += `M${r1(X(v * unit))} ${r1(bottom)}v6`;
    s += T(X(v * unit), bottom + 21, labels[i]!, 'm', { anchor: 'middle' });
  });
  return `${s}<path d="${ticks}" stroke="${C.ink}" stroke-width="1.1"/>${T(right, bottom + 39, mega ? 'MHz' : 'kHz', 'l2', { anchor: 'end', size: 13 })}`;
}

function callouts(
  report: Report,
  set: CurveSet,
  spec: Specification,
  narrow: boolean,
  X: (hz: number) => number,
  Y: (a: number) => number,
  room: { left: number; top: number; right: number; bottom: number },
  words: FigureWords,
): string {
  const points = sheetPoints(report, set.response).filter((p) => p.hz >= spec.fromHz && p.hz <= spec.toHz);
  const all = points.map((p) => ({ p, x: X(p.hz), y: Y(levelAt(set.after, p.hz)) }));
  const spots = all.flatMap((s) => (s.p.no === null ? [] : [{ ...s, no: s.p.no }]));
  const disc = (no: number, x: number, y: number): string => callout(x, y, no, { r: 9.5, fill: C.rust, txt: '#fff' });
  const dots = all
    .map(({ x, y, p }) =>
      p.no === null
        ? `<circle cx="${r1(x)}" cy="${r1(y)}" r="3" fill="${p.met ? C.petrol : C.rust}" stroke="${C.sheet}" stroke-width="1.5"/>`
        : `<circle cx="${r1(x)}" cy="${r1(y)}" r="4.5" fill="${C.sheet}" stroke="${C.ink}" stroke-width="2"/>`,
    )
    .join('');
  if (narrow) return dots + spots.map(({ no, x, y }, i) => disc(no, x, y - 18 - (i % 2) * 4)).join('');
  const wanted = spots.map(({ p, no, x, y }) => {
    const name = words.frequency(p.hz);
    const wants = words.wants(p.line);
    return {
      x,
      y,
      w: Math.max(34 + name.length * 7.9 + 26, 34 + wants.length * 5.05 + 10),
      h: BOX_HEIGHT,
      name,
      wants,
      no,
      met: p.met,
    };
  });
  const drawn = (curve: Curve): Pixels =>
    evenly(within(curve, spec.fromHz, spec.toHz, 300).map(([f, a]) => [X(f), Y(a)]));
  const corridor = toleranceCorridor(spec, set.nominal);
  const places = placeBoxes(wanted, room, [
    { points: drawn(set.after), cost: 14, crossing: 90 },
    { points: drawn(set.before), cost: 9, crossing: 25 },
    { points: evenly(corridor.map((c) => [X(c.hz), Y(c.high)])), cost: 3, crossing: 0 },
    { points: evenly(corridor.map((c) => [X(c.hz), Y(c.low)])), cost: 3, crossing: 0 },
  ]);
  const leaders = wanted
    .map(({ x, y }, i) => {
      const at = places[i];
      return at
        ? `<path d="M${r1(at.fromX)} ${r1(at.fromY)}L${r1(x)} ${r1(y)}" stroke="${C.ink}" stroke-width="1.2"/>`
        : '';
    })
    .join('');
  const boxes = wanted
    .map(({ x, y, w, name, wants, no, met }, i) => {
      const at = places[i];
      if (!at) return disc(no, x, y - 18);
      return (
        `<rect x="${at.x}" y="${at.y}" width="${r1(w)}" height="${BOX_HEIGHT}" fill="${C.sheet}" stroke="${C.ink}" stroke-width="1.2"/>` +
        disc(no, at.x + 17, at.y + 21) +
        T(at.x + 34, at.y + 17, name, 'm', { size: 13 }) +
        T(at.x + 34, at.y + 34, wants, 'ls', { size: 13, tracking: 'slight' }) +
        (met ? tick(at.x + w - 14, at.y + 13, 0.85) : cross(at.x + w - 14, at.y + 12, 0.85))
      );
    })
    .join('');
  return leaders + dots + boxes;
}

type Pixels = (readonly [x: number, y: number])[];

/** Points some 7 px apart along a line, so that steep flanks count as much as flat tops. */
function evenly(line: Pixels): Pixels {
  const out: Pixels = [];
  line.forEach(([x, y], i) => {
    const before = line[i - 1];
    const steps = before === undefined ? 1 : Math.max(1, Math.round(Math.hypot(x - before[0], y - before[1]) / 7));
    const last = out[out.length - 1];
    if (last !== undefined && steps === 1 && Math.hypot(x - last[0], y - last[1]) < 5) return;
    for (let k = 1; k <= steps; k++)
      out.push(
        before === undefined
          ? [x, y]
          : [before[0] + ((x - before[0]) * k) / steps, before[1] + ((y - before[1]) * k) / steps],
      );
  });
  return out;
}

function legend(right: number, y: number, { asFound, asLeft, tolerance }: FigureWords): string {
  // Each has a third of the figure's width at most, the sign before it included.
  const most = right / 3 - 34;
  const styled = (words: string) => ({ size: 14 as const, more: squeezedText(words, most - 14) });
  const widthOf = (words: string): number => Math.min(words.length * 6.4 + 14, most);
  const box = rr(0, -8, 26, 15, 1);
  const third = right - 34 - widthOf(tolerance);
  const second = third - 34 - widthOf(asLeft);
  const first = second - 34 - widthOf(asFound);
  return (
    `<g transform="translate(0 ${y})"><path d="M${r1(first)} 0h26" stroke="${C.rust}" stroke-width="2" stroke-dasharray="7 4"/>${T(first + 32, 4.5, asFound, 'ls', styled(asFound))}` +
    `<path d="M${r1(second)} 0h26" stroke="${C.ink}" stroke-width="2.8"/>${T(second + 32, 4.5, asLeft, 'ls', styled(asLeft))}` +
    `<g transform="translate(${r1(third)} 0)"><path d="${box}" fill="${C.tolerance}" stroke="${C.petrol}" stroke-dasharray="4 3"/>${hatch(box, [0, -8, 26, 15], { a: 45, gap: 5, sw: 0.8, op: 0.6, col: C.petrol })}${T(32, 4.5, tolerance, 'ls', styled(tolerance))}</g></g>`
  );
}

const FILE_WIDTH = 960;
const FILE_HEIGHT = 540;

/** The same as a file by itself (SVG 1.1): its letters are said in it, for no sheet of the page goes with it. */
export function figureFile(report: Report, set: CurveSet, spec: Specification, words: FigureWords): string {
  const drawn = responseFigure(FILE_WIDTH, FILE_HEIGHT, report, set, spec, words);
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${FILE_WIDTH}" height="${FILE_HEIGHT}" viewBox="0 0 ${FILE_WIDTH} ${FILE_HEIGHT}">` +
    `<rect width="${FILE_WIDTH}" height="${FILE_HEIGHT}" fill="#fff"/><g font-family="sans-serif" font-size="14">` +
    `${drawn.replaceAll(/ class="(?=ms?\b)/g, ' font-family="monospace" class="')}</g></svg>\n`
  );
}
