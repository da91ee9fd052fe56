/**
 * Grades a run: replays it, measures the receiver's true curve and the set-up as they were left, and gives points by the
 * rows of rules/ (docs/grading.md). The same events give the same report on every machine.
 */
import { RULES_VERSION, type RulesVersion } from '../base/engine.ts';
import { clamp, roundTo } from '../base/rounding.ts';
import type { BenchState } from '../bench/benchState.ts';
import { type BenchSetup, initialState } from '../bench/setup.ts';
import { relativeTo } from '../bench/truth.ts';
import type { ClaimedScore, TimedEvent } from '../files/runFile.ts';
import { responseById } from '../receiver/responses.ts';
import type { StatedResponse } from '../receiver/statedResponse.ts';
import { replay } from '../run/replay.ts';
import { offersParts } from '../scenario/diagnosis.ts';
import { countedPar, parIsKnown } from '../scenario/par.ts';
import type { DraftLine } from './draft.ts';
import { conductEvidence, diagnosisEvidence, findingEvidence, proofEvidence, setUpEvidence } from './evidence.ts';
import { FULL_WITHIN, roundMeasured, tolerancesAway } from './falling.ts';
import { failedParts, uncured } from './faultLines.ts';

import { HELPER_SECONDS } from './limits.ts';
import { type Evidence, linesOf } from './lines.ts';
import { BLOCKS, type Block, type CurveSample, type Report, type ScoreLine } from './report.ts';
import { type CoreTurns, createSheetJudge, type SheetJudge } from './response.ts';
import { isCap, makesLines, type Rule } from './rules/rule.ts';
import { RULES } from './rules/rules.ts';
import { type SetCurves, setCurves } from './setCurves.ts';
import { capsOf, passes, passesAllFour, totalOf, verdictsOf, wantingFor, wordOf } from './verdictOfRun.ts';

export type Grade = (setup: BenchSetup, events: readonly TimedEvent[]) => Report;

type Demands = ReturnType<SheetJudge['demands']>;

/** What is judged before and after the work; care and economy are about the work itself. */
const WORK: readonly Block[] = ['response', 'truth', 'proofs'];

