/**
 * The whole job as a careful person does it: safe, connect, set up, then the sheet's own procedure step by step, touch up, look for a failed part where the
 * curve cannot be had, prove, sign off.
 *
 * Over 300 lines: the job from start to end, one step of it after the other.
 */
import { takingNotes } from './diagnosis.ts';
import {
  levelsDb,
  onPaper,
  replacePart,
  reversing,
  type Suspicion,
  silentParts,
  spoilers,
  suspicion,
  tryLines,
  trySlugs,
} from './faultFinding.ts';
import { byNotebook, newPad, stageByNotebook } from './byNotebook.ts';
import { type Fit, fitCurve, residualOf } from './fit.ts';
import type { Hands } from './hands.ts';
import { offBy, oscillatorOf, setOscillator } from './oscillator.ts';
import { peakUp } from './peaking.ts';
import { prove } from './proofs.ts';
import { clipAfresh, letWarm, makeSafe, type Phased, setByNeedle, setUpFor, smallPips } from './settings.ts';
import type { PrintedCurve, PrintedResponse, PrintedSheet, PrintedSlug } from './sheet.ts';
import { bringInside, levelBy, lowerEach, worstDemand } from './toLimits.ts';
import { bringNotch, setTrap, type WantedNotch } from './traps.ts';
import type { Turner } from './turner.ts';

/** What is left of a curve, decibels rms, that a person calls right; and what no slug should leave. */
const RIGHT_DB = 0.25;
const WRONG_DB = 1.2;
/** Of the distance from what is wanted to the limit: so near a demand is left alone. */
const INSIDE = 0.6;
const S_CURVE_RIGHT = 1;
const S_CURVE_WRONG = 6;
/** Farther off than this, narrow circuits are peaked first; and what counts as narrow, as a share of the centre. */
const FAR_DB = 3;
const NARROW = 0.2;
/** A curve that only wants touching up, and one that wants the whole procedure again. */
const NEARLY = 2;
const FAR = 12;
const NEAR_STOP_TURNS = 1.5;
const RESERVE_SECONDS = 600;
const RESERVE_SHARE = 0.4;
const PROVING_SECONDS = 420;
const ROUNDS = 8;
const PASSES = 3;
const NOTEBOOK_PASSES = 5;
/** Of what was wrong before, where a pass has been worth it. */
const MUCH_BETTER = 0.8;
/** So far from its place a notch is looked for in the notebook; and what a turn moves it by where nothing is seen there. */
const NOTCH_SHARE = 0.02;
const SHARE_A_TURN = 0.01;
/** So far a stray notch is looked for, as a share of its frequency, and of the way to the next one. */
const NOTCH_SEARCH = 0.05;
const HALF_WAY = 0.6;
const SPARE_DB = 1;
/** From here to the limit an eye is not sure on which side of it a demand is. */
const READS_OUTSIDE = 0.95;
/** What reads so is inside, whatever the eye does. */
const SURELY_INSIDE = 0.75;
/** Traps and humps pull at each other: so often are they set in turn at the end. */
const LAST_PASSES = 5;
const MOST_PARTS = 4;
const MOST_OBVIOUS = 3;
const WATCHES = 5;
const WATCH_SECONDS = 30;
/** A part that leaves less than this of what is wrong unexplained is worth a try. */
const EXPLAINED = 0.4;
/** Both together, as the set stands and on paper, where the slugs do what they can; and less than this in all is nothing. */
const UNEXPLAINED = 0.36;
const SOMETHING_WRONG = 15;
/** The same once the slugs have done what they can. */
const EXPLAINED_BY_ONE = 0.7;
/** Symptoms this near to each other look the same, decibels rms. */
const ALIKE_DB = 0.1;
/** From a later point a part shows as charted or not at all. */
const SMALLEST_THERE = 0.8;
/** A trap that lets through more than its limit by this much has something the matter. */
const TRAP_MISSED_DB = 3;

