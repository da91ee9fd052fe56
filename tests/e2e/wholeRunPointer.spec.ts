/** A learner's whole run on the valve strip, from the course card to the report, with the mouse alone. */

import { dialogWords } from '../../src/words/en/benchTalk.ts';
import { sheetWords } from '../../src/words/en/sheet.ts';
import { BenchFace } from './face.ts';
import { MOVING } from './moving.ts';
import { begin, expect, openCard, rail, railSays, shippedSetup, test } from './page.ts';
import { pointerActs } from './pointerActs.ts';
import { PointerHand } from './pointerHand.ts';
import { reportPassed } from './reportPassed.ts';
import { isSound } from './soundPage.ts';

test.use(MOVING);

test('the strip from cold by pointer', async ({ page }) => {
  const setup = shippedSetup('vision-if', 'from-cold');
  await openCard(page, setup);
  await begin(page);
  await expect(rail(page)).toHaveAttribute('aria-label', railSays([]));
  const hand = new PointerHand(new BenchFace(page, setup, (tab) => tab.click()));
  await hand.do(pointerActs(setup));
  await expect(rail(page)).toHaveAttribute('aria-label', railSays(['safe', 'connect', 'setUp', 'align', 'prove']));
  // All stands in practice: it is said under the button that signs, until somebody would look again, and on the sheet where the last step is.
  const notice = page.locator('.stands');
  await expect(notice).toContainText(sheetWords.allStands);
  await isSound(page);
  await hand.press(sheetWords.lookAgain);
  await expect(notice).toHaveCount(0);
  await hand.press(sheetWords.allStands);
  await expect(page.getByRole('dialog')).toContainText(dialogWords.signOff.ready);
  await hand.press(dialogWords.signOff.sign, 'dialog');
  await reportPassed(page, 70);
});
