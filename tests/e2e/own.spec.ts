/** Scenarios of one's own on the course page: opened by button and by drop, refused with reasons, played, judged, kept over a reload, taken off and put back. */
import { readFileSync } from 'node:fs';
import { deflateRawSync } from 'node:zlib';
import type { Page } from '@playwright/test';
import { headerWords } from '../../src/words/en/bench.ts';
import { dialogWords } from '../../src/words/en/benchTalk.ts';
import { classroomWords } from '../../src/words/en/classroom.ts';
import { courseWords } from '../../src/words/en/course.ts';
import { en } from '../../src/words/en/index.ts';
import { reportWords } from '../../src/words/en/reportPage.ts';
import { begin, expect, test } from './page.ts';

const say = courseWords.own;
const plain = JSON.parse(readFileSync('scenarios/first-sweep/first-curve.json', 'utf8')) as Record<string, unknown>;
const MARKUP = '<img src=x onerror=alert(1)> night';
// With its leads on: there is something to sign at once.
const start = { ...(plain.start as object), prepared: ['safe', 'connect'] };
const own = JSON.stringify({ ...plain, id: 'slip-evening', code: 'W-01', title: MARKUP, start }, null, 1);
const bad = JSON.stringify({ ...plain, id: 'both-ways', receiver: 'nobodys-set' }, null, 1);

const shelf = (page: Page) => page.locator('.own-place');
const card = (page: Page) => shelf(page).getByRole('button', { name: MARKUP, exact: true });

async function bring(page: Page, files: Readonly<Record<string, string>>): Promise<void> {
  const list = Object.entries(files).map(([name, text]) => ({
    name,
    mimeType: 'application/json',
    buffer: Buffer.from(text),
  }));
  await page.locator('input[data-picks=own]').setInputFiles(list);
}

test.describe(() => {
  test.use({ sharesWindow: true });

  test('a file is opened, certified, kept, played, judged as one’s own, and taken off again', async ({ page }) => {
    test.setTimeout(180_000);
    await page.goto('/');
    // Nothing on it: the course comes first.
    await expect(page.locator('.tracks ~ .own-place')).toBeVisible();
    const choosing = page.waitForEvent('filechooser');
    await shelf(page).getByRole('button', { name: say.open, exact: true }).press('Enter');
    await (await choosing).setFiles({ name: 'slip.json', mimeType: 'application/json', buffer: Buffer.from(own) });
    await expect(shelf(page).getByText(say.taken([MARKUP]))).toBeVisible();
    expect(await page.locator('img').count()).toBe(0);
    await expect(shelf(page).getByText(say.marks.certified)).toBeVisible({ timeout: 60_000 });
    await expect(page.locator('.tracks ~ .own-place')).toBeInViewport();
    await page.reload();
    await expect(shelf(page).getByText(say.marks.certified)).toBeVisible();
    await expect(page.locator('.own-place ~ .tracks')).toBeVisible();
    await card(page).press('Enter');
    await expect(page.getByRole('dialog', { name: MARKUP })).toBeVisible();
    await begin(page);
    await page.getByRole('button', { name: headerWords.signOff, exact: true }).click();
    await page.getByRole('textbox', { name: dialogWords.signOff.learner }).fill('Ines');
    await page.getByRole('dialog').getByRole('button', { name: dialogWords.signOff.sign, exact: true }).press('Enter');
    const saving = page.waitForEvent('download');
    await page.getByRole('button', { name: reportWords.exportRun, exact: true }).first().click();
    const run = readFileSync(await (await saving).path(), 'utf8');
    await page.goto('/#/class');
    await page
      .locator('input[data-picks=files]')
      .setInputFiles({ name: 'run.json', mimeType: 'application/json', buffer: Buffer.from(run) });
    await expect(page.locator('.run .state .pill').first()).toHaveText(classroomWords.outcomes.verified, {
      timeout: 60_000,
    });
    await page.goto('/#/course');
    await shelf(page)
      .getByRole('button', { name: say.removeNamed(MARKUP), exact: true })
      .click();
    await expect(card(page)).toHaveCount(0);
    await shelf(page).getByRole('button', { name: say.putBack }).click();
    await expect(card(page)).toBeVisible();
    await shelf(page)
      .getByRole('button', { name: say.removeNamed(MARKUP), exact: true })
      .press('Enter');
    await expect(card(page)).toHaveCount(0);
    await page.reload();
    await expect(shelf(page).getByRole('button', { name: say.open, exact: true })).toBeVisible();
    await expect(card(page)).toHaveCount(0);
    await expect(page.locator('.tracks ~ .own-place')).toBeVisible();
  });

  test('a hostile file is refused with every reason and its place, and one that is dropped is taken', async ({
    page,
  }) => {
    await page.goto('/');
    await expect(shelf(page)).toBeVisible();
    await bring(page, { 'bad.json': bad, 'deep.json': '['.repeat(100_000), 'nul.json': 'a\0b' });
    const alert = shelf(page).getByRole('alert');
    await expect(alert.getByText(say.refused('bad.json'))).toBeVisible();
    await expect(alert.getByText(say.refused('deep.json'))).toBeVisible();
    await expect(alert.getByText(say.refused('nul.json'))).toBeVisible();
    await expect(alert.locator('li').filter({ hasText: '/id' })).toContainText('bad.json, line');
    await expect(alert.locator('li').filter({ hasText: '/receiver' })).toContainText('nobodys-set');
    await alert.getByRole('button', { name: say.dismiss }).click();
    await expect(alert).toHaveCount(0);
    const data = await page.evaluateHandle((text) => {
      const held = new DataTransfer();
      held.items.add(new File([text], 'slip.json', { type: 'application/json' }));
      return held;
    }, own);
    await page.locator('.course').dispatchEvent('dragover', { dataTransfer: data });
    await expect(page.locator('.own-place.over')).toBeVisible();
    await page.locator('.course').dispatchEvent('drop', { dataTransfer: data });
    await expect(card(page)).toBeVisible();
  });
});