/** A grader by a table of rules; `grade` is the one with the shipped table and today's rules. */
export function createGrader(table: readonly Rule[], version: RulesVersion = RULES_VERSION): Grade {
  const rules = table.filter((rule) => isCap(rule) || (rule.since ?? 1) <= version);
  const ofBlocks = (...blocks: readonly Block[]): readonly Rule[] =>
    rules.filter(makesLines).filter((rule) => blocks.includes(rule.block));
  /** As a set is found, whoever works at it: what its demands are paid in full for, and how its lines stand. */
  const beginnings = new WeakMap<
    SetCurves,
    { readonly paidInFull: readonly number[] | null; readonly found: readonly DraftLine[] }
  >();
  return (setup, events) => {
    const { receiver, scenario } = setup;
    const limitMs = scenario.timeLimitSeconds === null ? undefined : scenario.timeLimitSeconds * 1000;
    const start = initialState(setup);
    const end = endOf(setup, events, limitMs);
    const lastMs = Math.min(events.at(-1)?.atMs ?? 0, limitMs ?? Number.POSITIVE_INFINITY);
    const seconds = roundMeasured(Math.max(end.seconds, lastMs / 1000), 'seconds');

    const par = version < 6 ? scenario.par : countedPar(scenario.par);
    const curves = setCurves(setup);
    const { bench, sound, printed, asFound } = curves;
    const asLeft = curves.with(end.replaced);
    const stillFailed = uncured(setup, end.replaced);
    const mended = stillFailed.map((part) => ({ part, stated: curves.with([...end.replaced, part]) }));
    const judgeLeft = createSheetJudge(receiver, asLeft, scenario.toleranceFactor, mended);
    const evidenceAt = (state: BenchState, demand: Demands, symptoms: boolean, taken: number): Evidence => {
      const facts = bench.facts(state);
      return {
        demand,
        failedPart: failedParts(setup, state.replaced, symptoms ? sound : null),
        ...setUpEvidence(facts, responseById(receiver, facts.response).setUp),
        ...proofEvidence(state, scenario),
        ...(version === 1 ? {} : findingEvidence(setup, state, version)),
        ...(version < 3 ? {} : diagnosisEvidence(setup, state)),
        ...conductEvidence(
          state,
          taken + (state.helped ? HELPER_SECONDS : 0),
          { par },
          {
            partsMayFail: version < 4 ? scenario.faults.length > 0 : offersParts(scenario),
            onMains: receiver.mains !== null,
          },
        ),
      };
    };
    const known = beginnings.get(curves);
    const paidInFull =
      known?.paidInFull ??
      (version === 1 ? null : fullPay(createSheetJudge(receiver, sound, scenario.toleranceFactor)));
    const paid = (demands: Demands): Demands =>
      demands.map((demand, i) => (paidInFull === null ? demand : { ...demand, fullWithin: paidInFull[i]! }));
    const lookedOver = (): readonly DraftLine[] => {
      const demands = createSheetJudge(receiver, asFound, scenario.toleranceFactor).demands(coresOf(start), false);
      return linesOf(ofBlocks(...WORK), evidenceAt(start, paid(demands), false, 0));
    };
    const found = known?.found ?? lookedOver();
    beginnings.set(curves, { paidInFull, found });
    const evidence = evidenceAt(end, paid(judgeLeft.demands(coresOf(end), true)), true, seconds);
    const left = linesOf(ofBlocks(...WORK), evidence).map((line) => (end.helped ? notOnesOwn(line) : line));
    const care = linesOf(ofBlocks('care'), evidence);
    const economy = linesOf(ofBlocks('economy'), evidence);

    const maxima = blockMaxima(scenario.weights, [...left, ...care, ...economy]);
    // What a helper brought is no part of the work, neither of what was lacking nor of what was won.
    const own = (lines: readonly DraftLine[]) => (end.helped ? lines.filter(({ block }) => block !== 'truth') : lines);
    const workDone = gained(own(found), own(left), maxima);
    const responseDone = gained(ofBlock(found, 'response'), ofBlock(left, 'response'), maxima);
    const careShare = clamp(2 * (workDone ?? 1), 0, 1);
    const economyShare = Math.min(careShare, clamp(responseDone ?? workDone ?? 1, 0, 1));
    const drafts = [
      ...left,
      ...care.map((line) => heldBack(line, careShare)),
      ...economy.map((line) => heldBack(line, economyShare)),
    ];

    const lines = drafts.map((draft) => lineOf(draft, maxOf(draft, drafts, maxima)));
    const exact = drafts.reduce((sum, draft) => sum + draft.earned * maxOf(draft, drafts, maxima), 0);
    const caps = capsOf(end, rules);
    const total = totalOf(exact, caps);
    const { proofs } = scenario;
    const proved = proofs.length === 0 || proofs.some((proof) => end.proofs[proof].done);
    const standing = { workDone: workDone ?? 0, proved, mended: stillFailed.length === 0 };
    const verdicts = verdictsOf(lines, caps);
    const passed = version === 1 ? passes(total, caps, standing) : passesAllFour(verdicts);
    const diagnosis = evidence.diagnosis?.[0];
    return {
      rules: version,
      total,
      passed,
      verdicts,
      wanting: version === 1 ? wantingFor(total, caps, standing) : [],
      word: wordOf(total, passed),
      blocks: blocksOf(drafts, maxima),
      lines,
      caps,
      turns: roundMeasured(end.turnsMade, 'turns'),
      parTurns: par.turns,
      seconds,
      parSeconds: scenario.par.seconds,
      ...(parIsKnown(scenario) ? {} : { parUnknown: true }),
      curves: sound.map((one, i) => ({
        response: one.response.id,
        before: curveOf(asFound[i]!, coresOf(start)),
        after: curveOf(asLeft[i]!, coresOf(end)),
        nominal: curveOf(printed[i]!, {}),
      })),
      ...(end.helped ? { helped: true } : {}),
      ...(diagnosis === undefined ? {} : { diagnosis }),
    };
  };
}

/** As it stood at the limit; what was wrong is said with the signature, which may come after it. */
function endOf(setup: BenchSetup, events: readonly TimedEvent[], limitMs: number | undefined): BenchState {
  const { state } = replay(setup, events, limitMs);
  if (limitMs === undefined || !events.some(({ type, atMs }) => type === 'diagnosisStated' && atMs > limitMs))
    return state;
  return { ...state, diagnosis: replay(setup, events).state.diagnosis };
}

/** By the shipped table, under the rules of a given version: a run made under the first rules can be graded under both. */
export function gradeUnder(version: RulesVersion): Grade {
  return createGrader(RULES, version);
}

export const grade: Grade = gradeUnder(RULES_VERSION);

/** Allowance for rounding, so that slugs at their nominal places are paid in full, in tolerances. */
const ROUNDING_ROOM = 0.02;

