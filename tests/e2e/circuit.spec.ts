/** The circuit diagram over the bench: opened by its key, paged by stage, and a part pointed at is ringed on the chassis. */
import { circuitWords } from '../../src/words/en/circuit.ts';
import { begin, expect, openCard, shippedSetup, test } from './page.ts';

test('a slug pointed at in the circuit is shown on the chassis, and back', async ({ page }) => {
  await openCard(page, shippedSetup('vision-if', 'flat-top'));
  await begin(page);
  await page.keyboard.press('i');
  const sheet = page.getByRole('dialog', { name: circuitWords.title });
  const part = sheet.locator('.circuit-page:not(.other) [data-part="Lmix"]');
  await part.focus();
  await expect(part).toHaveAttribute('aria-pressed', 'true');
  await expect(sheet.locator('.circuit-rings .ring')).toHaveCount(1);
  await sheet.locator('.circuit-rings [data-spot="Lp3"]').click();
  await expect(sheet.locator('.circuit-page:not(.other) [data-part="Lp3"]')).toHaveAttribute('aria-pressed', 'true');
  await sheet.getByRole('button', { name: circuitWords.list }).click();
  await expect(sheet.locator('.circuit-list')).toContainText('Lp3, slug');
  await page.keyboard.press('Escape');
  await expect(sheet).toHaveCount(0);
});
