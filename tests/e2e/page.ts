/** Every browser test watches the same things: nothing on the console, no error in the page, no request to anybody else. And the few moves all of them make. */
import { readFileSync } from 'node:fs';
import {
  type BrowserContext,
  test as base,
  type ConsoleMessage,
  expect,
  type Locator,
  type Page,
  type Request,
  type WebError,
} from '@playwright/test';
import { certified, certifiedSet } from '../../scripts/makeCourseIndex.ts';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { benchSetup } from '../../src/certify/benchSetup.ts';
import { loadReceiver } from '../../src/files/library.ts';
import { parseScenario } from '../../src/files/scenarioSchema.ts';
import { PHASES, type Phase } from '../../src/session/phase.ts';
import { headerWords } from '../../src/words/en/bench.ts';
import { dialogWords } from '../../src/words/en/benchTalk.ts';
import { phaseNames } from '../../src/words/en/shell.ts';

export { expect };

/** What no page may do, in the order it happened. */
interface Watch {
  readonly complaints: string[];
}

interface Visit {
  readonly watch: Watch;
  /** the page may keep itself for later visits: elsewhere its service worker would only be one more hand at the same processor */
  readonly keepsPage: boolean;
  /**
   * the window is handed on from test to test, cleared of all that was kept in it: the browser then has the page's code at hand, and a start costs half. For tests that
   * want one window as it comes, and put nothing into it that stays over a reload: no scripts of their own, no routes, no permissions.
   */
  readonly sharesWindow: boolean;
}

/** The window that is handed on, and what it was made with; null where none is. */
interface Shared {
  window: { readonly page: Page; readonly madeWith: string } | null;
}

const noServiceWorker = (context: BrowserContext): Promise<unknown> =>
  context.addInitScript(() => delete (Navigator.prototype as { serviceWorker?: unknown }).serviceWorker);

/** On a busy machine the browser may, after a change of size, draw a page in sight no more: such a window is not handed on. */
const isDrawn = (page: Page): Promise<boolean> =>
  page.evaluate(() => {
    const drawn = new Promise<boolean>((yes) => requestAnimationFrame(() => yes(true)));
    return Promise.race([drawn, new Promise<boolean>((no) => setTimeout(() => no(false), 10_000))]);
  });

/** As it was before its first test; it stays with this origin, for elsewhere it would be given another process. */
async function cleared(page: Page, origin: string): Promise<void> {
  for (const other of page.context().pages()) if (other !== page) await other.close();
  await page.goto(`${origin}/icon.svg`);
  await page.evaluate(() => sessionStorage.clear());
  const client = await page.context().newCDPSession(page);
  await client.send('Storage.clearDataForOrigin', { origin, storageTypes: KEPT_IN_A_BROWSER });
  await client.detach();
}
const KEPT_IN_A_BROWSER = 'cookies,local_storage,indexeddb,cache_storage,service_workers,file_systems';

