/**
 * The whole job as a careful person does it: safe, connect, set up, then the sheet's own procedure step by step, touch up, look for a failed part where the
 * curve cannot be had, prove, sign off.
 */
import {
  type AtBench,
  inOrderOfWork,
  isNarrow,
  isSCurve,
  isShelf,
  reaches,
  right,
  slugsOf,
  standFor,
  timeLeft,
  timeToProve,
  wrong,
} from './atWork.ts';
import { tryLines } from './byMeter.ts';
import { clipAfresh } from './clips.ts';
import { takingNotes } from './diagnosis.ts';
import { peakFaint } from './farApart.ts';
import { backFromStops, backThroughCoils } from './farOut.ts';
import { levelsDb, replacePart, spoilers, suspicion, trySlugs } from './faultFinding.ts';
import { type Fit, fitCurve, residualOf } from './fit.ts';
import type { Hands } from './hands.ts';
import { lastLook } from './lastLook.ts';
import { oscillatorOf, setOscillator } from './oscillator.ts';
import { deadParts, obviousParts, stuckCoils } from './partsInDoubt.ts';
import { peakUp } from './peaking.ts';
import { prove } from './proofs.ts';
import { allInside, asPrinted } from './reads.ts';
import { makeSafe, type Phased, smallPips } from './settings.ts';
import type { PrintedCurve, PrintedResponse, PrintedSheet } from './sheet.ts';
import { bringInside, lowerEach, worstDemand } from './toLimits.ts';
import { isBeyondSlugs, traceBack } from './traceBack.ts';
import { trapParts } from './trapParts.ts';
import { rocking, type Turner } from './turner.ts';
import { placeTrap, stepsAlone, withNotebook } from './withNotebook.ts';

/** Of the distance from what is wanted to the limit: so near a demand is left alone. */
const INSIDE = 0.6;
/** Farther off than this, narrow circuits are peaked first. */
const FAR_DB = 3;
/** A curve that only wants touching up, and one that wants the whole procedure again. */
const NEARLY = 2;
const FAR = 12;
const ROUNDS = 8;
const PASSES = 3;
/** From here to the limit an eye is not sure on which side of it a demand is. */
const READS_OUTSIDE = 0.95;
/** Traps and humps pull at each other: so often are they set in turn at the end. */
const LAST_PASSES = 5;
const MOST_PARTS = 4;
/** The same once the slugs have done what they can. */
const EXPLAINED_BY_ONE = 0.7;
/** A trap that lets through more than its limit by this much has something the matter. */
const TRAP_MISSED_DB = 3;

/** How this person likes to work. */
export interface Habits {
  /** each slug is rocked through where it belongs */
  readonly rocks?: boolean;
  /** where the whole curve is not right, by the procedure of the sheet first, stage by stage, and only then by what the whole curve shows */
  readonly byStages?: boolean;
}

