/** Parts that what is on the tube speaks against, before a slug is touched; and coils whose cores will not turn. */
import { type AtBench, isNarrow, isSCurve, isShelf, reaches, right, slugsOf, standFor, timeLeft } from './atWork.ts';
import { feedingBack, keepsQuiet } from './byMeter.ts';
import { newPad } from './byNotebook.ts';
import { comesThroughLoud, PASSES, shareOnTube, stoppingParts } from './deadStage.ts';
import {
  type Candidate,
  onPaper,
  replacePart,
  reversing,
  type Suspicion,
  silentParts,
  suspicion,
} from './faultFinding.ts';
import { fitCurve } from './fit.ts';
import { levelBy } from './levels.ts';
import type { PrintedCurve, PrintedResponse } from './sheet.ts';
import { levelsNow } from './toLimits.ts';
import { howItStands, noteCure } from './traceBack.ts';
import { setTrap } from './traps.ts';

const ROUNDS = 8;
const MOST_OBVIOUS = 3;
const MOST_STOPPING = 8;
/** Behind the part that stops it more comes through by so many times. */
const LEAPS = 5;
const WATCHES = 5;
const WATCH_SECONDS = 30;
/** A part that leaves less than this of what is wrong unexplained is worth a try. */
const EXPLAINED = 0.4;
/** Both together, as the set stands and on paper, where the slugs do what they can; and less than this in all is nothing. */
const UNEXPLAINED = 0.36;
/** With one part replaced the next must be wrong beyond doubt. */
const UNEXPLAINED_AGAIN = 0.25;
const SOMETHING_WRONG = 15;
/** Symptoms this near to each other look the same, decibels rms. */
const ALIKE_DB = 0.1;
/** And where the best explains no more than so many times as well as the next, the other points of injection are asked too. */
const DOUBTFUL = 1.6;
/** And so near to each other nobody tells which. */
const NO_TELLING = 1.05;
/** From a later point a part shows as charted or not at all. */
const SMALLEST_THERE = 0.8;

/**
 * The set as it was brought in already looks like one line of the chart, as it stands or but for what slugs could do: such parts are replaced before a slug is
 * touched.
 */
export function obviousParts(bench: AtBench, main: PrintedResponse): void {
  const tried = new Set<string>();
  for (let n = 0; n < MOST_OBVIOUS; n++) {
    const curve = standFor(bench, main);
    const part = partInSight(bench, main, curve, tried);
    if (part === null) return;
    tried.add(part);
    // Where nobody says that something has failed, a part is blamed for what went with it and for nothing else.
    const before = bench.sheet.sealed ? howItStands(bench, main) : null;
    replacePart(bench, part);
    // Trace and retrace of a set that sang told little of the phasing.
    if (keepsQuiet(part)) bench.stood.phasing.clear();
    renewSlugOf(bench, part, main);
    if (before !== null) noteCure(bench, main, part, before);
    // One part explains a bad set: what is left is for the slugs first.
    if (bench.sheet.sealed && bench.cured.get(part) === true) return;
  }
}

