/**
 * A scenario of each kind of work, played from its card to its report with the mouse: what the bench can do, the page can. (All of them by pointer would take an
 * hour; that each can be won at the bench is for the certifier and the technician to show.)
 */
import { BenchFace } from './face.ts';
import { begin, openCard, shippedSetup, test } from './page.ts';
import { pointerActs } from './pointerActs.ts';
import { PointerHand } from './pointerHand.ts';
import { reportPassed } from './reportPassed.ts';

test.use({ sharesWindow: true });

const SCENARIOS = [
  ['first-sweep', 'first-curve'],
  ['vision-if', 'one-slug-out'],
  ['vision-if', 'flat-top'],
  ['am', 'slow-down'],
  ['sound-fm', 'dots'],
  ['colour', 'carrier-and-sweep'],
  ['front-end', 'off-channel'],
  ['set-ups', 'plus-for-minus'],
  ['fault-finding', 'one-hump-gone'],
] as const;

for (const [track, id] of SCENARIOS) {
  test(`${track}/${id} by pointer`, async ({ page }) => {
    const setup = shippedSetup(track, id);
    await openCard(page, setup);
    await begin(page);
    const hand = new PointerHand(new BenchFace(page, setup, (tab) => tab.click()));
    await hand.do(pointerActs(setup));
    await hand.sign();
    await reportPassed(page, 70);
  });
}
