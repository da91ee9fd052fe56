/**
 * Pages as other eyes have them: in the system's forced colours, with the text spacing of WCAG 2.2 (1.4.12), and half as wide, which is 200 % on a small screen. What is
 * drawn follows the system; the tube and the chassis are pictures and stay.
 */
import type { Page } from '@playwright/test';
import { guideWords } from '../../src/words/en/guide.ts';
import { en } from '../../src/words/en/index.ts';
import { begin, expect, test } from './page.ts';
import { isSound } from './soundPage.ts';
import { sized } from './visits.ts';

/** Each page, and what stands there, and nowhere else, once it is whole. */
const PAGES = [
  ['course', '/#/', '.card-open'],
  ['drills', '/#/drills/phaseIt', '.look-tube .tube'],
  ['handbook', '/#/handbook', '.room-handbook h1:visible'],
  ['workshop', '/#/workshop', '.seen-tube .tube'],
  ['class', '/#/class', '.drop-place'],
] as const;

/** One after the other in one window, as a reader goes from room to room; `look` is given each once it is whole. */
async function inEveryRoom(page: Page, look: () => Promise<void>): Promise<void> {
  for (const [name, address, there] of PAGES)
    await test.step(name, async () => {
      await page.goto(address);
      await expect(page.locator(there).first()).toBeVisible({ timeout: 60_000 });
      await look();
    });
}

async function firstBench(page: Page): Promise<void> {
  await page.goto('/#/bench/first-curve/guided');
  await expect(page.getByRole('dialog')).toBeVisible();
  await begin(page);
  await expect(page.locator('[data-slug][aria-valuenow]').first()).toBeVisible();
}

/** Every shape in ink that is seen and has a paint of the paper's own palette; none may be left. */
const creamLeft = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const own = [
      'rgb(244, 236, 217)',
      'rgb(252, 247, 234)',
      'rgb(235, 224, 199)',
      'rgb(31, 45, 56)',
      'rgb(181, 72, 46)',
    ];
    return [...document.querySelectorAll<SVGElement>('.ink :is(path, rect, circle, text, g)')]
      .filter((shape) => shape.closest('.tube, .chassis-scene, .lead-swatch, symbol, defs, pattern') === null)
      .filter((shape) => shape.getClientRects().length > 0)
      .filter((shape) => {
        const { fill, stroke } = getComputedStyle(shape);
        const named = (paint: 'fill' | 'stroke') => shape.getAttribute(paint) !== null;
        return (named('fill') && own.includes(fill)) || (named('stroke') && own.includes(stroke));
      })
      .map((shape) => `${shape.closest('[class]:not(.ink, .ink *)')?.className ?? ''} ${shape.outerHTML.slice(0, 80)}`);
  });

test.describe('in forced colours', () => {
  test.use({ colorScheme: 'dark', contextOptions: { forcedColors: 'active' } });

  test('every room', async ({ page }) => {
    await inEveryRoom(page, async () => {
      expect(await creamLeft(page)).toEqual([]);
      await isSound(page);
    });
  });

  test('the bench: rail, radios, tabs, frames and buttons in colours of the system, and told apart', async ({
    page,
  }) => {
    await firstBench(page);
    expect(await creamLeft(page)).toEqual([]);
    await isSound(page);
    const look = (selector: string, ...what: readonly string[]): Promise<readonly string[]> =>
      page
        .locator(selector)
        .first()
        .evaluate((element, names) => names.map((one) => getComputedStyle(element).getPropertyValue(one)), what);
    expect(await look('.position-row :checked + .position', 'background-color')).not.toEqual(
      await look('.position-row :not(:checked) + .position', 'background-color'),
    );
    expect(await look('.sign-off .frame', 'border-top-width')).not.toEqual(
      await look('.guide-acts .frame', 'border-top-width'),
    );
    expect(await look('.panel .frame', 'border-top-style')).toEqual(['solid']);
    const [now, toCome] = await page
      .locator('.phase-rail circle')
      .evaluateAll((all) => [all[0]!, all.at(-1)!].map((circle) => getComputedStyle(circle).fill));
    expect(now).not.toBe(toCome);
    // A frame has its ground: what lies under a dialog does not show through.
    await page.locator('[data-choice=circuit]').click();
    await expect(page.getByRole('dialog')).toBeVisible();
    // The dialog is drawn anew once its diagram is there.
    await expect.poll(() => look('dialog .frame', 'background-color')).toEqual(['rgb(0, 0, 0)']);
  });
});