/** How near to what is wanted each demand is paid in full: half a tolerance, or as near as the sound set comes with its slugs at their nominal places. */
function fullPay(sound: SheetJudge): readonly number[] {
  return sound
    .demands({}, false)
    .map(({ item }) => clamp(tolerancesAway(item.measured, item) + ROUNDING_ROOM, FULL_WITHIN, 1));
}

/** What a report claims when its run is handed in. */
export function claimOf(report: Report): ClaimedScore {
  return { total: report.total, passed: report.passed, lines: report.lines.map(({ id, points }) => ({ id, points })) };
}

type Maxima = Readonly<Record<Block, number>>;

/** The scenario's weights, made to add up to 100 over the blocks that have lines at all. */
function blockMaxima(weights: Maxima, drafts: readonly DraftLine[]): Maxima {
  const counted = (block: Block): number => (ofBlock(drafts, block).length === 0 ? 0 : weights[block]);
  const sum = BLOCKS.reduce((all, block) => all + counted(block), 0);
  return byBlock((block) => (sum === 0 ? 0 : (100 * counted(block)) / sum));
}

function maxOf(draft: DraftLine, drafts: readonly DraftLine[], maxima: Maxima): number {
  const whole = ofBlock(drafts, draft.block).reduce((sum, line) => sum + line.weight, 0);
  return whole === 0 ? 0 : (maxima[draft.block] * draft.weight) / whole;
}

function pointsOf(drafts: readonly DraftLine[], maxima: Maxima): number {
  return drafts.reduce((sum, draft) => sum + draft.earned * maxOf(draft, drafts, maxima), 0);
}

/** Below this many points nothing was missing, and what came in is not measured against it. */
const NOTHING_MISSING_POINTS = 0.5;

/** How much of what was missing as found has been won, 1 = all; negative where the set was left worse; null = nothing was missing. */
function gained(found: readonly DraftLine[], left: readonly DraftLine[], maxima: Maxima): number | null {
  const full = pointsOf(
    left.map((line) => ({ ...line, earned: 1 })),
    maxima,
  );
  const before = pointsOf(found, maxima);
  if (full - before < NOTHING_MISSING_POINTS) return null;
  return (pointsOf(left, maxima) - before) / (full - before);
}

/** What earned nothing lost nothing by it. */
function heldBack(line: DraftLine, share: number): DraftLine {
  return share < 1 && line.earned > 0 ? { ...line, earned: line.earned * share, held: 'workLeft' } : line;
}

/** G68: the set-up that a helper made is judged, and pays nothing. */
function notOnesOwn(line: DraftLine): DraftLine {
  return line.block === 'truth' ? { ...line, earned: 0, held: line.held ?? 'helper' } : line;
}

function lineOf(draft: DraftLine, max: number): ScoreLine {
  const {
    hz = null,
    toHz = null,
    subject = null,
    atSeconds = null,
    cause = null,
    part,
    pointsOnly,
    symptom,
    held,
    ...rest
  } = draft;
  const { weight: _weight, earned, ...line } = rest;
  return {
    ...line,
    points: roundTo(earned * max, 0.01),
    max: roundTo(max, 0.01),
    ...{ hz, toHz, subject, atSeconds, cause },
    ...(part === undefined ? {} : { part }),
    ...(pointsOnly === undefined ? {} : { pointsOnly }),
    ...(symptom === undefined ? {} : { symptom }),
    ...(held === undefined ? {} : { held }),
  };
}

function blocksOf(drafts: readonly DraftLine[], maxima: Maxima): Report['blocks'] {
  return byBlock((block) => ({
    points: roundTo(pointsOf(ofBlock(drafts, block), maxima), 0.01),
    max: roundTo(maxima[block], 0.01),
  }));
}

function ofBlock(drafts: readonly DraftLine[], block: Block): readonly DraftLine[] {
  return drafts.filter((draft) => draft.block === block);
}

function byBlock<T>(make: (block: Block) => T): Readonly<Record<Block, T>> {
  const [response, truth, proofs, care, economy] = BLOCKS.map(make) as [T, T, T, T, T];
  return { response, truth, proofs, care, economy };
}

function coresOf(state: BenchState): CoreTurns {
  return Object.fromEntries(Object.entries(state.slugs).map(([id, slug]) => [id, slug.coreTurns]));
}

function curveOf(stated: StatedResponse, coreTurns: CoreTurns): CurveSample {
  const curve = stated.solve(coreTurns);
  return { hz: Float64Array.from(curve.hz), relative: relativeTo(curve, stated.response.specification) };
}
