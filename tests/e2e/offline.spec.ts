/** The page without a line, and a newer build of it that comes while somebody works: nothing is reloaded from under the hand, and the run is there afterwards. */
import { appendFileSync, cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { storeWords } from '../../src/words/en/store.ts';
import { type ServeModule, script } from '../scripts/scriptModules.ts';
import { BenchFace } from './face.ts';
import { KeyHand } from './keyHand.ts';
import { test as base, begin, expect, openCard, shippedSetup } from './page.ts';

/** A copy of the built page on a server of its own, so that it can change while the page stands. */
const test = base.extend<{ folder: string }>({
  // biome-ignore lint/correctness/noEmptyPattern: a fixture says by this pattern that it needs no other
  folder: async ({}, use) => {
    const folder = mkdtempSync(path.join(tmpdir(), 'haystack-offline-'));
    cpSync('dist', folder, { recursive: true });
    await use(folder);
    rmSync(folder, { recursive: true, force: true });
  },
  baseURL: async ({ folder }, use) => {
    const { serve } = await script<ServeModule>('serve.mjs');
    const server = await serve(folder, 0);
    await use(server.url);
    await server.close();
  },
});
// A browser that has kept another page before shall not answer for this one.
test.use({ serviceWorkers: 'allow', keepsPage: true });

/** Kept for good: the service worker answers for the page. */
const kept = async () => {
  const { active } = await navigator.serviceWorker.ready;
  return active?.state;
};

test('after the first visit course and bench open without a line', async ({ page, context }) => {
  const setup = shippedSetup('vision-if', 'traps-astray');
  await page.goto('/');
  await expect.poll(() => page.evaluate(kept), { timeout: 120_000 }).toBe('activated');
  await context.setOffline(true);
  await page.reload();
  // A bench that has never been opened, with its receiver and its worker.
  await openCard(page, setup);
  await begin(page);
  await expect(page.locator('[data-slug]').first()).toBeVisible();
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

  appendFileSync(path.join(folder, 'serviceWorker.js'), '\n/* a newer build */\n');
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
});
