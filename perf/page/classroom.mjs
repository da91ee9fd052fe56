/**
 * `npm run perf:class [-- COUNT [WAY]]`: a made-up class of run files brought to the class room of the built page, 500 where no number is given. How long until all are graded, how
 * long the longest task of the page's own thread was meanwhile, by the clock and of its own processor time, and how soon a click in the list was answered. The way is `picker` (the
 * picker that gives handles, here to files of the browser's own store), `field` (a field for files), `drop` or `folder` (a folder that is dropped). By hand only, as all figures of the wall clock.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { chromium } from '@playwright/test';
import { BROWSER_ARGS, findBrowser, NO_BROWSER } from '../../scripts/browser.mjs';
import { ensureBuilt } from '../../scripts/build.mjs';
import { serve } from '../../scripts/serve.mjs';
import { longestOfBusiestMs, traceTasks } from '../mainThread.ts';
import { processorSeconds } from './idle.ts';

const count = Number(process.argv[2] ?? 500);
const way = process.argv[3] ?? 'picker';
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
  const files = readdirSync(folder).slice(0, count);
  const places = files.map((name) => path.resolve(folder, name));
  if (way === 'picker') {
    const texts = places.map((place, i) => [files[i], readFileSync(place, 'utf8')]);
    await page.evaluate(async (all) => {
      const root = await navigator.storage.getDirectory();
      const handles = [];
      for (const [name, text] of all) {
        const handle = await root.getFileHandle(name, { create: true });
        const writing = await handle.createWritable();
        await writing.write(text);
        await writing.close();
        handles.push(handle);
      }
      window.showOpenFilePicker = async () => handles;
    }, texts);
    await page.waitForTimeout(4000);
    await page.evaluate(() => {
      window.seen.tasks.length = 0;
    });
  }
  const bring = async () => {
    if (way === 'picker') return page.locator('.drop-buttons .button').first().click();
    if (way === 'field') return page.locator('input[data-picks=files]').setInputFiles(places);
    const hand = await page.context().newCDPSession(page);
    const data = { items: [], files: way === 'folder' ? [path.resolve(folder)] : places, dragOperationsMask: 1 };
    for (const type of ['dragEnter', 'dragOver', 'drop'])
      await hand.send('Input.dispatchDragEvent', { type, x: 200, y: 300, data });
  };
  const session = await browser.newBrowserCDPSession();
  const before = await processorSeconds(session);
  const began = performance.now();
  await traceTasks(browser);
  await bring();
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
  const longest = await longestOfBusiestMs(browser);
  const { tasks, clicks } = await page.evaluate(() => window.seen);
  const outcomes = await page.locator('.told-apart .m').allTextContents();
  clicks.sort((a, b) => a - b);
  process.stdout.write(
    `${way}: ${files.length} files in ${seconds.toFixed(1)} s (${outcomes[0]} verified), ${(after.total - before.total).toFixed(1)} s of processor time, ${(after.page - before.page).toFixed(1)} s of it in the page and its workers; longest task ${Math.max(0, ...tasks).toFixed(0)} ms by the clock, ${longest.toFixed(0)} ms of processor time, ${tasks.length} over 50 ms by the clock; a click answered in ${clicks[Math.floor(clicks.length / 2)]?.toFixed(0)} ms, at most ${clicks.at(-1)?.toFixed(0)} ms\n`,
  );
} finally {
  await browser.close();
  await server.close();
}
