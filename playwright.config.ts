/** Browser tests: the page as `npm start` builds and serves it, in Chromium, three for every two cores. */
import { availableParallelism } from 'node:os';
import { defineConfig } from '@playwright/test';
import { BROWSER_ARGS, findBrowser, NO_BROWSER } from './scripts/browser.mjs';

const executablePath = process.env.HAYSTACK_BROWSER ?? (await findBrowser());
if (executablePath === null) throw new Error(NO_BROWSER);
// Workers read this file again; they shall not look a second time.
process.env.HAYSTACK_BROWSER = executablePath;

// `npm test` looks for a free port first; by hand it is this one, and a run fails when something else is there.
const port = Number(process.env.HAYSTACK_TEST_PORT ?? 4576);
const url = `http://127.0.0.1:${port}/`;

export default defineConfig({
  testDir: 'tests/e2e',
  outputDir: 'test-results',
  // No test sees what another kept, and each waits for a picture or a timer a third of the time.
  workers: Math.ceil(1.5 * availableParallelism()),
  // In a whole run, on a machine with much else to do, a test has a second go; who needed it is named at the end.
  retries: process.env.CI ? 1 : 0,
  forbidOnly: true,
  fullyParallel: true,
  // Against standing still for ever; nothing here is meant to be measured by it.
  timeout: 300_000,
  snapshotPathTemplate: '{testDir}/shots/{projectName}/{arg}{ext}',
  expect: {
    timeout: 20_000,
    toHaveScreenshot: { animations: 'disabled', caret: 'hide', scale: 'css', threshold: 0, maxDiffPixels: 0 },
  },
  use: {
    baseURL: url,
    // What was done is written down only where a test has its second go: it takes time at every act. `--trace on` has more.
    trace: { mode: 'on-first-retry', screenshots: false, snapshots: false, sources: false },
    // What moves of itself is drawn anew many times while a test waits. What is about motion, and the whole runs, ask for it (`moving.ts`).
    contextOptions: { reducedMotion: 'reduce' },
    screenshot: 'only-on-failure',
    serviceWorkers: 'block',
    launchOptions: { executablePath, args: BROWSER_ARGS },
  },
  // Every test runs in `full`; one that carries the tag @shelf or @upright runs in that size as well.
  projects: [
    { name: 'full', use: { viewport: { width: 1440, height: 900 } } },
    { name: 'shelf', grep: /@shelf\b/, use: { viewport: { width: 1024, height: 640 } } },
    { name: 'upright', grep: /@upright\b/, use: { viewport: { width: 820, height: 1180 }, hasTouch: true } },
  ],
  webServer: {
    command: `node scripts/start.mjs --no-open --port ${port}`,
    url,
    reuseExistingServer: false,
    // Where certificates are of an earlier day every set is dealt anew, which takes minutes on a busy machine.
    timeout: 600_000,
    stdout: 'pipe',
    gracefulShutdown: { signal: 'SIGTERM', timeout: 5_000 },
  },
});
