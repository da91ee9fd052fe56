/** Papers that can be printed: reached by keyboard, black on white, nothing cut off on A4 or Letter, and every place to write in. */
import type { Page } from '@playwright/test';
import { headerWords } from '../../src/words/en/bench.ts';
import { courseWords } from '../../src/words/en/course.ts';
import { papersWords as say } from '../../src/words/en/papers.ts';
import { layoutFaults } from './layoutFaults.ts';
import { begin, expect, openJob, shippedSetup, test } from './page.ts';

test.use({ sharesWindow: true });

/** Printed widths at 96 to the inch (CSS Values 4), less a margin of 10 mm either side: ISO 216 A4 is 210 mm wide, ANSI/ASME Y14.1 A (Letter) 8.5 inches. */
const WIDTHS = { A4: Math.floor(((210 - 20) / 25.4) * 96), Letter: Math.floor(8.5 * 96 - (20 / 25.4) * 96) };
const MARGIN = '10mm';

/** What of a printed page is wider than its paper, cut, or of another colour than black and white. */
function printFaults(root: string): string[] {
  const faults: string[] = [];
  const edge = document.documentElement.clientWidth + 1;
  for (const one of document.querySelectorAll<HTMLElement | SVGElement>(`${root} *`)) {
    // What is clipped is larger than it shows.
    if (one.tagName === 'g' || one.closest('[clip-path]') !== null) continue;
    const box = one.getBoundingClientRect();
    const name = `${one.tagName} ${one.textContent?.slice(0, 30) ?? ''}`;
    if (box.width > 0 && (box.right > edge || box.left < -1)) faults.push(`outside: ${name}`);
    if (one instanceof HTMLElement && one.scrollWidth > one.clientWidth + 1 && one.clientWidth > 0)
      faults.push(`cut: ${name}`);
    const style = getComputedStyle(one);
    // Those that go over the end of a paper are set beside it, and the browser prints everything smaller to have them on it.
    if (style.columnCount !== 'auto') faults.push(`columns: ${name}`);
    if (one.childElementCount === 0 && one.textContent?.trim() && Number.parseFloat(style.fontSize) < 12.5)
      faults.push(`small: ${name}`);
    if (style.backgroundColor !== 'rgba(0, 0, 0, 0)' && style.backgroundColor !== 'rgb(255, 255, 255)')
      faults.push(`tinted ${style.backgroundColor}: ${name}`);
  }
  return faults;
}

async function looksPrinted(page: Page, root: string): Promise<void> {
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  await page.emulateMedia({ media: 'print' });
  for (const width of Object.values(WIDTHS)) {
    await page.setViewportSize({ width, height: 1000 });
    await expect(page.locator(root).first()).toBeVisible();
    await expect(page.locator('.header').first()).toBeHidden();
    await expect.poll(() => page.evaluate(printFaults, root)).toEqual([]);
  }
}

async function pagesOf(page: Page, format: 'A4' | 'Letter'): Promise<number> {
  const pdf = await page.pdf({ format, margin: { top: MARGIN, right: MARGIN, bottom: MARGIN, left: MARGIN } });
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
}

for (const [track, id, most] of [
  ['first-sweep', 'first-curve', { sheet: 2, card: 1, transfer: 2 }],
  ['vision-if', 'from-cold', { sheet: 3, card: 2, transfer: 2 }],
  ['front-end', 'antenna-to-diode', { sheet: 4, card: 8, transfer: 2 }],
] as const) {
  test(`the papers of ${id} on A4 and Letter`, async ({ page }) => {
    const setup = shippedSetup(track, id);
    for (const paper of ['sheet', 'card', 'transfer'] as const) {
      await page.emulateMedia({ media: 'screen' });
      await page.setViewportSize({ width: 1440, height: 900 });
      await page.goto(`/#/papers/${id}/${paper}`);
      const sheets = page.locator('.paper-page');
      await expect(sheets.first()).toContainText(say.names[paper]);
      await expect.poll(() => page.evaluate(layoutFaults, '.papers-choice')).toEqual([]);
      await looksPrinted(page, '.paper-page');
      for (const format of ['A4', 'Letter'] as const) {
        const pages = await pagesOf(page, format);
        expect(pages, `${paper} on ${format}`).toBeGreaterThan(0);
        expect(pages, `${paper} on ${format}`).toBeLessThanOrEqual(most[paper]);
        // A card is one sheet of paper.
        if (paper === 'card') expect(pages, `cards on ${format}`).toBe(await sheets.count());
      }
      if (paper === 'card') await expect(sheets.first().locator('.tick-box')).not.toHaveCount(0);
      if (paper === 'transfer') {
        await expect(sheets).toContainText(say.realSet);
        await expect(sheets).toContainText('Local codes and the maker\u2019s own sheet come before this page');
        // A box to tick at every step, and a place for every slug as found and as left.
        const { procedure, adjusters } = setup.receiver;
        await expect(sheets.locator('.transfer-steps .tick-box')).toHaveCount(procedure.length);
        await expect(sheets.locator('.starts tbody td')).toHaveCount(3 * adjusters.length);
      }
    }
  });
}

test('the papers are reached from the course and from the bench by keyboard', async ({ page }) => {
  const setup = shippedSetup('first-sweep', 'first-curve');
  await page.goto('/');
  await page.getByRole('link', { name: courseWords.papers }).press('Enter');
  await expect(page.getByRole('heading', { name: say.title })).toBeVisible();
  await openJob(page, setup);
  await begin(page);
  await page.getByRole('button', { name: headerWords.menu }).press('Enter');
  await page.getByRole('menuitem', { name: say.title }).press('Enter');
  await expect(page).toHaveURL(/#\/papers\/first-curve\/sheet$/);
  await page.getByRole('button', { name: say.names.transfer }).press('Enter');
  await expect(page).toHaveURL(/#\/papers\/first-curve\/transfer$/);
  await expect(page.locator('.paper-page')).toContainText(say.names.transfer);
  // The button hands over to the browser's own printing.
  await page.evaluate(() => {
    (window as unknown as { printed: number }).printed = 0;
    window.print = () => {
      (window as unknown as { printed: number }).printed++;
    };
  });
  await page.getByRole('button', { name: say.print, exact: true }).press('Enter');
  expect(await page.evaluate(() => (window as unknown as { printed: number }).printed)).toBe(1);
});

test('in longer words nothing is cut off either', async ({ page }) => {
  await page.goto('/?words=pseudo#/papers/from-cold/transfer');
  await expect(page.locator('.paper-page')).toBeVisible();
  await expect.poll(() => page.evaluate(layoutFaults, '.papers-choice')).toEqual([]);
  await looksPrinted(page, '.paper-page');
});
