/** The page in one file, opened from a disk as from a memory stick: it asks for nothing outside itself, works, and keeps the run. */
import { execFile } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import { SINGLE_FILE, SINGLE_FOLDER } from '../../scripts/oneFile.ts';
import { classroomWords } from '../../src/words/en/classroom.ts';
import { workshopWords } from '../../src/words/en/workshop.ts';
import { madeClass } from '../judge/madeClass.ts';
import { BenchFace } from './face.ts';
import { KeyHand } from './keyHand.ts';
import { test as base, begin, cardOf, expect, shippedSetup } from './page.ts';

const file = path.resolve(SINGLE_FOLDER, SINGLE_FILE);

const test = base.extend({
  // biome-ignore lint/correctness/noEmptyPattern: a fixture says by this pattern that it needs no other
  baseURL: async ({}, use) => use(pathToFileURL(file).href),
});

// One worker for both: two would build the same file at a time, and one take it from under the other's page.
test.describe.configure({ mode: 'default' });

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

test('every room of the one file works from a disk: technician, workshop, class, handbook, drills', async ({
  page,
}) => {
  test.setTimeout(300_000);
  const address = pathToFileURL(file).href;
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  // The technician does it in a worker that stands in the file as text.
  await page.goto(`${address}#/bench/first-curve/shown`);
  await expect(page.locator('[data-slug]').first()).toBeVisible({ timeout: 120_000 });
  // So does the certifier.
  await page.goto(`${address}#/workshop`);
  await page.getByLabel(workshopWords.copyOf).selectOption({ index: 3 });
  const certify = page.locator('.certify-buttons .button').first();
  await expect(certify).toBeEnabled({ timeout: 60_000 });
  await certify.click();
  await expect(page.locator('.certify-passed')).toContainText(/passed, \d+ points/, { timeout: 120_000 });
  await page.goto(`${address}#/class`);
  const made = madeClass();
  const files = Object.entries(made.files).map(([name, text]) => ({
    name,
    mimeType: 'application/json',
    buffer: Buffer.from(text),
  }));
  await page.locator('input[data-picks=files]').setInputFiles(files);
  await expect(page.getByText(classroomWords.graded(files.length))).toBeVisible({ timeout: 60_000 });
  await expect(page.locator('.run').first()).toHaveAttribute('data-verdict', 'verified');
  for (const room of ['handbook', 'drills', 'papers', 'workshop/evening', 'workshop/receiver', 'course']) {
    await page.goto(`${address}#/${room}`);
    await expect(page.locator('main h1, main h2').first()).toBeVisible();
  }
  expect(asked.filter((url) => !/^(data|blob):/.test(url) && !url.startsWith(address))).toEqual([]);
});