/** Nothing on the tube, or the curve upside down: that is no slug's doing, whoever says nothing of it. Parts are replaced until something comes through the right way up. */
export function deadParts(bench: AtBench, main: PrintedResponse): readonly string[] {
  const { hands, sheet } = bench;
  const curve = standFor(bench, main);
  const share = shareOnTube(hands, curve);
  const dead = share <= PASSES && !(isNarrow(main) && comesThroughLoud(hands, curve));
  // Trace and retrace of nothing tell nothing of the phasing.
  const forget = (): void => {
    if (dead) bench.stood.phasing.clear();
  };
  const shareFrom = ({ injectAt }: PrintedCurve): number => {
    forget();
    return shareOnTube(hands, standFor(bench, main, injectAt));
  };
  // A new coil comes with its core half way: what does not touch the slugs is tried first.
  const coils = new Set(sheet.slugs.map(({ coil }) => coil));
  const inDoubt = dead
    ? stoppingParts(sheet, main, shareFrom, Math.max(PASSES, LEAPS * share)).toSorted(
        (a, b) => Number(coils.has(a)) - Number(coils.has(b)),
      )
    : reversing(hands, sheet, curve);
  const replaced: string[] = [];
  for (const part of inDoubt.slice(0, MOST_STOPPING)) {
    replacePart(bench, part);
    replaced.push(part);
    forget();
    standFor(bench, main);
    const mended = dead ? shareOnTube(hands, curve) > PASSES : reversing(hands, sheet, curve).length === 0;
    bench.cured.set(part, mended);
    if (mended) break;
  }
  return replaced;
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
    const kept = look === 0 ? feedingBack(bench).find((part) => !tried.has(part)) : undefined;
    if (kept !== undefined) return kept;
    const dead = silentParts(hands, sheet, curve).find((part) => !tried.has(part));
    if (dead !== undefined) return dead;
    const over = reversing(hands, sheet, curve).find((part) => !tried.has(part));
    if (over !== undefined) return over;
    const plain = suspicion(hands, sheet, curve);
    if (plain.left < 2 * right(main)) continue;
    const part = likeliest(bench, main, plain, tried) ?? onPaperToo(bench, main, curve, plain, tried);
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
  const alike = open.filter(
    ({ apart }) => apart <= EXPLAINED * left && apart <= Math.max(first.apart + ALIKE_DB, DOUBTFUL * first.apart),
  );
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
  const { none, symptoms } = onPaper(
    {
      levels: levelsNow(hands, main, curve),
      hz: main.lookAtHz,
      curve,
      notebook,
      levelOf: levelBy(curve),
    },
    sheet.chart,
  );
  const asItStands = (part: string): number =>
    Math.min(1, (candidates.find((c) => c.part === part)?.apart ?? left) / left);
  const open = symptoms
    .map(({ parts, cost }) => ({ parts: parts.filter((part) => !tried.has(part)), cost }))
    .filter(({ parts }) => parts.length > 0)
    .map(({ parts, cost }) => ({ parts, unexplained: (cost / none) * Math.min(...parts.map(asItStands)) }))
    .sort((a, b) => a.unexplained - b.unexplained);
  const [first] = open;
  const most = tried.size === 0 ? UNEXPLAINED : UNEXPLAINED_AGAIN;
  if (first === undefined || none < SOMETHING_WRONG || first.unexplained > most) return null;
  const alike = first.parts.map((part) => ({ part, apart: 0 }));
  return alike.length === 1 ? alike[0]!.part : byStages(bench, main, alike);
}

/** Swept from each point of the sheet in turn: a part before the point shows nothing there. What each leaves unexplained there is added to what it leaves of the whole curve. */
function byStages(bench: AtBench, main: PrintedResponse, alike: readonly Candidate[]): string {
  const parts = alike.map(({ part }) => part);
  const apart = new Map(alike.map((one) => [one.part, one.apart ** 2]));
  for (const { response, injectAt } of bench.sheet.curves) {
    if (response !== main.id || injectAt === main.setUp.injectAt) continue;
    const { candidates } = suspicion(bench.hands, bench.sheet, standFor(bench, main, injectAt), [], SMALLEST_THERE);
    for (const c of candidates) {
      const sum = apart.get(c.part);
      if (sum !== undefined) apart.set(c.part, sum + c.apart ** 2);
    }
  }
  standFor(bench, main);
  const least = Math.min(...parts.map((part) => apart.get(part)!));
  const like = parts.filter((part) => apart.get(part)! <= least * NO_TELLING + 1e-9);
  const coils = new Set(bench.sheet.slugs.map(({ coil }) => coil));
  // A coil is changed last: a new one comes with its core half way.
  return like.find((part) => !coils.has(part)) ?? like[0]!;
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
export function stuckCoils(bench: AtBench): boolean {
  const stuck = bench.sheet.slugs.filter((s) => bench.turner.stuck.has(s.id));
  for (const slug of stuck) replacePart(bench, slug.coil);
  return stuck.length > 0;
}
