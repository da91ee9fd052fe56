/**
 * Looking for a failed part: what is on the tube against the chart. A failure may be larger or smaller than the chart's, so the
 * symptoms are compared by their shape: the change against the sound curve, in decibels, with the size left free between bounds.
 */
import { axisOf, grassOnLine, readVolts } from './eyes.ts';
import { trial } from './fit.ts';
import type { Hands } from './hands.ts';
import type { Notebook } from './notebook.ts';
import type { PrintedCurve, PrintedSheet } from './sheet.ts';
import type { Turner } from './turner.ts';

const FLOOR_DB = -46;
const SMALLEST = 0.4;
const LARGEST = 2;
/** Of the printed height: less is nothing but noise. */
const SILENT = 0.002;
const LEAST_SLOPE_DB = 0.1;
const TRAP_DB = 6;

export interface Candidate {
  readonly part: string;
  /** root mean square of what the part does not explain, decibels */
  readonly apart: number;
}

export interface Suspicion {
  /** root mean square of what is wrong, decibels; of what no slug can mend, where slopes were given */
  readonly left: number;
  /** each part once, the most like first */
  readonly candidates: readonly Candidate[];
}

/** What each slug does to the curve, decibels a turn at each frequency: found by trying. */
export type Slopes = readonly (readonly number[])[];

/**
 * What is on the tube against the chart. With `slopes`, what the slugs could do is left out of it on both sides. A part's symptom may be `smallest` to LARGEST
 * times that charted.
 */
export function suspicion(
  hands: Hands,
  sheet: PrintedSheet,
  curve: PrintedCurve,
  slopes: Slopes = [],
  smallest = SMALLEST,
): Suspicion {
  const floorDb = floorIn(hands, curve);
  const sound = curve.volts.map((v) => signedDb(v, curve, floorDb));
  const seen = readDb(hands, curve, floorDb).map((v, i) => v - sound[i]!);
  const beyond = beyondSlugs(slopes);
  const rest = beyond(seen);
  const left = Math.sqrt(dot(seen, rest) / seen.length);
  const best = new Map<string, number>();
  for (const { part, voltsFrom } of sheet.chart) {
    const volts = voltsFrom[curve.injectAt];
    if (volts === undefined) continue;
    const change = volts.map((v, i) => signedDb(v, curve, floorDb) - sound[i]!);
    const own = beyond(change);
    const size = dot(change, own);
    const share = size < 1e-6 ? 0 : Math.min(Math.max(dot(change, rest) / size, smallest), LARGEST);
    const missed = dot(seen, rest) - 2 * share * dot(change, rest) + share * share * size;
    const apart = Math.sqrt(Math.max(missed, 0) / seen.length);
    best.set(part, Math.min(apart, best.get(part) ?? Number.POSITIVE_INFINITY));
  }
  const candidates = [...best].map(([part, apart]) => ({ part, apart })).sort((a, b) => a.apart - b.apart);
  return { left, candidates };
}

/** Nothing at all on the tube: the parts of the chart that leave next to nothing wherever the sweep goes in, those that leave least first. */
export function silentParts(hands: Hands, sheet: PrintedSheet, curve: PrintedCurve): readonly string[] {
  const heightOf = (volts: readonly number[]): number => volts.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
  const nothing = SILENT * heightOf(curve.volts);
  if (heightOf(readVolts(hands, curve.hz, axisOf(hands))) > nothing) return [];
  const most = ({ voltsFrom }: (typeof sheet.chart)[number]): number =>
    Object.values(voltsFrom).reduce((all, volts) => Math.max(all, heightOf(volts)), 0);
  return sheet.chart
    .filter((entry) => most(entry) < nothing)
    .sort((a, b) => most(a) - most(b))
    .map(({ part }) => part);
}

/** Sizes of a symptom against the chart's that are tried. */
const SIZES = [0.6, 1, 1.6];

export interface Explanation {
  readonly parts: readonly string[];
  readonly cost: number;
  /** how far in from where it belongs each slug would stand then, in the notebook's order */
  readonly turns: readonly number[];
}

