/** The report handed out: printed with its four verdicts, saved as lines and as a figure; and the technician's run laid beside it. */
import { readFileSync } from 'node:fs';
import { demonstrationWords as shown } from '../../src/words/en/demonstration.ts';
import { papersWords } from '../../src/words/en/papers.ts';
import { reportWords as say } from '../../src/words/en/reportPage.ts';
import { keepFixture } from './keptReport.ts';
import { layoutFaults } from './layoutFaults.ts';
import { expect, test } from './page.ts';

test.use({ sharesWindow: true });

test('printed, saved, and compared with the technician’s run', async ({ page }) => {
  await keepFixture(page, '', 'kept-before', 'first-curve', false);
  await page.goto('/#/report/kept-before');
  await expect(page.locator('.score-figure')).toBeVisible();

  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: say.saveLines }).press('Enter');
  const saved = await saving;
  expect(saved.suggestedFilename()).toMatch(/^haystack-first-curve-\d+\.csv$/);
  const rows = readFileSync(await saved.path(), 'utf8')
    .trimEnd()
    .split('\r\n');
  await page.locator('.lines summary').press('Enter');
  const lines = page.locator('.lines tbody tr:not(.lines-block)');
  expect(rows.length).toBeGreaterThan(1);
  await expect(lines).toHaveCount(rows.length - 1);

  const drawing = page.waitForEvent('download');
  await page.getByRole('button', { name: say.saveFigure }).press('Enter');
  const figure = await drawing;
  expect(figure.suggestedFilename()).toMatch(/\.svg$/);
  const svg = readFileSync(await figure.path(), 'utf8');
  const drawn = await page.evaluate((text) => {
    const file = new DOMParser().parseFromString(text, 'image/svg+xml');
    return {
      broken: file.querySelectorAll('parsererror').length,
      root: file.documentElement.namespaceURI,
      paths: file.querySelectorAll('path').length,
    };
  }, svg);
  expect(drawn).toMatchObject({ broken: 0, root: 'http://www.w3.org/2000/svg' });
  expect(drawn.paths).toBeGreaterThan(5);
  expect(svg).toContain(say.asLeft);

  await page.getByRole('button', { name: shown.beside.lay }).press('Enter');
  const beside = page.locator('.beside');
  await expect(beside.locator('table')).toHaveCount(2, { timeout: 60_000 });
  for (const name of [shown.beside.yours, shown.beside.his])
    await expect(beside.getByRole('table', { name: new RegExp(`^${name}`) })).toContainText(shown.beside.acts.signed);
  await expect.poll(() => page.evaluate(layoutFaults, '.beside')).toEqual([]);

  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({ width: 718, height: 1000 });
  const paper = page.locator('.verdict-paper');
  await expect(paper).toBeVisible();
  await expect(page.locator('.report')).toBeHidden();
  await expect(paper.locator('.four li')).toHaveCount(4);
  await expect(paper).toContainText(papersWords.subs.verdicts);
  // A set without traps hears nothing of traps.
  expect(((await paper.textContent()) ?? '').toLowerCase()).not.toMatch(/\btraps?\b/);
  const outside = await paper.evaluate(
    (root) =>
      [...root.querySelectorAll('*')].filter(
        (one) =>
          one.closest('svg') === null && one.getBoundingClientRect().right > document.documentElement.clientWidth + 1,
      ).length,
  );
  expect(outside).toBe(0);
});
