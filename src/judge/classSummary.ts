/** What a class as a whole shows: how many files of each kind, the average of each skill, and the lines that most of them lost. */
import type { Block } from '../grading/report.ts';
import type { ClassRow } from './classList.ts';
import type { MarkedLine, Marks } from './judged.ts';
import { OUTCOMES, type Outcome } from './outcome.ts';
import { SKILL_IDS, type SkillId, skillOf } from './skills.ts';

export interface ClassSummary {
  readonly outcomes: Readonly<Record<Outcome, number>>;
  /** files whose acts an earlier one has, too */
  readonly copies: number;
  readonly learners: number;
  /** runs that averages are made of */
  readonly counted: number;
  readonly skills: readonly SkillAverage[];
  readonly lost: readonly LostLine[];
}

export interface SkillAverage {
  readonly skill: SkillId;
  /** of its points, 0 to 1 */
  readonly share: number;
}

export interface LostLine {
  readonly rule: string;
  readonly block: Block;
  readonly hz: number | null;
  /** runs that lost it, of those that have it */
  readonly runs: number;
  readonly of: number;
}

/** A line of the response at its limit still earns this share (G1 in docs/grading.md): a run with less has missed it. */
const MISSED_BELOW = 0.85;
const LISTED = 5;

export function classSummary(rows: readonly ClassRow[]): ClassSummary {
  const runs = rows.flatMap((row) => (counts(row) ? [row.marks] : []));
  return {
    outcomes: Object.fromEntries(
      OUTCOMES.map((outcome) => [outcome, rows.filter(({ verdict }) => verdict === outcome).length]),
    ) as Record<Outcome, number>,
    copies: rows.filter(({ copy }) => copy).length,
    learners: new Set(rows.flatMap(({ learner }) => learner ?? [])).size,
    counted: runs.length,
    skills: skillAverages(runs),
    lost: commonestLost(runs),
  };
}

/** A run that was altered, cannot have happened or was not finished says nothing of a skill; of copies one is enough. */
function counts(row: ClassRow): row is ClassRow & { readonly marks: Marks } {
  return row.marks !== null && !row.copy && (row.verdict === 'verified' || row.verdict === 'otherRules');
}

/** What one run adds to the sums of its class. */
interface Part {
  /** of each skill that it has lines of: the share of their points, 0 to 1 */
  readonly shares: ReadonlyMap<SkillId, number>;
  /** by rule and frequency */
  readonly lines: ReadonlyMap<string, { readonly line: MarkedLine; readonly lost: number }>;
}

/** A class is summed up anew whenever some more of its runs have been graded, and what a run adds stays the same. */
const parts = new WeakMap<Marks, Part>();

function partOf(marks: Marks): Part {
  const made = parts.get(marks) ?? { shares: sharesOf(marks), lines: linesOf(marks) };
  parts.set(marks, made);
  return made;
}

function sharesOf({ lines }: Marks): Part['shares'] {
  const points = new Map<SkillId, number>();
  const most = new Map<SkillId, number>();
  for (const line of lines) {
    if (line.max <= 0) continue;
    const skill = skillOf(line);
    points.set(skill, (points.get(skill) ?? 0) + line.points);
    most.set(skill, (most.get(skill) ?? 0) + line.max);
  }
  return new Map([...points].map(([skill, sum]) => [skill, sum / most.get(skill)!]));
}

function skillAverages(runs: readonly Marks[]): readonly SkillAverage[] {
  return SKILL_IDS.flatMap((skill) => {
    const shares = runs.flatMap((marks) => partOf(marks).shares.get(skill) ?? []);
    if (shares.length === 0) return [];
    return [{ skill, share: shares.reduce((sum, share) => sum + share, 0) / shares.length }];
  });
}

export const isLost = ({ points, max }: Pick<MarkedLine, 'points' | 'max'>): boolean => points < MISSED_BELOW * max;

/** Lines of several scenarios are the same where they are about the same rule and frequency; a run loses each of these once. */
function linesOf({ lines }: Marks): Part['lines'] {
  const own = new Map<string, { line: MarkedLine; lost: number }>();
  for (const line of lines) {
    if (line.max <= 0) continue;
    const name = `${line.rule}:${line.hz ?? ''}`;
    const lost = isLost(line) ? line.max - line.points : 0;
    own.set(name, { line, lost: (own.get(name)?.lost ?? 0) + lost });
  }
  return own;
}

function commonestLost(runs: readonly Marks[]): readonly LostLine[] {
  const found = new Map<string, { line: MarkedLine; runs: number; of: number; points: number }>();
  for (const marks of runs)
    for (const [name, { line, lost }] of partOf(marks).lines) {
      const all = found.get(name) ?? { line, runs: 0, of: 0, points: 0 };
      if (all.of === 0) found.set(name, all);
      all.of++;
      all.points += lost;
      if (lost > 0) all.runs++;
    }
  return [...found.values()]
    .filter(({ runs: lost }) => lost > 0)
    .sort((a, b) => b.runs - a.runs || b.points - a.points || (a.line.id < b.line.id ? -1 : 1))
    .slice(0, LISTED)
    .map(({ line: { rule, block, hz }, runs: lost, of }) => ({ rule, block, hz, runs: lost, of }));
}
