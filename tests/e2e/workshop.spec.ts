/** The workshop in the browser: a scenario is made by pointer and by keys, comes back after a reload, and leaves as a file that the command line takes. */
import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { workshopWords as say } from '../../src/words/en/workshop.ts';
import { expect, test } from './page.ts';
import { isSound } from './soundPage.ts';

test.use({ sharesWindow: true });

async function open(page: Page): Promise<void> {
  await page.goto('/#/workshop');
  await expect(page.locator('.seen-tube .tube')).toBeVisible({ timeout: 60_000 });
  await expect(page.locator('.seen-count')).toHaveText(say.noneWrong);
}

const choice = (page: Page, name: string) => page.getByRole('combobox', { name, exact: true });
const slug = (page: Page, at: number) => page.locator('.plan-slug').nth(at);
const undo = (page: Page) => page.locator('.desk-undo');
/** Until what is seen is that of the slugs as they stand: the lines are worked out a moment after them, and the page says so. */
const caughtUp = (page: Page) =>
  expect(page.locator('.seen')).toHaveAttribute('aria-busy', 'false', { timeout: 60_000 });

test('slugs, cards and the tube, by keys and by pointer, with a way back for all of it', async ({ page }) => {
  await page.goto('/');
  await page.getByRole('button', { name: 'Workshop', exact: true }).click();
  await expect(page.getByRole('heading', { name: say.scenario.title })).toBeVisible();
  await expect(page.locator('.seen-tube .tube')).toBeVisible({ timeout: 60_000 });
  await choice(page, say.receiverField).selectOption({ label: 'Bollard trainer can' });
  await expect(page.locator('.plan-slug')).toHaveCount(2);
  await caughtUp(page);
  await expect(page.locator('.seen-count')).toHaveText(say.noneWrong);
  const untouched = (await slug(page, 0).getAttribute('aria-valuetext'))!;
  // By keys: an eighth for each.
  await slug(page, 0).focus();
  for (let i = 0; i < 6; i++) await page.keyboard.press('ArrowUp');
  await expect(slug(page, 0)).toHaveAttribute('aria-valuetext', say.turned('3/4 turn', 'in'));
  await caughtUp(page);
  const wrong = await page.locator('.seen-count').textContent();
  expect(wrong).not.toBe(say.noneWrong);
  await expect(page.locator('.wrong-lines tbody tr').first()).toBeVisible();
  // Each press is a step of its own.
  for (let i = 0; i < 6; i++) await page.keyboard.press('Control+z');
  await expect(slug(page, 0)).toHaveAttribute('aria-valuetext', untouched);
  await caughtUp(page);
  await expect(page.locator('.seen-count')).toHaveText(say.noneWrong);
  for (let i = 0; i < 6; i++) await page.keyboard.press('Control+Shift+z');
  await expect(slug(page, 0)).toHaveAttribute('aria-valuetext', say.turned('3/4 turn', 'in'));
  await caughtUp(page);
  await expect(page.locator('.seen-count')).toHaveText(wrong!);
  // By pointer: a card, its figure typed, and off again.
  await page.getByRole('button', { name: say.faults.wrongLoad }).click();
  const figure = page.getByLabel(`${say.faults.wrongLoad}, ${say.value(say.fields.ohms!)}`);
  await figure.fill('1k5');
  await expect(figure).toHaveAttribute('aria-invalid', 'true');
  await figure.fill('1.5k');
  await figure.press('Enter');
  await expect(figure).toHaveValue('1.5 k\u03a9');
  await page.getByRole('button', { name: say.flaws.phaseLag.name }).click();
  await expect(page.locator('.wrong-card')).toHaveCount(2);
  await page.getByRole('button', { name: say.takeOff(say.faults.wrongLoad) }).click();
  await expect(page.locator('.wrong-card')).toHaveCount(1);
  await undo(page).click();
  await expect(page.locator('.wrong-card')).toHaveCount(2);
  await isSound(page);
});

