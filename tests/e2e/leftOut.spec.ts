/** A card that the page cannot use is left out alone, and the course says which. */
import { courseWords } from '../../src/words/en/course.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { expect, test } from './page.ts';

/** The difficulty of the first entry of the index, which stands in the page's first script as data: the one key that is quoted and has a figure. */
const DIFFICULTY = /("difficulty\\?"\s*:\s*)[123]\b/;

test('a bad entry costs its own card, and the page says so', async ({ page }) => {
  const all = shippedLibrary().scenarios.length;
  const cards = page.locator('.card-open');
  let spoilt = 0;
  // Whichever entry the builder has put first gets a difficulty that no card can say.
  await page.route('**/first-*.js', async (route) => {
    const response = await route.fetch();
    const text = await response.text();
    if (DIFFICULTY.test(text)) spoilt++;
    await route.fulfill({ response, body: text.replace(DIFFICULTY, '$19') });
  });
  await page.goto('/');
  await expect(page.getByText(courseWords.leftOut(['']).replace(': .', ': '))).toBeVisible();
  // The tracks come one after the other: only with the last of them are all cards there.
  await expect(cards).toHaveCount(all - 1);
  expect(spoilt).toBe(1);
});
