/** Ways to learn of a sealed job what only its report may tell, by the browser instead of by a look: a second tab, a reload, and whatever a page says besides what it shows. */
import type { Page } from '@playwright/test';
import { initialState } from '../../src/bench/setup.ts';
import { toolFor } from '../../src/bench/tools.ts';
import { headerWords } from '../../src/words/en/bench.ts';
import { dialogWords } from '../../src/words/en/benchTalk.ts';
import { storeWords } from '../../src/words/en/store.ts';
import { connectionActs, safetyActs, setUpActs, stateAfter, yActs } from '../session/acts.ts';
import { BenchFace } from './face.ts';
import { KeyHand } from './keyHand.ts';
import { begin, cardOf, expect, rail, shippedSetup, test } from './page.ts';
import { stored } from './storedRecords.ts';

const MADE_WITHIN_MS = 120_000;
const setup = shippedSetup('first-sweep', 'can-examined');
const BENCH = `/#/bench/${setup.scenario.id}`;

async function openSealed(page: Page): Promise<void> {
  expect(setup.scenario.sealed).toBe(true);
  await page.goto('/');
  await cardOf(page, setup).click();
  await expect(page.getByRole('dialog', { name: setup.scenario.title })).toBeVisible({ timeout: MADE_WITHIN_MS });
  await begin(page);
  await expect.poll(async () => (await stored(page, 'open')).length).toBe(1);
}

/** A run in which no slug was turned has nothing to sign. */
async function sign(page: Page): Promise<void> {
  await page.bringToFront();
  const [slug] = setup.receiver.adjusters;
  await new KeyHand(new BenchFace(page, setup, (tab) => tab.click())).do([
    { type: 'toolTaken', tool: toolFor(slug!.head) },
    { type: 'slugTurned', slug: slug!.id, turns: 1 / 8 },
  ]);
  await page.getByRole('button', { name: headerWords.signOff, exact: true }).click();
  await page.getByRole('dialog').getByRole('button', { name: dialogWords.signOff.sign, exact: true }).click();
}

test('an attempt that lies open in two tabs is signed once: who has read its report signs nothing more', async ({
  page,
  context,
}) => {
  // As in a browser on a page without a secure address: no tab knows of the other.
  await context.addInitScript(() => {
    Object.defineProperty(Navigator.prototype, 'locks', { get: () => undefined });
  });
  await openSealed(page);
  await page.locator('.slip', { hasText: storeWords.unguarded }).getByRole('button', { name: storeWords.seen }).click();
  const other = await context.newPage();
  await other.goto(BENCH);
  await expect(other.getByRole('timer')).toBeVisible({ timeout: MADE_WITHIN_MS });
  await other
    .locator('.slip', { hasText: storeWords.unguarded })
    .getByRole('button', { name: storeWords.seen })
    .click();
  await sign(page);
  await expect(page.locator('.score-figure')).toBeVisible({ timeout: MADE_WITHIN_MS });
  const report = await page.evaluate(() => location.hash);
  await sign(other);
  await expect(other.locator('.score-figure')).toBeVisible({ timeout: MADE_WITHIN_MS });
  expect(await other.evaluate(() => location.hash)).toBe(report);
  expect([(await stored(page, 'kept')).length, (await stored(page, 'texts')).length]).toEqual([1, 1]);
  await expect.poll(async () => (await stored(page, 'open')).length).toBe(0);
});

/** What a page says besides what it shows. */
const besides = (page: Page) =>
  page.evaluate(() => ({
    title: document.title,
    icons: [...document.querySelectorAll<HTMLLinkElement>('link[rel~=icon]')].map(({ href }) => href),
    hash: location.hash,
    cookie: document.cookie,
    history: [history.length, JSON.stringify(history.state)],
    timings: performance
      .getEntries()
      .flatMap(({ entryType, name }) => (/^(mark|measure)$/.test(entryType) ? [name] : [])),
    buzzed: (window as unknown as { buzzed: number }).buzzed,
  }));

test('title, icon, address, history, timings, console, network and buzzer say nothing while a sealed job is worked at; a reload shows the same picture', async ({
  page,
}) => {
  await page.addInitScript(() => {
    const seen = window as unknown as { buzzed: number };
    seen.buzzed = 0;
    Object.defineProperty(Navigator.prototype, 'vibrate', { value: () => void seen.buzzed++, configurable: true });
  });
  const said: string[] = [];
  page.on('console', (message) => said.push(message.text()));
  await openSealed(page);
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  const before = await besides(page);
  const hand = new KeyHand(new BenchFace(page, setup, (tab) => tab.click()));
  // The set differs from attempt to attempt, its sheet does not.
  let state = initialState(setup);
  for (const acts of [safetyActs, connectionActs, setUpActs, yActs] as const) {
    const next = acts(setup, state);
    await hand.do(next);
    state = stateAfter(setup, next, state);
  }
  expect(await besides(page)).toEqual(before);
  expect(before.timings).toEqual([]);
  expect(before.buzzed).toBe(0);
  expect(said).toEqual([]);
  // What is fetched meanwhile are pieces of the page that everybody gets.
  const { origin } = new URL(page.url());
  for (const url of asked) expect(url.startsWith(`${origin}/`)).toBe(true);
  expect(asked.filter((url) => /certificate|faults?\b|scenarios\//i.test(url))).toEqual([]);

  const tube = page.locator('.bench-tube .tube');
  // It is told a while after the last act; what stays as it is has been told to the end.
  let picture = '';
  await expect(async () => {
    const told = await tube.getAttribute('aria-label');
    await page.waitForTimeout(1_500);
    picture = (await tube.getAttribute('aria-label')) ?? '';
    expect(picture).toBe(told);
    expect(picture.length).toBeGreaterThan(40);
  }).toPass({ timeout: 60_000 });
  await page.reload();
  await rail(page).waitFor({ timeout: MADE_WITHIN_MS });
  const resume = page.getByRole('button', { name: dialogWords.suspended.resume });
  if ((await resume.count()) > 0) await resume.click();
  await expect(tube).toHaveAttribute('aria-label', picture);
});
