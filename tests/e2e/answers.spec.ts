/** Practice answers a step that has its tick, where the hand is; a sealed job says nothing of steps. What else is answered: tests/present/answers.test.ts. */
import { answerWords } from '../../src/words/en/benchTalk.ts';
import { connectionActs, safetyActs } from '../session/acts.ts';
import { BenchFace } from './face.ts';
import { KeyHand } from './keyHand.ts';
import { MOVING } from './moving.ts';
import { begin, expect, openJob, shippedSetup, test } from './page.ts';

test.use(MOVING);

const STEP = new RegExp(`^${answerWords.steps([1]).replace('1', '\\d+')}$|^Steps `);

test('a step done is answered @shelf @upright', async ({ page }) => {
  const setup = shippedSetup('vision-if', 'from-cold');
  await openJob(page, setup);
  await begin(page);
  const hand = new KeyHand(new BenchFace(page, setup, (tab) => tab.click()));
  await hand.do(safetyActs(setup));
  const toast = page.locator('.toast.answer');
  await expect(toast).toHaveText(STEP);
  const { x, y, width } = (await toast.boundingBox())!;
  expect(x).toBeGreaterThanOrEqual(0);
  expect(y).toBeGreaterThanOrEqual(0);
  expect(x + width).toBeLessThanOrEqual(page.viewportSize()!.width);
  // It goes by itself and is not said again.
  await expect(toast).toHaveCount(0);
});

test('a sealed job answers no step', async ({ page }) => {
  const setup = shippedSetup('vision-if', 'brent-sealed');
  await openJob(page, setup);
  await begin(page);
  const hand = new KeyHand(new BenchFace(page, setup, (tab) => tab.click()));
  let answered = 0;
  await page.exposeFunction('answered', () => void answered++);
  await page.evaluate(() => {
    new MutationObserver(() => {
      if (document.querySelector('.toast.answer') !== null) (window as unknown as { answered(): void }).answered();
    }).observe(document.body, { childList: true, subtree: true });
  });
  await hand.do([...safetyActs(setup), ...connectionActs(setup)]);
  await page.waitForTimeout(1000);
  expect(answered).toBe(0);
});
