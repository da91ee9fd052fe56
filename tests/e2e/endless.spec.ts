/** The endless track: a word becomes a set on the bench, the same from the address alone. */
import { endlessWords } from '../../src/words/en/endless.ts';
import { expect, test } from './page.ts';

test.use({ sharesWindow: true });

test('a seed word makes a certified set, and its address makes it again', async ({ page, browser }) => {
  await page.goto('/');
  await page.getByRole('radio', { name: endlessWords.levels[2] }).check();
  const seed = page.getByRole('textbox', { name: endlessWords.seed });
  await seed.fill('No!');
  await expect(page.getByText(endlessWords.badSeed)).toBeVisible();
  await seed.fill('gale');
  await page.getByRole('button', { name: endlessWords.open }).click();
  const briefing = page.getByRole('dialog');
  await expect(briefing).toContainText('gale', { timeout: 30_000 });
  expect(page.url()).toContain('endless-2-gale');
  const said = await briefing.getByRole('heading').first().textContent();
  // Another machine, as far as storage goes: nothing but the address is the same.
  const elsewhere = await browser.newContext();
  const other = await elsewhere.newPage();
  await other.goto(page.url());
  await expect(other.getByRole('dialog').getByRole('heading').first()).toHaveText(said!, { timeout: 30_000 });
  await elsewhere.close();
});
