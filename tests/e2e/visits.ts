/** Takes one page through every room and state that a learner meets, and lets each be looked at in every size of window that the room is made for. */
import type { Page } from '@playwright/test';
import { DRILLS } from '../../src/drills/drill.ts';
import { EXAMPLE_DECK } from '../../src/making/exampleDeck.ts';
import { WORDS_PAGE } from '../../src/present/handbook/address.ts';
import { PAPERS } from '../../src/present/papersAddress.ts';
import type { AtHandChoice } from '../../src/rooms/bench/AtHand.tsx';
import type { MenuChoice } from '../../src/rooms/bench/BenchMenu.tsx';
import { madeClass } from '../judge/madeClass.ts';
import { keepFixture } from './keptReport.ts';
import { expect, shippedSetup } from './page.ts';

type Size = readonly [width: number, height: number];

export const BENCH_SIZES: readonly Size[] = [
  [1440, 900],
  [1366, 768],
  [1024, 640],
  [820, 1180],
];
export const READING_SIZES: readonly Size[] = [...BENCH_SIZES, [390, 844]];

/** Called once in each state and size; `within`: what to look at. */
export type Look = (place: string, within: string, page: Page) => Promise<void>;

/** The course comes letter by letter; now all of it is there. */
export async function drawn(page: Page): Promise<void> {
  await expect(page.locator('.endless-form')).toBeVisible();
  await expect(page.locator('.cards.waiting')).toHaveCount(0);
}

/** In the order given, or the other way round where the window stands in the last of them: a change of size costs more than a look. */
const fromHere = (page: Page, sizes: readonly Size[]): readonly Size[] =>
  hasSize(page, ...sizes.at(-1)!) ? sizes.toReversed() : sizes;

/** Looked at in each size; the window is left in the last or the first of them. */
export async function inSizes(
  page: Page,
  sizes: readonly Size[],
  look: Look,
  place: string,
  within = 'body',
): Promise<void> {
  for (const [width, height] of fromHere(page, sizes)) {
    await sized(page, width, height);
    await look(`${place} ${width}x${height}`, within, page);
  }
}

function hasSize(page: Page, width: number, height: number): boolean {
  const now = page.viewportSize();
  return now?.width === width && now.height === height;
}

/** The window in a size, and all at rest in it. */
export async function sized(page: Page, width: number, height: number): Promise<void> {
  if (!hasSize(page, width, height)) await page.setViewportSize({ width, height });
  await settled(page).catch(async () => {
    // On a busy machine the browser may, after a change of size, draw a page in sight no more; another change wakes it.
    await page.setViewportSize({ width: width + 1, height });
    await page.setViewportSize({ width, height });
    await settled(page);
  });
}

/** Sizes are observed, drawings made for them and lettering loaded: a few pictures later all has come to rest. What never comes is named, long before the test gives up. */
async function settled(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const inTime = (what: Promise<unknown>, missing: () => string): Promise<unknown> =>
      Promise.race([
        what,
        new Promise((_, fail) => setTimeout(() => fail(new Error(`has not come: ${missing()}`)), 10_000)),
      ]);
    const loading = (): string => [...document.fonts].flatMap((f) => (f.status === 'loading' ? [f.family] : [])).join();
    await inTime(document.fonts.ready, () => `lettering (${loading()})`);
    for (let i = 0; i < 4; i++)
      await inTime(
        new Promise(requestAnimationFrame),
        () => `picture ${i + 1} (the page is ${document.visibilityState})`,
      );
  });
}

export async function visitCourse(page: Page, search: string, look: Look): Promise<void> {
  await page.goto(`/${search}`);
  await drawn(page);
  await inSizes(page, READING_SIZES, look, 'course');
}

/** A run that was played before, kept as the page itself keeps it, and a spoilt record beside it; then course and report. */
export async function visitReport(page: Page, search: string, look: Look): Promise<void> {
  const runId = 'kept-before';
  // No record of an open run: the page says that it has laid it aside.
  await keepFixture(page, search, runId, 'zero', true);
  await expect(page.locator('.rooms li')).toHaveCount(6);
  await drawn(page);
  await expect(page.locator('.slip')).toBeVisible();
  await inSizes(page, READING_SIZES, look, 'course with a run and a slip');
  await page.goto(`/${search}#/report/${runId}`);
  await expect(page.locator('.score-figure')).toBeVisible();
  await inSizes(page, READING_SIZES, look, 'report');
  await page.locator('.lines summary').click();
  await inSizes(page, READING_SIZES, look, 'report, every line', '.lines');
}

