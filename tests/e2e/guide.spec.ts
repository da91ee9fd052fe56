/** The guide through a first bench: offered to who is new, one act at a time in every size of page, and gone when it is skipped. */

import { controlWords, panelWords } from '../../src/words/en/bench.ts';
import { dialogWords } from '../../src/words/en/benchTalk.ts';
import { courseWords } from '../../src/words/en/course.ts';
import { guideWords } from '../../src/words/en/guide.ts';
import { sceneWords } from '../../src/words/en/scene.ts';
import { sheetWords } from '../../src/words/en/sheet.ts';
import { MOVING } from './moving.ts';
import { begin, expect, openCard, rail, railSays, shippedSetup, test } from './page.ts';

test.use({ ...MOVING, sharesWindow: true });

test('a briefing that was put aside takes nothing from a newcomer', async ({ page }) => {
  await openCard(page, shippedSetup('vision-if', 'one-slug-out'));
  await expect(page.getByRole('button', { name: dialogWords.briefing.begin, exact: true })).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('button', { name: courseWords.guide.begin })).toHaveClass(/primary/);
  await expect(page.locator('.card-now')).toHaveCount(0);
  await page.reload();
  await expect(page.getByRole('button', { name: courseWords.guide.begin })).toHaveClass(/primary/);
});

test('shown step by step to the first pip, then skipped @shelf @upright', async ({ page }) => {
  await page.goto('/');
  const begin = page.getByRole('button', { name: courseWords.guide.begin });
  // To who has done nothing yet it is what to do first.
  await expect(begin).toHaveClass(/primary/);
  await expect(page.locator('.next-sheet .button')).toHaveCount(1);
  await begin.click();
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
  // What the step of the sheet waits for stays lit: the same crystal.
  await expect(page.locator('.guide-light')).toHaveCount(1);
});

test('the words and the light follow the hand: the tab, the jack of the tube, the slug and its button', async ({
  page,
}) => {
  await page.goto('/#/bench/first-curve/guided');
  await page.getByRole('checkbox', { name: dialogWords.briefing.acknowledge }).check();
  await page.getByRole('button', { name: dialogWords.briefing.begin, exact: true }).click();
  const guide = page.getByRole('region', { name: guideWords.name });
  const { steps } = guideWords;
  const said = guide.locator('.guide-said');
  const showTo = async (title: string): Promise<void> => {
    for (let press = 0; press < 30; press++) {
      const before = (await said.textContent()) ?? '';
      if (before.includes(title)) return;
      await guide.getByRole('button', { name: guideWords.showMe }).click();
      // Before it is pressed again: else a step would be passed unseen.
      await expect(said).not.toHaveText(before);
    }
    await expect(said).toContainText(title);
  };
  await expect(guide).toContainText(guideWords.how.lead);

  // An end that is carried moves nothing but itself.
  const top = async () => page.locator('main').evaluate((main) => main.getBoundingClientRect().top);
  await page.locator('.lead-grip[data-lead="earth"]').click();
  await expect(page.locator('.leads-layer.carrying')).toHaveCount(1);
  expect(await top()).toBe(0);
  expect(await page.evaluate(() => document.documentElement.scrollHeight - innerHeight)).toBe(0);
  await page.keyboard.press('Escape');

  await showTo(steps.pad.title);
  const leads = page.getByRole('tab', { name: panelWords.leadsSide, exact: true });
  await expect(guide).toContainText(guideWords.openFirst(panelWords.leadsSide));
  await leads.click();
  await expect(guide).not.toContainText(guideWords.openFirst(panelWords.leadsSide));
  await expect(guide).toContainText(guideWords.how.switch);

  await showTo(steps.x.title);
  await expect(page.locator('.guide-light')).toHaveCount(2);
  const [jack, light] = await Promise.all([
    page.locator('[data-jack=xIn]').boundingBox(),
    page.locator('.guide-light').nth(1).boundingBox(),
  ]);
  // Its ring and its name, and nothing of either under a corner.
  const name = (await page.locator('[data-jack=xIn] + .jack-label').boundingBox())!;
  for (const { x, y, width, height } of [{ ...jack!, x: jack!.x - 10, width: 20 }, name]) {
    expect(light!.x).toBeLessThan(x);
    expect(light!.x + light!.width).toBeGreaterThan(x + width);
    expect(light!.y).toBeLessThan(y);
    expect(light!.y + light!.height).toBeGreaterThan(y + height);
  }

  await showTo(steps.tool.title);
  await guide.getByRole('button', { name: guideWords.showMe }).click();
  await expect(guide).toContainText(guideWords.turn('A', true, false));
  await page.keyboard.press('a');
  await expect(guide).toContainText(guideWords.turn('A', true, true));
  const button = (await page.getByRole('button', { name: sceneWords.inSpoken('1/8', 'A') }).boundingBox())!;
  const lit = (await page.locator('.guide-light').nth(1).boundingBox())!;
  expect(lit.x).toBeLessThan(button.x);
  expect(lit.x + lit.width).toBeGreaterThan(button.x + button.width);
});

