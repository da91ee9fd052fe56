/** Evening sheets, sealed ones and the runs of an exam on the command line. Source: docs/evening-sheet.md. */
import { webcrypto } from 'node:crypto';
import { afterAll, describe, expect, it } from 'vitest';
import { eveningText } from '../../src/files/evening.ts';
import { examAttempt, runsText } from '../../src/files/runsFile.ts';
import { serialiseRunFile } from '../../src/run/serialise.ts';
import { sealSheet } from '../../src/services/handing/phraseSeal.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { finishedFile } from '../run/runs.ts';
import { setupOf } from '../technician/oneScenario.ts';
import { insideByKey as inside, scratch } from './commandLine.ts';

const files = scratch();
afterAll(files.remove);

const scenario = shippedLibrary().scenarios.find(({ id }) => id === 'first-curve')!;
const sheet = eveningText({ title: 'Thursday', order: 'any', minutes: null, exam: null, scenarios: [scenario] });
const run = finishedFile(setupOf('first-curve'));
const text = serialiseRunFile(run);
const head = { title: 'Thursday', sheet: 'ab'.repeat(32), candidate: run.learner! };

describe('check', () => {
  it('says what sheets and runs are, and where they are wrong', async () => {
    const plain = files.file('evening.json', sheet);
    const open = { format: 'haystack-sealed-evening', version: 1, title: 'T', minutes: 90, count: 1 } as const;
    const sealed = await sealSheet(webcrypto.subtle as SubtleCrypto, { ...open, candidates: 'names' }, sheet, 'x', 1e5);
    const shut = files.file('sealed.json', JSON.stringify(sealed));
    const runs = files.file('runs.json', runsText(head, [text]));
    const { out, err, code } = inside('check', plain, shut, runs);
    expect([err, code]).toEqual(['', 0]);
    expect(out).toContain('(evening sheet, 1 scenario)');
    expect(out).toContain('(sealed evening sheet, 1 scenario)');
    expect(out).toContain('(runs of an exam, 1 run)');
    const wrong = files.file('wrong.json', sheet.replace('"loose-can-10m7"', '"nobodys-set"'));
    const told = inside('check', wrong);
    expect(told.code).toBe(1);
    expect(told.err).toContain('/scenarios/0/receiver');
    expect(told.err).toContain('nobodys-set');
  });
});

describe('regrade', () => {
  it('judges each run of an exam’s file, beside files of one run', () => {
    const exam = files.file('exam.json', runsText(head, [text, text.replace(run.learner!, 'somebody else')]));
    const single = files.file('single.json', text);
    const { out, code } = inside('regrade', '--csv', exam, single);
    const rows = out.trim().split('\r\n').slice(1);
    expect(rows.map((row) => row.split(',')[3])).toEqual(['verified', 'unreadable', 'verified']);
    expect(code).toBe(1);
    expect(inside('regrade', files.file('alone.json', runsText(head, [text]))).code).toBe(0);
  });

  it('refuses a run that was dealt for another candidate', () => {
    const other = {
      ...run,
      scenario: { ...run.scenario, attempt: examAttempt(head.sheet, 'another', 'first-curve', 0) },
    };
    const { err, code } = inside('regrade', files.file('dealt.json', runsText(head, [serialiseRunFile(other)])));
    expect(code).toBe(1);
    expect(err).toContain('/runs/0/scenario/attempt');
  });
});
