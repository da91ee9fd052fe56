/** The page in one file, opened from a disk as from a memory stick: it asks for nothing outside itself, works, and keeps the run. */
import { execFile } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import { SINGLE_FILE, SINGLE_FOLDER } from '../../scripts/oneFile.ts';
import { BenchFace } from './face.ts';
import { KeyHand } from './keyHand.ts';
import { test as base, begin, cardOf, expect, shippedSetup } from './page.ts';

const file = path.resolve(SINGLE_FOLDER, SINGLE_FILE);

const test = base.extend({
  // biome-ignore lint/correctness/noEmptyPattern: a fixture says by this pattern that it needs no other
  baseURL: async ({}, use) => use(pathToFileURL(file).href),
});

/** Built in a process of its own, as by hand. */
test.beforeAll(async () => {
  test.setTimeout(400_000);
  const script = "import('./scripts/build.mjs').then(({ ensureBuilt }) => ensureBuilt({ quiet: true, single: true }))";
  await promisify(execFile)(process.execPath, ['-e', script]);
});

test('one file from a disk holds the whole bench', async ({ page }) => {
  expect(existsSync(file)).toBe(true);
  expect(readdirSync(SINGLE_FOLDER)).toEqual([SINGLE_FILE]);
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));

  const setup = shippedSetup('first-sweep', 'off-centre');
  await page.goto(pathToFileURL(file).href);
  await cardOf(page, setup).click();
  await expect(page.getByRole('dialog', { name: setup.scenario.title })).toBeVisible();
  await begin(page);
  const [slug] = setup.receiver.adjusters;
  await new KeyHand(new BenchFace(page, setup, (tab) => tab.click())).do([
    { type: 'toolTaken', tool: slug!.head },
    { type: 'slugTurned', slug: slug!.id, turns: 0.5 },
  ]);
  const turns = page.locator('.counter.turns .H');
  await expect(turns).not.toHaveText('0');
  const made = await turns.textContent();

  // The logbook of a file: what was done is there again.
  await page.reload();
  await expect(page.locator('[data-slug]').first()).toBeVisible();
  const resume = page.getByRole('dialog').getByRole('button').first();
  if ((await resume.count()) > 0) await resume.click();
  await expect(turns).toHaveText(made!);
  expect(asked.filter((url) => !/^(data|blob):/.test(url) && !url.startsWith(pathToFileURL(file).href))).toEqual([]);
});
