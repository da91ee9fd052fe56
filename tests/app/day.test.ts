/** The day that a run file carries: a calendar day of ISO 8601, where the learner is. */
import { expect, it } from 'vitest';
import { dayOf } from '../../src/app/openBench.ts';
import { readRunFile } from '../../src/files/runFileSchema.ts';
import { createRun } from '../../src/run/runLog.ts';
import { serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import { stripSetup } from '../session/setups.ts';

it.each([
  [new Date(2026, 4, 31, 23, 59, 59), '2026-05-31'],
  [new Date(2027, 0, 1, 0, 0, 0), '2027-01-01'],
])('%s', (now, day) => {
  expect(dayOf(now)).toBe(day);
  const signed = { day: dayOf(now), runId: 'r1' };
  const file = toRunFile(createRun(stripSetup(), null), null, signed);
  expect(readRunFile(serialiseRunFile(file), 'run.json')).toMatchObject({ ok: true, value: signed });
});
