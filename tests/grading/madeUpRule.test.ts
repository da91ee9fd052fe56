/** What a rule costs: a row and its words. A made-up one, handed to the grader and to the words, is met everywhere that the shipped ones are. */
import { describe, expect, test } from 'vitest';
import { adviceFor } from '../../src/describe/advice.ts';
import { findings } from '../../src/describe/findings.ts';
import { ruleLabel } from '../../src/describe/ruleWords.ts';
import { scoreLineSentence } from '../../src/describe/scoreLine.ts';
import { readRunFile } from '../../src/files/runFileSchema.ts';
import { claimOf, createGrader, grade } from '../../src/grading/grade.ts';
import { amount } from '../../src/grading/rules/readings.ts';
import type { CapRule, LineRule, Subjects } from '../../src/grading/rules/rule.ts';
import { RULES } from '../../src/grading/rules/rules.ts';
import { serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import { verifyRun } from '../../src/run/verify.ts';
import { en } from '../../src/words/en/index.ts';
import type { WordsOf } from '../../src/words/ruleWords.ts';
import { knownBench, runOf } from '../run/runs.ts';
import { wholeJob } from '../session/acts.ts';
import { canSetup } from '../session/setups.ts';

const TALL = {
  number: 'G900',
  block: 'truth',
  about: 'bench',
  weight: 40,
  needsPicture: true,
  reads: amount('count', (b: Subjects['bench']) => b.traceHeightDiv, { low: 20, high: null, tolerance: 20 }),
} as const satisfies LineRule;
const HASTE = { number: 'G901', breach: 'steelTool', limit: 33 } as const satisfies CapRule;

const madeUp: WordsOf<typeof TALL | typeof HASTE> = {
  G900: {
    label: 'A tall trace',
    name: 'its height',
    good: (s) => `The trace stands ${s.at} divisions tall.`,
    bad: (s) => `The trace is but ${s.at} divisions tall, wanted ${s.want}.`,
    advice: 'Raise the Y gain.',
  },
  G901: { label: 'Haste', name: 'haste', capped: (limit, at) => `Haste at ${at}: ${limit} at most.` },
};
const words = { ...en, rules: { ...en.rules, ...madeUp } };

const setup = canSetup();
const gradeAll = createGrader([...RULES, TALL, HASTE]);
const run = runOf(setup, wholeJob(setup));
const report = gradeAll(setup, run.events);
const line = report.lines.find(({ rule }) => rule === 'G900')!;

describe('a made-up rule', () => {
  test('has its line in the report, and takes its share of the points of its block', () => {
    expect(line).toMatchObject({ id: 'G900', block: 'truth', low: 20, high: null, unit: 'count', hz: null });
    expect(line.measured).toBeGreaterThan(2);
    expect(line.points).toBeLessThan(line.max);
    expect(line.max).toBeGreaterThan(10);
    expect(report.blocks.truth.max).toBe(grade(setup, run.events).blocks.truth.max);
    expect(report.total).toBeLessThan(grade(setup, run.events).total);
  });

  test('has its sentence, its title and its advice, also among the findings', () => {
    const sentence = `The trace is but ${line.measured} divisions tall, wanted 20 at least.`;
    expect(scoreLineSentence(words, line, setup.receiver)).toBe(sentence);
    expect(scoreLineSentence(words, { ...line, measured: 21 }, setup.receiver)).toBe(
      'The trace stands 21 divisions tall.',
    );
    expect(scoreLineSentence(words, { ...line, held: 'noPicture' }, setup.receiver)).toContain(
      'so its height could not',
    );
    expect(ruleLabel(words, line.rule)).toBe('A tall trace');
    expect(adviceFor(words, line)).toBe('Raise the Y gain.');
    expect(findings(words, report, setup.receiver).map(({ text }) => text)).toContain(`${sentence} Raise the Y gain.`);
  });

  test('depends on a picture where its row says so', () => {
    const dark = [...run.events.slice(0, -1), { atMs: 900_000, type: 'leadRemoved', lead: 'x' } as const];
    expect(gradeAll(setup, dark).lines.find(({ rule }) => rule === 'G900')).toMatchObject({
      points: 0,
      held: 'noPicture',
    });
  });

  test('stands in the claim of a run file, which holds by the same rules and by no others', () => {
    const claimed = claimOf(report);
    expect(claimed.lines).toContainEqual({ id: 'G900', points: line.points });
    const file = readRunFile(serialiseRunFile(toRunFile(run, claimed)), 'run.json');
    if (!file.ok) throw new Error(JSON.stringify(file.problems));
    const by = (judge: typeof grade) =>
      verifyRun(file.value, knownBench(setup), (one, events) => claimOf(judge(one, events)));
    expect(by(gradeAll)).toEqual({ kind: 'verified', score: claimed });
    const other = by(grade);
    expect(other.kind).toBe('scoreDiffers');
    if (other.kind === 'scoreDiffers') {
      expect(other.lines).toContainEqual({ id: 'G900', claimed: line.points, recomputed: null });
    }
  });

  test('may cap the whole run instead', () => {
    const acts = wholeJob(setup).slice(0, -1);
    const hasty = runOf(setup, [...acts, { type: 'toolTaken', tool: 'steel' }, { type: 'toolPlaced', slug: 'T1T' }]);
    const capped = gradeAll(setup, hasty.events);
    expect(capped.caps).toMatchObject([{ rule: 'G901', limit: 33 }]);
    expect(capped.total).toBe(33);
    expect(findings(words, capped, setup.receiver).some(({ text }) => /^Haste at .*: 33 at most\.$/.test(text))).toBe(
      true,
    );
  });
});

test('a row without its words, and words that lack a part, do not compile', () => {
  // @ts-expect-error: G901 has no words
  const lacking: WordsOf<typeof TALL | typeof HASTE> = { G900: madeUp.G900 };
  const { name: _name, ...nameless } = madeUp.G900;
  // @ts-expect-error: what needs a picture must be called something when there is none
  const unnamed: WordsOf<typeof TALL> = { G900: nameless };
  expect(() => ruleLabel({ ...en, rules: { ...en.rules, ...lacking } }, 'G901')).toThrow('no words for the rule G901');
  expect(Object.keys(unnamed.G900)).not.toContain('name');
});
