/**
 * The whole job as a careful person does it: safe, connect, set up, then the sheet's own procedure step by step, touch up, look for a failed part where the
 * curve cannot be had, prove, sign off.
 */
import { replacePart, suspicion, tryLines } from './faultFinding.ts';
import { type Fit, fitCurve, residualOf } from './fit.ts';
import type { Hands } from './hands.ts';
import { peakUp } from './peaking.ts';
import { prove } from './proofs.ts';
import { clipAfresh, makeSafe, setUpFor, smallPips } from './settings.ts';
import type { PrintedCurve, PrintedResponse, PrintedSheet } from './sheet.ts';
import { setTrap } from './traps.ts';
import type { Turner } from './turner.ts';

/** What is left of a curve, decibels rms, that a person calls right; and what no slug should leave. */
const RIGHT_DB = 0.25;
const WRONG_DB = 1.2;
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
const ROUNDS = 8;
const PASSES = 3;
const MOST_PARTS = 4;
const MOST_OBVIOUS = 3;
/** A part that leaves less than this of what is wrong unexplained is worth a try. */
const EXPLAINED = 0.4;
/** The same once the slugs have done what they can. */
const EXPLAINED_BY_ONE = 0.7;

export function doTheJob(hands: Hands, sheet: PrintedSheet, turner: Turner, crystalsHz: readonly number[]): void {
  makeSafe(hands, sheet);
  clipAfresh(hands, sheet);
  const bench = { hands, sheet, turner, crystalsHz };
  const [main] = sheet.responses;
  if (main === undefined) throw new Error('the sheet asks for nothing');
  if (sheet.chart.length > 0) {
    tryLines(bench);
    obviousParts(bench, main);
  }
  backFromStops(bench);
  if (!asPrinted(bench, NEARLY)) followAndTouchUp(bench);
  for (let pass = 1; pass < PASSES && timeLeft(bench) && !asPrinted(bench, FAR); pass++) followAndTouchUp(bench);
  touchUp(bench);
  if (sheet.chart.length > 0) failedPart(bench, main);
  standFor(bench, main);
  smallPips(hands);
  prove(hands, sheet);
  hands.act({ type: 'signedOff' });
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
    return residualOf(bench.hands, curve, isSCurve(response)) < times * right(response);
  });
}

interface AtBench {
  readonly hands: Hands;
  readonly sheet: PrintedSheet;
  readonly turner: Turner;
  readonly crystalsHz: readonly number[];
}

function standFor({ hands, sheet, crystalsHz }: AtBench, response: PrintedResponse, injectAt?: string): PrintedCurve {
  const at = injectAt ?? response.setUp.injectAt;
  const curve = sheet.curves.find((c) => c.response === response.id && c.injectAt === at);
  if (curve === undefined) throw new Error(`the sheet has no curve of ${response.id} from ${at}`);
  setUpFor(hands, sheet, response.setUp, curve, crystalsHz, isSCurve(response));
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

/** The set as it was brought in already looks like one line of the chart: such parts are replaced before a slug is touched. */
function obviousParts(bench: AtBench, main: PrintedResponse): void {
  const tried = new Set<string>();
  for (let n = 0; n < MOST_OBVIOUS; n++) {
    const curve = standFor(bench, main);
    const { left, candidates } = suspicion(bench.hands, bench.sheet, curve);
    if (left < 2 * right(main)) return;
    const first = candidates.find((c) => !tried.has(c.part));
    if (first === undefined || first.apart > EXPLAINED * left) return;
    tried.add(first.part);
    replacePart(bench, first.part);
    renewSlugOf(bench, first.part, main);
  }
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

/** What the slugs cannot cure: parts are tried in the order in which their symptoms fit, until the curve can be had. */
function failedPart(bench: AtBench, main: PrintedResponse): void {
  const { hands, sheet } = bench;
  const tried = new Set<string>();
  for (let n = 0; n < MOST_PARTS && timeLeft(bench); n++) {
    if (!stuckCoils(bench)) {
      const curve = standFor(bench, main);
      const { left, candidates } = suspicion(hands, sheet, curve);
      if (left < wrong(main)) return;
      const next = candidates.find((c) => !tried.has(c.part));
      if (next === undefined || next.apart > EXPLAINED_BY_ONE * left) return;
      tried.add(next.part);
      if (!replacePart(bench, next.part)) continue;
    }
    followProcedure(bench);
    touchUp(bench);
  }
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
