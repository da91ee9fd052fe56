/**
 * Takes one page to what is met when something is not as it should be, or seldom: a room that fails, a bench in another tab, storage that holds nothing, the report
 * of a sealed job, paper.
 */
import type { Page } from '@playwright/test';
import { PAPERS } from '../../src/present/papersAddress.ts';
import { madeClass } from '../judge/madeClass.ts';
import { keepFixture } from './keptReport.ts';
import { expect } from './page.ts';
import { BENCH_SIZES, begin, drawn, inSizes, type Look, READING_SIZES, sized } from './visits.ts';

const JOB = '#/bench/first-curve';
const KEPT = 'kept-before';

/** A job dealt afresh, whose readings and whose truth come with the report alone. */
export async function visitSealedReport(page: Page, search: string, look: Look): Promise<void> {
  await keepFixture(page, search, KEPT, 'radio-sealed', false);
  await page.goto(`/${search}#/report/${KEPT}`);
  await expect(page.locator('.score-figure')).toBeVisible({ timeout: 60_000 });
  await inSizes(page, READING_SIZES, look, 'sealed report');
  await page.locator('.lines summary').click();
  await inSizes(page, READING_SIZES, look, 'sealed report, every line', '.lines');
}

/** What keeps the code of a room from coming keeps it from every room, and each says so: with a run to be saved at the bench and at its report. */
export async function visitFailures(page: Page, search: string, look: Look): Promise<void> {
  await keepFixture(page, search, KEPT, 'zero', false);
  await page.goto(`/${search}${JOB}`);
  await expect(page.locator('dialog[open]')).toBeVisible();
  await begin(page);
  await page.route('**/assets/*Room-*.js', (route) => route.abort());
  for (const [room, address] of Object.entries(ROOMS)) {
    await page.goto('about:blank');
    await page.goto(`/${search}${address}`);
    await expect(page.locator('.slip-page .slip-said'), room).toBeVisible();
    await inSizes(page, room === 'bench' ? BENCH_SIZES : READING_SIZES, look, `failed: ${room}`);
  }
}

/** Each room that is brought when it is first wanted. */
const ROOMS: Readonly<Record<string, string>> = {
  bench: JOB,
  demonstration: `${JOB}/shown`,
  report: `#/report/${KEPT}`,
  drills: '#/drills',
  handbook: '#/handbook',
  workshop: '#/workshop',
  receiver: '#/workshop/receiver',
  evening: '#/workshop/evening',
  papers: '#/papers/first-curve/sheet',
  class: '#/class',
  exam: '#/exam/0123456789abcdef',
  open: '#/open/rubbish',
};

/** One job in two tabs: the second is told so before it takes the bench over, and the first afterwards. */
export async function visitTwoTabs(page: Page, search: string, look: Look): Promise<void> {
  await page.goto(`/${search}${JOB}`);
  await begin(page);
  await expect(page.getByRole('timer')).toBeVisible();
  const other = await page.context().newPage();
  await other.goto(`/${search}${JOB}`);
  await expect(other.locator('.slip-page')).toBeVisible();
  await inSizes(other, BENCH_SIZES, look, 'bench elsewhere');
  await other.locator('.slip-page .button').first().click();
  await expect(other.getByRole('timer')).toBeVisible();
  await expect(page.locator('dialog[open]')).toBeVisible();
  await page.bringToFront();
  await inSizes(page, BENCH_SIZES, look, 'bench lost', 'dialog[open]');
}

/** A browser that stores nothing: the course and the bench say so. */
export async function visitNoStorage(page: Page, search: string, look: Look): Promise<void> {
  await page.addInitScript(() => {
    Object.defineProperty(IDBFactory.prototype, 'open', {
      value: () => {
        throw new DOMException('blocked', 'SecurityError');
      },
    });
  });
  await page.goto(`/${search}`);
  await drawn(page);
  await expect(page.locator('.course .slip')).toBeVisible();
  await inSizes(page, READING_SIZES, look, 'course without storage');
  await sized(page, ...BENCH_SIZES[0]!);
  await page.goto(`/${search}${JOB}`);
  await begin(page);
  await expect(page.locator('.slip-stack .slip')).toBeVisible();
  await inSizes(page, BENCH_SIZES, look, 'bench without storage', '.slip-stack');
}

/** A4 and Letter in portrait at 96 to the inch (CSS Values 4), less a margin of 10 mm either side: ISO 216, ANSI/ASME Y14.1. */
const PAPER_SIZES = [
  [Math.floor(((210 - 20) / 25.4) * 96), 1000],
  [Math.floor(8.5 * 96 - (20 / 25.4) * 96), 1000],
] as const;

async function onPaper(page: Page, look: Look, place: string, within: string): Promise<void> {
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator(within).last()).toBeVisible();
  await inSizes(page, PAPER_SIZES, look, `${place}, printed`, within);
  await page.emulateMedia({ media: 'screen' });
  await page.evaluate(() => dispatchEvent(new Event('afterprint')));
}

/** Everything that has a printed form. */
export async function visitPrints(page: Page, search: string, look: Look): Promise<void> {
  await keepFixture(page, search, KEPT, 'zero', false);
  await page.goto(`/${search}#/report/${KEPT}`);
  await expect(page.locator('.score-figure')).toBeVisible();
  await onPaper(page, look, 'report', '.verdict-paper');
  await page.goto(`/${search}#/handbook/traps`);
  await expect(page.locator('.tube-plot').first()).toBeVisible();
  await onPaper(page, look, 'handbook', 'body');
  for (const paper of PAPERS) {
    await page.goto(`/${search}#/papers/one-hump-gone/${paper}`);
    await expect(page.locator('.paper-page').first()).toBeVisible({ timeout: 60_000 });
    await onPaper(page, look, paper, 'body');
  }
  await page.goto(`/${search}#/class`);
  await expect(page.locator('.drop-place')).toBeVisible();
  const { files } = madeClass();
  await page
    .locator('input[data-picks=files]')
    .setInputFiles(
      Object.entries(files).map(([name, text]) => ({ name, mimeType: 'text/plain', buffer: Buffer.from(text) })),
    );
  await expect(page.locator('.run')).toHaveCount(Object.keys(files).length, { timeout: 60_000 });
  await onPaper(page, look, 'class', 'body');
}
