/** The circuit diagram over the bench: opened by its key, paged by stage, and a part pointed at is ringed on the chassis. */
import { circuitWords } from '../../src/words/en/circuit.ts';
import { partsWords } from '../../src/words/en/parts.ts';
import { sceneWords } from '../../src/words/en/scene.ts';
import { begin, expect, openJob, shippedSetup, test } from './page.ts';
import { isSound } from './soundPage.ts';

test.use({ sharesWindow: true });

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

test('beside a part stands what the curve would be without it, and what may be done to it here', async ({ page }) => {
  await openJob(page, shippedSetup('fault-finding', 'one-hump-gone'));
  await begin(page);
  await page.keyboard.press('i');
  const sheet = page.getByRole('dialog', { name: circuitWords.title });
  const told = sheet.locator('.circuit-told');
  await expect(sheet.locator('.circuit-page').first()).toBeAttached();
  // Along the signal, by its key and back.
  const name = sheet.locator('.circuit-said b');
  await page.keyboard.press('p');
  const first = (await name.textContent())!;
  await page.keyboard.press('p');
  await expect(name).not.toHaveText(first);
  await page.keyboard.press('Shift+P');
  await expect(name).toHaveText(first);
  const part = sheet.locator('.circuit-page [data-part="C2"]').first();
  for (let i = 0; i < 30 && (await name.textContent())?.startsWith('C2') !== true; i++) await page.keyboard.press('p');
  await expect(part).toHaveAttribute('aria-pressed', 'true');
  await expect(told.getByRole('img')).toHaveAttribute('aria-label', /with all else right/);
  await expect(told.locator('figcaption')).toContainText(circuitWords.whole);
  await isSound(page);
  await told.getByRole('button', { name: circuitWords.meter }).click();
  await expect(told.getByRole('status')).toContainText('C2');
  await told.getByRole('button', { name: partsWords.bridge }).click();
  await expect(told.getByRole('status')).toContainText(/clipped across C2/);
  await told.getByRole('button', { name: partsWords.unbridge }).click();
  // Nothing is soldered by one press.
  await told.getByRole('button', { name: circuitWords.fit }).click();
  await expect(told.getByRole('button', { name: partsWords.replace })).toBeVisible();
  await told.getByRole('button', { name: partsWords.keep }).click();
  await expect(told.getByRole('button', { name: circuitWords.fit })).toBeVisible();
  for (let i = 0; i < 60 && !/slug B/.test((await name.textContent()) ?? ''); i++) await page.keyboard.press('p');
  await told.getByRole('button', { name: circuitWords.takeSlug('B') }).click();
  await expect(sheet).toHaveCount(0);
  await expect(page.getByRole('heading', { name: sceneWords.slugTitle('B'), exact: true })).toBeVisible();
});

test('a sealed job draws no part without which the curve would be another', async ({ page }) => {
  await openJob(page, shippedSetup('vision-if', 'brent-sealed'));
  await begin(page);
  await page.keyboard.press('i');
  const sheet = page.getByRole('dialog', { name: circuitWords.title });
  await expect(sheet.locator('.circuit-page').first()).toBeAttached();
  for (let i = 0; i < 4; i++) await page.keyboard.press('p');
  await expect(sheet.getByRole('button', { name: circuitWords.next })).toBeVisible();
  await page.waitForTimeout(500);
  await expect(sheet.locator('.circuit-failed')).toHaveCount(0);
});

test('nothing of a stage is cut off, and the letters stand on the chassis', async ({ page }) => {
  await openJob(page, shippedSetup('vision-if', 'from-cold'));
  await begin(page);
  const sheet = page.getByRole('dialog', { name: circuitWords.title });
  const drawing = sheet.locator('.circuit-page:not(.other)');
  const frame = sheet.locator('.circuit-pages');
  for (const [width, height] of [
    [1440, 900],
    [1024, 640],
    [820, 1180],
  ] as const)
    await test.step(`at ${width} pixels across`, async () => {
      await page.setViewportSize({ width, height });
      await page.keyboard.press('i');
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
          .evaluateAll((all) =>
            all.map((one) => [one.textContent ?? '', one.getAttribute('aria-label') ?? ''] as const),
          );
        expect(parts.length).toBeGreaterThan(2);
        for (const [seen, name] of parts) expect(name.toLowerCase()).toContain(seen.toLowerCase());
      }
      await expect(sheet.locator('.circuit-letter')).toHaveText(['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H', 'J']);
      const letter = await sheet
        .locator('.circuit-letter text')
        .first()
        .evaluate((text) => text.getBoundingClientRect().height);
      expect(letter).toBeGreaterThanOrEqual(11);
      await page.keyboard.press('Escape');
      await expect(sheet).toHaveCount(0);
    });
});

test('the key for the next part goes on from the page that has been turned to', async ({ page }) => {
  await page.setViewportSize({ width: 1024, height: 640 });
  const setup = shippedSetup('vision-if', 'one-slug-out');
  await openJob(page, setup);
  await begin(page);
  await page.keyboard.press('i');
  const third = page.locator('.circuit .tabs button').nth(2);
  await third.click();
  await page.keyboard.press('p');
  await expect(page.locator('.circuit-page .pointed')).toHaveCount(1);
  await expect(third).toHaveAttribute('aria-pressed', 'true');
});