/** Nothing yet; a mixed class; a row opened, of a run and of what is none. */
export async function visitClass(page: Page, search: string, look: Look): Promise<void> {
  await page.goto(`/${search}#/class`);
  await expect(page.locator('.drop-place')).toBeVisible();
  await inSizes(page, READING_SIZES, look, 'class, empty');
  const { files } = madeClass();
  await page
    .locator('input[data-picks=files]')
    .setInputFiles(
      Object.entries(files).map(([name, text]) => ({ name, mimeType: 'text/plain', buffer: Buffer.from(text) })),
    );
  await expect(page.locator('.run')).toHaveCount(Object.keys(files).length, { timeout: 60_000 });
  await inSizes(page, READING_SIZES, look, 'class');
  for (const no of [1, 9]) {
    await page
      .locator('.run .learner button')
      .nth(no - 1)
      .click();
    await page.locator('.opened textarea').fill('A fine top. Now halve the level before you sign.');
    await inSizes(page, READING_SIZES, look, `class, row ${no} opened`);
  }
  await page.locator('.opened .button').first().waitFor();
}

/** An untouched draft, then one with cards, wrong lines and a figure that cannot be; then a refusal with its reason. */
export async function visitWorkshop(page: Page, search: string, look: Look): Promise<void> {
  await page.goto(`/${search}#/workshop`);
  await expect(page.locator('.seen-tube .tube')).toBeVisible({ timeout: 60_000 });
  await expect(page.locator('.seen-count')).toBeVisible({ timeout: 60_000 });
  await inSizes(page, READING_SIZES, look, 'workshop');
  const turnSlug = async (at: number, eighths: string): Promise<void> => {
    await page.locator('.plan-slug').nth(at).focus();
    await page.locator('.slug-row input[type=range]').fill(eighths);
  };
  await turnSlug(0, '12');
  await turnSlug(3, '-7');
  const chips = page.locator('.chip');
  for (const at of [1, 6]) await chips.nth(at).click();
  const bench = page.locator('.add-cards fieldset').nth(1).locator('.chip');
  for (let i = 0; i < 4; i++) await bench.nth(0).click();
  await expect(page.locator('.wrong-card')).toHaveCount(6);
  await page.locator('.wrong-card .amount-input .written').first().fill('much');
  await expect(page.locator('.wrong-lines tbody tr').first()).toBeVisible({ timeout: 60_000 });
  await inSizes(page, READING_SIZES, look, 'workshop, cards');
  for (const [at, text] of ['A title', 'A brief.', 'A story.', 'A lesson.'].entries())
    await page.locator('.form-panel fieldset').first().locator('.text-field .written').nth(at).fill(text);
  for (let i = 0; i < 6; i++) await page.locator('.wrong-card .card-sign').last().click();
  await turnSlug(0, '0');
  await turnSlug(3, '0');
  // The list over the button goes when the slug has rested, and takes the button along.
  await expect(page.locator('.wrong-lines tbody tr')).toHaveCount(0);
  await page.locator('.certify .button').first().click();
  await expect(page.locator('.certify-nearest')).toBeVisible({ timeout: 120_000 });
  await inSizes(page, READING_SIZES, look, 'workshop, refused');
}

/** The sheet of an evening, empty and with scenarios. */
export async function visitEvening(page: Page, search: string, look: Look): Promise<void> {
  await page.goto(`/${search}#/workshop/evening`);
  const choose = page.locator('.evening-add select');
  await expect(choose).toBeVisible({ timeout: 60_000 });
  await inSizes(page, READING_SIZES, look, 'evening, empty');
  for (const id of ['first-curve', 'one-hump-gone', 'from-cold']) {
    await choose.selectOption(id);
    await page.locator('.evening-add .button').click();
  }
  await expect(page.locator('.evening-list li')).toHaveCount(3);
  await page.locator('.evening-fields input').first().fill('Second Thursday');
  await inSizes(page, READING_SIZES, look, 'evening');
  await page.locator('.evening-exam .evening-tick input').first().check();
  await page.locator('.evening-phrase input').fill('lantern on the slip');
  await inSizes(page, READING_SIZES, look, 'evening, sealed');
}

