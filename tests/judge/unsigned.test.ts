/** A run of earlier rules that was never signed off says nowhere that it has passed; signed, the same acts do. Common practice, no source. */
import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { certifiedSet } from '../../scripts/makeCourseIndex.ts';
import { RULES_VERSION } from '../../src/base/engine.ts';
import { sealRun } from '../../src/files/seal.ts';
import { claimOf, gradeUnder } from '../../src/grading/grade.ts';
import { unsignedReport } from '../../src/grading/verdictOfRun.ts';
import { classRows } from '../../src/judge/classList.ts';
import { serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import { doJob } from '../../src/services/jobs/doJob.ts';
import { demonstrate } from '../../src/technician/atBench.ts';
import { en } from '../../src/words/en/index.ts';
import { inside, scratch } from '../cli/commandLine.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { setupOf } from '../technician/oneScenario.ts';

const EARLIER = 2;
const files = scratch();
afterAll(files.remove);

const setup = setupOf('first-curve');
const worked = demonstrate(setup);
const ofRules = (name: string, events: typeof worked.events, isSigned: boolean): string => {
  const claim = isSigned ? claimOf(gradeUnder(EARLIER)(setup, events)) : null;
  const run = { ...toRunFile({ ...worked, events, learner: 'Ottilie' }, claim), rules: EARLIER };
  return files.file(name, serialiseRunFile({ ...run, seal: sealRun(run, events) }));
};
const signed = ofRules('signed.json', worked.events, true);
const open = ofRules('open.json', worked.events.slice(0, -1), false);

const library = shippedLibrary();
const world = { library: async () => library, knownSet: async (id: string) => certifiedSet(id), par: async () => null };

async function rowOf(file: string) {
  const [row] = classRows(en, [
    { no: 1, file, judged: await doJob('judge', { text: readFileSync(file, 'utf8'), file }, world) },
  ]);
  return row!;
}

describe('what was never signed off', () => {
  it('would pass if it were: by both rules all four verdicts stand', () => {
    expect(worked.events.at(-1)!.type).toBe('signedOff');
    for (const rules of [EARLIER, RULES_VERSION] as const)
      expect(gradeUnder(rules)(setup, worked.events.slice(0, -1))).toMatchObject({ rules, passed: true });
  });

  it('is told as not passed by the command line, in words, in a list and as JSON', () => {
    const text = inside('regrade', open).out;
    expect(text).toContain('never signed off');
    expect(text).not.toMatch(/(?<!not )passed/);
    const csv = inside('regrade', open, '--csv').out.split('\r\n')[1]!;
    expect(csv).toContain(',unfinished,false,');
    expect(csv).not.toMatch(/(?<!not )passed/);
    const json = inside('regrade', open, '--json').out;
    expect(json).toMatch(/"passed": ?false/);
    expect(json).not.toMatch(/"passed": ?true/);
  });

  it('is told as not passed by the class page, in its row and in its report', async () => {
    const { passed, reason } = await rowOf(open);
    expect(passed).toBe(false);
    expect(reason).toContain('not passed');
    expect(reason).not.toMatch(/(?<!not )passed/);
    const report = gradeUnder(RULES_VERSION)(setup, worked.events.slice(0, -1));
    expect(unsignedReport(report)).toMatchObject({ passed: false, total: report.total, verdicts: report.verdicts });
  });

  it('passes when it is signed, and all three say so', async () => {
    expect(inside('regrade', signed).out).toMatch(/(?<!not )passed/);
    expect(inside('regrade', signed, '--csv').out).toContain(',otherRules,true,');
    expect(await rowOf(signed)).toMatchObject({ passed: true, verdict: 'otherRules' });
    expect((await rowOf(signed)).reason).toMatch(/(?<!not )passed/);
  });
});