test('a link holds the whole scenario, says what it is before it is opened, and a hostile one is refused', async ({
  page,
  context,
}) => {
  test.setTimeout(120_000);
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.goto('/');
  await expect(shelf(page)).toBeVisible();
  await bring(page, { 'slip.json': own.replace('{', '{ "author": "Ines <b>of the</b> boat shed",') });
  await shelf(page)
    .getByRole('button', { name: say.copyLinkNamed(MARKUP), exact: true })
    .press('Enter');
  await expect(shelf(page).getByText(say.linkCopied(MARKUP))).toBeVisible();
  const address = await page.evaluate(() => navigator.clipboard.readText());
  expect(address.length).toBeLessThanOrEqual(2000);
  await shelf(page)
    .getByRole('button', { name: say.removeNamed(MARKUP), exact: true })
    .click();
  await expect(card(page)).toHaveCount(0);
  await page.goto('about:blank');
  await page.goto(address);
  await expect(page.getByRole('heading', { name: say.link.title })).toBeVisible();
  await expect(page.getByText(MARKUP)).toBeVisible();
  await expect(page.getByText('Ines <b>of the</b> boat shed')).toBeVisible();
  expect(await page.locator('img, .slip b').count()).toBe(0);
  await expect(page.getByText(/^It can be done: par/)).toBeVisible({ timeout: 60_000 });
  // Nothing has been kept before somebody says so.
  await page.getByRole('button', { name: en.store.toCourse }).click();
  await expect(shelf(page)).toBeVisible();
  await expect(card(page)).toHaveCount(0);
  await page.goBack();
  await page.getByRole('button', { name: say.link.toBench }).press('Enter');
  await expect(page.getByRole('dialog', { name: MARKUP })).toBeVisible();
  const bomb = deflateRawSync(new Uint8Array(5_000_000)).toString('base64url');
  const alien = deflateRawSync(bad).toString('base64url');
  for (const [data, reason] of [
    ['<img src=x onerror=alert(1)>', en.phrases.linkOfOtherKind()],
    [`1${bomb}`, en.phrases.moreUnpacked(65_536)],
    [`1${alien}`, 'nobodys-set'],
  ] as const) {
    await page.goto('about:blank');
    await page.goto(`/#/open/${data}`);
    await expect(page.getByRole('heading', { name: say.link.refused })).toBeVisible();
    await expect(page.locator('.slip-said')).toContainText(reason);
    expect(await page.locator('img').count()).toBe(0);
  }
});
