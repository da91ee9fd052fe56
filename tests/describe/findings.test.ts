/** What a report says is to be done next. From memory: a service job replaces what has failed before it turns a slug, since no slug makes up for a part. */
import { describe, expect, it } from 'vitest';
import { findings } from '../../src/describe/findings.ts';
import type { TimedEvent } from '../../src/files/runFile.ts';
import { grade } from '../../src/grading/grade.ts';
import { en } from '../../src/words/en/index.ts';
import { reportWords } from '../../src/words/en/reportPage.ts';
import { wholeJob } from '../session/acts.ts';
import { setupOf } from '../technician/oneScenario.ts';

const { next } = en.grading.findings;

function nextOf(id: string, events: readonly TimedEvent[]): string {
  const setup = setupOf(id);
  const report = grade(setup, events);
  return findings(en, report, setup.receiver).find(({ tone }) => tone === 'next')!.text;
}

describe('what is to be done next', () => {
  const signed: TimedEvent = { atMs: 60_000, type: 'signedOff' };

  it('is the part, while one that has failed is still in the set', () => {
    expect(nextOf('one-hump-gone', [signed])).toBe(next.part);
  });

  it('is not the part where that has been replaced, or where none has failed', () => {
    const replaced = wholeJob(setupOf('one-hump-gone')).find(({ type }) => type === 'partReplaced')!;
    expect(nextOf('one-hump-gone', [{ atMs: 1000, ...replaced }, signed])).not.toBe(next.part);
    expect(nextOf('first-curve', [signed])).not.toBe(next.part);
  });
});

it('a slug that was turned there and back by as much is no turn in', () => {
  expect(reportWords.spell('A', 0, '00:10')).toMatch(/put back$/);
  expect(reportWords.spell('A', -0.25, '00:10')).toMatch(/1\/4 turn out$/);
});
