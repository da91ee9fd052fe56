/** The course page in a browser that has never seen it: when its cards can be read, how long the page stands still at most, and what comes over the line. */
import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright';
import { type BrowserModule, type ServeModule, script } from '../../tests/scripts/scriptModules.ts';
import type { PerfCase, Sample } from '../case.ts';
import { longestTaskMs, traceTasks } from '../mainThread.ts';

const RUNS = 5;
const CARDS = '.card-open';
/** After the last card: letters and frames still come in. */
const SETTLING_MS = 1500;
/** A browser just started builds its own windows for some seconds, and would share the processor with the page that is measured. */
const BROWSER_SETTLES_MS = 4000;

interface FirstPage {
  /** when every card is there and painted */
  readonly cardsMs: number;
  /** no task of the page's own thread took more of the processor's time */
  readonly longestTaskMs: number;
  readonly bytes: number;
  readonly cards: number;
}

/** One visit for all cases, per throttling: the same figures, read three ways. */
const visits = new Map<number, Promise<readonly FirstPage[] | string>>();

const visitsAt = (slower: number): Promise<readonly FirstPage[] | string> => {
  const known = visits.get(slower) ?? visitAll(slower);
  visits.set(slower, known);
  return known;
};

function pageCase(id: string, title: string, slower: number, read: (visit: FirstPage) => number): PerfCase {
  return {
    id,
    title,
    async measure(): Promise<Sample | string> {
      const all = await visitsAt(slower);
      if (typeof all === 'string') return all;
      return { micros: all.map((visit) => read(visit) * 1000), checksum: all[0]!.cards };
    },
  };
}

export const cases: readonly PerfCase[] = [
  pageCase('first-page', 'course page: all cards painted, cold', 1, (visit) => visit.cardsMs),
  pageCase('first-page-task', 'course page: longest task, cold, of processor time', 1, (visit) => visit.longestTaskMs),
  pageCase(
    'first-page-slow',
    'course page: all cards painted, cold, processor 4 times slower',
    4,
    (visit) => visit.cardsMs,
  ),
  pageCase('first-page-kb', 'course page: kB over the line with headers (as ms)', 1, (visit) => visit.bytes / 1000),
];

async function visitAll(slower: number): Promise<readonly FirstPage[] | string> {
  const dist = new URL('../../dist', import.meta.url).pathname;
  if (!existsSync(dist)) return 'npm run build first';
  const { findBrowser, BROWSER_ARGS } = await script<BrowserModule>('browser.mjs');
  const executablePath = await findBrowser();
  if (executablePath === null) return 'no browser';
  const { serve } = await script<ServeModule>('serve.mjs');
  const server = await serve(dist, 0);
  const found: FirstPage[] = [];
  for (let i = 0; i < RUNS; i++) {
    const browser = await chromium.launch({ executablePath, args: BROWSER_ARGS });
    found.push(await visit(browser, server.url, slower));
    await browser.close();
  }
  await server.close();
  return found;
}

async function visit(browser: Browser, url: string, slower: number): Promise<FirstPage> {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  const line = await page.context().newCDPSession(page);
  await line.send('Network.enable');
  let bytes = 0;
  line.on('Network.loadingFinished', ({ encodedDataLength }) => {
    bytes += encodedDataLength;
  });
  if (slower > 1) await line.send('Emulation.setCPUThrottlingRate', { rate: slower });
  // What runs this file marks the functions in it with their names, by a function that the page does not have.
  await page.addInitScript('globalThis.__name = (named) => named');
  await page.addInitScript(watch, CARDS);
  await page.waitForTimeout(BROWSER_SETTLES_MS);
  if (slower === 1) await traceTasks(browser);
  await page.goto(url);
  await page.waitForFunction(() => (window as unknown as Watched).cardsMs > 0, null, { timeout: 60_000 });
  await page.waitForTimeout(SETTLING_MS * slower);
  const seen = await page.evaluate((cards) => {
    const { cardsMs } = window as unknown as Watched;
    return { cardsMs, cards: document.querySelectorAll(cards).length };
  }, CARDS);
  // A slowed processor counts its waiting as work.
  return { ...seen, longestTaskMs: slower === 1 ? await longestTaskMs(browser, url) : Number.NaN, bytes };
}

interface Watched {
  cardsMs: number;
}

/** Runs in the page before its own scripts: the cards are all there when none has come for some frames. */
function watch(cards: string): void {
  const seen = window as unknown as Watched;
  seen.cardsMs = 0;
  let count = 0;
  let since = 0;
  let still = 0;
  const look = (): void => {
    const now = document.querySelectorAll(cards).length;
    still = now > 0 && now === count ? still + 1 : 0;
    if (now !== count) {
      count = now;
      // The frame that shows them is painted before the next is asked for.
      requestAnimationFrame(() => {
        since = performance.now();
      });
    }
    if (still < 30) requestAnimationFrame(look);
    else seen.cardsMs = since;
  };
  requestAnimationFrame(look);
}
