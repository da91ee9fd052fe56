/**
 * What stands on the tube, in words and as a small table, for those who cannot see it. It reads the beam and the tags, as an eye would, to about five
 * per cent of the height; it knows nothing that the screen does not show.
 */
import type { BenchDisplay, MarkerTag } from '../bench/display.ts';
import { frequency, written } from '../words/en/benchFigures.ts';
import { curveWords as words } from '../words/en/curve.ts';
import { type HumpReading, readHumps, readSCurveOnTube, type SCurveOnTube } from './curveShape.ts';

export interface PipReading {
  readonly tag: MarkerTag;
  readonly name: string;
  /** level at the pip as a share of the curve's height (of an S-curve: of half of it, with its sign), to 0.05; null where the pip is off the sweep */
  readonly share: number | null;
}

export interface CurveReading {
  /** height of the curve, divisions; 0 = no curve */
  readonly heightDiv: number;
  /** where its highest place stands, divisions from the centre */
  readonly topXDiv: number;
  /** its humps from left to right, where there is more than one, with the deepest dip between them as a share of the height */
  readonly humps: HumpReading | null;
  /** both peaks and the crossing of a line that runs to either side of its base line */
  readonly sCurve: SCurveOnTube | null;
  readonly pips: readonly PipReading[];
}

export function curveSentence(display: BenchDisplay): string {
  if (display.note !== 'none') return words.notes[display.note];
  const { heightDiv, topXDiv, humps, sCurve, pips } = readCurve(display);
  if (heightDiv === 0) return words.notes.noSignal;
  const parts: string[] =
    sCurve === null
      ? [words.height(written(heightDiv, 1)), words.top(placeOf(topXDiv, pips)), ...humpWords(humps, pips)]
      : [...sCurveWords(sCurve, heightDiv, pips)];
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
  const seen = Math.abs(top - base) > VISIBLE_DIV;
  const sCurve = seen ? readSCurveOnTube(beam, base) : null;
  const height = sCurve === null ? top - base : (sCurve.upperDiv + sCurve.lowerDiv) / 2;
  const pips = tags.map((tag) => ({
    tag,
    name: nameOf(tag),
    share: tag.xDiv === null ? null : seen ? levelAt(beam, tag.xDiv, base) / height : 0,
  }));
  return {
    heightDiv: seen ? Math.abs(height) * (sCurve === null ? 1 : 2) : 0,
    topXDiv,
    humps: seen && sCurve === null ? readHumps(beam, base, height) : null,
    sCurve,
    pips: pips.map((pip) => ({
      ...pip,
      share: pip.share === null ? null : asRead(pip.share, sCurve === null ? 0 : -1),
    })),
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

function asRead(share: number, least: number): number {
  const steps = Math.round(Math.min(Math.max(share, least), 1) / READING_STEP);
  // Adding zero makes a plain nought of a negative one.
  return steps / Math.round(1 / READING_STEP) + 0;
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

/** At a pip where the place is as near to one as an eye would tell, else between its neighbours. */
function placeAt(xDiv: number, pips: readonly PipReading[]): string {
  const near = pips.find((pip) => pip.tag.xDiv !== null && Math.abs(pip.tag.xDiv - xDiv) <= PIP_REACH_DIV);
  return near === undefined ? placeOf(xDiv, pips) : words.at(frequency(near.tag.hz));
}

function humpWords(humps: HumpReading | null, pips: readonly PipReading[]): readonly string[] {
  if (humps === null) return [];
  const places = humps.xDiv.map((x) => placeAt(x, pips));
  return [words.humps(places, `${written(100 * asRead(humps.dipShare, 0), 0)}%`)];
}

function sCurveWords(curve: SCurveOnTube, heightDiv: number, pips: readonly PipReading[]): readonly string[] {
  const even = written(100 * (Math.round((20 * curve.upperDiv) / curve.lowerDiv) / 20), 0);
  return [
    words.sCurve(written(heightDiv, 1)),
    words.upper(placeAt(curve.upperXDiv, pips)),
    words.lower(placeAt(curve.lowerXDiv, pips)),
    words.even(`${even}%`),
    words.crossing(placeAt(curve.zeroXDiv, pips)),
  ];
}
