/** The crystals of a large box: all in sight at once, in rows where one is too long, and walked by arrows along and across. */
import { rackWords } from '../../src/words/en/bench.ts';
import { begin, expect, openJob, shippedSetup, test } from './page.ts';

test.use({ sharesWindow: true });

test('twelve crystals stand in sight beside the dial, whatever is plugged in', async ({ page }) => {
  const setup = shippedSetup('colour', 'carrier-and-sweep');
  const box = setup.receiver.crystalsHz;
  expect(box.length).toBeGreaterThan(7);
  await openJob(page, setup);
  await begin(page);
  const crystals = page.getByRole('toolbar', { name: rackWords.crystals }).getByRole('button');
  await expect(crystals).toHaveCount(box.length);
  await crystals.first().press('Enter');
  await expect(crystals.first()).toHaveAttribute('aria-pressed', 'true');
  const places = await page.evaluate(() => {
    const rect = (element: Element) => element.getBoundingClientRect();
    const panel = rect(document.querySelector('#panel-rack')!);
    const dial = rect(document.querySelector('#panel-rack .rack-dial')!);
    const cans = [...document.querySelectorAll('#panel-rack .crystal')].map(rect);
    return {
      outside: cans.filter((can) => can.left < panel.left || can.right > dial.left || can.bottom > panel.bottom).length,
      // A lifted can may stand before the row behind it, but no can on another.
      overlapping: cans.filter((a, i) =>
        cans.some(
          (b, k) =>
            k > i && a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 1 && b.top < a.bottom - 1,
        ),
      ).length,
      rows: new Set(cans.map(({ top }) => Math.round(top))).size,
    };
  });
  expect(places).toMatchObject({ outside: 0, overlapping: 0, rows: 2 });
  await crystals.first().focus();
  await page.keyboard.press('ArrowDown');
  await expect(crystals.nth(Math.ceil(box.length / 2))).toBeFocused();
  await page.keyboard.press('ArrowLeft');
  await expect(crystals.nth(Math.ceil(box.length / 2) - 1)).toBeFocused();
  await page.keyboard.press('ArrowDown');
  await expect(crystals.last()).toBeFocused();
  await page.keyboard.press('ArrowDown');
  await expect(crystals.last()).toBeFocused();
});
