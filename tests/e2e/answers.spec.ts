/** Practice answers a step that has its tick, where the hand is; a sealed job says nothing of steps. What else is answered: tests/present/answers.test.ts. */
import { answerWords, liveWords } from '../../src/words/en/benchTalk.ts';
import { connectionActs, safetyActs, setUpActs } from '../session/acts.ts';
import { BenchFace } from './face.ts';
import { KeyHand } from './keyHand.ts';
import { MOVING } from './moving.ts';
import { begin, expect, openJob, shippedSetup, test } from './page.ts';

test.use({ ...MOVING, sharesWindow: true });

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

test('what the wheel has done is answered where it was turned, and what was spoken is not left standing', async ({
  page,
}) => {
  const setup = shippedSetup('first-sweep', 'first-curve');
  await openJob(page, setup);
  await begin(page);
  const face = new BenchFace(page, setup, (tab) => tab.click());
  const acts = [...connectionActs(setup), ...setUpActs(setup)];
  await new KeyHand(face).do(acts.filter((act) => act.type !== 'controlSet' || act.control !== 'pipHeightDiv'));
  const { slider } = await face.knob('pipHeightDiv');
  const knob = (await slider.locator('..').boundingBox())!;
  const [x, y] = [knob.x + knob.width / 2, knob.y + knob.height / 2];
  await page.mouse.move(x, y);
  const toast = page.locator('.toast.answer', { hasText: STEP });
  await expect(toast).toHaveCount(0);
  for (let i = 0; i < 40 && (await toast.count()) === 0; i++) {
    await page.mouse.wheel(0, 100);
    await page.waitForTimeout(350);
  }
  const told = (await toast.boundingBox())!;
  expect(Math.abs(told.x + told.width / 2 - x)).toBeLessThan(told.width);
  expect(Math.abs(told.y + told.height / 2 - y)).toBeLessThan(160);
  // Over neither the knob that the hand is on nor the part that is lit next.
  const overlap = await page.evaluate(() => {
    const [note] = document.querySelectorAll('.toast.answer');
    const a = note!.getBoundingClientRect();
    const [knob, ...lit] = [
      document.querySelector('[aria-label="Pip height"]')!.closest('.knob')!,
      ...document.querySelectorAll('.guide-light, .bench-tube'),
    ];
    return [knob!, ...lit].filter((part) => {
      const b = part.getBoundingClientRect();
      return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
    }).length;
  });
  expect(overlap).toBe(0);
  // Who reads through the page later must not take it for what is so now.
  const spoken = page.locator('.unseen[role="status"]');
  await expect.poll(async () => (await spoken.allTextContents()).join('')).toBe('');
});

test('the card after a proof waits for the hand, and does not come over the knob that is being turned', async ({
  page,
}) => {
  await page.setViewportSize({ width: 1024, height: 640 });
  const setup = shippedSetup('first-sweep', 'off-centre');
  await openJob(page, setup);
  await begin(page);
  const face = new BenchFace(page, setup, (tab) => tab.click());
  const hand = new KeyHand(face);
  await hand.do([...connectionActs(setup), ...setUpActs(setup)]);
  const slug = setup.receiver.adjusters[0]!;
  await hand.do([
    { type: 'toolTaken', tool: slug.head },
    { type: 'slugTurned', slug: slug.id, turns: 0.125 },
  ]);
  const { slider } = await face.knob('pipHeightDiv');
  await slider.focus();
  for (let i = 0; i < 8; i++) await page.keyboard.press('ArrowDown');
  await expect(slider).toHaveValue('0');
  // Bit by bit: the first click brings the pips back, and the hand goes on.
  for (let i = 0; i < 4; i++) {
    await page.keyboard.press('ArrowUp');
    await expect(page.locator('.finding')).toHaveCount(0);
  }
  await expect(page.locator('.finding')).toBeVisible();
});

test('a sealed job answers no step', async ({ page }) => {
  const setup = shippedSetup('vision-if', 'brent-sealed');
  await openJob(page, setup);
  await begin(page);
  const hand = new KeyHand(new BenchFace(page, setup, (tab) => tab.click()));
  await page.evaluate(() => {
    const seen = window as unknown as { answered: number };
    seen.answered = 0;
    new MutationObserver(() => {
      if (document.querySelector('.toast.answer') !== null) seen.answered++;
    }).observe(document.body, { childList: true, subtree: true });
  });
  await hand.do([...safetyActs(setup), ...connectionActs(setup)]);
  await page.waitForTimeout(1000);
  expect(await page.evaluate(() => (window as unknown as { answered: number }).answered)).toBe(0);
});

test('on a tube without a curve the key that plays it says whose curve is heard', async ({ page }) => {
  const setup = shippedSetup('first-sweep', 'first-curve');
  await openJob(page, setup);
  await begin(page);
  await page.locator('.sign-off').press('t');
  await expect(page.getByRole('status').filter({ hasText: liveWords.sheetAlone })).toHaveCount(1);
  await expect(page.locator('.toast.heard')).toBeVisible();
  const face = new BenchFace(page, setup, (tab) => tab.click());
  await new KeyHand(face).do([...connectionActs(setup), ...setUpActs(setup)]);
  await page.locator('.sign-off').press('t');
  await expect(page.locator('.toast.heard')).toHaveCount(0);
});