export function doTheJob(given: Hands, sheet: PrintedSheet, turner: Turner, crystalsHz: readonly number[]): void {
  const { hands, diagnosis } = takingNotes(given, sheet, turner);
  makeSafe(hands, sheet);
  const contacts = clipAfresh(hands, sheet);
  const stood = { phasing: new Map<string, Phased>(), dials: new Map<string, number>(), warm: !sheet.mains };
  const bench: AtBench = { hands, sheet, turner, crystalsHz, stood };
  const [main] = sheet.responses;
  if (main === undefined) throw new Error('the sheet asks for nothing');
  if (sheet.chart.length > 0) {
    tryLines(bench);
    obviousParts(bench, main);
  }
  backFromStops(bench);
  backThroughCoils(bench);
  let right = withNotebook(bench);
  if (sheet.chart.length > 0 && stuckCoils(bench)) right = withNotebook(bench);
  if (!right) theLongWay(bench, main);
  standFor(bench, main, undefined, true);
  const beats = oscillatorOf(main) !== null;
  smallPips(hands, beats);
  prove(hands, sheet, beats);
  if (sheet.asksDiagnosis) hands.act(diagnosis(contacts));
  hands.act({ type: 'signedOff' });
}

/** Where the notebook does not do: the procedure of the sheet, step by step, slug by slug, and parts that may have failed. */
function theLongWay(bench: AtBench, main: PrintedResponse): void {
  const mayHaveFailed = bench.sheet.chart.length > 0;
  if (!asPrinted(bench, NEARLY)) followAndTouchUp(bench);
  const tried = new Set<string>();
  if (mayHaveFailed) failedPart(bench, main, tried);
  for (let pass = 1; pass < PASSES && timeLeft(bench) && !asPrinted(bench, FAR); pass++) followAndTouchUp(bench);
  touchUp(bench);
  if (mayHaveFailed) failedPart(bench, main, tried);
  toLimits(bench);
}

/** A core that stands beyond the middle of a coil that it can go through stands on the wrong one of two peaks. */
function backThroughCoils({ sheet, turner }: AtBench): void {
  for (const { id, goesThrough, travelTurns } of sheet.slugs) {
    const beyond = turner.depthOf(id) - travelTurns / 2;
    if (goesThrough && beyond > 0) turner.turn(id, -2 * beyond);
  }
}

/** Curve by curve as the notebook has it, the first one last. True where every demand reads inside at the end. */
function withNotebook(bench: AtBench): boolean {
  const { hands, sheet, turner } = bench;
  let worst = 0;
  for (const response of [...sheet.responses].reverse()) {
    const curve = standFor(bench, response);
    const slugs = slugsOf(sheet, response);
    const notches = slugs.filter(({ trapHz }) => trapHz !== null && !isShelf(response, trapHz));
    const rest = slugs.filter((slug) => !notches.includes(slug));
    const seen = notches.filter(({ trapHz }) => reaches(hands, trapHz!));
    const pad = newPad(turner, response, rest, seen.map(({ trapHz }) => trapHz!));
    let stages = stepsAlone(sheet, response);
    let left = Number.POSITIVE_INFINITY;
    for (let pass = 0; pass < NOTEBOOK_PASSES && timeToProve(bench); pass++) {
      const before = slugs.map(({ id }) => turner.depthOf(id));
      for (const trap of seen) bringNotch(hands, turner, wantedNotch(response, trap, slugs), levelBy(curve), pass > 0);
      const moved = slugs.some(({ id }, i) => turner.depthOf(id) !== before[i]);
      if (pass > 0 && left < SURELY_INSIDE && !moved) break;
      const now = byNotebook(hands, turner, response, curve, pad, stages.length === 0 || pass > 0, () => timeToProve(bench));
      if (process.env.DBG) console.log('pass', pass, response.id, now, left);
      const stuck = now > READS_OUTSIDE && (pass === 0 ? now === Number.POSITIVE_INFINITY : now > MUCH_BETTER * left);
      left = Math.min(left, now);
      if (stuck && stages.length > 0) {
        for (const step of stages) stageAlone(bench, response, step);
        stages = [];
        standFor(bench, response);
        left = Number.POSITIVE_INFINITY;
      } else if (stuck) break;
    }
    worst = Math.max(worst, left);
  }
  return worst < READS_OUTSIDE;
}

