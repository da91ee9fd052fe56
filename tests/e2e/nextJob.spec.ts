/** The report leads on: what the course has next is offered in it, and the button opens that bench. */
import { en } from '../../src/words/en/index.ts';
import { keepFixture } from './keptReport.ts';
import { expect, test } from './page.ts';

test.use({ sharesWindow: true });

test('from a report to the next scenario of the course, never to the one just done', async ({ page }) => {
  await keepFixture(page, '', 'kept-before', 'zero', true);
  await page.goto('/#/report/kept-before');
  const offer = page.locator('.findings-next');
  await expect(offer).toContainText(en.report.nextJob);
  const button = offer.getByRole('button');
  const name = (await button.textContent())!.trim();
  const done = (await page.locator('#report-title').textContent())!.trim();
  expect(name).not.toContain(done);
  // One thing at a time is the first thing to do.
  await expect(page.locator('.room-report .button.primary')).toHaveCount(1);
  await button.click();
  const briefing = page.getByRole('dialog');
  await expect(briefing).toBeVisible();
  const title = briefing.getByRole('heading').first();
  await expect(title).not.toBeEmpty();
  expect(name).toContain((await title.textContent())!.trim());
});
