/** From part to part of the bench by one key, on and back; not while something is written or chosen, and not once single keys are switched off. Common practice, no source. */
import type { Page } from '@playwright/test';
import { controlWords } from '../../src/words/en/bench.ts';
import { dialogWords } from '../../src/words/en/benchTalk.ts';
import { begin, expect, test } from './page.ts';

test.use({ sharesWindow: true });

/** The name of the part of the bench that holds the focus. */
const partInHand = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const part = document.activeElement?.closest(
      'main > header, .panel, .leads-layer, .chassis-scene, .slug-inset, .tool-rack, main > section, main > nav',
    );
    return part === null || part === undefined ? '' : part.id || part.className.split(' ')[0]!;
  });

test('full stop and comma walk the bench from where the work is @shelf @upright', async ({ page }) => {
  await page.goto('/#/bench/off-centre');
  await expect(page.getByRole('dialog')).toBeVisible();
  await begin(page);
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  // No lead is on yet.
  await page.keyboard.press('.');
  await expect.poll(() => partInHand(page)).toBe('leads-layer');
  const seen: string[] = ['leads-layer'];
  for (let n = 0; n < 20; n++) {
    await page.keyboard.press('.');
    const part = await partInHand(page);
    if (part === 'leads-layer') break;
    expect(seen).not.toContain(part);
    seen.push(part);
  }
  expect(seen).toEqual(expect.arrayContaining(['panel-sweep', 'panel-rack', 'panel-tube', 'panel-bias']));
  expect(seen).toEqual(expect.arrayContaining(['bench-header', 'bench-tube', 'chassis-scene', 'tool-rack']));
  await page.keyboard.press(',');
  expect(await partInHand(page)).toBe(seen.at(-1));
  await page.keyboard.press('.');

  // What the tube shows, and its figures where there are any.
  await page.keyboard.press('v');
  await expect(page.locator('.bench-tube')).toBeFocused();

  // Typed into a knob's field, the signs are figures.
  const level = page.getByRole('slider', { name: controlWords.levelDb.label, exact: true });
  await level.focus();
  await page.keyboard.press('Enter');
  await expect(page.locator('.entry input')).toBeFocused();
  await page.keyboard.type('-20.5');
  await expect(page.locator('.entry input')).toHaveValue(/-20[.]5/);
  await page.keyboard.press('Escape');

  // Listed, and to be switched off where the list is.
  await page.keyboard.press('?');
  const help = page.getByRole('dialog', { name: dialogWords.help.title });
  await expect(help).toContainText(dialogWords.help.keys.find(([key]) => key.startsWith('.'))![1]);
  await help.getByRole('checkbox', { name: dialogWords.help.singleKeys }).uncheck();
  await page.keyboard.press('Escape');
  await expect(help).toHaveCount(0);
  await level.focus();
  await page.keyboard.press('.');
  await page.keyboard.press('?');
  await expect(level).toBeFocused();
  await expect(page.getByRole('dialog')).toHaveCount(0);
});

test('nothing is taken from a list that is being chosen from', async ({ page }) => {
  await page.goto('/#/bench/first-curve/shown');
  const speed = page.getByRole('combobox');
  await expect(speed).toBeVisible({ timeout: 60_000 });
  const said = page.locator('.shown .guide-said');
  const before = await said.textContent();
  await speed.focus();
  await page.keyboard.press('.');
  await page.keyboard.press('s');
  await expect(speed).toBeFocused();
  expect(await said.textContent()).toBe(before);
  await expect(page.locator('.sheet')).toHaveCount(0);
});
