/**
 * `npm run perf:class [-- COUNT]`: a made-up class of run files brought to the class room of the built page, 500 where no number is given. How long until all are graded, how
 * long the longest task of the page's own thread was meanwhile, and how soon a click in the list was answered. By hand only, as all figures of the wall clock.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { chromium } from '@playwright/test';
import { BROWSER_ARGS, findBrowser, NO_BROWSER } from '../../scripts/browser.mjs';
import { ensureBuilt } from '../../scripts/build.mjs';
import { serve } from '../../scripts/serve.mjs';
import { processorSeconds } from './idle.ts';

const count = Number(process.argv[2] ?? 500);
const folder = path.join('.cache', `class-${count}`);
if (!existsSync(folder) || readdirSync(folder).length < count)
  execFileSync(process.execPath, [...process.execArgv, 'scripts/make-class.ts', folder, `${count}`], {
    stdio: 'inherit',
  });
const executablePath = await findBrowser();
if (executablePath === null) throw new Error(NO_BROWSER);
await ensureBuilt({ quiet: true });
const server = await serve(process.env.HAYSTACK_DIST ?? 'dist');
const browser = await chromium.launch({ executablePath, args: BROWSER_ARGS });
try {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.goto(`${server.url}#/class`);
  await page.locator('.drop-place').waitFor();
  // A browser just started builds its own windows for some seconds.
  await page.waitForTimeout(4000);
  await page.evaluate(() => {
    const seen = { tasks: [], clicks: [] };
    window.seen = seen;
    new PerformanceObserver((list) => seen.tasks.push(...list.getEntries().map((one) => one.duration))).observe({
      type: 'longtask',
    });
  });
  const input = page.locator('input[data-picks=files]');
  const files = readdirSync(folder).slice(0, count);
  const session = await browser.newBrowserCDPSession();
  const before = await processorSeconds(session);
  const began = performance.now();
  await input.setInputFiles(files.map((name) => path.join(folder, name)));
  const all = page.locator('.class-progress > p').first();
  while (!(await all.textContent())?.includes('graded')) {
    // Somebody sorts the list meanwhile.
    const clicked = performance.now();
    const head = page.locator('thead button').nth(1);
    if ((await head.count()) > 0) await head.click();
    await page.evaluate(() => new Promise(requestAnimationFrame));
    const took = performance.now() - clicked;
    await page.evaluate((ms) => window.seen.clicks.push(ms), took);
    await page.waitForTimeout(500);
  }
  const seconds = (performance.now() - began) / 1000;
  const after = await processorSeconds(session);
  const { tasks, clicks } = await page.evaluate(() => window.seen);
  const outcomes = await page.locator('.told-apart .m').allTextContents();
  clicks.sort((a, b) => a - b);
  process.stdout.write(
    `${files.length} files in ${seconds.toFixed(1)} s (${outcomes[0]} verified), ${(after.total - before.total).toFixed(1)} s of processor time, ${(after.page - before.page).toFixed(1)} s of it in the page and its workers; longest task ${Math.max(0, ...tasks).toFixed(0)} ms, ${tasks.length} over 50 ms; a click answered in ${clicks[Math.floor(clicks.length / 2)]?.toFixed(0)} ms, at most ${clicks.at(-1)?.toFixed(0)} ms\n`,
  );
} finally {
  await browser.close();
  await server.close();
}
