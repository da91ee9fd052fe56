/** The same run on the valve strip without a pointer: Tab, arrows, Return, letters and brackets. */
import type { Page } from '@playwright/test';
import { headerWords } from '../../src/words/en/bench.ts';
import { dialogWords } from '../../src/words/en/benchTalk.ts';
import { wholeJob } from '../session/acts.ts';
import { BenchFace } from './face.ts';
import { KeyHand } from './keyHand.ts';
import { MOVING } from './moving.ts';
import { cardOf, expect, rail, railSays, shippedSetup, test } from './page.ts';
import { reportPassed } from './reportPassed.ts';

test.use(MOVING);

/** Walks on by Tab until the wanted element has the focus; fails when it is not on the way. */
async function tabTo(page: Page, wanted: ReturnType<Page['locator']>): Promise<void> {
  for (let i = 0; i < 200; i++) {
    if (await wanted.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  await expect(wanted).toBeFocused();
}

test('the strip from cold by keyboard', async ({ page }) => {
  const setup = shippedSetup('vision-if', 'from-cold');
  await page.goto('/');
  // From the top of the page to the card, through the briefing and to the first switch by Tab alone.
  await expect(cardOf(page, setup)).toBeVisible();
  await tabTo(page, cardOf(page, setup));
  await page.keyboard.press('Enter');
  await tabTo(page, page.getByRole('checkbox', { name: dialogWords.briefing.acknowledge }));
  await page.keyboard.press('Space');
  await tabTo(page, page.getByRole('button', { name: dialogWords.briefing.begin, exact: true }));
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  const face = new BenchFace(page, setup, async (tab) => {
    await tab.locator('..').locator('[aria-selected=true]').focus();
    for (let i = 0; i < 3 && (await tab.getAttribute('aria-selected')) !== 'true'; i++)
      await page.keyboard.press('ArrowRight');
  });
  await tabTo(page, await face.toggle('isolation'));
  await page.keyboard.press('Space');
  await expect(rail(page)).toHaveAttribute('aria-label', railSays(['safe']));

  const hand = new KeyHand(face);
  await hand.do(wholeJob(setup).filter((act) => act.type !== 'signedOff'));
  await expect(rail(page)).toHaveAttribute('aria-label', railSays(['safe', 'connect', 'setUp', 'align', 'prove']));
  await hand.press(headerWords.signOff);
  await expect(page.getByRole('dialog')).toContainText(dialogWords.signOff.ready);
  await hand.press(dialogWords.signOff.sign, 'dialog');
  await reportPassed(page, 70);
});
