/** Four verdicts apart from the points: each falls by what it is about, by nothing else, and no sum of points makes up for one. */
import { describe, expect, test } from 'vitest';
import { RULES_VERSION } from '../../src/base/engine.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import type { TimedEvent } from '../../src/files/runFile.ts';
import { grade, gradeUnder } from '../../src/grading/grade.ts';
import { type Report, VERDICT_IDS } from '../../src/grading/report.ts';
import { wholeJob } from '../session/acts.ts';
import { canSetup, stripSetup } from '../session/setups.ts';

type Acts = readonly BenchEvent[];
const timed = (acts: Acts): TimedEvent[] => acts.map((act, i) => ({ atMs: i * 1000, ...act }));
const setup = canSetup();
const job = wholeJob(setup);
const graded = (acts: Acts): Report => grade(setup, timed(acts));
const standing = (report: Report): readonly string[] => VERDICT_IDS.filter((id) => report.verdicts[id].stands);
/** Done before the signature. */
const withLast = (act: BenchEvent): Acts => [...job.slice(0, -1), act, job.at(-1)!];

describe('[G40] a pass is four verdicts', () => {
  test('the job done as it should be has them all', () => {
    const report = graded(job);
    expect([standing(report), report.passed, report.rules]).toEqual([VERDICT_IDS, true, RULES_VERSION]);
  });

  test.each<[string, Acts, string, string]>([
    ['blanking left off', withLast({ type: 'controlSet', control: 'blanking', value: false }), 'true', 'G14'],
    ['[G63] a trace that is dark', withLast({ type: 'controlSet', control: 'brightness', value: 0.05 }), 'true', 'G63'],
    ['[G63] a trace off the tube', withLast({ type: 'controlSet', control: 'yPositionDiv', value: 4 }), 'true', 'G63'],
    ['[G64] nothing written down', job.filter((act) => act.type !== 'findingStated'), 'proved', 'G64:halveLevel'],
    [
      '[G64] a figure that nobody read',
      job.map((act) => (act.type === 'findingStated' ? { ...act, figure: 99 } : act)),
      ...(['proved', 'G64:halveLevel'] as const),
    ],
    ['no proof', job.filter((act) => !isProof(act)), 'proved', 'G27:halveLevel'],
    ['no slug turned', job.filter((act) => act.type !== 'slugTurned'), 'aligned', ''],
  ])('%s', (_, acts, verdict, line) => {
    const report = graded(acts);
    expect(report.passed).toBe(false);
    // A set out of tune may also be too weak, and what was seen of it is not what is written down.
    const fallen = VERDICT_IDS.filter((id) => !report.verdicts[id].stands);
    if (verdict === 'aligned') expect(fallen).toContain(verdict);
    else expect(fallen).toEqual([verdict]);
    const { lacks } = report.verdicts[verdict as keyof Report['verdicts']];
    expect(lacks.every((id) => report.lines.some((one) => one.id === id))).toBe(true);
    expect(line === '' ? lacks.length > 0 : lacks.includes(line)).toBe(true);
  });

  test('points enough for a pass under the first rules are no pass without a verdict', () => {
    const acts = withLast({ type: 'controlSet', control: 'blanking', value: false });
    expect(gradeUnder(1)(setup, timed(acts))).toMatchObject({ rules: 1, passed: true });
    const report = graded(acts);
    expect(report.total).toBeGreaterThan(90);
    expect([report.passed, report.word]).toEqual([false, 'windrow']);
  });

  test('a breach of safety is no pass, and says which', () => {
    const strip = stripSetup();
    const [cautions, ...rest] = wholeJob(strip);
    const acts = [cautions!, ...rest.filter((act) => act.type !== 'isolationSwitched')];
    const report = grade(strip, timed(acts));
    expect(report.verdicts.safe).toEqual({ stands: false, lacks: ['G38'] });
    expect(report.passed).toBe(false);
  });
});

function isProof(act: BenchEvent): boolean {
  const ends = job.slice(0, -1).findLastIndex((one) => one.type === 'slugTurned');
  return act.type !== 'signedOff' && job.indexOf(act) > ends + 1;
}
