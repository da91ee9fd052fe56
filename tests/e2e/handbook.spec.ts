/** The handbook in the browser: every page opens from the contents and from its neighbour, figures follow hand and keys, words open and close without getting in the way. */
import { handbookHash, WORDS_PAGE } from '../../src/present/handbook/address.ts';
import { handbook } from '../../src/words/en/handbook/index.ts';
import { en } from '../../src/words/en/index.ts';
import { begin, expect, openJob, shippedSetup, test } from './page.ts';
import { isSound } from './soundPage.ts';

test.use({ sharesWindow: true });

const { pages } = handbook;
const SIZES = { tag: ['@shelf', '@upright'] };

test('every page opens, one from the other, and every way on it leads to a page that is there', async ({ page }) => {
  const known = new Set(['#/handbook', handbookHash(WORDS_PAGE), ...pages.map(({ id }) => handbookHash(id))]);
  await page.goto('/');
  await page.getByRole('button', { name: en.shell.handbook, exact: true }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(handbook.title);
  await page.locator('.first-sheet').getByRole('link', { name: pages[0]!.title, exact: true }).click();
  for (const [i, { title, id }] of pages.entries()) {
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(title);
    await expect(page.locator('.contents [aria-current]')).toHaveText(new RegExp(title));
    const ways = await page
      .locator('.page a[href], .header a[href]')
      .evaluateAll((all) => all.map((a) => a.getAttribute('href')!));
    expect(
      ways.filter((way) => !known.has(way)),
      id,
    ).toEqual([]);
    if (i < pages.length - 1) await page.locator('a[rel=next]').click();
  }
  await expect(page.locator('a[rel=next]')).toHaveCount(0);
  await page.goto(`/${handbookHash(WORDS_PAGE)}`);
  await expect(page.locator('.all-words dt')).toHaveCount(Object.keys(en.glossary.terms).length);
  const toPages = await page.locator('.all-words a').evaluateAll((all) => all.map((a) => a.getAttribute('href')!));
  expect(toPages.filter((way) => !known.has(way))).toEqual([]);
  expect(toPages).toHaveLength(Object.keys(en.glossary.terms).length);
  await page.goto('/#/handbook/no-such-page');
  await expect(page.locator('.lead')).toHaveText(handbook.noSuchPage);
});

test('a live figure follows keys and says what it reads', async ({ page }) => {
  await page.goto('/#/handbook/one-can');
  const coupling = page.getByRole('slider').first();
  const picture = page.locator('.tube-plot svg').nth(1);
  const apart = page.locator('.figure-readings dd').first();
  await expect(apart).toHaveText(/267/);
  const before = await picture.innerHTML();
  await coupling.focus();
  for (let i = 0; i < 20; i++) await page.keyboard.press('ArrowRight');
  await expect(coupling).toHaveAttribute('aria-valuetext', /^4 per cent; /);
  await expect.poll(() => picture.innerHTML()).not.toBe(before);
  await page.keyboard.press('Home');
  await expect(apart).toHaveText(handbook.nothing);
  // At rest nothing is drawn again.
  const changes = await page.evaluate(async () => {
    let seen = 0;
    const watch = new MutationObserver((all) => {
      seen += all.length;
    });
    watch.observe(document.body, { subtree: true, childList: true, attributes: true });
    for (let i = 0; i < 20; i++) await new Promise(requestAnimationFrame);
    watch.disconnect();
    return seen;
  });
  expect(changes).toBe(0);
});

test('a trade word opens by pointer, by key and by tap, and closes again', async ({ page }) => {
  await page.goto('/#/handbook/traps');
  const word = page.locator('.term-word').first();
  const slip = page.locator('.term-slip');
  await word.hover();
  await expect(slip).toContainText(en.glossary.terms.trap.means);
  // On the way to the slip it stays; elsewhere it goes.
  await slip.hover();
  await expect(slip).toBeVisible();
  await page.mouse.move(2, 2);
  await expect(slip).toHaveCount(0);
  await word.click();
  await expect(slip).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(slip).toHaveCount(0);
  await page.mouse.move(2, 2);
  await page.locator('.contents a').first().focus();
  await word.focus();
  await page.keyboard.press('Enter');
  await expect(slip).toBeVisible();
  await page.keyboard.press('Tab');
  await expect(slip.getByRole('link')).toBeFocused();
  await page.keyboard.press('Tab');
  await expect(slip.getByRole('slider')).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(slip).toHaveCount(0);
  await expect(word).toBeFocused();
  // A slip that only shows itself is passed by Tab, and there is never a second one.
  await page.goto('/#/handbook/one-can');
  await expect(page.getByRole('heading', { level: 1 })).toBeFocused();
  await page.keyboard.press('Tab');
  await expect(page.locator('.term-word').nth(0)).toBeFocused();
  await expect(slip).toContainText(en.glossary.terms.can.means);
  await page.keyboard.press('Tab');
  await expect(page.locator('.term-word').nth(1)).toBeFocused();
  await expect(slip).toHaveCount(1);
  await page.keyboard.press('Tab');
  await expect(page.locator('.term-word').nth(2)).toBeFocused();
  await expect(slip).toHaveCount(1);
});

test('nothing stands in a reader’s way, a word’s slip neither', SIZES, async ({ page }) => {
  const titles = {
    traps: pages.find(({ id }) => id === 'traps')!.title,
    safety: pages.find(({ id }) => id === 'safety')!.title,
  };
  for (const [id, heading] of [
    [null, handbook.title],
    ['safety', titles.safety],
    [WORDS_PAGE, null],
    ['traps', titles.traps],
  ] as const)
    await test.step(id ?? 'contents', async () => {
      await page.goto(`/${handbookHash(id)}`);
      if (heading === null) await expect(page.locator('.all-words')).toBeVisible();
      else await expect(page.getByRole('heading', { level: 1 })).toHaveText(heading);
      await isSound(page);
    });
  await page.locator('.term-word').first().click();
  await expect(page.locator('.term-slip')).toBeVisible();
  await isSound(page);
});

test('on paper a page has its text and its figures, and nothing to click', async ({ page }) => {
  await page.goto('/#/handbook/one-can');
  await expect(page.locator('.tube-plot')).toBeVisible();
  await page.emulateMedia({ media: 'print' });
  for (const gone of ['.header', '.contents', '.page-turn', '.amount-slider']) {
    await expect(page.locator(gone).first()).toBeHidden();
  }
  await expect(page.locator('.page-text')).toBeVisible();
  await expect(page.locator('.tube-plot')).toBeVisible();
  await expect(page.locator('.figure-readings')).toBeVisible();
});

test('from a word of the service sheet to its page, and back to the bench as it was left', async ({ page }) => {
  const setup = shippedSetup('first-sweep', 'first-curve');
  await openJob(page, setup);
  await begin(page);
  const word = page.locator('.steps .term-word').first();
  await word.click();
  const slip = page.locator('.term-slip');
  await expect(slip).toBeVisible();
  // The bench is not held up: the knobs still turn, and the slip goes when they are touched.
  const span = page.getByRole('slider', { name: en.controls.spanHz.label }).first();
  await span.focus();
  await expect(slip).toHaveCount(0);
  const found = (await span.getAttribute('aria-valuetext'))!;
  await page.keyboard.press('ArrowUp');
  await expect(span).not.toHaveAttribute('aria-valuetext', found);
  const left = await span.getAttribute('aria-valuetext');
  await word.click();
  await slip.getByRole('link').click();
  await expect(page.locator('.room-handbook h1')).toBeVisible();
  await page.getByRole('button', { name: en.shell.bench, exact: true }).click();
  await expect(page.locator('.steps .term-word').first()).toBeVisible();
  await expect(page.getByRole('slider', { name: en.controls.spanHz.label }).first()).toHaveAttribute(
    'aria-valuetext',
    left!,
  );
});