function curveOf({ curves }: PrintedSheet, { id, setUp }: PrintedResponse): PrintedCurve {
  return curves.find((c) => c.response === id && c.injectAt === setUp.injectAt)!;
}

type AloneStep = PrintedSheet['procedure'][number];

/** Steps of the procedure that sweep a stage from a point of its own, as far as they are about this curve. */
function stepsAlone(sheet: PrintedSheet, response: PrintedResponse): readonly AloneStep[] {
  const first = sheet.responses[0]?.id;
  return sheet.procedure.filter(
    (step) =>
      step.phase === 'align' &&
      step.at !== undefined &&
      step.at !== response.setUp.injectAt &&
      (step.response ?? first) === response.id &&
      sheet.curves.some((c) => c.response === response.id && c.injectAt === step.at && c.effects.length > 0),
  );
}

function stageAlone(bench: AtBench, response: PrintedResponse, { at, slugs }: AloneStep): void {
  const { hands, sheet, turner } = bench;
  const curve = standFor(bench, response, at);
  const trapsHz = sheet.slugs.flatMap(({ trapHz }) => (trapHz === null ? [] : [trapHz]));
  const others = sheet.slugs.filter((s) => slugs.includes(s.id) && (s.trapHz === null || isShelf(response, s.trapHz)));
  if (others.length > 0) stageByNotebook(hands, turner, curve, others, isSCurve(response), trapsHz, levelBy(curveOf(sheet, response)));
}

/** Where the sheet wants the notch, and how far a turn moves it by the notebook. */
function wantedNotch(
  { judge, effects, lookAtHz }: PrintedResponse,
  { id, trapHz }: PrintedSlug,
  slugs: readonly PrintedSlug[],
): WantedNotch {
  const hz = trapHz!;
  const { turns, levels } = effects.find(({ slug }) => slug === id)!;
  const lowest = (k: number): number => {
    let at = hz;
    let least = Number.POSITIVE_INFINITY;
    lookAtHz.forEach((f, i) => {
      if (Math.abs(f / hz - 1) > NOTCH_SHARE) return;
      const ratio = levels[k]![i]!;
      if (ratio < least) [at, least] = [f, ratio];
    });
    return at;
  };
  const sound = judge([...levels[turns.indexOf(0)]!]);
  const depth = sound.find((demand) => demand.id === `trap:${hz}`);
  const place = sound.find((demand) => demand.id === `notch:${hz}`);
  const [out, into] = [turns.indexOf(-1), turns.indexOf(1)];
  const moved = (lowest(into) - lowest(out)) / 2;
  return {
    slug: id,
    hz,
    hzATurn: moved < 0 ? moved : -SHARE_A_TURN * hz,
    withinHz: place?.high ?? null,
    // Half way to what is wanted, or as deep as a sound set has it.
    wantedDb: depth === undefined ? null : Math.min(depth.high!, Math.max(depth.high! - depth.tolerance / 2, depth.measured + SPARE_DB)),
    searchHz: slugs.reduce(
      (least, other) => (other.trapHz === null || other.trapHz === hz ? least : Math.min(least, Math.abs(other.trapHz - hz) * HALF_WAY)),
      NOTCH_SEARCH * hz,
    ),
    shared: slugs.some((other) => other.id !== id && other.trapHz === hz),
  };
}

function followAndTouchUp(bench: AtBench): void {
  followProcedure(bench);
  touchUp(bench);
}

/** Against the clock, what is left is kept for proving and signing. */
function timeLeft({ hands, sheet }: AtBench): boolean {
  const { timeLimitSeconds: limit } = sheet;
  return limit === null || hands.clockSeconds() < limit - Math.max(RESERVE_SECONDS, RESERVE_SHARE * limit);
}