export interface Explained {
  /** by slugs alone */
  readonly none: number;
  /** by each symptom of the chart with slugs, the best first; parts that show the same stand together */
  readonly symptoms: readonly Explanation[];
}

/** What was read of a curve, and what it is held against: `levels` at `hz`, with the printed curve and the notebook of those slugs that work on it. */
export interface Paper {
  readonly levels: readonly number[];
  readonly hz: readonly number[];
  readonly curve: PrintedCurve;
  readonly notebook: Notebook;
  readonly levelOf: (volts: number) => number;
}

/** What is on the tube explained by slugs alone, and by each part with slugs: the smaller the figure, the better. `among`: entries of the chart that may be it. */
export function onPaper(
  { levels, hz, curve, notebook, levelOf }: Paper,
  chart: PrintedSheet['chart'],
  among: (entry: PrintedSheet['chart'][number]) => boolean = () => true,
): Explained {
  const none = notebook.fitted(levels).cost;
  const right = curve.volts.map((v) => notebook.shown(levelOf(v)));
  const symptoms = new Map<string, { readonly change: readonly number[]; readonly parts: Set<string> }>();
  for (const entry of chart.filter(among)) {
    const volts = entry.voltsFrom[curve.injectAt];
    if (volts === undefined) continue;
    const change = volts.map((v, i) => notebook.shown(levelOf(v)) - right[i]!);
    const key = change.map((v) => v.toFixed(1)).join(' ');
    const known = symptoms.get(key) ?? { change, parts: new Set() };
    known.parts.add(entry.part);
    symptoms.set(key, known);
  }
  const explained = (change: readonly number[], size: number, quick: boolean) => {
    const more = hz.map((f) => size * between(curve.hz, change, f));
    return notebook.fitted(levels, more, quick);
  };
  const likely = [...symptoms.values()]
    .map((symptom) => ({ ...symptom, cost: explained(symptom.change, 1, true).cost }))
    .sort((a, b) => a.cost - b.cost)
    .slice(0, LOOKED_AT);
  const best = likely
    .map(({ change, parts }) => {
      const bySize = SIZES.map((size) => explained(change, size, false));
      return { parts: [...parts], ...bySize.reduce((least, one) => (one.cost < least.cost ? one : least)) };
    })
    .sort((a, b) => a.cost - b.cost);
  return { none, symptoms: best };
}

/** So many symptoms are worked out in full. */
const LOOKED_AT = 6;

/** Volts of the other sign than the sheet's: the parts that turn the curve over. */
export function reversing(hands: Hands, sheet: PrintedSheet, curve: PrintedCurve): readonly string[] {
  const tallest = (volts: readonly number[]): number =>
    volts.reduce((most, v) => (Math.abs(v) > Math.abs(most) ? v : most), 0);
  const printed = tallest(curve.volts);
  const turned = (volts: readonly number[]): boolean => tallest(volts) / printed < -TURNED_OVER;
  if (!turned(readVolts(hands, curve.hz, axisOf(hands)))) return [];
  return sheet.chart
    .filter(({ voltsFrom }) => turned(voltsFrom[curve.injectAt] ?? curve.volts))
    .map(({ part }) => part);
}

const TURNED_OVER = 0.3;

function between(hz: readonly number[], values: readonly number[], f: number): number {
  const i = hz.findIndex((at) => at >= f);
  if (i <= 0) return values[i < 0 ? values.length - 1 : 0]!;
  const share = (f - hz[i - 1]!) / (hz[i]! - hz[i - 1]!);
  return values[i - 1]! + share * (values[i]! - values[i - 1]!);
}

export function trySlugs({ hands, turner }: Fitter, curve: PrintedCurve, slugs: readonly string[]): Slopes {
  const floorDb = floorIn(hands, curve);
  const look = (): number[] => readDb(hands, curve, floorDb);
  const before = look();
  return slugs.map((id) => trial((slug, by) => turner.turn(slug, by), look, before, id));
}

