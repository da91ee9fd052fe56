/** At signing: what was wrong, asked in the dialog, by pointer and by keyboard, and told in the report with what was. */
import type { Page } from '@playwright/test';
import { slugNameFirst } from '../../src/describe/slugName.ts';
import { setAsFound } from '../../src/grading/diagnosis.ts';
import { asFoundWords } from '../../src/words/en/asFound.ts';
import { headerWords } from '../../src/words/en/bench.ts';
import { dialogWords } from '../../src/words/en/benchTalk.ts';
import { diagnosisWords } from '../../src/words/en/diagnosis.ts';
import { en } from '../../src/words/en/index.ts';
import { sheetWords } from '../../src/words/en/sheet.ts';
import { layoutFaults } from './layoutFaults.ts';
import { begin, expect, openJob, shippedSetup, test } from './page.ts';
import { isSound } from './soundPage.ts';

test.use({ sharesWindow: true });

const setup = shippedSetup('fault-finding', 'one-hump-gone');
const slug = slugNameFirst(en, setup.receiver, setup.receiver.adjusters[0]!.id);
const FAILED = setAsFound(setup).failed[0]![0]!;
/** The sheet's second page. */
const LEVELS = sheetWords.pages[1]!;
const dialog = (page: Page) => page.getByRole('dialog');
const choice = (page: Page, name: string) => dialog(page).getByRole('checkbox', { name, exact: true });

test('what was wrong is asked at signing, never filled in, and told in the report', {
  tag: ['@shelf', '@upright'],
}, async ({ page }) => {
  await openJob(page, setup);
  await begin(page);
  const signOff = page.getByRole('button', { name: headerWords.signOff, exact: true });
  await signOff.click();
  const form = dialog(page).locator('.diagnosis');
  await expect(dialog(page).getByRole('status')).toHaveText(diagnosisWords.unsaid);
  await expect(dialog(page).getByRole('status')).toBeInViewport();
  await expect(form.getByRole('checkbox', { checked: true })).toHaveCount(0);
  await isSound(page);
  await expect.poll(() => page.evaluate(layoutFaults, 'dialog[open]')).toEqual([]);

  // That nothing was wrong is one choice, and no other stands beside it but those of the bench.
  await choice(page, slug).click();
  await choice(page, diagnosisWords.matters.level).click();
  await expect(dialog(page).getByRole('status')).toHaveText(diagnosisWords.chosen(2));
  await choice(page, diagnosisWords.nothing).focus();
  await page.keyboard.press('Space');
  await expect(choice(page, slug)).not.toBeChecked();
  await expect(choice(page, diagnosisWords.nothing)).toBeChecked();

  // Whoever goes back to work begins with an empty sheet.
  await dialog(page).getByRole('button', { name: dialogWords.signOff.keep, exact: true }).click();
  await expect(dialog(page)).toHaveCount(0);
  await signOff.click();
  await expect(form.getByRole('checkbox', { checked: true })).toHaveCount(0);
  await choice(page, slug).focus();
  await page.keyboard.press('Space');
  await dialog(page)
    .getByRole('checkbox', { name: new RegExp(`^${FAILED},`) })
    .click();
  await dialog(page).getByRole('button', { name: dialogWords.signOff.sign, exact: true }).click();

  const told = page.locator('.was-wrong');
  await expect(told).toContainText(`${FAILED} had failed`);
  await expect(told.locator('dd').first()).toContainText(FAILED);
  await expect(told).toContainText(/Named, though it was good: slug /);
  await isSound(page);
});

test('the levels as found are recorded on the sheet and stand in the report beside those as left', async ({ page }) => {
  await openJob(page, setup);
  await begin(page);
  const sheet = page.locator('#service-sheet');
  await sheet.getByRole('button', { name: LEVELS }).click();
  await sheet.getByRole('button', { name: asFoundWords.record, exact: true }).focus();
  await page.keyboard.press('Enter');
  await expect(sheet.locator('.as-found')).toContainText(/As found, at 0:?0?0:\d\d/);
  await expect.poll(() => page.evaluate(layoutFaults, '#service-sheet')).toEqual([]);
  await page.getByRole('button', { name: headerWords.signOff, exact: true }).click();
  await dialog(page).getByRole('button', { name: dialogWords.signOff.sign, exact: true }).click();
  const told = page.locator('.tube-readings');
  await expect(told.getByRole('row')).toHaveCount(1 + setup.receiver.responses[0]!.specification.points.length);
  await expect(told).toContainText(/\d%/);
  await isSound(page);
});