const SPACED = `* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; }
p { margin-bottom: 2em !important; }`;
/** By a sheet of the page's own: its policy takes no style from elsewhere. */
const space = (page: Page): Promise<void> =>
  page.evaluate((css) => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(css);
    document.adoptedStyleSheets.push(sheet);
  }, SPACED);

/** Labels of the bench that end in an ellipsis (WCAG 2.2, 1.4.12: no loss of content). */
const cutLabels = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('main .short')]
      .filter((label) => label.checkVisibility() && label.clientWidth > 1)
      .filter((label) => label.scrollWidth > label.clientWidth + 1)
      .map((label) => label.textContent ?? ''),
  );

test.describe('with wide text spacing', () => {
  test.use({ sharesWindow: true });

  test('every room', async ({ page }) => {
    await page.goto('/');
    await space(page);
    await inEveryRoom(page, async () => {
      expect(await page.evaluate(() => getComputedStyle(document.body).wordSpacing)).not.toBe('0px');
      await isSound(page);
    });
  });

  test('the bench: the header keeps its job, the guide its words and its buttons, and no label is cut', async ({
    page,
  }) => {
    const narrower = [
      [1366, 768],
      [1024, 640],
      [820, 1180],
    ] as const;
    const noLabelIsCut = (width: number, height: number, how: string): Promise<void> =>
      test.step(`no label of the bench is cut at ${width} pixels across, ${how}`, async () => {
        await sized(page, width, height);
        expect(await cutLabels(page)).toEqual([]);
      });
    await firstBench(page);
    for (const [width, height] of narrower) await noLabelIsCut(width, height, 'as it comes');
    await space(page);
    for (const [width, height] of narrower.toReversed()) await noLabelIsCut(width, height, 'spaced');
    await sized(page, 1440, 900);
    await isSound(page);
    const job = (await page.locator('.bench-header .job .l2').boundingBox())!;
    expect(job.y).toBeGreaterThanOrEqual(0);
    const header = (await page.locator('.bench-header').boundingBox())!;
    const title = (await page.locator('.bench-header h1').boundingBox())!;
    expect(title.y + title.height).toBeLessThanOrEqual(header.y + header.height);
    const guide = (await page.getByRole('region', { name: guideWords.name }).boundingBox())!;
    const skip = (await page.getByRole('button', { name: guideWords.skip }).boundingBox())!;
    expect(skip.y + skip.height).toBeLessThanOrEqual(guide.y + guide.height);
    expect(await cutLabels(page)).toEqual([]);
  });
});

test.describe('683 pixels wide', () => {
  test.use({ viewport: { width: 683, height: 384 }, sharesWindow: true });

  test('every room', async ({ page }) => {
    await inEveryRoom(page, () => isSound(page));
  });

  test('the bench: every part of its header can be reached', async ({ page }) => {
    await firstBench(page);
    await isSound(page);
    await page.locator('[data-choice=circuit]').click();
    await expect(page.getByRole('dialog')).toBeVisible();
    await page.keyboard.press('Escape');
    const sign = (await page.locator('.sign-off').boundingBox())!;
    const rail = (await page.locator('.phase-rail').boundingBox())!;
    expect(sign.y + sign.height).toBeLessThanOrEqual(rail.y);
  });
});

test.describe('on a telephone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, sharesWindow: true });

  test('the bench says why not, and the way back', async ({ page }) => {
    await page.goto('/#/bench/off-centre');
    await expect(page.getByText(en.narrow.body)).toBeVisible({ timeout: 60_000 });
    await isSound(page);
    await page.getByRole('button', { name: en.narrow.back }).tap();
    await expect(page.locator('.card-open').first()).toBeVisible();
  });

  test('every room', async ({ page }) => {
    await inEveryRoom(page, () => isSound(page));
  });
});
