/** What the chosen slug moves stands on its panel and, in wax, on the glass, with the figures that the engine gives; a sealed job shows none of it. */
import { initialState } from '../../src/bench/setup.ts';
import { levelAt } from '../../src/present/curves.ts';
import { createSlugParts } from '../../src/present/slugPart.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import { panelWords } from '../../src/words/en/bench.ts';
import { en } from '../../src/words/en/index.ts';
import { sceneWords } from '../../src/words/en/scene.ts';
import { slugPartWords } from '../../src/words/en/slugPart.ts';
import { connectionActs, setUpActs } from '../session/acts.ts';
import { BenchFace } from './face.ts';
import { KeyHand } from './keyHand.ts';
import { begin, expect, openJob, shippedSetup, test } from './page.ts';
import { isSound } from './soundPage.ts';

test.use({ sharesWindow: true });

test('a slug chosen shows its part in the curve and which way its core goes @shelf @upright', async ({ page }) => {
  const setup = shippedSetup('first-sweep', 'first-curve');
  await openJob(page, setup);
  await begin(page);
  const hand = new KeyHand(new BenchFace(page, setup, (tab) => tab.click()));
  await hand.do([...connectionActs(setup), ...setUpActs(setup)]);
  await expect(page.locator('.slug-part')).toHaveCount(0);
  await page.keyboard.press('b');
  const slug = setup.receiver.adjusters[1]!;
  const part = createSlugParts(setup)(initialState(setup), slug.id, mainResponse(setup.receiver))!;
  const at = (curve: typeof part.in): number | null => (curve === null ? null : levelAt(curve, part.mostHz));
  const spoken = slugPartWords.spoken('B', part.fromHz, part.toHz, part.mostHz, {
    now: at(part.now)!,
    in: at(part.in),
    out: at(part.out),
  });
  const shown = page.locator('.slug-part');
  await expect(page.getByRole('heading', { name: slugPartWords.title('B'), includeHidden: true })).toHaveCount(1);
  await expect(shown.getByRole('img', { name: spoken, exact: true })).toHaveCount(1);
  await expect(shown).toContainText(sceneWords.coreIn(false));
  await expect(page.locator('.slug-wax')).toHaveCount(1);
  await isSound(page);
  // Another slug has another part.
  await page.keyboard.press('a');
  await expect(shown.getByRole('img')).toHaveAttribute('aria-label', /^Slug A moves/);
});

test('the panel that somebody has turned himself stays as he has it', async ({ page }) => {
  const setup = shippedSetup('first-sweep', 'first-curve');
  await openJob(page, setup);
  await begin(page);
  const tab = (name: string) => page.getByRole('tab', { name, exact: true });
  await tab(panelWords.leadsSide).click();
  await page.keyboard.press('a');
  await expect(tab(slugPartWords.side)).toHaveAttribute('aria-selected', 'true');
  await tab(panelWords.biasSide).click();
  await page.keyboard.press('b');
  await expect(tab(panelWords.biasSide)).toHaveAttribute('aria-selected', 'true');
});

test('a sealed job shows nothing of it', async ({ page }) => {
  const setup = shippedSetup('vision-if', 'brent-sealed');
  await openJob(page, setup);
  await begin(page);
  await page.keyboard.press('a');
  await expect(page.getByRole('button', { name: sceneWords.inSpoken('1/8', 'A') })).toBeVisible();
  await page.waitForTimeout(1500);
  await expect(page.locator('.slug-part, .slug-part-none, .slug-wax, #panel-part')).toHaveCount(0);
  await expect(page.getByRole('tab', { name: en.slugPart.side, exact: true })).toHaveCount(0);
});
