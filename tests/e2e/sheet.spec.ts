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

test.use({ sharesWindow: true });

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

test('the step to do, what it lacks and the figure are in sight', async ({ page }) => {
  await openJob(page, shippedSetup('vision-if', 'flat-top'));
  await begin(page);
  const paper = page.locator('.sheet-text');
  const figure = page.locator('.sheet-figure');
  for (const [width, height] of [
    [1440, 900],
    [1024, 640],
    [820, 1180],
  ] as const)
    await test.step(`at ${width} by ${height}`, async () => {
      await page.setViewportSize({ width, height });
      const folds = width < 1424;
      if (folds) {
        await expect(page.locator('.step-strip .advice-here')).toBeVisible();
        await page.keyboard.press('s');
      }
      await expect(page.locator('.steps .now .advice')).toBeVisible();
      await standsIn(page.locator('.steps .now'), paper);
      await standsIn(figure, page.locator('#service-sheet'));
      expect((await boxOf(figure)).bottom).toBeLessThanOrEqual((await boxOf(paper)).top + 1);
      if (folds) {
        await page.keyboard.press('Escape');
        await expect(page.locator('.sheet.over')).toHaveCount(0);
      }
    });
});

async function drag(page: Page, from: Locator, to: { readonly x: number; readonly y: number }): Promise<void> {
  const { x, y, width, height } = (await from.boundingBox())!;
  await page.mouse.move(x + width / 2, y + height / 2);
  await page.mouse.down();
  await page.mouse.move(x + width / 2 + 8, y + height / 2 + 8, { steps: 2 });
  await page.mouse.move(to.x, to.y, { steps: 8 });
  await page.mouse.up();
}

/** px of paper between each two sentences, as far as their letters reach */
async function gaps(lines: Locator): Promise<readonly number[]> {
  const texts = await lines.evaluateAll((all) =>
    all.map((one) => {
      const range = document.createRange();
      range.selectNodeContents(one);
      const { top, bottom } = range.getBoundingClientRect();
      return { top, bottom };
    }),
  );
  expect(texts.length).toBeGreaterThan(2);
  return texts.slice(1).map(({ top }, i) => top - texts[i]!.bottom);
}

test('a set from cold: its cautions, a switch by its words, a lead by the name of a point', async ({ page }) => {
  const setup = shippedSetup('vision-if', 'from-cold');
  await test.step('cautions stand apart from one another, on the sheet and before the work begins', async () => {
    await openJob(page, setup);
    // Less, and one could be read on into the next.
    for (const gap of await gaps(page.locator('.caution-list li'))) expect(gap).toBeGreaterThanOrEqual(2);
    await begin(page);
    for (const gap of await gaps(page.locator('.sheet .caution p'))) expect(gap).toBeGreaterThanOrEqual(2);
  });
  await test.step('the word of a position sets that position, and leaves it where it is set', async () => {
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
  await test.step('a lead dropped on the name of a point takes, and a miss is said', async () => {
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
});

test('a point that is pressed before a lead is in hand says what to take', async ({ page }) => {
  const setup = shippedSetup('first-sweep', 'first-curve');
  await openJob(page, setup);
  await begin(page);
  const note = page.locator('.carry-note');
  await page.locator('.point-spot[data-point="Earth"]').click();
  await expect(note).toHaveText(sceneWords.takeThisFirst('earth', 'Earth'));
  await page.locator('.point-spot[data-point="TP2"]').click();
  await expect(note).toHaveText(sceneWords.takeFirst('TP2'));
  // With the lead in hand the press is no question any more.
  await page.locator('.lead-grip[data-lead="earth"]').click();
  await page.getByRole('button', { name: sceneWords.putOn('Earth'), exact: true }).click();
  await expect(note).toHaveCount(0);
  await expect(page.locator('.lead-grip[data-lead="earth"]')).toHaveAttribute(
    'aria-label',
    sceneWords.leadOn('earth', 'Earth'),
  );
});