/** The last touches may take all but what proving and signing need. */
function timeToProve({ hands, sheet }: AtBench): boolean {
  const { timeLimitSeconds: limit } = sheet;
  return limit === null || hands.clockSeconds() < limit - PROVING_SECONDS;
}

/** Where every core stands at the same stop, somebody has screwed them in or out: half way is where coils are wound for. */
function backFromStops({ sheet, turner }: AtBench): void {
  const atStop = sheet.slugs.every(({ id, travelTurns }) => {
    const depth = turner.depthOf(id);
    return depth < NEAR_STOP_TURNS || depth > travelTurns - NEAR_STOP_TURNS;
  });
  if (!atStop) return;
  for (const { id, travelTurns } of sheet.slugs) turner.turn(id, travelTurns / 2 - turner.depthOf(id));
}

/** Every curve that the job asks for is near enough, in units of what is called right. */
function asPrinted(bench: AtBench, times: number): boolean {
  return bench.sheet.responses.every((response) => {
    const curve = standFor(bench, response);
    const wanted = oscillatorOf(response);
    if (wanted !== null) return Math.abs(offBy(bench.hands, wanted.hz) ?? Infinity) < wanted.toleranceHz / 2;
    return residualOf(bench.hands, curve, isSCurve(response)) < times * right(response);
  });
}

interface AtBench {
  readonly hands: Hands;
  readonly sheet: PrintedSheet;
  readonly turner: Turner;
  readonly crystalsHz: readonly number[];
  /** how the phasing was found to stand for each curve, where a bias knob for each line's volts, and whether the set has been seen to stand still */
  readonly stood: { readonly phasing: Map<string, Phased>; readonly dials: Map<string, number>; warm: boolean };
}

/** `afresh`: phased again, although it has been for this curve. */
function standFor(bench: AtBench, response: PrintedResponse, injectAt?: string, afresh = false): PrintedCurve {
  const { hands, sheet, crystalsHz, stood } = bench;
  const at = injectAt ?? response.setUp.injectAt;
  const curve = sheet.curves.find((c) => c.response === response.id && c.injectAt === at);
  if (curve === undefined) throw new Error(`the sheet has no curve of ${response.id} from ${at}`);
  // The sweep runs behind the tube's drive by as much wherever it goes in.
  const place = response.id;
  const phased = afresh ? undefined : stood.phasing.get(place);
  setUpFor(hands, sheet, response, curve, crystalsHz, isSCurve(response), phased);
  if (!stood.warm) {
    stood.warm = true;
    if (letWarm(hands)) setUpFor(hands, sheet, response, curve, crystalsHz, isSCurve(response));
  }
  setByNeedle(hands, sheet, response.setUp, stood.dials);
  stood.phasing.set(place, { degrees: hands.knobs().phasingDegrees, mirror: hands.knobs().mirror });
  return curve;
}

function followProcedure(bench: AtBench): void {
  const { hands, sheet, turner } = bench;
  for (const step of sheet.procedure) {
    if (step.phase !== 'align' || step.slugs.length === 0) continue;
    const response =
      step.response === undefined ? sheet.responses[0] : sheet.responses.find((r) => r.id === step.response);
    // A step about a curve that this job does not ask for.
    if (response === undefined) continue;
    const curve = standFor(bench, response, step.at);
    if (oscillatorOf(response) !== null) {
      for (const slug of step.slugs) setOscillator(hands, turner, slug, response);
      continue;
    }
    const traps = sheet.slugs.filter((s) => s.trapHz !== null && step.slugs.includes(s.id));
    for (const trap of traps) if (reaches(hands, trap.trapHz!)) setTrap(hands, turner, trap.id, trap.trapHz!);
    const others = step.slugs.filter((id) => !traps.some((t) => t.id === id));
    if (others.length > 0) fitSlugs(bench, response, curve, others);
  }
}

