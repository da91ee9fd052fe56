/**
 * `npm run perf:desk [-- SCENARIO ...]`: a slug dragged on the workshop's plan of the built page, copies of shipped scenarios on the desk. What the page's own thread works for each
 * frame, in its own processor time: the median, one frame in twenty, the longest; beside 16.7 ms, which is one frame of sixty a second. And the longest task of the
 * desk's first look, which is of the draft that lies on it.
 */
import { chromium } from '@playwright/test';
import { BROWSER_ARGS, findBrowser, NO_BROWSER } from '../../scripts/browser.mjs';
import { ensureBuilt } from '../../scripts/build.mjs';
import { serve } from '../../scripts/serve.mjs';
import { workshopWords as say } from '../../src/words/en/workshop.ts';
import { frameWorks, longestOfBusiestMs, traceFrames, traceTasks } from '../mainThread.ts';

const SPAN_MS = 6000;
const MOVE_MS = 8;
/** Two turns each way: so fast that the slug has moved in nearly every frame. */
const SWING_MS = 3000;
const SWING_TURNS = 2;
const REACH_PX = 16;
/** A can, the strip of nine slugs, one with a failed part, a radio IF, the way of colour. */
const USUAL = ['off-centre', 'from-cold', 'hole-in-one', 'radio-sealed', 'colour-sealed'];

const asked = process.argv.slice(2);
const executablePath = await findBrowser();
if (executablePath === null) throw new Error(NO_BROWSER);
await ensureBuilt({ quiet: true });
const server = await serve(process.env.HAYSTACK_DIST ?? 'dist');
const browser = await chromium.launch({ executablePath, args: BROWSER_ARGS });
try {
  for (const id of asked.length === 0 ? USUAL : asked) {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    page.setDefaultTimeout(120_000);
    await traceTasks(browser);
    await page.goto(`${server.url}#/workshop`);
    await page.locator('.seen-tube .tube').waitFor();
    await page.locator('.seen[aria-busy=false]').waitFor();
    const first = await longestOfBusiestMs(browser);
    await page.getByRole('combobox', { name: say.copyOf, exact: true }).selectOption(id);
    await page.locator('.seen[aria-busy=false]').waitFor();
    await page.waitForTimeout(2000);
    const box = await page.locator('.plan-slug').first().boundingBox();
    const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    const spot = (ms) => {
      const angle = 2 * Math.PI * SWING_TURNS * Math.sin((2 * Math.PI * ms) / SWING_MS);
      return { x: middle.x + REACH_PX * Math.sin(angle), y: middle.y - REACH_PX * Math.cos(angle) };
    };
    const session = await page.context().newCDPSession(page);
    const mouse = (type, ms, more) =>
      session.send('Input.dispatchMouseEvent', { type, ...spot(ms), button: 'left', ...more });
    await mouse('mousePressed', 0, { clickCount: 1 });
    const fromMs = performance.now();
    let pending = 0;
    const timer = setInterval(() => {
      // A page that lags gets the newest place of the hand, as it would from a mouse.
      if (pending > 1) return;
      pending++;
      mouse('mouseMoved', performance.now() - fromMs, { buttons: 1 }).then(
        () => pending--,
        () => clearInterval(timer),
      );
    }, MOVE_MS);
    // The first second is for the compiler.
    await page.waitForTimeout(1500);
    await traceFrames(browser);
    await page.waitForTimeout(SPAN_MS);
    const works = await frameWorks(browser);
    clearInterval(timer);
    await mouse('mouseReleased', 0, { clickCount: 1 });
    const at = (share) => works[Math.min(works.length - 1, Math.floor(share * works.length))].toFixed(1);
    process.stdout.write(
      `${id.padEnd(16)} ${works.length} frames in ${SPAN_MS / 1000} s, work a frame: median ${at(0.5)} ms, one in twenty over ${at(0.95)} ms, longest ${at(1)} ms; the longest task as the desk was opened ${first.toFixed(1)} ms\n`,
    );
    await page.close();
  }
} finally {
  await browser.close();
  await server.close();
}