/** Each paper of a valve strip, as it stands on the screen. */
export async function visitPapers(page: Page, search: string, look: Look): Promise<void> {
  for (const paper of PAPERS) {
    await page.goto(`/${search}#/papers/one-hump-gone/${paper}`);
    await expect(page.locator('.paper-page').first()).toBeVisible({ timeout: 60_000 });
    await inSizes(page, BENCH_SIZES, look, `papers, ${paper}`);
  }
}

/** The technician at the first job: before his first act, and some acts later. */
export async function visitDemonstration(page: Page, search: string, look: Look): Promise<void> {
  await page.goto(`/${search}#/bench/first-curve/shown`);
  await expect(page.locator('.shown .button').first()).toBeVisible({ timeout: 60_000 });
  await inSizes(page, BENCH_SIZES, look, 'demonstration', '.shown');
  for (let i = 0; i < 5; i++) await page.locator('.shown .button').nth(1).click();
  await inSizes(page, BENCH_SIZES, look, 'demonstration, later', '.shown');
}

/** Contents, a long page with two figures, the page of trade words, and a trade word opened. */
export async function visitHandbook(page: Page, search: string, look: Look): Promise<void> {
  await page.goto(`/${search}#/handbook`);
  await expect(page.locator('.first-sheet')).toBeVisible();
  await inSizes(page, READING_SIZES, look, 'handbook');
  for (const id of ['traps', 'faults', 'leads']) {
    await page.goto(`/${search}#/handbook/${id}`);
    await expect(page.locator('.tube-plot').first()).toBeVisible();
    await inSizes(page, READING_SIZES, look, `handbook, ${id}`);
  }
  await page.goto(`/${search}#/handbook/${WORDS_PAGE}`);
  await expect(page.locator('.all-words')).toBeVisible();
  await inSizes(page, READING_SIZES, look, 'trade words');
  await page.goto(`/${search}#/handbook/one-can`);
  for (const [width, height] of fromHere(page, READING_SIZES)) {
    await sized(page, width, height);
    await page.locator('.term-word').first().click();
    await expect(page.locator('.term-slip')).toBeVisible();
    await look(`trade word ${width}x${height}`, '.term-slip', page);
    await page.keyboard.press('Escape');
    await expect(page.locator('.term-slip')).toHaveCount(0);
  }
}

/** Each drill as it is asked, and answered: by its first choice, or as it was found. */
export async function visitDrills(page: Page, search: string, look: Look): Promise<void> {
  for (const drill of DRILLS) {
    await page.goto(`/${search}#/drills/${drill}/quay`);
    await expect(page.locator('.look-tube .tube')).toBeVisible();
    if (drill === 'overload') {
      await inSizes(page, READING_SIZES, look, 'drill, not to be answered yet');
      await page.locator('.drill-halve .button').click();
    }
    if (drill === 'zero') await inSizes(page, READING_SIZES, look, 'drill, to be turned');
    await page.locator('.choice, .turn-panel .button').first().click();
    await expect(page.locator('.verdict')).toBeVisible();
    await inSizes(page, READING_SIZES, look, `drill, ${drill}`);
  }
}

const toBench = async (page: Page, search: string, id: string): Promise<void> => {
  await page.goto(`/${search}#/bench/${id}`);
  await expect(page.locator('dialog[open]')).toBeVisible();
};

export const begin = async (page: Page): Promise<void> => {
  await expect(page.locator('dialog[open]')).toBeVisible();
  const tick = page.locator('dialog .acknowledge input');
  if ((await tick.count()) > 0) await tick.check();
  await page.locator('dialog .button.primary').click();
  await expect(page.locator('dialog[open]')).toHaveCount(0);
};

async function openMenu(page: Page): Promise<void> {
  await page.locator('.menu-button, .menu-corner').click();
  await expect(page.locator('.menu')).toBeVisible();
}

