/** Course, bench and report in three sizes: nothing scrolls sideways, nothing stands in the way of a reader, and refusals are said. */

import { refusalSentence } from '../../src/describe/sentence.ts';
import { slugLetters } from '../../src/receiver/slugLetters.ts';
import { headerWords } from '../../src/words/en/bench.ts';
import { dialogWords } from '../../src/words/en/benchTalk.ts';
import { en } from '../../src/words/en/index.ts';
import { sceneWords } from '../../src/words/en/scene.ts';
import { shellWords } from '../../src/words/en/shell.ts';
import { begin, cardOf, expect, openCard, shippedSetup, test } from './page.ts';
import { isSound } from './soundPage.ts';

test.use({ sharesWindow: true });

const setup = shippedSetup('vision-if', 'traps-astray');
const SIZES = { tag: ['@shelf', '@upright'] };

test('course, briefing, bench, a refusal and the report', SIZES, async ({ page }) => {
  await test.step('the course', async () => {
    await page.goto('/');
    await expect(cardOf(page, setup)).toBeVisible();
    await expect(page).toHaveTitle(`${shellWords.course} \u00b7 ${shellWords.product}`);
    await isSound(page);
  });
  await test.step('the briefing', async () => {
    await cardOf(page, setup).click();
    await expect(page.getByRole('dialog', { name: setup.scenario.title })).toBeVisible();
    await isSound(page);
  });
  await test.step('the bench', async () => {
    await begin(page);
    await expect(page.locator('[data-slug][aria-valuenow]')).toHaveCount(setup.receiver.adjusters.length);
    await isSound(page);
  });
  await test.step('a slug turned with an empty hand says why it does not turn', async () => {
    const slug = page.locator('[data-slug="A1"]');
    await slug.click();
    await page.getByRole('button', { name: /^Turn slug . 1\/8 in$/ }).click();
    const words = refusalSentence(en, 'noToolInHand', { type: 'slugTurned', slug: 'A1', turns: 1 / 8 }, setup.receiver);
    await expect(page.locator('.toast')).toHaveText(words);
    await expect(slug).toHaveAttribute('aria-valuenow', '0');
  });
  await test.step('the report', async () => {
    await page.getByRole('button', { name: headerWords.signOff, exact: true }).click();
    await page.getByRole('dialog').getByRole('button', { name: dialogWords.signOff.sign, exact: true }).click();
    await expect(page.locator('.score-figure')).toBeVisible();
    await expect(page).toHaveTitle(`${setup.scenario.title} \u00b7 ${shellWords.reports} \u00b7 ${shellWords.product}`);
    await isSound(page);
  });
});

test('single letters act from anywhere, and not once they are switched off, on the next bench either', async ({
  page,
}) => {
  const { help } = dialogWords;
  await openCard(page, setup);
  await begin(page);
  const sheet = page.getByRole('dialog', { name: help.title });
  await page.keyboard.press('?');
  await sheet.getByRole('checkbox', { name: help.singleKeys }).uncheck();
  await page.keyboard.press('Escape');
  await expect(sheet).toHaveCount(0);
  const letters = [...slugLetters(setup.receiver).values()];
  const unchosen = page.getByText(sceneWords.chooseSlug(letters[0]!, letters.at(-1)!));
  const knows = async (): Promise<void> => {
    await page.keyboard.press('a');
    await page.keyboard.press('?');
    await expect(sheet).toHaveCount(0);
    await expect(unchosen).toBeVisible();
  };
  await knows();
  await page.reload();
  await expect(page.locator('[data-slug][aria-valuenow]')).toHaveCount(setup.receiver.adjusters.length);
  await knows();
  await page.getByRole('button', { name: headerWords.menu }).click();
  await page.getByRole('menuitem', { name: headerWords.help }).click();
  await sheet.getByRole('checkbox', { name: help.singleKeys }).check();
  await page.keyboard.press('Escape');
  await page.keyboard.press('?');
  await expect(sheet).toBeVisible();
  await page.keyboard.press('Escape');
  await page.keyboard.press('a');
  await expect(unchosen).toHaveCount(0);
});
