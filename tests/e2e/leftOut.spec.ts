/** A card that the page cannot use is left out alone, and the course says which. */
import { courseWords } from '../../src/words/en/course.ts';
import { expect, test } from './page.ts';

test('a bad entry costs its own card, and the page says so', async ({ page }) => {
  await page.goto('/');
  const cards = page.locator('.card-open');
  await expect(cards.first()).toBeVisible();
  await expect.poll(() => cards.count()).toBeGreaterThan(70);
  const all = await cards.count();

  // The first entry of the index, wherever the builder has put it, gets a difficulty that no card can say.
  await page.route('**/*.js', async (route) => {
    const response = await route.fetch();
    const text = await response.text();
    await route.fulfill({
      response,
      body: text.replace(/(difficulty\W{1,4}:)[123](,\W{1,3}recommendedAfter)/, '$19$2'),
    });
  });
  await page.reload();
  await expect(page.getByText(courseWords.leftOut(['']).replace(': .', ': '))).toBeVisible();
  await expect.poll(() => cards.count()).toBe(all - 1);
});
