/** The list of a class: the page's rows are the command line's, and what is sorted, sifted and counted of them. Common practice, no source. */
import { writeFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { certifiedSet } from '../../scripts/makeCourseIndex.ts';
import { isCap } from '../../src/grading/rules/rule.ts';
import { RULES } from '../../src/grading/rules/rules.ts';
import {
  type ClassRow,
  classRows,
  createClassRows,
  inOrder,
  type JudgedFile,
  sifted,
} from '../../src/judge/classList.ts';
import { classSummary, isLost } from '../../src/judge/classSummary.ts';
import { csvOf } from '../../src/judge/csv.ts';
import type { MarkedLine } from '../../src/judge/judged.ts';
import { OUTCOMES, type Outcome } from '../../src/judge/outcome.ts';
import { SKILL_IDS, skillOf } from '../../src/judge/skills.ts';
import { doJob } from '../../src/services/jobs/doJob.ts';
import { en } from '../../src/words/en/index.ts';
import { inside, scratch } from '../cli/commandLine.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { MARKUP_NAME, madeClass } from './madeClass.ts';

const made = madeClass();
const files = scratch();
afterAll(files.remove);

const library = shippedLibrary();
const world = { library: async () => library, knownSet: async (id: string) => certifiedSet(id), par: async () => null };
const judged: JudgedFile[] = [];
for (const [name, text] of Object.entries(made.files)) {
  writeFileSync(files.place(name), text);
  const file = files.place(name);
  judged.push({ no: judged.length + 1, file, judged: await doJob('judge', { text, file }, world) });
}
const rows = classRows(en, judged);
const names = (list: readonly ClassRow[]): string => list.map(({ no }) => no).join(' ');

describe('the rows of the page', () => {
  it('are those of the command line on the same files, byte for byte', () => {
    const { out } = inside('regrade', files.folder, '--csv', '--jobs', '1');
    expect(csvOf(rows)).toBe(out);
    expect(out.split('\r\n')[0]).toBe('file,learner,scenario,verdict,passed,points,reason,sameAs');
    expect(out.split('\r\n')).toHaveLength(rows.length + 2);
  });

  it('tell the files apart', () => {
    expect(rows.map(({ verdict }) => verdict)).toEqual([
      ...['verified', 'verified', 'altered', 'altered', 'unfinished', 'otherScenario', 'otherRules', 'impossible'],
      ...['unreadable', 'unreadable', 'unreadable'],
    ]);
    expect([rows[0]!.points, rows[0]!.passed]).toEqual([made.total, made.passed]);
    expect(rows[1]).toMatchObject({ learner: MARKUP_NAME, copy: true, sameNo: 1 });
    expect(rows[0]).toMatchObject({ copy: false, sameNo: 2 });
    // Nothing is earned by what was not graded, and each refusal says where.
    for (const row of rows.slice(5)) expect(row).toMatchObject({ points: null, passed: null, marks: null });
    for (const row of rows.slice(8)) expect(row.reason).toContain(row.file);
  });

  it('have four verdicts of their own where the run was graded', () => {
    expect(rows[0]!.marks!.stands).toEqual({ aligned: true, true: true, proved: true, safe: true });
    expect(rows[4]!.marks!.stands.aligned).toBe(false);
    // The whole is rounded down, each line to the nearest hundredth.
    const { lines } = rows[0]!.marks!;
    const sum = lines.reduce((all, { points }) => all + points, 0);
    expect(sum + 0.005 * lines.length).toBeGreaterThanOrEqual(made.total);
    expect(sum - 0.005 * lines.length).toBeLessThan(made.total + 1);
  });
});

describe('a list that grows', () => {
  it('keeps the rows in which nothing has changed, and changes those that a copy is found of', () => {
    const list = createClassRows(en);
    const before = list([judged[0]!, judged[4]!]);
    expect(before.map(({ sameNo }) => sameNo)).toEqual([null, null]);
    const after = list([judged[0]!, judged[1]!, judged[4]!]);
    expect(after[2]).toBe(before[1]);
    expect(after.map(({ sameNo, copy }) => [sameNo, copy])).toEqual([
      [2, false],
      [1, true],
      [null, false],
    ]);
    // The copy is taken away again.
    expect(list([judged[0]!, judged[4]!])).toEqual(before);
  });
});

/** A row that is made up, of a run that earned `points`. */
function row(no: number, learner: string | null, points: number | null, verdict: Outcome = 'verified'): ClassRow {
  const lines: MarkedLine[] = [
    { id: 'G3:1', rule: 'G3', block: 'response', points: points ?? 0, max: 80, hz: 1e6 },
    { id: 'G27:level', rule: 'G27', block: 'proofs', points: 20, max: 20, hz: null },
  ];
  const stands = { aligned: (points ?? 0) > 50, true: true, proved: true, safe: true };
  return {
    ...{ no, learner, points, verdict, file: `${no}.json`, day: null, runId: null, scenario: 'job' },
    ...{
      passed: points === null ? null : points > 50,
      reason: '',
      sameAs: null,
      acts: null,
      sameNo: null,
      copy: false,
    },
    title: { id: 'job', code: 'S-01', title: 'Job' },
    finding: { kind: 'eventsChanged' },
    marks:
      points === null ? null : { stands, lines, turns: points / 10, parTurns: 4, seconds: 60 * no, parSeconds: 60 },
  };
}

describe('a class that is made up', () => {
  const CLASS = [
    row(1, 'Tove', 40),
    row(2, 'anna', 80),
    row(3, 'Tove', 70),
    row(4, null, null, 'unreadable'),
    row(5, 'Tove', 79, 'altered'),
    row(6, 'Bo', 60, 'otherRules'),
  ];

  it('is sorted either way, with what there is nothing of last and what is alike as it came', () => {
    const by = (key: Parameters<typeof inOrder>[1]['by'], down = false) =>
      names(inOrder(CLASS, { by: key, down }, 'en-GB'));
    expect(by('no')).toBe('1 2 3 4 5 6');
    expect(by('no', true)).toBe('6 5 4 3 2 1');
    expect(by('learner')).toBe('2 6 1 3 5 4');
    expect(by('learner', true)).toBe('1 3 5 6 2 4');
    expect(by('points', true)).toBe('2 5 3 6 1 4');
    expect(by('points')).toBe('1 6 3 5 2 4');
    expect(by('aligned', true)).toBe('2 3 5 6 1 4');
    expect(by('state')).toBe('1 2 3 6 5 4');
    expect(by('turns')).toBe('1 6 3 5 2 4');
    expect(by('time', true)).toBe('6 5 3 2 1 4');
  });

  it('is sifted by learner and scenario, and to the best that can be trusted of each', () => {
    const all = { learner: null, scenario: null, bestOnly: false };
    expect(names(sifted(CLASS, { ...all, learner: 'Tove' }))).toBe('1 3 5');
    expect(names(sifted(CLASS, { ...all, scenario: 'other' }))).toBe('');
    // An altered file never stands for a learner who has a verified one, and what was not graded is never hidden.
    expect(names(sifted(CLASS, { ...all, bestOnly: true }))).toBe('2 3 4 6');
  });

  it('has the averages of runs that count, each once', () => {
    const copy = { ...row(7, 'Cheat', 80), copy: true };
    const figures = classSummary([...CLASS, copy]);
    expect(figures).toMatchObject({ learners: 4, copies: 1, counted: 4 });
    expect(figures.outcomes).toMatchObject({ verified: 4, altered: 1, otherRules: 1, unreadable: 1, impossible: 0 });
    // (40 + 80 + 70 + 60) / 4 of 80
    expect(figures.skills).toEqual([
      { skill: 'curve', share: (40 + 80 + 70 + 60) / 4 / 80 },
      { skill: 'proofs', share: 1 },
    ]);
    // Below 85 per cent of its points a line of the response is outside its limits (G1): 40 and 60 of 80 are, 70 is not.
    expect(figures.lost).toEqual([{ rule: 'G3', block: 'response', hz: 1e6, runs: 2, of: 4 }]);
    expect(isLost({ points: 68, max: 80 })).toBe(false);
    expect(isLost({ points: 67.9, max: 80 })).toBe(true);
  });

  it('without a run has no averages', () => {
    const none = classSummary([]);
    expect([none.skills, none.lost, none.counted]).toEqual([[], [], 0]);
    expect(Object.keys(none.outcomes)).toEqual([...OUTCOMES]);
  });
});

it('every rule that makes lines is about a skill, and every skill has a rule', () => {
  const skills = RULES.flatMap((rule) => (isCap(rule) ? [] : [skillOf({ rule: rule.number, block: rule.block })]));
  expect(new Set(skills)).toEqual(new Set(SKILL_IDS));
});