/** Parts of the chart that spoil a trap: those that raise the level at its frequency by more than TRAP_DB and leave alone the traps that are as they should be. */
export function spoilers(
  sheet: PrintedSheet,
  curve: PrintedCurve,
  missedHz: readonly number[],
  goodHz: readonly number[],
): ReadonlySet<string> {
  const rise = (volts: readonly number[], hz: number): number => {
    const at = curve.hz.indexOf(hz);
    return at < 0 ? 0 : signedDb(volts[at]!, curve) - signedDb(curve.volts[at]!, curve);
  };
  const fitting = sheet.chart.filter(({ voltsFrom }) => {
    const volts = voltsFrom[curve.injectAt] ?? curve.volts;
    return missedHz.some((hz) => rise(volts, hz) > TRAP_DB) && goodHz.every((hz) => rise(volts, hz) < TRAP_DB);
  });
  return new Set(fitting.map(({ part }) => part));
}

/** Levels at some of the printed frequencies, decibels under the highest point that is seen. */
export function levelsDb(hands: Hands, curve: PrintedCurve, hz: readonly number[]): number[] {
  const volts = readVolts(hands, curve.hz, axisOf(hands)).map(Math.abs);
  const peak = Math.max(...volts, 1e-9);
  return hz.map((f) => 20 * Math.log10(Math.max(volts[curve.hz.indexOf(f)]! / peak, 1e-6)));
}

function readDb(hands: Hands, curve: PrintedCurve, floorDb: number): number[] {
  return readVolts(hands, curve.hz, axisOf(hands), true, true).map((v) => signedDb(v, curve, floorDb));
}

/** Grass stands up to about so many times its root mean square from the middle of its line; what is lower than that is not to be read. */
const GRASS = 2;
const HIGHEST_FLOOR_DB = -20;

/** Under the printed peak: what lies lower is not told from nothing, nor from the grass on the line. */
function floorIn(hands: Hands, { volts }: PrintedCurve): number {
  const peak = volts.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
  const grassDb = 20 * Math.log10(Math.max((GRASS * grassOnLine(hands)) / peak, 1e-6));
  return Math.min(Math.max(FLOOR_DB, grassDb), HIGHEST_FLOOR_DB);
}

/** Takes out of a change what turns of the slugs could make: their slopes made orthogonal one after the other (Gram and Schmidt), and projected off. */
function beyondSlugs(slopes: Slopes): (change: readonly number[]) => readonly number[] {
  const directions: number[][] = [];
  for (const slope of slopes) {
    let rest = [...slope];
    for (const d of directions) rest = minus(rest, d, dot(rest, d));
    const size = Math.sqrt(dot(rest, rest));
    // A slug that does next to nothing of its own here would explain anything by many turns.
    if (size > LEAST_SLOPE_DB * Math.sqrt(slope.length)) directions.push(rest.map((v) => v / size));
  }
  return (change) => directions.reduce<readonly number[]>((rest, d) => minus(rest, d, dot(rest, d)), change);
}

function minus(a: readonly number[], b: readonly number[], share: number): number[] {
  return a.map((v, i) => v - share * b[i]!);
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, v, i) => sum + v * b[i]!, 0);
}

/** A diode the wrong way round gives the other sign: that is far from any level. */
function signedDb(volts: number, curve: PrintedCurve, floorDb = FLOOR_DB): number {
  const peak = curve.volts.reduce((most, v) => (Math.abs(v) > Math.abs(most) ? v : most), 0);
  const db = Math.max(floorDb, 20 * Math.log10(Math.max(Math.abs(volts / peak), 1e-6)));
  // Next to nothing has no sign that could be seen.
  if (db === floorDb) return db;
  return volts / peak < 0 ? 2 * floorDb - db : db;
}

export function replacePart({ hands, sheet, turner }: Fitter, part: string): boolean {
  hands.note({ kind: 'part', part });
  if (sheet.mains) hands.act({ type: 'powerSwitched', on: false });
  const refused = hands.act({ type: 'partReplaced', element: part });
  if (sheet.mains) hands.act({ type: 'powerSwitched', on: true });
  for (const slug of sheet.slugs) if (slug.coil === part) turner.renewed(slug.id);
  return refused === null;
}

export interface Fitter {
  readonly hands: Hands;
  readonly sheet: PrintedSheet;
  readonly turner: Turner;
}
