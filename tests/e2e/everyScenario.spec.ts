/** Every other shipped scenario, played from its card to its report with the mouse: what the bench can do, the page can. */
import { headerWords } from '../../src/describe/catalogue/bench.ts';
import { dialogWords } from '../../src/describe/catalogue/benchTalk.ts';
import { BenchFace } from './face.ts';
import { begin, openCard, shippedSetup, test } from './page.ts';
import { pointerActs } from './pointerActs.ts';
import { PointerHand } from './pointerHand.ts';
import { reportPassed } from './reportPassed.ts';

const SCENARIOS = [
  ['first-sweep', 'first-curve'],
  ['first-sweep', 'off-centre'],
  ['vision-if', 'one-slug-out'],
  ['vision-if', 'traps-astray'],
  ['vision-if', 'flat-top'],
] as const;

for (const [track, id] of SCENARIOS) {
  test(`${track}/${id} by pointer`, async ({ page }) => {
    test.setTimeout(90_000);
    const setup = shippedSetup(track, id);
    await openCard(page, setup);
    await begin(page);
    const hand = new PointerHand(new BenchFace(page, setup, (tab) => tab.click()));
    await hand.do(pointerActs(setup));
    await hand.press(headerWords.signOff);
    await hand.press(dialogWords.signOff.sign, 'dialog');
    await reportPassed(page, 70);
  });
}
