/** Run files that were handed out before: each still reads, replays and comes to the score that it claims, to the last digit. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { hashOf } from '../../src/files/hash.ts';
import { judgeText } from '../../src/judge/judgeRun.ts';
import { shippedLibrary } from '../files/shipped.ts';

const FOLDER = new URL('../fixtures/runs/', import.meta.url);
const { receivers, scenarios } = shippedLibrary();

describe('a run file of before', () => {
  const files = readdirSync(FOLDER);
  it('is there', () => expect(files.length).toBeGreaterThanOrEqual(6));
  it.each(files)('%s', (file) => {
    const judgement = judgeText(readFileSync(new URL(file, FOLDER), 'utf8'), file, (scenario) => ({
      ok: true,
      value: {
        ...receivers.get(scenario.receiver)!,
        scenarioHash: hashOf(scenarios.find((one) => one.id === scenario.id)),
      },
    }));
    expect(judgement.verdict.kind).toBe('verified');
    expect(judgement.scenarioKnown).toBe(true);
  });
});
