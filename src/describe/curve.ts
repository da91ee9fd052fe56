/**
 * What stands on the tube, in words and as a small table, for those who cannot see it. It reads the beam and the tags, as an eye would, to about five
 * per cent of the height; it knows nothing that the screen does not show.
 */
import type { BenchDisplay, MarkerTag } from '../bench/display.ts';
import { frequency, written } from './catalogue/benchFigures.ts';
import { curveWords as words } from './catalogue/curve.ts';

export interface PipReading {
  readonly tag: MarkerTag;
  readonly name: string;
  /** level at the pip as a share of the curve's height, to 0.05; null where the pip is off the sweep */
  readonly share: number | null;
}

export interface CurveReading {
  /** height of the curve, divisions; 0 = no curve */
  readonly heightDiv: number;
  /** where its highest place stands, divisions from the centre */
  readonly topXDiv: number;
  readonly pips: readonly PipReading[];
}

export function curveSentence(display: BenchDisplay): string {
  if (display.note !== 'none') return words.notes[display.note];
  const { heightDiv, topXDiv, pips } = readCurve(display);
  if (heightDiv === 0) return words.notes.noSignal;
  const parts = [words.height(written(heightDiv, 1)), words.top(placeOf(topXDiv, pips))];
  if (pips.length === 0) parts.push(words.noPips);
  for (const { name, share } of pips) {
    parts.push(share === null ? words.pipOff(name) : words.pip(name, `${written(100 * share, 0)}%`));
  }
  if (display.humDiv > VISIBLE_DIV) parts.push(words.hum);
  return `${parts.join('; ')}.`;
}

const VISIBLE_DIV = 0.1;
/** Half of the stretch about a pip that is averaged, so that the beat itself does not count. */
const PIP_REACH_DIV = 0.15;
/** Points nearer to the base line than this lie on it. */
const ON_BASE_DIV = 0.15;
const EDGE_SHARE = 0.06;
const READING_STEP = 0.05;

export function readCurve({ beam, tags }: Pick<BenchDisplay, 'beam' | 'tags'>): CurveReading {
  const base = baseLine(beam);
  let top = base;
  let topXDiv = 0;
  for (let i = 0; i < beam.count; i++) {
    const y = beam.data[3 * i + 1]!;
    if (Math.abs(y - base) > Math.abs(top - base)) {
      top = y;
      topXDiv = beam.data[3 * i]!;
    }
  }
  const height = top - base;
  const seen = Math.abs(height) > VISIBLE_DIV;
  const pips = tags.map((tag) => ({
    tag,
    name: nameOf(tag),
    share: tag.xDiv === null ? null : seen ? levelAt(beam, tag.xDiv, base) / height : 0,
  }));
  return {
    heightDiv: seen ? Math.abs(height) : 0,
    topXDiv,
    pips: pips.map((pip) => ({ ...pip, share: pip.share === null ? null : asRead(pip.share) })),
  };
}

/** The level of the skirts at both ends of the trace: the middle one of the points there. */
function baseLine({ data, count }: BenchDisplay['beam']): number {
  let left = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < count; i++) {
    left = Math.min(left, data[3 * i]!);
    right = Math.max(right, data[3 * i]!);
  }
  const reach = EDGE_SHARE * (right - left);
  const levels: number[] = [];
  for (let i = 0; i < count; i++) {
    const x = data[3 * i]!;
    if (x - left <= reach || right - x <= reach) levels.push(data[3 * i + 1]!);
  }
  levels.sort((a, b) => a - b);
  return levels[levels.length >> 1] ?? 0;
}

function levelAt({ data, count }: BenchDisplay['beam'], xDiv: number, base: number): number {
  let sum = 0;
  let points = 0;
  for (let i = 0; i < count; i++) {
    const above = data[3 * i + 1]! - base;
    if (Math.abs(data[3 * i]! - xDiv) > PIP_REACH_DIV || Math.abs(above) < ON_BASE_DIV) continue;
    sum += above;
    points++;
  }
  return points === 0 ? 0 : sum / points;
}

function asRead(share: number): number {
  const steps = Math.round(Math.min(Math.max(share, 0), 1) / READING_STEP);
  return steps / Math.round(1 / READING_STEP);
}

function nameOf(tag: MarkerTag): string {
  if (tag.kind === 'tunable') return words.tunable;
  return tag.number === null ? words.comb(frequency(tag.hz)) : words.pipNumbered(tag.number, frequency(tag.hz));
}

/** Between which pips the top stands; without pips, at which part of the face. */
function placeOf(topXDiv: number, pips: readonly PipReading[]): string {
  const numbered = pips.filter((pip) => pip.tag.number !== null && pip.tag.xDiv !== null);
  const byPlace = [...numbered].sort((a, b) => a.tag.xDiv! - b.tag.xDiv!);
  const left = byPlace.filter((pip) => pip.tag.xDiv! <= topXDiv).at(-1);
  const right = byPlace.find((pip) => pip.tag.xDiv! > topXDiv);
  if (left !== undefined && right !== undefined) return words.between(frequency(left.tag.hz), frequency(right.tag.hz));
  if (left !== undefined) return words.beside('right', frequency(left.tag.hz));
  if (right !== undefined) return words.beside('left', frequency(right.tag.hz));
  return topXDiv < -1.5 ? words.places.left : topXDiv > 1.5 ? words.places.right : words.places.middle;
}
