/** The sheet of an evening: made in the workshop by keys and by pointer, saved as a file, opened on the course as a group, done in its order, taken off and put back; a hostile one is refused. */
import { readFileSync } from 'node:fs';
import { readEvening } from '../../src/files/evening.ts';
import { headerWords } from '../../src/words/en/bench.ts';
import { dialogWords } from '../../src/words/en/benchTalk.ts';
import { courseWords } from '../../src/words/en/course.ts';
import { eveningWords as say } from '../../src/words/en/evening.ts';
import { fitsIn, SIZES } from './fits.ts';
import { begin, expect, test } from './page.ts';

test.use({ sharesWindow: true });

const course = courseWords.own;

test('a sheet is made, saved, opened and done in its order', { tag: ['@shelf'] }, async ({ page }) => {
  test.setTimeout(180_000);
  await page.goto('/#/workshop/evening');
  const save = page.getByRole('button', { name: say.save, exact: true });
  await expect(save).toBeDisabled();
  await page.getByLabel(say.name, { exact: true }).fill('Second Thursday <b>');
  await page.getByLabel(say.author).fill('Ines');
  await page.getByLabel(say.minutes, { exact: true }).fill('90');
  const choose = page.getByLabel(say.addOne);
  for (const id of ['first-curve', 'both-ways', 'flat-top']) {
    await choose.selectOption(id);
    await page.getByRole('button', { name: say.add, exact: true }).press('Enter');
  }
  const rows = page.locator('.evening-list li');
  const order = async () => (await rows.locator('.card-code').allTextContents()).join(' ');
  await expect(rows).toHaveCount(3);
  const before = await order();
  // By keys: the last goes first, and the handle keeps the focus.
  const last = rows.nth(2).locator('.evening-handle');
  const name = (await last.getAttribute('data-handle'))!;
  const handle = page.locator(`[data-handle="${name}"]`);
  await handle.press('ArrowUp');
  await expect(handle).toBeFocused();
  await handle.press('ArrowUp');
  await expect(rows.first().locator('.evening-handle')).toHaveAttribute('data-handle', name);
  // By pointer: and back again.
  const from = (await handle.boundingBox())!;
  const to = (await rows.nth(2).boundingBox())!;
  await page.mouse.move(from.x + 20, from.y + 20);
  await page.mouse.down();
  for (let i = 1; i <= 8; i++) await page.mouse.move(from.x + 20, from.y + 20 + ((to.y + to.height - from.y) * i) / 8);
  await page.mouse.up();
  await expect.poll(order).toBe(before);
  await handle.press('ArrowUp');
  await handle.press('ArrowUp');
  await expect(rows.first().locator('.evening-handle')).toHaveAttribute('data-handle', name);
  await fitsIn(page, SIZES, () => expect(save).toBeVisible());
  // As a learner will meet it: the first open, the others behind it, until any order will do; and back.
  const seen = page.getByRole('region', { name: say.seen.title });
  await expect(seen).toContainText('Second Thursday <b>');
  await expect(seen.locator('li.waits')).toHaveCount(2);
  await page.getByLabel(say.orders.any).check();
  await expect(seen.locator('li.waits')).toHaveCount(0);
  await page.keyboard.press('Control+z');
  await expect(seen.locator('li.waits')).toHaveCount(2);
  // An exam: each number's deal, for the sealed scenarios alone.
  await page.getByLabel(say.exam.seal).check();
  await page.getByLabel(say.slips.count).fill('3');
  const deals = page.locator('.evening-deals');
  await expect(deals.locator('tbody tr')).toHaveCount(3);
  await expect(deals.getByText(say.deals.same)).toHaveCount(9);
  await choose.selectOption('can-examined');
  await page.getByRole('button', { name: say.add, exact: true }).press('Enter');
  await expect(deals.locator('td', { hasText: /^\d+$/ })).toHaveCount(3);
  await expect(deals.getByText(say.deals.same)).toHaveCount(9);
  for (let i = 0; i < 2; i++) await page.locator('.desk-undo').press('Enter');
  await expect(rows).toHaveCount(3);
  await expect(deals).toHaveCount(0);
  await page.reload();
  await expect(rows).toHaveCount(3);
  const saving = page.waitForEvent('download');
  await save.press('Enter');
  const saved = await saving;
  const text = readFileSync(await saved.path(), 'utf8');
  const sheet = readEvening(text, saved.suggestedFilename());
  expect(sheet).toMatchObject({ ok: true, value: { title: 'Second Thursday <b>', author: 'Ines', minutes: 90 } });
  await expect(page.getByText(say.saved)).toBeVisible();

  await page.goto('/#/course');
  const file = { name: 'thursday.json', mimeType: 'application/json', buffer: Buffer.from(text) };
  await page.locator('input[data-picks=own]').setInputFiles(file);
  const group = page.locator('.evening-place');
  await expect(group.locator('.evening-head h3')).toContainText('Second Thursday <b>');
  await expect(group.getByText(course.evening.done(0, 3))).toBeVisible();
  // The first lies open; the others say what comes before.
  await expect(group.locator('.card-open')).toHaveCount(1);
  await expect(group.locator('.evening-waits')).toHaveCount(2);
  await page.reload();
  await group.locator('.card-open').press('Enter');
  await expect(page.getByRole('dialog')).toBeVisible();
  await begin(page);
  await page.getByRole('button', { name: headerWords.signOff, exact: true }).press('Enter');
  const question = page.getByRole('dialog', { name: dialogWords.signOff.title });
  await question.getByRole('button', { name: dialogWords.signOff.sign, exact: true }).press('Enter');
  await expect(page.locator('.score-figure')).toBeVisible({ timeout: 60_000 });
  await page.goto('/#/course');
  await expect(group.getByText(course.evening.done(1, 3))).toBeVisible();
  await expect(group.locator('.card-open')).toHaveCount(2);
  await group.getByRole('button', { name: course.evening.removeNamed('Second Thursday <b>') }).press('Enter');
  await expect(group).toHaveCount(0);
  await page.locator('.own-place').getByRole('button', { name: course.putBack }).click();
  await expect(group).toBeVisible();

  // A sheet with a broken scenario in it gives nothing at all, and says where.
  const broken = JSON.parse(text) as { title: string; scenarios: Record<string, unknown>[] };
  broken.title = 'Another';
  broken.scenarios[1] = { ...broken.scenarios[1], toleranceFactor: 3 };
  broken.scenarios[2] = { ...broken.scenarios[2], order: 0 };
  await page.locator('input[data-picks=own]').setInputFiles({ ...file, buffer: Buffer.from(JSON.stringify(broken)) });
  const alert = page.locator('.own-place').getByRole('alert');
  await expect(alert).toContainText('/scenarios/2/order');
  await expect(group).toHaveCount(1);
  broken.scenarios.pop();
  await page.locator('input[data-picks=own]').setInputFiles({ ...file, buffer: Buffer.from(JSON.stringify(broken)) });
  await expect(alert).toContainText('/scenarios/1/id');
  await expect(group).toHaveCount(1);
});