/** All slugs of a response together, and its traps again, until nothing more is to be had. */
function touchUp(bench: AtBench): void {
  const { hands, sheet, turner } = bench;
  for (const response of sheet.responses) {
    if (oscillatorOf(response) !== null) {
      standFor(bench, response);
      for (const { id } of slugsOf(sheet, response)) setOscillator(hands, turner, id, response);
      continue;
    }
    let last = Number.POSITIVE_INFINITY;
    for (let pass = 0; pass < PASSES && timeLeft(bench); pass++) {
      const curve = standFor(bench, response);
      const left = residualOf(hands, curve, isSCurve(response));
      if (left < right(response) || left > 0.97 * last) break;
      last = left;
      const slugs = slugsOf(sheet, response);
      fitSlugs(
        bench,
        response,
        curve,
        slugs.filter((s) => s.trapHz === null).map((s) => s.id),
      );
      for (const trap of slugs) {
        if (trap.trapHz !== null && reaches(hands, trap.trapHz)) setTrap(hands, turner, trap.id, trap.trapHz);
      }
    }
  }
}

/** Every demand well inside its limits, as far as the eye can tell; the first response last, for the set is signed off by it. */
function toLimits(bench: AtBench): void {
  const { hands, sheet, turner } = bench;
  for (const response of [...sheet.responses].reverse()) {
    if (!timeToProve(bench)) return;
    // An oscillator that stands at zero beat stays there.
    if (oscillatorOf(response) !== null) continue;
    const slugs = slugsOf(sheet, response);
    const notches = slugs.filter(({ trapHz }) => trapHz !== null && !isShelf(response, trapHz));
    const rest = slugs.filter((slug) => !notches.includes(slug)).map(({ id }) => id);
    let best = { worst: Number.POSITIVE_INFINITY, depths: [] as readonly number[] };
    for (let pass = 0; ; pass++) {
      const curve = standFor(bench, response);
      for (const { id, trapHz } of notches) {
        if (timeToProve(bench) && reaches(hands, trapHz!)) setTrap(hands, turner, id, trapHz!);
      }
      const worst = worstDemand(hands, response, curve);
      if (worst < best.worst) best = { worst, depths: slugs.map(({ id }) => turner.depthOf(id)) };
      if (worst < INSIDE || pass === LAST_PASSES || !timeToProve(bench)) break;
      bringInside(hands, turner, response, curve, rest, () => timeToProve(bench));
    }
    // Where it was best it is left.
    slugs.forEach(({ id }, i) => {
      turner.turn(id, best.depths[i]! - turner.depthOf(id));
    });
    if (best.worst < READS_OUTSIDE || !timeToProve(bench)) continue;
    lowerEach(hands, turner, response, standFor(bench, response), rest, () => timeToProve(bench));
  }
}

/** The sheet wants something left where this trap works: it is not set for the least, but for a height. */
function isShelf({ specification }: PrintedResponse, trapHz: number): boolean {
  return specification.points.some(({ hz, low }) => hz === trapHz && low > 0);
}

function fitSlugs(
  { hands, turner }: AtBench,
  response: PrintedResponse,
  curve: PrintedCurve,
  slugs: readonly string[],
): Fit {
  if (isNarrow(response) && residualOf(hands, curve, false) > FAR_DB) {
    peakUp(hands, turner, response.setUp.centreHz, slugs);
  }
  return fitCurve(hands, turner, curve, slugs, isSCurve(response), ROUNDS, right(response));
}

/**
 * The set as it was brought in already looks like one line of the chart, as it stands or but for what slugs could do: such parts are replaced before a slug is
 * touched.
 */
function obviousParts(bench: AtBench, main: PrintedResponse): void {
  const tried = new Set<string>();
  for (let n = 0; n < MOST_OBVIOUS; n++) {
    const curve = standFor(bench, main);
    const part = partInSight(bench, main, curve, tried);
    if (part === null) return;
    tried.add(part);
    replacePart(bench, part);
    renewSlugOf(bench, part, main);
  }
}

