/** The report of a run that went well: its address, a total above what was hoped for, and the word that says it passed. */
import type { Page } from '@playwright/test';
import { expect } from './page.ts';

export async function reportPassed(page: Page, above: number): Promise<void> {
  await expect(page).toHaveURL(/#\/report\//);
  const figure = page.locator('.score-figure');
  await expect(figure).toBeVisible();
  await expect.poll(async () => Number(await figure.textContent())).toBeGreaterThan(above);
  await expect(page.locator('.score-verdict')).toHaveClass(/\bpassed\b/);
}
