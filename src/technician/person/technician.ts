/**
 * The whole job as a careful person does it: safe, connect, set up, then the sheet's own procedure step by step, touch up, look for a failed part where the
 * curve cannot be had, prove, sign off.
 */
import { axisOf, readVolts } from './eyes.ts';
import { type Fit, fitCurve, residualOf } from './fit.ts';
import type { Hands } from './hands.ts';
import { prove } from './proofs.ts';
import { makeSafe, setUpFor, smallPips } from './settings.ts';
import type { PrintedCurve, PrintedResponse, PrintedSheet } from './sheet.ts';
import { setTrap } from './traps.ts';
import type { Turner } from './turner.ts';

/** What is left of a curve, decibels rms, that a person calls right; and what no slug should leave. */
const RIGHT_DB = 0.25;
const WRONG_DB = 1.2;
const S_CURVE_RIGHT = 1;
const S_CURVE_WRONG = 6;
const ROUNDS = 8;
const PASSES = 3;
const MOST_PARTS = 6;

export function doTheJob(hands: Hands, sheet: PrintedSheet, turner: Turner, crystalsHz: readonly number[]): void {
  makeSafe(hands, sheet);
  const bench = { hands, sheet, turner, crystalsHz };
  const [main] = sheet.responses;
  if (main === undefined) throw new Error('the sheet asks for nothing');
  if (sheet.chart.length > 0) obviousPart(bench, main);
  followProcedure(bench);
  touchUp(bench);
  if (sheet.chart.length > 0) failedPart(bench, main);
  standFor(bench, main);
  smallPips(hands);
  prove(hands, sheet);
  hands.act({ type: 'signedOff' });
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
    for (let pass = 0; pass < PASSES; pass++) {
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
  return fitCurve(hands, turner, curve, slugs, isSCurve(response), ROUNDS, right(response));
}

/** The set as it was brought in already looks like one line of the chart: that part is replaced before a slug is touched. */
function obviousPart(bench: AtBench, main: PrintedResponse): void {
  const curve = standFor(bench, main);
  if (residualOf(bench.hands, curve, isSCurve(main)) < right(main)) return;
  const [first] = ranked(bench, curve);
  if (first !== undefined && first.apart < WRONG_DB / 2) replace(bench, first.part);
}

/** What the slugs cannot cure: parts are tried in the order in which their symptoms fit, until the curve can be had. */
function failedPart(bench: AtBench, main: PrintedResponse): void {
  const { hands, sheet, turner } = bench;
  const tried = new Set<string>();
  for (let n = 0; n < MOST_PARTS; n++) {
    const curve = standFor(bench, main);
    if (residualOf(hands, curve, isSCurve(main)) < wrong(main) && turner.stuck.size === 0) return;
    const candidates = ranked(bench, curve).filter((c) => !tried.has(c.part));
    const next = candidates[0];
    if (next === undefined) return;
    tried.add(next.part);
    replace(bench, next.part);
    followProcedure({ ...bench, sheet: { ...sheet, procedure: sheet.procedure } });
    touchUp(bench);
  }
}

function replace({ hands, sheet }: AtBench, part: string): void {
  if (sheet.mains) hands.act({ type: 'powerSwitched', on: false });
  hands.act({ type: 'partReplaced', element: part });
  if (sheet.mains) hands.act({ type: 'powerSwitched', on: true });
}

/** The chart's parts, the most like first: what is seen against what each would show, both in decibels under the printed peak. */
function ranked({ hands, sheet }: AtBench, curve: PrintedCurve): { readonly part: string; readonly apart: number }[] {
  const peak = Math.max(...curve.volts.map(Math.abs));
  const db = (v: number): number => Math.max(-46, 20 * Math.log10(Math.max(Math.abs(v) / peak, 1e-6)));
  const seen = readVolts(hands, curve.hz, axisOf(hands)).map(db);
  return sheet.chart
    .map(({ part, volts }) => {
      const sum = volts.reduce((total, v, i) => total + (db(v) - seen[i]!) ** 2, 0);
      return { part, apart: Math.sqrt(sum / volts.length) };
    })
    .sort((a, b) => a.apart - b.apart);
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

function isSCurve({ specification }: PrintedResponse): boolean {
  return specification.sCurve !== null;
}

function right(response: PrintedResponse): number {
  return isSCurve(response) ? S_CURVE_RIGHT : RIGHT_DB;
}

function wrong(response: PrintedResponse): number {
  return isSCurve(response) ? S_CURVE_WRONG : WRONG_DB;
}