/** Where no part is to blame the curve is looked at again for a while, and nothing touched: a joint may come and go. */
function partInSight(
  bench: AtBench,
  main: PrintedResponse,
  curve: PrintedCurve,
  tried: ReadonlySet<string>,
): string | null {
  const { hands, sheet } = bench;
  for (let look = 0; look < WATCHES && timeLeft(bench); look++) {
    if (look > 0) hands.wait(WATCH_SECONDS);
    const dead = silentParts(hands, sheet, curve).find((part) => !tried.has(part));
    if (dead !== undefined) return dead;
    const over = reversing(hands, sheet, curve).find((part) => !tried.has(part));
    if (over !== undefined) return over;
    const plain = suspicion(hands, sheet, curve);
    if (plain.left < 2 * right(main)) continue;
    const part = onPaperToo(bench, main, curve, plain, tried) ?? likeliest(bench, main, plain, tried);
    if (part !== null) return part;
  }
  return null;
}

/** The part whose symptom is seen, among like ones the one that other points of injection speak for; null where none explains it. */
function likeliest(
  bench: AtBench,
  main: PrintedResponse,
  { left, candidates }: Suspicion,
  tried: ReadonlySet<string>,
): string | null {
  const open = candidates.filter((c) => !tried.has(c.part));
  const [first] = open;
  if (first === undefined || first.apart > EXPLAINED * left) return null;
  const alike = open.filter((c) => c.apart <= first.apart + ALIKE_DB).map((c) => c.part);
  return alike.length < 2 ? first.part : byStages(bench, main, alike);
}

/** A part that explains much of what is seen, as the set stands and on paper, with what the slugs could do, against the slugs alone. */
function onPaperToo(
  bench: AtBench,
  main: PrintedResponse,
  curve: PrintedCurve,
  { left, candidates }: Suspicion,
  tried: ReadonlySet<string>,
): string | null {
  const { hands, sheet, turner } = bench;
  const slugs = slugsOf(sheet, main).filter((s) => s.trapHz === null || isShelf(main, s.trapHz));
  const trapsHz = sheet.slugs.flatMap(({ trapHz }) => (trapHz === null ? [] : [trapHz]));
  const { notebook } = newPad(turner, main, slugs, trapsHz);
  const { none, symptoms } = onPaper(hands, sheet, main, curve, notebook);
  const asItStands = (part: string): number => Math.min(1, (candidates.find((c) => c.part === part)?.apart ?? left) / left);
  const open = symptoms
    .map(({ parts, cost }) => ({ parts: parts.filter((part) => !tried.has(part)), cost }))
    .filter(({ parts }) => parts.length > 0)
    .map(({ parts, cost }) => ({ parts, unexplained: (cost / none) * Math.min(...parts.map(asItStands)) }))
    .sort((a, b) => a.unexplained - b.unexplained);
  const [first] = open;
  if (first === undefined || none < SOMETHING_WRONG || first.unexplained > UNEXPLAINED) return null;
  return first.parts.length === 1 ? first.parts[0]! : byStages(bench, main, first.parts);
}

/** Swept from each point of the sheet in turn: a part before the point shows nothing there. */
function byStages(bench: AtBench, main: PrintedResponse, parts: readonly string[]): string {
  const apart = new Map(parts.map((part) => [part, 0]));
  for (const { response, injectAt } of bench.sheet.curves) {
    if (response !== main.id || injectAt === main.setUp.injectAt) continue;
    const { candidates } = suspicion(bench.hands, bench.sheet, standFor(bench, main, injectAt), [], SMALLEST_THERE);
    for (const c of candidates) {
      const sum = apart.get(c.part);
      if (sum !== undefined) apart.set(c.part, sum + c.apart ** 2);
    }
  }
  standFor(bench, main);
  return parts.reduce((best, part) => (apart.get(part)! < apart.get(best)! - 1e-9 ? part : best));
}

