/**
 * What stands on the tube, in words and as a small table, for those who cannot see it. It reads the beam and the tags, as an eye would, to about five
 * per cent of the height; it knows nothing that the screen does not show.
 */
import type { BenchDisplay, MarkerTag } from '../bench/display.ts';
import type { Words } from '../words/words.ts';
import { type HumpReading, readHumps, readSCurveOnTube, type SCurveOnTube } from './curveShape.ts';

export interface PipReading {
  readonly tag: MarkerTag;
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

export function curveSentence(words: Words, display: BenchDisplay): string {
  const { curve: say, format } = words;
  if (display.note !== 'none') return say.notes[display.note];
  const { heightDiv, topXDiv, humps, sCurve, pips } = readCurve(display);
  if (heightDiv === 0) return say.notes.noSignal;
  const parts: string[] =
    sCurve === null
      ? [
          say.height(format.written(heightDiv, 1)),
          say.top(placeOf(words, topXDiv, pips)),
          ...humpWords(words, humps, pips),
        ]
      : [...sCurveWords(words, sCurve, heightDiv, pips)];
  if (pips.length === 0) parts.push(say.noPips);
  for (const { tag, share } of pips) {
    const name = pipName(words, tag);
    parts.push(share === null ? say.pipOff(name) : say.pip(name, format.percent(share)));
  }
  if (display.humDiv > VISIBLE_DIV) parts.push(say.hum);
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

/** `pip 3, 44.00 MHz,` or what else made it. */
export function pipName({ curve, format }: Words, tag: MarkerTag): string {
  if (tag.kind === 'tunable') return curve.tunable;
  if (tag.kind === 'unnamed') return curve.pipUnnamed(tag.number ?? 0);
  const at = format.frequency(tag.hz);
  return tag.number === null ? curve.comb(at) : curve.pipNumbered(tag.number, at);
}

/** As a place on the face: a pip's frequency, where it has a name. */
function placeName(words: Words, tag: MarkerTag): string {
  return tag.kind === 'unnamed' ? pipName(words, tag) : words.format.frequency(tag.hz);
}

/** Between which pips the top stands; without pips, at which part of the face. */
function placeOf(words: Words, topXDiv: number, pips: readonly PipReading[]): string {
  const { curve: say } = words;
  const named = ({ tag }: PipReading): string => placeName(words, tag);
  const numbered = pips.filter((pip) => pip.tag.number !== null && pip.tag.xDiv !== null);
  const byPlace = [...numbered].sort((a, b) => a.tag.xDiv! - b.tag.xDiv!);
  const left = byPlace.filter((pip) => pip.tag.xDiv! <= topXDiv).at(-1);
  const right = byPlace.find((pip) => pip.tag.xDiv! > topXDiv);
  if (left !== undefined && right !== undefined) return say.between(named(left), named(right));
  if (left !== undefined) return say.beside('right', named(left));
  if (right !== undefined) return say.beside('left', named(right));
  return topXDiv < -1.5 ? say.places.left : topXDiv > 1.5 ? say.places.right : say.places.middle;
}

/** At a pip where the place is as near to one as an eye would tell, else between its neighbours. */
function placeAt(words: Words, xDiv: number, pips: readonly PipReading[]): string {
  const near = pips.find((pip) => pip.tag.xDiv !== null && Math.abs(pip.tag.xDiv - xDiv) <= PIP_REACH_DIV);
  return near === undefined ? placeOf(words, xDiv, pips) : words.curve.at(placeName(words, near.tag));
}

function humpWords(words: Words, humps: HumpReading | null, pips: readonly PipReading[]): readonly string[] {
  if (humps === null) return [];
  const places = humps.xDiv.map((x) => placeAt(words, x, pips));
  return [words.curve.humps(places, words.format.percent(asRead(humps.dipShare, 0)))];
}

function sCurveWords(
  words: Words,
  curve: SCurveOnTube,
  heightDiv: number,
  pips: readonly PipReading[],
): readonly string[] {
  const { curve: say, format } = words;
  return [
    say.sCurve(format.written(heightDiv, 1)),
    say.upper(placeAt(words, curve.upperXDiv, pips)),
    say.lower(placeAt(words, curve.lowerXDiv, pips)),
    say.even(format.percent(Math.round((20 * curve.upperDiv) / curve.lowerDiv) / 20)),
    say.crossing(placeAt(words, curve.zeroXDiv, pips)),
  ];
}
