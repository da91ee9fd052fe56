/** The circuit diagram over the bench: opened by its key, paged by stage, and a part pointed at is ringed on the chassis. */
import { circuitWords } from '../../src/words/en/circuit.ts';
import { begin, expect, openJob, shippedSetup, test } from './page.ts';

test('a slug pointed at in the circuit is shown on the chassis, and back', async ({ page }) => {
  await openJob(page, shippedSetup('vision-if', 'flat-top'));
  await begin(page);
  await page.keyboard.press('i');
  const sheet = page.getByRole('dialog', { name: circuitWords.title });
  const part = sheet.locator('.circuit-page:not(.other) [data-part="Lmix"]');
  await part.focus();
  await expect(part).toHaveAttribute('aria-pressed', 'true');
  await expect(sheet.locator('.circuit-rings .ring')).toHaveCount(1);
  await sheet.locator('.circuit-rings [data-spot="Lp3"]').click();
  await expect(sheet.locator('.circuit-page:not(.other) [data-part="Lp3"]')).toHaveAttribute('aria-pressed', 'true');
  // What the part is there for is said beside it.
  const told = sheet.locator('.circuit-told');
  await expect(told).toContainText(circuitWords.roles.slug.does);
  await expect(told).toContainText(circuitWords.heads.fails);
  await expect(told).toContainText(circuitWords.heads.sure);
  await sheet.getByRole('button', { name: circuitWords.list }).click();
  await expect(sheet.locator('.circuit-list')).toContainText('Lp3, slug');
  await page.keyboard.press('Escape');
  await expect(sheet).toHaveCount(0);
});

for (const [width, height] of [
  [1440, 900],
  [1024, 640],
  [820, 1180],
] as const) {
  test(`nothing of a stage is cut off at ${width} pixels across, and the letters stand on the chassis`, async ({
    page,
  }) => {
    await page.setViewportSize({ width, height });
    await openJob(page, shippedSetup('vision-if', 'from-cold'));
    await begin(page);
    await page.keyboard.press('i');
    const sheet = page.getByRole('dialog', { name: circuitWords.title });
    const drawing = sheet.locator('.circuit-page:not(.other)');
    const frame = sheet.locator('.circuit-pages');
    await expect(drawing).toBeVisible();
    for (const tab of await sheet.locator('.tabs button').all()) {
      if ((await tab.textContent()) === circuitWords.list) continue;
      await tab.click();
      await expect(tab).toHaveAttribute('aria-pressed', 'true');
      expect(await frame.evaluate((box) => box.scrollWidth - box.clientWidth)).toBeLessThanOrEqual(1);
      // The floor of all lettering.
      const size = await drawing.evaluate((svg: SVGSVGElement) => 14 * svg.getScreenCTM()!.a);
      expect(size).toBeGreaterThanOrEqual(11.9);
      // What is to be read of a button stands in its name (WCAG 2.2, 2.5.3, label in name).
      const parts = await drawing
        .locator('[role=button]')
        .evaluateAll((all) => all.map((one) => [one.textContent ?? '', one.getAttribute('aria-label') ?? ''] as const));
      expect(parts.length).toBeGreaterThan(2);
      for (const [seen, name] of parts) expect(name.toLowerCase()).toContain(seen.toLowerCase());
    }
    await expect(sheet.locator('.circuit-letter')).toHaveText(['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H', 'J']);
    const letter = await sheet
      .locator('.circuit-letter text')
      .first()
      .evaluate((text) => text.getBoundingClientRect().height);
    expect(letter).toBeGreaterThanOrEqual(11);
  });
}