test('a drag that takes hold of no clip marks no words, and the next one carries the strap', async ({ page }) => {
  await page.goto('/#/bench/first-curve/guided');
  await expect(page.getByRole('dialog')).toBeVisible();
  await begin(page);
  const guide = page.getByRole('region', { name: guideWords.name });
  await expect(guide).toContainText(guideWords.steps.earth.title);
  const middle = async (part: string): Promise<readonly [number, number]> => {
    const { x, y, width, height } = (await page.locator(part).boundingBox())!;
    return [x + width / 2, y + height / 2];
  };
  const lights = page.locator('.guide-light');
  await expect(lights).toHaveCount(2);
  const point = (await lights.nth(1).boundingBox())!;
  const [x, y] = await middle('.lead-grip[data-lead="earth"]');
  const drag = async (from: readonly [number, number], to: readonly [number, number]): Promise<void> => {
    await page.mouse.move(...from);
    await page.mouse.down();
    await page.mouse.move(from[0] + 8, from[1] + 8, { steps: 2 });
    await page.mouse.move(...to, { steps: 8 });
    await page.mouse.up();
  };
  const end = [point.x + point.width / 2, point.y + point.height / 2] as const;
  await drag(end, [x, y]);
  expect(await page.evaluate(() => String(getSelection()))).toBe('');
  await drag([x, y], end);
  await expect(guide).toContainText(guideWords.steps.rf.title);
});

test('a figure that is typed counts when the hand goes elsewhere, and not after Escape', async ({ page }) => {
  await page.goto('/#/bench/first-curve');
  await expect(page.getByRole('dialog')).toBeVisible();
  await begin(page);
  const slider = page.getByRole('slider', { name: controlWords.levelDb.label, exact: true });
  const before = await slider.inputValue();
  const field = page.locator('.entry input');
  await slider.focus();
  await page.keyboard.press('Enter');
  await field.fill('-20');
  await page.keyboard.press('Escape');
  await expect(field).toHaveCount(0);
  await expect(slider).toHaveValue(before);
  await page.keyboard.press('Enter');
  await field.fill('-20');
  await page.locator('.bench-tube').click({ position: { x: 5, y: 5 } });
  await expect(field).toHaveCount(0);
  await expect(slider).toHaveAttribute('aria-valuetext', /20/);
  // What cannot be read is not guessed.
  const set = await slider.inputValue();
  await slider.focus();
  await page.keyboard.press('Enter');
  await field.fill('loud');
  await page.locator('.bench-tube').click({ position: { x: 5, y: 5 } });
  await expect(field).toHaveCount(0);
  await expect(slider).toHaveValue(set);
});

test('the sheet takes the focus when it is opened, and gives it back when it is put away', async ({ page }) => {
  await page.goto('/#/bench/first-curve/guided');
  await expect(page.getByRole('dialog')).toBeVisible();
  await begin(page);
  const sheet = page.locator('#service-sheet');
  const span = page.getByRole('slider', { name: controlWords.spanHz.label, exact: true });
  await span.focus();
  await page.keyboard.press('s');
  await expect(sheet).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(sheet).toHaveCount(0);
  await expect(span).toBeFocused();
  // The button that opens it goes while it is open.
  const open = page.getByRole('region', { name: guideWords.name }).getByRole('button', { name: sheetWords.open });
  await open.focus();
  await page.keyboard.press('Enter');
  await expect(sheet).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(open).toBeFocused();
});
