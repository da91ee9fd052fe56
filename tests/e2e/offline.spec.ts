/** The page without a line, and a newer build of it that comes while somebody works: nothing is reloaded from under the hand, and the run is there afterwards. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { headerWords } from '../../src/words/en/bench.ts';
import { dialogWords } from '../../src/words/en/benchTalk.ts';
import { storeWords } from '../../src/words/en/store.ts';
import { type ServeModule, script } from '../scripts/scriptModules.ts';
import { BenchFace } from './face.ts';
import { KeyHand } from './keyHand.ts';
import { test as base, begin, expect, openCard, shippedSetup } from './page.ts';

interface Served {
  readonly url: string;
  close(): Promise<void>;
}

/** A copy of the built page on a server of its own, so that it can change while the page stands. */
const test = base.extend<{ folder: string; server: Served }>({
  // biome-ignore lint/correctness/noEmptyPattern: a fixture says by this pattern that it needs no other
  folder: async ({}, use) => {
    const folder = mkdtempSync(path.join(tmpdir(), 'haystack-offline-'));
    cpSync('dist', folder, { recursive: true });
    await use(folder);
    rmSync(folder, { recursive: true, force: true });
  },
  server: async ({ folder }, use) => {
    const { serve } = await script<ServeModule>('serve.mjs');
    const server = await serve(folder, 0);
    let runs = true;
    const close = async (): Promise<void> => {
      if (runs) await server.close();
      runs = false;
    };
    await use({ url: server.url, close });
    await close();
  },
  baseURL: async ({ server }, use) => use(server.url),
});
// A browser that has kept another page before shall not answer for this one.
test.use({ serviceWorkers: 'allow', keepsPage: true });

/** Kept for good: the service worker answers for the page. */
const kept = async () => {
  const { active } = await navigator.serviceWorker.ready;
  return active?.state;
};

test('after the first visit course and bench open without a line, and a run can be done', async ({ page, server }) => {
  const setup = shippedSetup('vision-if', 'traps-astray');
  await page.goto('/');
  await expect.poll(() => page.evaluate(kept), { timeout: 120_000 }).toBe('activated');
  // There is nobody left who could answer: to be without a line alone would say nothing of what the service worker asks for.
  await server.close();
  await expect(fetch(server.url)).rejects.toThrow();
  await page.reload();
  // A bench that has never been opened, with its receiver and its worker.
  await openCard(page, setup);
  await begin(page);
  await expect(page.locator('[data-slug]').first()).toBeVisible();
  const [slug] = setup.receiver.adjusters;
  await new KeyHand(new BenchFace(page, setup, (tab) => tab.click())).do([
    { type: 'toolTaken', tool: slug!.head },
    { type: 'slugTurned', slug: slug!.id, turns: 0.5 },
  ]);
  await page.getByRole('button', { name: headerWords.signOff, exact: true }).press('Enter');
  const question = page.getByRole('dialog', { name: dialogWords.signOff.title });
  await question.getByRole('button', { name: dialogWords.signOff.sign, exact: true }).press('Enter');
  await expect(page.locator('.score-figure')).toBeVisible({ timeout: 60_000 });
  // Nor has any other room to be asked for.
  for (const room of ['handbook', 'drills', 'workshop', 'class']) {
    await page.goto(`/#/${room}`);
    await expect(page.locator('main h1, main h2').first()).toBeVisible();
  }
});

test('a newer build waits until it is taken, and the run goes on in it', async ({ page, folder }) => {
  const setup = shippedSetup('first-sweep', 'off-centre');
  await page.goto('/');
  await expect.poll(() => page.evaluate(kept), { timeout: 120_000 }).toBe('activated');
  await page.reload();
  await openCard(page, setup);
  await begin(page);
  const { head } = setup.receiver.adjusters[0]!;
  await new KeyHand(new BenchFace(page, setup, (tab) => tab.click())).do([
    { type: 'toolTaken', tool: head },
    { type: 'slugTurned', slug: setup.receiver.adjusters[0]!.id, turns: 0.5 },
  ]);
  const turns = page.locator('.counter.turns .H');
  await expect(turns).not.toHaveText('0');
  const made = await turns.textContent();

  // Another page under the same address, and a service worker that says so.
  expect(await page.locator('meta[name=build]').count()).toBe(0);
  const index = path.join(folder, 'index.html');
  writeFileSync(index, readFileSync(index, 'utf8').replace('<head>', '<head><meta name="build" content="newer">'));
  const worker = path.join(folder, 'serviceWorker.js');
  const revised = readFileSync(worker, 'utf8').replace(/(index\.html`,revision:`)[0-9a-f]{16}/, '$10123456789abcdef');
  expect(revised).toContain('0123456789abcdef');
  writeFileSync(worker, revised);
  await page.evaluate(async () => void (await (await navigator.serviceWorker.ready).update()));
  const take = page.getByRole('button', { name: storeWords.takeNewer });
  await expect(take).toBeVisible({ timeout: 120_000 });
  await expect(turns).toHaveText(made!);

  await Promise.all([page.waitForEvent('load'), take.click()]);
  await expect(page.locator('[data-slug]').first()).toBeVisible();
  const resume = page.getByRole('dialog').getByRole('button').first();
  if ((await resume.count()) > 0) await resume.click();
  await expect(turns).toHaveText(made!);
  await expect(take).toHaveCount(0);
  expect(await page.locator('meta[name=build]').getAttribute('content')).toBe('newer');
});
