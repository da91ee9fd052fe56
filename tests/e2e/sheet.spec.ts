/** The step to do and what it lacks stand in sight at every size, beside the figure; and the small hands' rules of leads and switches. */
import type { Locator, Page } from '@playwright/test';
import { benchLayout } from '../../src/rooms/bench/layout.ts';
import { leadGround } from '../../src/rooms/bench/scene/leadPlaces.ts';
import { controlWords } from '../../src/words/en/bench.ts';
import { sceneWords } from '../../src/words/en/scene.ts';
import { safetyActs } from '../session/acts.ts';
import { BenchFace } from './face.ts';
import { KeyHand } from './keyHand.ts';
import { begin, expect, openJob, shippedSetup, test } from './page.ts';

async function boxOf(locator: Locator): Promise<{ top: number; bottom: number; left: number; right: number }> {
  const { x, y, width, height } = (await locator.boundingBox())!;
  return { left: x, top: y, right: x + width, bottom: y + height };
}

/** The whole of `inner` lies in what can be seen of `outer`, to a pixel. */
async function standsIn(inner: Locator, outer: Locator): Promise<void> {
  const [a, b] = [await boxOf(inner), await boxOf(outer)];
  expect(a.top).toBeGreaterThanOrEqual(b.top - 1);
  expect(a.bottom).toBeLessThanOrEqual(b.bottom + 1);
}

for (const [width, height] of [
  [1440, 900],
  [1024, 640],
  [820, 1180],
] as const) {
  test(`the step to do, what it lacks and the figure are in sight at ${width} by ${height}`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    const setup = shippedSetup('vision-if', 'flat-top');
    await openJob(page, setup);
    await begin(page);
    if (width < 1424) {
      await expect(page.locator('.step-strip .advice-here')).toBeVisible();
      await page.keyboard.press('s');
    }
    const paper = page.locator('.sheet-text');
    await expect(page.locator('.steps .now .advice')).toBeVisible();
    await standsIn(page.locator('.steps .now'), paper);
    const figure = page.locator('.sheet-figure');
    await standsIn(figure, page.locator('#service-sheet'));
    expect((await boxOf(figure)).bottom).toBeLessThanOrEqual((await boxOf(paper)).top + 1);
  });
}

async function drag(page: Page, from: Locator, to: { readonly x: number; readonly y: number }): Promise<void> {
  const { x, y, width, height } = (await from.boundingBox())!;
  await page.mouse.move(x + width / 2, y + height / 2);
  await page.mouse.down();
  await page.mouse.move(x + width / 2 + 8, y + height / 2 + 8, { steps: 2 });
  await page.mouse.move(to.x, to.y, { steps: 8 });
  await page.mouse.up();
}

test('a lead dropped on the name of a point takes, and a miss is said', async ({ page }) => {
  const setup = shippedSetup('vision-if', 'from-cold');
  await openJob(page, setup);
  await begin(page);
  await new KeyHand(new BenchFace(page, setup, (tab) => tab.click())).do(safetyActs(setup));
  const { labels, layout } = leadGround(benchLayout(1440, 900)!, setup.receiver);
  const earth = page.locator('[data-lead=earth]');
  const { chassis } = layout;
  await drag(page, earth, { x: chassis.x + chassis.width / 2, y: chassis.y + chassis.height - 12 });
  await expect(page.locator('.carry-note')).toHaveText(sceneWords.missed('earth'));
  await expect(earth).toHaveAttribute('aria-label', sceneWords.leadLoose('earth'));
  const name = labels.get('Earth')!;
  await drag(page, earth, { x: name.x + name.width - 2, y: name.y + name.height / 2 });
  await expect(earth).toHaveAttribute('aria-label', sceneWords.leadOn('earth', 'Earth'));
  await expect(page.locator('.carry-note')).toHaveCount(0);
});

test('the word of a position sets that position, and leaves it where it is set', async ({ page }) => {
  const setup = shippedSetup('vision-if', 'from-cold');
  await openJob(page, setup);
  await begin(page);
  const blanking = page.getByRole('switch', { name: controlWords.blanking.label, exact: true });
  const plate = page.locator('.switch', { has: blanking }).locator('.switch-plate');
  const press = async (side: 'left' | 'right'): Promise<void> => {
    const { x, y, width, height } = (await plate.boundingBox())!;
    await page.mouse.click(side === 'left' ? x + 14 : x + width - 14, y + height - 7);
  };
  await press('left');
  await expect(blanking).not.toBeChecked();
  await press('right');
  await expect(blanking).toBeChecked();
  await press('right');
  await expect(blanking).toBeChecked();
  await press('left');
  await expect(blanking).not.toBeChecked();
});