test('a slug is turned on the plan by hand, its slip says how far, and a fault is marked where it sits', async ({
  page,
}) => {
  await open(page);
  const hole = slug(page, 0);
  const box = (await hole.boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  // Half a turn clockwise round the hole drives the core in.
  await page.mouse.move(x, y - 16);
  await page.mouse.down();
  for (let i = 1; i <= 8; i++) {
    const angle = (Math.PI * i) / 8;
    await page.mouse.move(x + 16 * Math.sin(angle), y - 16 * Math.cos(angle));
  }
  await page.mouse.up();
  // Lists and form are drawn when the hand rests: what is pressed before that builds on the slug as it was left.
  await page.locator('.add-cards .chip').first().dispatchEvent('pointerdown');
  await page.locator('.add-cards .chip').first().dispatchEvent('click');
  await expect(page.locator('.wrong-card')).toHaveCount(1);
  await expect(hole).toHaveAttribute('aria-valuetext', say.turned('1/2 turn', 'in'));
  await undo(page).click();
  await expect(page.locator('.wrong-card')).toHaveCount(0);
  await expect(hole).toHaveAttribute('aria-valuetext', say.turned('1/2 turn', 'in'));
  await expect(page.locator('.slug-flag')).toHaveText(['+1/2']);
  await expect(page.locator('.slug-row')).toContainText(say.turned('1/2 turn', 'in'));
  // One drag is one step back.
  await undo(page).click();
  await expect(page.locator('.slug-flag')).toHaveCount(0);
  // A step by the row's buttons, on the slug that the plan has chosen; then right again by one key.
  await slug(page, 3).focus();
  await page.getByRole('button', { name: say.stepOf('D', 'out') }).click();
  await expect(page.locator('.slug-flag.chosen')).toHaveText(['\u22121/8']);
  await slug(page, 3).press('Delete');
  await expect(page.locator('.slug-flag')).toHaveCount(0);
  const fewer = await page.locator('.add-cards .chip').count();
  await page.locator('.chips-more').first().press('Enter');
  await expect(page.locator('.chips-more').first()).toHaveAttribute('aria-expanded', 'true');
  expect(await page.locator('.add-cards .chip').count()).toBeGreaterThan(fewer + 5);
  await page.getByRole('button', { name: say.faults.weakStage }).click();
  await expect(page.locator('.fault-mark')).toHaveText([new RegExp(`${say.faults.weakStage}.*V\\d`)]);
  await isSound(page);
});

test('how the bench is left, what comes before, author and language stand in the file', async ({ page }) => {
  await open(page);
  await choice(page, say.addControl).selectOption('levelDb');
  const level = page.getByLabel(`${say.controlLeft('Sweep source', 'Level')}, ${say.value(say.leftAt)}`);
  await level.fill('-31.4');
  await level.press('Enter');
  await expect(level).toHaveValue('\u221231 dB');
  await choice(page, say.addControl).selectOption('mirror');
  await page.getByRole('button', { name: say.leadLeft('Y lead') }).click();
  await choice(page, `${say.leadLeft('Y lead')}, ${say.leftAt}`).selectOption('TP2');
  await choice(page, say.form.addAfter).selectOption('first-curve');
  await page.getByLabel(say.form.author, { exact: true }).fill('Harbour club');
  await page.getByLabel(say.form.language, { exact: true }).fill('en-GB');
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: say.saveLong('own-scenario-1.json') }).click();
  const file: unknown = JSON.parse(readFileSync(await (await saving).path(), 'utf8'));
  expect(file).toMatchObject({
    author: 'Harbour club',
    language: 'en-GB',
    recommendedAfter: ['first-curve'],
    start: { controls: { levelDb: -31, mirror: true }, leads: { y: 'TP2' } },
  });
  // Only its texts are missing.
  await expect(page.locator('.problems li')).toHaveCount(4);
  // All of it comes back with the page, and goes one by one.
  await page.reload();
  await expect(page.locator('.wrong-card')).toHaveCount(3);
  for (let left = 2; left >= 0; left--) {
    await page.locator('.wrong-card .card-sign').first().click();
    await expect(page.locator('.wrong-card')).toHaveCount(left);
  }
  await isSound(page);
});

