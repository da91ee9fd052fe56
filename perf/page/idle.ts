/** What a page costs while nothing happens: processor time of all of the browser's processes over some seconds. */
import type { Browser, CDPSession } from '@playwright/test';

/** The browser tidies its memory for a while after a hand has worked. */
const SETTLE_MS = 25_000;
const SPAN_MS = 20_000;

export interface Share {
  /** of one core, all processes together */
  readonly total: number;
  /** of one core, the processes that run pages */
  readonly page: number;
}

/** Of the browser's processes up to now, seconds of one core. */
export async function processorSeconds(session: CDPSession): Promise<Share> {
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  const sum = (all: typeof processInfo): number => all.reduce((s, { cpuTime }) => s + cpuTime, 0);
  return { total: sum(processInfo), page: sum(processInfo.filter(({ type }) => type === 'renderer')) };
}

export async function idleShare(browser: Browser): Promise<Share> {
  const session = await browser.newBrowserCDPSession();
  const seconds = () => processorSeconds(session);
  const wait = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));
  await wait(SETTLE_MS);
  const before = await seconds();
  const fromMs = performance.now();
  await wait(SPAN_MS);
  const after = await seconds();
  const span = (performance.now() - fromMs) / 1000;
  await session.detach();
  return { total: (after.total - before.total) / span, page: (after.page - before.page) / span };
}