export function doTheJob(
  given: Hands,
  sheet: PrintedSheet,
  steady: Turner,
  crystalsHz: readonly number[],
  { rocks = false, byStages = false }: Habits = {},
): void {
  const turner = rocks ? rocking(steady) : steady;
  const { hands, diagnosis } = takingNotes(given, sheet, turner);
  makeSafe(hands, sheet);
  const contacts = clipAfresh(hands, sheet);
  const stood = { phasing: new Map<string, Phased>(), dials: new Map<string, number>(), warm: !sheet.mains };
  const bench: AtBench = { hands, sheet, turner, crystalsHz, cured: new Map(), stood };
  const [main] = sheet.responses;
  if (main === undefined) throw new Error('the sheet asks for nothing');
  // Where nobody says that something has failed the slugs come first: the set may well be sound.
  const surely = sheet.chart.length > 0 && !sheet.sealed;
  if (surely) tryLines(bench);
  // Where somebody has screwed every core to its stop no part has to be looked for before they are back.
  const fromStops = backFromStops(bench);
  if (!fromStops && surely) obviousParts(bench, main);
  backThroughCoils(bench);
  // A set that reads right is left alone, and from the stops the stages are gone through by the notebook anyway.
  const stages = (): void => {
    if (byStages && !fromStops && !allInside(bench)) followProcedure(bench);
  };
  // Where several curves pull at each other's slugs the slugs come first all the same.
  const alone = sheet.chart.length > 0 && sheet.responses.length === 1;
  const sealedParts = alone && sheet.sealed;
  if (!sealedParts) stages();
  // Half way is too far from right for the notebook, but for one stage at a time.
  const dead = sealedParts && !fromStops ? deadParts(bench, main) : [];
  if (sealedParts && !fromStops && dead.length === 0) peakFaint(bench, main, stepsAlone(sheet, main));
  const early = sealedParts && !fromStops && dead.length === 0 ? trapParts(bench, main, true) : [];
  const beyond = sealedParts && !fromStops && dead.length + early.length === 0 && isBeyondSlugs(bench, main);
  const traced = beyond ? traceBack(bench, main) : [];
  // Where nobody says whether a part has failed no stage is set round one that has.
  if (sealedParts) stages();
  let right = (!fromStops || stepsAlone(sheet, main).length > 0) && withNotebook(bench);
  if (sheet.chart.length > 0 && stuckCoils(bench)) right = withNotebook(bench);
  const late =
    sealedParts && dead.length + early.length + traced.length === 0 && timeLeft(bench)
      ? trapParts(bench, main, false)
      : [];
  if (late.length > 0) right = withNotebook(bench);
  const foundOne = dead.length + early.length + traced.length + late.length > 0;
  if (!right && !foundOne && alone && traceBack(bench, main).length > 0) right = withNotebook(bench);
  // What no slug has mended in a set that nobody has called bad: now a part is in question.
  const doubtful = !right && sealedParts && !foundOne && timeLeft(bench) && !allInside(bench);
  if (doubtful) {
    tryLines(bench);
    obviousParts(bench, main);
    right = withNotebook(bench);
  }
  // What an eye is not sure of is not worth the whole procedure.
  if (!right && !surely && allInside(bench)) {
    if (!allInside(bench, 0)) toLimits(bench);
  } else if (!right) theLongWay(bench, main, surely || doubtful);
  if (!right && sheet.sealed && !sealedParts && timeLeft(bench) && !allInside(bench)) {
    tryLines(bench);
    obviousParts(bench, main);
    if (!withNotebook(bench) && timeLeft(bench)) theLongWay(bench, main, true);
  }
  if (sealedParts) lastLook(bench, main);
  hands.note({ kind: 'checks' });
  standFor(bench, main, undefined, true);
  const beats = oscillatorOf(main) !== null;
  smallPips(hands, beats);
  prove(hands, sheet, beats);
  if (sheet.asksDiagnosis) {
    hands.note({ kind: 'diagnosis' });
    hands.act(diagnosis(contacts, bench.cured));
  }
  hands.note({ kind: 'signs' });
  hands.act({ type: 'signedOff' });
}

/** Where the notebook does not do: the procedure of the sheet, step by step, slug by slug, and parts that may have failed. */
function theLongWay(bench: AtBench, main: PrintedResponse, mayHaveFailed: boolean): void {
  if (!asPrinted(bench, NEARLY)) followAndTouchUp(bench);
  const tried = new Set<string>();
  if (mayHaveFailed) failedPart(bench, main, tried);
  for (let pass = 1; pass < PASSES && timeLeft(bench) && !asPrinted(bench, FAR); pass++) followAndTouchUp(bench);
  touchUp(bench);
  if (mayHaveFailed) failedPart(bench, main, tried);
  toLimits(bench);
}

function followAndTouchUp(bench: AtBench): void {
  followProcedure(bench);
  touchUp(bench);
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
    hands.note({ kind: 'follows', slugs: step.slugs });
    if (oscillatorOf(response) !== null) {
      for (const slug of step.slugs) setOscillator(hands, turner, slug, response);
      continue;
    }
    const traps = sheet.slugs.filter((s) => s.trapHz !== null && step.slugs.includes(s.id));
    for (const trap of traps) if (reaches(hands, trap.trapHz!)) placeTrap(bench, response, curve, trap, false);
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
      hands.note({ kind: 'touchesUp' });
      const slugs = slugsOf(sheet, response);
      fitSlugs(
        bench,
        response,
        curve,
        slugs.filter((s) => s.trapHz === null).map((s) => s.id),
      );
      for (const trap of slugs) {
        if (trap.trapHz !== null && reaches(hands, trap.trapHz)) placeTrap(bench, response, curve, trap, true);
      }
    }
  }
}

/** Every demand well inside its limits, as far as the eye can tell. */
function toLimits(bench: AtBench): void {
  const { hands, sheet, turner } = bench;
  for (const response of inOrderOfWork(sheet)) {
    if (!timeToProve(bench)) return;
    // An oscillator that stands at zero beat stays there.
    if (oscillatorOf(response) !== null) continue;
    const slugs = slugsOf(sheet, response);
    const notches = slugs.filter(({ trapHz }) => trapHz !== null && !isShelf(response, trapHz));
    const rest = slugs.filter((slug) => !notches.includes(slug)).map(({ id }) => id);
    let best = { worst: Number.POSITIVE_INFINITY, depths: [] as readonly number[] };
    for (let pass = 0; ; pass++) {
      const curve = standFor(bench, response);
      for (const trap of notches) {
        if (timeToProve(bench) && reaches(hands, trap.trapHz!)) placeTrap(bench, response, curve, trap, true);
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