test('a draft that is refused takes the nearest that works, is certified, passed by the technician, and tried at once', async ({
  page,
}) => {
  await open(page);
  const proof = say.proof;
  await choice(page, say.receiverField).selectOption({ label: 'Bollard trainer can' });
  await expect(page.locator('.plan-slug')).toHaveCount(2);
  await expect(page.locator('.problems li')).toHaveCount(4);
  await expect(page.getByRole('button', { name: proof.start, exact: true })).toBeDisabled();
  const form = say.form;
  // Beside the button stands what is missing, and two ways on: to the field, or plain words for now, which one step takes back.
  const missing = page.locator('.certify-unwritten p');
  await expect(missing).toHaveText(proof.unwritten('Title, Brief, Story and Lesson'));
  await page.getByRole('button', { name: proof.write, exact: true }).click();
  await expect(page.getByLabel(form.name, { exact: true })).toBeFocused();
  await page.getByRole('button', { name: say.problemIn('Lesson'), exact: true }).press('Enter');
  await expect(page.getByLabel(form.lesson, { exact: true })).toBeFocused();
  await page.getByRole('button', { name: proof.plain, exact: true }).press('Enter');
  await expect(page.getByRole('button', { name: proof.start, exact: true })).toBeEnabled();
  await expect(page.getByLabel(form.name, { exact: true })).toHaveValue('Bollard trainer can');
  await undo(page).click();
  await expect(missing).toBeVisible();
  for (const [label, text] of [
    [form.name, 'After the regatta'],
    [form.brief, 'Two slugs are off.'],
    [form.story, 'It came back in a pocket.\nNobody says whose.'],
    [form.lesson, 'Look first.'],
  ] as const)
    await page.getByLabel(label, { exact: true }).fill(text);
  await expect(page.locator('.problems .desk-note')).toHaveText(say.noProblems);
  await page.getByRole('button', { name: proof.start, exact: true }).press('Enter');
  await expect(page.locator('.certify-refused')).toContainText(proof.reasons.nothingToDo, { timeout: 60_000 });
  await page.getByRole('button', { name: proof.take }).click({ timeout: 60_000 });
  await expect(page.locator('.certify')).toContainText(proof.stale);
  await page.getByRole('button', { name: proof.again }).click();
  await expect(page.locator('.draft-stamp')).toContainText(proof.solvable, { timeout: 60_000 });
  await expect(page.locator('.certify-passed')).toContainText(/passed, \d+ points/, { timeout: 120_000 });
  // The hash that runs will name, a link with all of it, and a place on the evening sheet.
  await expect(page.locator('.hand-hash')).toHaveText(/^[0-9a-f]{64}$/);
  await page.getByRole('button', { name: proof.handOut.link, exact: true }).click();
  await expect(page.locator('.hand-link input')).toHaveValue(/#\/open\/1[\w-]+$/);
  await page.getByRole('button', { name: proof.handOut.evening }).click();
  await expect(page.locator('.hand-out')).toContainText(proof.handOut.told.onSheet);
  await isSound(page);
  // Called off, it says what is known and can be begun again.
  await page.getByRole('button', { name: proof.again }).click();
  await page.getByRole('button', { name: proof.cancel }).click();
  await expect(page.locator('.certify-buttons .button')).toHaveText(/^Certify( again)?$/);
  await expect(page.locator('.certify-buttons .button')).toBeEnabled();
  await page.getByRole('button', { name: say.tryLong }).click();
  await expect(page.getByRole('dialog', { name: 'After the regatta' })).toBeVisible({ timeout: 30_000 });
  // What has been certified has its par with it.
  await expect(page.getByRole('dialog', { name: 'After the regatta' })).toContainText(/Par: /);
  // On the course it stands with the scenarios of one's own.
  await page.goto('/#/course');
  await expect(page.getByText('After the regatta').first()).toBeVisible();
});

test('a press on certifying holds the list above it until the button is let go', async ({ page }) => {
  await open(page);
  const at = (no: number) => page.locator('.plan-slug').nth(no);
  const turn = page.locator('.slug-row input[type=range]');
  const wrong = page.locator('.wrong-lines tbody tr');
  await page.getByRole('button', { name: say.proof.plain, exact: true }).press('Enter');
  await at(0).focus();
  await turn.fill('12');
  await expect(wrong.first()).toBeVisible({ timeout: 60_000 });
  const certify = page.getByRole('button', { name: say.proof.start, exact: true });
  await expect(certify).toBeEnabled();
  const before = (await certify.boundingBox())!;
  await page.mouse.move(before.x + before.width / 2, before.y + before.height / 2);
  // Right again: the list goes when the slug has rested, but not from over a button that is held.
  await page.mouse.down();
  await turn.fill('0');
  await page.waitForTimeout(800);
  expect(await certify.boundingBox()).toEqual(before);
  await page.mouse.up();
  await expect(page.locator('.certify-refused')).toContainText(say.proof.reasons.nothingToDo, { timeout: 60_000 });
  await expect(wrong).toHaveCount(0);
});

test('a long title leaves the buttons of the bar where they are', { tag: ['@upright'] }, async ({ page }) => {
  await open(page);
  const bar = page.locator('.draft-bar');
  const place = async () => {
    const [whole, button] = await Promise.all([
      bar.boundingBox(),
      bar.getByRole('button', { name: say.removeDraft, exact: true }).boundingBox(),
    ]);
    return { x: button!.x - whole!.x, y: button!.y - whole!.y };
  };
  const before = await place();
  await page.getByLabel(say.form.name, { exact: true }).fill('What the harbour master heard on a quiet evening');
  await expect(bar.locator('select').first()).toContainText('quiet evening');
  expect(await place()).toEqual(before);
});

test('a draft stays, a shipped one is a start, and the file is read back', async ({ page }) => {
  await open(page);
  await choice(page, say.copyOf).selectOption({ index: 3 });
  await expect(page.locator('.desk-open b')).toContainText('W-02');
  await expect(page.locator('.problems .desk-note')).toHaveText(say.noProblems, { timeout: 30_000 });
  await page.reload();
  await expect(page.locator('.problems .desk-note')).toHaveText(say.noProblems, { timeout: 30_000 });
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: say.saveLong('own-scenario-2.json') }).click();
  const file = await (await saving).path();
  const text = readFileSync(file, 'utf8');
  expect(JSON.parse(text)).toMatchObject({ format: 'haystack-scenario', track: 'own', code: 'W-02' });
  // Brought in once more it has the same name, which is told.
  const file2 = { name: 'again.json', mimeType: 'application/json', buffer: Buffer.from(text) };
  await page.locator('.draft-bar input[type=file]').setInputFiles(file2);
  await expect(page.locator('.problems li')).toHaveCount(2);
  await page.locator('.draft-bar input[type=file]').setInputFiles({ ...file2, buffer: Buffer.from('{"format":1}') });
  await expect(page.locator('.desk-brought')).toContainText(say.brought('again.json'));
  await page.getByRole('button', { name: say.removeDraft }).click();
  await page.getByRole('button', { name: say.remove, exact: true }).click();
  await expect(page.locator('.problems .desk-note')).toHaveText(say.noProblems, { timeout: 30_000 });
});
