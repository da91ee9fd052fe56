/** The parts tray before the soldering iron: a capacitor bridged and let go, a part metered, by pointer and by keyboard. */
import { printedTray } from '../../src/bench/parts.ts';
import { atHandWords } from '../../src/words/en/bench.ts';
import { dialogWords } from '../../src/words/en/benchTalk.ts';
import { partsWords } from '../../src/words/en/parts.ts';
import { BenchFace } from './face.ts';
import { KeyHand } from './keyHand.ts';
import { layoutFaults } from './layoutFaults.ts';
import { begin, expect, openJob, shippedSetup, test } from './page.ts';
import { PointerHand } from './pointerHand.ts';
import { isSound } from './soundPage.ts';

test.use({ sharesWindow: true });

const setup = shippedSetup('fault-finding', 'one-hump-gone');
const PART = printedTray(setup).find(({ kind }) => kind === 'capacitor')!;
const CAPACITOR = PART.name;
const COIL = setup.receiver.adjusters[0]!.element;

for (const by of ['pointer', 'keyboard'] as const) {
  test(`bridged and metered by ${by}`, { tag: ['@shelf', '@upright'] }, async ({ page }) => {
    await openJob(page, setup);
    await begin(page);
    const face = new BenchFace(page, setup, (tab) => tab.click());
    const hand = by === 'pointer' ? new PointerHand(face) : new KeyHand(face);
    await hand.do([
      { type: 'partMetered', element: COIL },
      { type: 'partBridged', element: CAPACITOR },
      { type: 'partBridged', element: null },
      { type: 'partBridged', element: CAPACITOR },
    ]);
    // It can be let go from its own place in the list too; meanwhile the tray says that it hangs there.
    await hand.press('Bridge on');
    const tray = page.getByRole('dialog');
    await expect(tray.getByRole('status')).toContainText('A good capacitor is clipped across');
    await expect.poll(() => page.evaluate(layoutFaults, 'dialog[open]')).toEqual([]);
    await hand.press(partsWords.name(PART, null), 'dialog');
    await expect(tray.getByRole('button', { name: partsWords.bridge, exact: true })).toHaveCount(0);
    await hand.press(partsWords.unbridge, 'dialog');
    await expect(tray.getByRole('status')).toContainText('the bridge is off');
    await hand.press(dialogWords.close, 'dialog');
    // With the set on no ohms are read, and it is said when they are.
    await hand.press(atHandWords.parts);
    await hand.press(partsWords.name(PART, null), 'dialog');
    await hand.press(partsWords.meter, 'dialog');
    await expect(tray.getByRole('status')).toHaveText(partsWords.nothingLive(partsWords.name(PART, null)));
    await hand.press(dialogWords.close, 'dialog');
    await isSound(page);
  });
}