/** A new coil comes with its core half way: it is brought to the curve alone. */
function renewSlugOf(bench: AtBench, part: string, main: PrintedResponse): void {
  const slug = bench.sheet.slugs.find((s) => s.coil === part);
  if (slug === undefined) return;
  const curve = standFor(bench, main);
  if (slug.trapHz !== null && reaches(bench.hands, slug.trapHz)) {
    setTrap(bench.hands, bench.turner, slug.id, slug.trapHz);
  } else fitCurve(bench.hands, bench.turner, curve, [slug.id], isSCurve(main), ROUNDS, right(main));
}

/** A core that would not turn is in a coil that has to go. */
function stuckCoils(bench: AtBench): boolean {
  const stuck = bench.sheet.slugs.filter((s) => bench.turner.stuck.has(s.id));
  for (const slug of stuck) replacePart(bench, slug.coil);
  return stuck.length > 0;
}

/**
 * What the slugs cannot cure: parts are tried in the order in which their symptoms fit, until the curve can be had. Where a trap will not come down, only what spoils
 * that trap is in question.
 */
function failedPart(bench: AtBench, main: PrintedResponse, tried: Set<string>): void {
  const { hands, sheet } = bench;
  for (let n = 0; n < MOST_PARTS && timeLeft(bench); n++) {
    if (!stuckCoils(bench)) {
      const curve = standFor(bench, main);
      const { missed, good } = traps(bench, main, curve);
      if (missed.length === 0 && suspicion(hands, sheet, curve).left < wrong(main)) return;
      const slugs = slugsOf(sheet, main).map((s) => s.id);
      const { left, candidates } = suspicion(hands, sheet, curve, trySlugs(bench, curve, slugs));
      const spoils = spoilers(sheet, curve, missed, good);
      const next = candidates.find((c) => !tried.has(c.part) && (spoils.size === 0 || spoils.has(c.part)));
      if (next === undefined || (spoils.size === 0 && next.apart > EXPLAINED_BY_ONE * left)) return;
      tried.add(next.part);
      if (!replacePart(bench, next.part)) continue;
    }
    followProcedure(bench);
    touchUp(bench);
  }
}

/** Which traps of the sheet hold their level down as asked, and which do not, whatever was turned. */
function traps(
  { hands, sheet }: AtBench,
  main: PrintedResponse,
  curve: PrintedCurve,
): { readonly missed: readonly number[]; readonly good: readonly number[] } {
  const asked = main.specification.traps.filter(({ hz }) => curve.hz.includes(hz) && reaches(hands, hz));
  const seen = levelsDb(
    hands,
    curve,
    asked.map(({ hz }) => hz),
  );
  const over = asked.map(({ maxDb }, i) => seen[i]! - maxDb);
  return {
    missed: asked.filter((_, i) => over[i]! > TRAP_MISSED_DB * sheet.toleranceFactor).map(({ hz }) => hz),
    good: asked.filter((_, i) => over[i]! <= 0).map(({ hz }) => hz),
  };
}

function slugsOf(sheet: PrintedSheet, response: PrintedResponse): PrintedSheet['slugs'] {
  const first = sheet.responses[0];
  const named = new Set(
    sheet.procedure
      .filter((step) => step.phase === 'align' && (step.response ?? first?.id) === response.id)
      .flatMap((step) => step.slugs),
  );
  return sheet.slugs.filter((s) => named.has(s.id));
}

function reaches(hands: Hands, hz: number): boolean {
  const { centreHz, spanHz } = hands.knobs();
  return Math.abs(hz - centreHz) < spanHz / 2;
}

/** One hump in the middle of a narrow band: what peaking is for. */
function isNarrow({ specification, setUp }: PrintedResponse): boolean {
  const { traps, sCurve, fromHz, toHz } = specification;
  return sCurve === null && traps.length === 0 && setUp.source === 'sweep' && toHz - fromHz < NARROW * setUp.centreHz;
}

function isSCurve({ specification }: PrintedResponse): boolean {
  return specification.sCurve !== null;
}

function right(response: PrintedResponse): number {
  return isSCurve(response) ? S_CURVE_RIGHT : RIGHT_DB;
}

function wrong(response: PrintedResponse): number {
  return isSCurve(response) ? S_CURVE_WRONG : WRONG_DB;
}
