/** Puts a run file of the fixtures on the page's own shelves, as if it had been signed off here. */
import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import type { RunFile } from '../../src/files/runFile.ts';
import { keptRecord } from '../../src/services/store/layout.ts';
import { expect } from './page.ts';

/** `torn`: a record of an open run that is none lies there too, which the page lays aside and says so. */
export async function keepFixture(
  page: Page,
  search: string,
  runId: string,
  fixture: string,
  torn: boolean,
): Promise<void> {
  const text = readFileSync(`tests/fixtures/runs/${fixture}.json`, 'utf8');
  const { scenario, events } = JSON.parse(text) as RunFile;
  const record = keptRecord({
    runId,
    scenarioId: scenario.id,
    track: scenario.track,
    receiver: scenario.receiver,
    sealed: scenario.sealed,
    learner: null,
    total: 92,
    passed: true,
    lines: [],
    signedAtMs: 0,
    serial: 1,
  });
  expect(events.length).toBeGreaterThan(0);
  await page.goto(`/${search}`);
  // The page lays its own shelves when it has been drawn.
  await expect
    .poll(() => page.evaluate(async () => (await indexedDB.databases()).some(({ name }) => name === 'haystack')))
    .toBe(true);
  await page.evaluate(
    async ([kept, file, spoilt]) => {
      const opening = indexedDB.open('haystack');
      await new Promise((done) => opening.addEventListener('success', done));
      const base = opening.result;
      const change = base.transaction(['kept', 'texts', 'open'], 'readwrite');
      change.objectStore('kept').put(kept);
      change.objectStore('texts').put(file);
      if (spoilt) change.objectStore('open').put({ runId: 'torn' });
      await new Promise((done) => change.addEventListener('complete', done));
      base.close();
    },
    [record, { runId, text }, torn] as const,
  );
  await page.reload();
}
