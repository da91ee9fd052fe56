/** The guide through a first bench: offered to who is new, one act at a time in every size of page, and gone when it is skipped. */
import { dialogWords } from '../../src/words/en/benchTalk.ts';
import { courseWords } from '../../src/words/en/course.ts';
import { guideWords } from '../../src/words/en/guide.ts';
import { expect, rail, railSays, test } from './page.ts';

test('shown step by step to the first pip, then skipped @shelf @upright', async ({ page }) => {
  await page.goto('/');
  await page.getByRole('button', { name: courseWords.guide.begin }).click();
  await page.getByRole('checkbox', { name: dialogWords.briefing.acknowledge }).check();
  await page.getByRole('button', { name: dialogWords.briefing.begin, exact: true }).click();
  const guide = page.getByRole('region', { name: guideWords.name });
  await expect(guide).toContainText(guideWords.steps.earth.title);
  const why = guide.getByText(guideWords.steps.earth.why);
  const asks = guide.getByRole('button', { name: guideWords.why, exact: true });
  if ((await asks.count()) > 0) {
    await asks.click();
    await expect(asks).toHaveAttribute('aria-expanded', 'true');
  }
  // Not only there for those who listen: it has the size of its words.
  await expect.poll(async () => (await why.boundingBox())?.height).toBeGreaterThan(16);
  const { title: pip } = guideWords.steps.crystals;
  for (let press = 0; press < 30 && !((await guide.textContent()) ?? '').includes(pip); press++)
    await guide.getByRole('button', { name: guideWords.showMe }).click();
  await expect(guide).toContainText(pip);
  await expect(page.locator('.guide-light').first()).toBeVisible();
  await expect(rail(page)).toHaveAttribute('aria-label', railSays(['safe', 'connect']));
  await guide.getByRole('button', { name: guideWords.skip }).click();
  await expect(guide).toHaveCount(0);
  await expect(page.locator('.guide-light')).toHaveCount(0);
});