export const test = base.extend<Visit, { readonly shared: Shared }>({
  keepsPage: [false, { option: true }],
  sharesWindow: [false, { option: true }],
  shared: [async ({ browserName: _ }, use) => use({ window: null }), { scope: 'worker' }],
  context: async ({ browser, baseURL, viewport, hasTouch, contextOptions, keepsPage, sharesWindow, shared }, use) => {
    if (!sharesWindow) {
      const context = await browser.newContext();
      if (!keepsPage) await noServiceWorker(context);
      await use(context);
      await context.close();
      return;
    }
    const madeWith = JSON.stringify([viewport, hasTouch, contextOptions]);
    if (shared.window?.madeWith !== madeWith || !(await isDrawn(shared.window.page))) {
      await shared.window?.page.context().close();
      const context = await browser.newContext();
      await noServiceWorker(context);
      shared.window = { page: await context.newPage(), madeWith };
    }
    const { page } = shared.window;
    await use(page.context());
    await page.emulateMedia({ media: null, forcedColors: null });
    await page.mouse.move(0, 0);
    await cleared(page, new URL(baseURL!).origin);
    if (JSON.stringify(page.viewportSize()) !== JSON.stringify(viewport)) await page.setViewportSize(viewport!);
  },
  page: async ({ context, sharesWindow }, use) => use(sharesWindow ? context.pages()[0]! : await context.newPage()),
  watch: [
    async ({ context, baseURL }, use) => {
      const complaints: string[] = [];
      const own = new URL(baseURL!).origin;
      const onConsole = (message: ConsoleMessage): void => {
        if (message.type() === 'error' || message.type() === 'warning')
          complaints.push(`${message.type()}: ${message.text()}`);
      };
      const onError = (error: WebError): void => void complaints.push(`page error: ${error.error().message}`);
      const onRequest = (request: Request): void => {
        const url = new URL(request.url());
        if (url.protocol !== 'data:' && url.protocol !== 'blob:' && url.origin !== own)
          complaints.push(`foreign request: ${request.url()}`);
      };
      context.on('console', onConsole).on('weberror', onError).on('request', onRequest);
      await use({ complaints });
      context.off('console', onConsole).off('weberror', onError).off('request', onRequest);
      expect(complaints).toEqual([]);
    },
    { auto: true },
  ],
});

/** A shipped scenario with the set that it deals, read from the files that the page is built from. */
export function shippedSetup(track: string, id: string): BenchSetup {
  const file = `scenarios/${track}/${id}.json`;
  const parsed = parseScenario(JSON.parse(readFileSync(file, 'utf8')), file);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  const scenario = certified(parsed.value);
  const folder = `scenarios/receivers/${scenario.receiver}`;
  const named = (name: string) => ({ file: `${folder}/${name}`, text: readFileSync(`${folder}/${name}`, 'utf8') });
  const loaded = loadReceiver(named('receiver.json'), named('network.cir'));
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems));
  const setup = benchSetup(loaded.value, scenario, certifiedSet(id));
  if (!setup.ok) throw new Error(JSON.stringify(setup.problems));
  return setup.value;
}

export const cardOf = (page: Page, setup: BenchSetup): Locator =>
  page.locator('.card-open', { hasText: setup.scenario.title });

export async function openCard(page: Page, setup: BenchSetup): Promise<void> {
  await page.goto('/');
  await cardOf(page, setup).click();
  await expect(page.getByRole('dialog', { name: setup.scenario.title })).toBeVisible();
}

/** The same by the address of the bench, where the card is not what is looked at: the course is not drawn for it. */
export async function openJob(page: Page, setup: BenchSetup): Promise<void> {
  await page.goto(`/#/bench/${setup.scenario.id}`);
  await expect(page.getByRole('dialog', { name: setup.scenario.title })).toBeVisible();
}

/** Through the briefing to the open bench, by pointer. */
export async function begin(page: Page): Promise<void> {
  const { acknowledge, begin: words } = dialogWords.briefing;
  const tick = page.getByRole('checkbox', { name: acknowledge });
  if ((await tick.count()) > 0) await tick.check();
  await page.getByRole('button', { name: words, exact: true }).click();
  await expect(page.getByRole('dialog')).toHaveCount(0);
}

export const rail = (page: Page): Locator => page.locator('.phase-rail');

/** What the rail of phases says when these phases, and no others, are done. */
export function railSays(done: readonly Phase[]): string {
  const current = PHASES.find((phase) => !done.includes(phase)) ?? 'prove';
  return headerWords.rail(
    PHASES.map((phase) => phaseNames[phase]),
    PHASES.map((phase) => done.includes(phase)),
    phaseNames[current],
  );
}

/** Seconds on the bench's clock. */
export async function elapsedSeconds(page: Page): Promise<number> {
  const text = (await page.getByRole('timer').textContent()) ?? '';
  return text.split(':').reduce((sum, part) => sum * 60 + Number(part), 0);
}