async function visitMenu(page: Page, look: Look, place: string, choice: MenuChoice): Promise<void> {
  await openMenu(page);
  await visitDialog(page, look, place, choice);
}

async function visitDialog(page: Page, look: Look, place: string, choice: MenuChoice | AtHandChoice): Promise<void> {
  await page.locator(`[data-choice=${choice}]`).click();
  await expect(page.locator('dialog[open]')).toBeVisible();
  await inSizes(page, BENCH_SIZES, look, place, 'dialog[open]');
  await page.keyboard.press('Escape');
  await expect(page.locator('dialog[open]')).toHaveCount(0);
}

/** The first job: briefing, bench, menu, sheet open, tool in a slug, hints, keys, signing off. */
export async function visitBench(page: Page, search: string, look: Look): Promise<void> {
  const { receiver } = shippedSetup('first-sweep', 'first-curve');
  await toBench(page, search, 'first-curve');
  await inSizes(page, BENCH_SIZES, look, 'briefing', 'dialog[open]');
  await begin(page);
  await expect(page.locator('[data-slug][aria-valuenow]')).toHaveCount(receiver.adjusters.length);
  await inSizes(page, BENCH_SIZES, look, 'bench');
  await openMenu(page);
  await inSizes(page, BENCH_SIZES.slice(0, 1), look, 'menu', '.menu');
  await page.keyboard.press('Escape');
  await visitDialog(page, look, 'hints', 'hints');
  await visitMenu(page, look, 'keys', 'help');
  await page.locator('[data-slug]').first().click();
  await page.locator('.tool').first().click();
  await page.locator('.step .button').last().click();
  await inSizes(page, BENCH_SIZES, look, 'tool in a slug');
  await page.locator('.sign-off').click();
  await expect(page.locator('dialog[open]')).toBeVisible();
  await inSizes(page, BENCH_SIZES, look, 'signing off', 'dialog[open]');
}

/** A valve strip on the mains with a fault in it: cautions, the parts tray, the circuit, the sheet unfolded where it folds. */
export async function visitStrip(page: Page, search: string, look: Look): Promise<void> {
  await toBench(page, search, 'one-hump-gone');
  await inSizes(page, BENCH_SIZES, look, 'briefing of the strip', 'dialog[open]');
  await begin(page);
  await expect(page.locator('[data-slug][aria-valuenow]').first()).toBeVisible();
  await inSizes(page, BENCH_SIZES, look, 'strip');
  await visitDialog(page, look, 'parts', 'parts');
  await visitDialog(page, look, 'circuit', 'circuit');
  await sized(page, 820, 1180);
  await page.keyboard.press('s');
  await expect(page.locator('.sheet.over')).toBeVisible();
  await inSizes(page, BENCH_SIZES.slice(2), look, 'sheet unfolded', '.sheet.over');
  await page.keyboard.press('Escape');
  await page.setViewportSize({ width: 1440, height: 900 });
  await page.locator('.sign-off').click();
  await expect(page.locator('dialog[open] .diagnosis')).toBeVisible();
  await inSizes(page, BENCH_SIZES, look, 'signing off with what was wrong', 'dialog[open]');
}

/** The place for receivers of one's own: before a deck, with a wrong one, and with a whole receiver. */
export async function visitOwnReceiver(page: Page, search: string, look: Look): Promise<void> {
  await page.goto(`/${search}#/workshop/receiver`);
  const brings = page.locator('input[data-picks=receiver]');
  await expect(brings).toHaveCount(1);
  await inSizes(page, READING_SIZES, look, 'receiver, nothing brought');
  const bring = (text: string) =>
    brings.setInputFiles({ name: 'harbour-watch.cir', mimeType: 'text/plain', buffer: Buffer.from(text) });
  await bring(EXAMPLE_DECK.replace('K2 L2p L2s', 'K2 L2p L2x'));
  await expect(page.locator('.made-fix')).toHaveCount(1);
  await inSizes(page, READING_SIZES, look, 'receiver, a wrong line');
  await bring(EXAMPLE_DECK);
  await expect(page.locator('.made-tube svg')).toBeVisible();
  await expect(page.locator('.made-slack')).toBeVisible();
  await inSizes(page, READING_SIZES, look, 'receiver, whole');
}
