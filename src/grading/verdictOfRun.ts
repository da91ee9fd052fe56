/** The verdicts of a run and its pass (G40), caps for breaches of safety (G38, G39), word of the ladder (G41); and the pass of the first rules. */
import type { BenchState } from '../bench/benchState.ts';
import { LEAST_WORK_SHARE, PASS_POINTS } from './limits.ts';
import {
  type Block,
  type Cap,
  lineIsMet,
  type Report,
  type ResultWord,
  type RunVerdict,
  type ScoreLine,
  VERDICT_IDS,
} from './report.ts';
import { isCap, type Rule } from './rules/rule.ts';
import { RULES } from './rules/rules.ts';

export function capsOf({ incidents }: Pick<BenchState, 'incidents'>, rules: readonly Rule[] = RULES): readonly Cap[] {
  return rules.filter(isCap).flatMap(({ number, breach, limit }) => {
    const first = incidents.find((incident) => incident.kind === breach);
    return first === undefined ? [] : [{ rule: number, limit, subject: first.subject, atSeconds: first.atSeconds }];
  });
}

/** Whole points, rounded down, under the lowest cap. */
export function totalOf(points: number, caps: readonly Cap[]): number {
  // A sum of many parts of a hundred may come out a hair below the whole.
  const whole = Math.floor(points + 1e-6);
  return caps.reduce((total, cap) => Math.min(total, cap.limit), whole);
}

/** Each from its own lines: one that is outside its limits, or could not be judged, keeps the verdict from standing. */
export function verdictsOf(lines: readonly ScoreLine[], caps: readonly Cap[]): Report['verdicts'] {
  const of = (block: Block): RunVerdict => {
    const lacks = lines.filter((line) => line.block === block && !stands(line)).map((line) => line.id);
    return { stands: lacks.length === 0, lacks };
  };
  const breaches = caps.map((cap) => cap.rule);
  return {
    aligned: of('response'),
    true: of('truth'),
    proved: of('proofs'),
    safe: { stands: breaches.length === 0, lacks: breaches },
  };
}

function stands(line: ScoreLine): boolean {
  return line.pointsOnly === true || (lineIsMet(line) && line.held !== 'noPicture');
}

export function passesAllFour(verdicts: Report['verdicts']): boolean {
  return VERDICT_IDS.every((id) => verdicts[id].stands);
}

/** What a run needed besides its points under the first rules. */
export interface Standing {
  /** share of what was missing that has been won */
  readonly workDone: number;
  /** a proof of the scenario stands, or it asks for none */
  readonly proved: boolean;
  /** no part that has failed is left in the set */
  readonly mended: boolean;
}

export function passes(total: number, caps: readonly Cap[], standing: Standing): boolean {
  return total >= PASS_POINTS && caps.length === 0 && lacking(standing).length === 0;
}

/** Why a run with enough points does not pass; empty where the points or a cap say it already. */
export function wantingFor(total: number, caps: readonly Cap[], standing: Standing): Report['wanting'] {
  return total < PASS_POINTS || caps.length > 0 ? [] : lacking(standing);
}

function lacking({ workDone, proved, mended }: Standing): Report['wanting'] {
  return [
    ...(proved ? [] : (['proof'] as const)),
    ...(workDone >= LEAST_WORK_SHARE ? [] : (['work'] as const)),
    ...(mended ? [] : (['part'] as const)),
  ];
}

const LADDER: readonly (readonly [from: number, word: ResultWord])[] = [
  [90, 'haystack'],
  [PASS_POINTS, 'haycock'],
  [55, 'windrow'],
  [35, 'swath'],
];

/** The two upper words belong to runs that pass. */
export function wordOf(total: number, passed: boolean): ResultWord {
  const reach = passed ? total : Math.min(total, PASS_POINTS - 1);
  return LADDER.find(([from]) => reach >= from)?.[1] ?? 'stubble';
}

/** The report of a run that was never signed off: nothing is passed, whatever its points. */
export function unsignedReport(report: Report): Report {
  return { ...report, passed: false, word: wordOf(report.total, false) };
}
