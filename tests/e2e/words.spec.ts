/** The page in the made-up language: what it says of its own accord comes from the words, what files say is left as it is, and the page says which language it speaks. */
import type { Page } from '@playwright/test';
import { cardOf, expect, shippedSetup, test } from './page.ts';

test.use({ sharesWindow: true });

const setup = shippedSetup('vision-if', 'from-cold');

/** Texts of the page, and what it tells a screen reader, without those of the files and without figures. */
async function ownEnglish(page: Page, files: readonly object[]): Promise<string[]> {
  const said = await page.evaluate(() => {
    const texts: string[] = [];
    const walk = document.createTreeWalker(document.querySelector('#app')!, NodeFilter.SHOW_TEXT);
    while (walk.nextNode()) texts.push(walk.currentNode.nodeValue ?? '');
    for (const element of document.querySelectorAll(
      '#app [aria-label], #app [title], #app [aria-description], #app [data-word]',
    ))
      for (const name of ['aria-label', 'title', 'aria-description', 'data-word'])
        texts.push(element.getAttribute(name) ?? '');
    return texts;
  });
  const fromFiles = files.flatMap(textsOf);
  return [...new Set(said)].filter(
    (text) =>
      /[a-z]{3}/.test(text.replace(/\b(?:V\/)?div\b/g, '')) &&
      !/[\u27e6\u27e7]/.test(text) &&
      !fromFiles.some((own) => own.includes(text.trim()) || text.includes(own)),
  );
}

function textsOf(value: unknown): string[] {
  if (typeof value === 'string') return value.length > 2 ? [value] : [];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsOf) : [];
}

test('the bench says nothing of its own but the words', async ({ page }) => {
  await page.goto('/?words=pseudo');
  await expect(page.locator('html')).toHaveAttribute('lang', 'en-XA');
  await expect(page.locator('html')).toHaveAttribute('dir', 'ltr');
  await cardOf(page, setup).click();
  const briefing = page.getByRole('dialog');
  await expect(briefing).toBeVisible();
  expect(await ownEnglish(page, [setup.receiver, setup.scenario])).toEqual([]);
  await briefing.getByRole('checkbox').check();
  await briefing.locator('.modal-buttons button').click();
  await expect(page.locator('[data-slug][aria-valuenow]')).toHaveCount(setup.receiver.adjusters.length);
  expect(await ownEnglish(page, [setup.receiver, setup.scenario])).toEqual([]);
});

test('the course runs from right to left where its language does, and fits', async ({ page }) => {
  await page.goto('/?words=pseudo-rtl');
  await expect(page.locator('html')).toHaveAttribute('dir', 'rtl');
  await expect(cardOf(page, setup)).toBeVisible();
  const title = page.locator('#course-title');
  await expect(title).toContainText('\u27e6');
  const [heading, first] = [await title.boundingBox(), await page.locator('.card').first().boundingBox()];
  expect(heading!.x).toBeGreaterThan(first!.x);
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(wide).toBeLessThanOrEqual(0);
});
