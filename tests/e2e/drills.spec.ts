/** The drills in the browser: played right and wrong by keyboard alone, tallied and remembered; and nothing on the page says an answer before it is given. */
import type { Page } from '@playwright/test';
import type { DrillId, Question } from '../../src/drills/drill.ts';
import { DRILL_PAGES, DRILLS } from '../../src/drills/drill.ts';
import { lookSeed, question, receiverOf } from '../../src/drills/question.ts';
import { handbookHash } from '../../src/present/handbook/address.ts';
import { en } from '../../src/words/en/index.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { expect, test } from './page.ts';
import { isSound } from './soundPage.ts';

test.use({ sharesWindow: true });

const SERIES = 'quay';
const SIZES = { tag: ['@shelf', '@upright'] };
const { drills: words } = en;
const { receivers } = shippedLibrary();

/** The look that the page makes of the same seed. */
function lookAt(drill: DrillId, look: number): Question {
  const seed = lookSeed(drill, SERIES, look);
  return question(drill, seed, receivers.get(receiverOf(drill, seed))!);
}

async function open(page: Page, drill: DrillId): Promise<void> {
  await page.goto(`/#/drills/${drill}/${SERIES}`);
  await expect(page.locator('.look-tube .tube')).toBeVisible();
}

/**
 * As on a machine with much else to do: whatever the page leaves for after a picture, or for a timer, comes half a second late. Keys count from the moment that what they
 * are for can be seen.
 */
async function lateAfterPicture(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const soon = window.setTimeout.bind(window);
    const late = (handler: TimerHandler, ms = 0, ...rest: unknown[]): number => soon(handler, ms + 500, ...rest);
    window.setTimeout = late as typeof window.setTimeout;
    const frame = window.requestAnimationFrame.bind(window);
    window.requestAnimationFrame = (callback) => frame(() => soon(() => callback(performance.now()), 500));
  });
}

const verdict = (page: Page) => page.locator('.verdict h3');

async function marked(page: Page, right: boolean): Promise<void> {
  await expect(verdict(page)).toContainText(right ? words.right : words.wrong);
  await expect(page.locator('.verdict p').first()).not.toBeEmpty();
  await expect(page.getByRole('button', { name: words.next })).toBeFocused();
}

/** Return takes the next look. */
async function next(page: Page): Promise<void> {
  await page.keyboard.press('Enter');
  await expect(verdict(page)).toHaveCount(0);
  await expect(page.locator('.look-tube .tube')).toBeVisible();
}

test('which way, by keys: right, then wrong, and both are remembered', async ({ page }) => {
  await open(page, 'which-way');
  for (const [look, wanted] of [true, false].entries()) {
    const { ask } = lookAt('which-way', look);
    if (ask.kind !== 'choice') throw new Error(ask.kind);
    await page.keyboard.press(`${wanted ? ask.right + 1 : ((ask.right + 1) % ask.choices.length) + 1}`);
    await marked(page, wanted);
    await expect(page.locator('.choice.right')).toHaveCount(1);
    await expect(page.locator('.choice.wrong')).toHaveCount(wanted ? 0 : 1);
    // Once answered it stays so.
    await page.keyboard.press(`${ask.right + 1}`);
    await marked(page, wanted);
    if (look === 0) await next(page);
  }
  await expect(page.locator('.drill-card.now .drill-tally')).toHaveText(words.tally(1, 2));
  await page.reload();
  await expect(page.locator('.drill-card.now .drill-tally')).toHaveText(words.tally(1, 2));
  await expect(page.locator('.last-looks .tick')).toHaveCount(2);
});

test('phasing, by keys: as it was found it is wrong, turned until the traces are one it is right', async ({ page }) => {
  await open(page, 'phase-it');
  const knob = page.getByRole('slider', { name: words.asks['phase-it'] });
  await knob.focus();
  await page.keyboard.press('Enter');
  await marked(page, false);
  await next(page);
  await expect(knob).toBeFocused();
  const { told, scene } = lookAt('phase-it', 1);
  if (told.drill !== 'phase-it') throw new Error(told.drill);
  const steps = -told.lagDegrees - scene.state.controls.phasingDegrees;
  expect(Math.abs(steps)).toBeGreaterThan(4);
  for (let i = 0; i < Math.abs(steps); i++) await page.keyboard.press(steps > 0 ? 'ArrowUp' : 'ArrowDown');
  await page.keyboard.press('Enter');
  await marked(page, true);
  await expect(page.locator('.drill-card.now .drill-tally')).toHaveText(words.tally(1, 2));
});

test.describe('in a page that is late with all it leaves for after a picture', () => {
  test.use({ sharesWindow: false });

  test('overload, by keys: no answer before the level has been halved', async ({ page }) => {
    await lateAfterPicture(page);
    await open(page, 'overload');
    const { ask } = lookAt('overload', 0);
    if (ask.kind !== 'choice') throw new Error(ask.kind);
    await page.keyboard.press(`${ask.right + 1}`);
    await expect(verdict(page)).toHaveCount(0);
    await page.keyboard.press('h');
    await expect(page.getByRole('button', { name: words.halve })).toHaveAttribute('aria-pressed', 'true');
    await page.keyboard.press(`${ask.right + 1}`);
    await marked(page, true);
    await next(page);
    const second = lookAt('overload', 1).ask;
    if (second.kind !== 'choice') throw new Error(second.kind);
    await page.keyboard.press('h');
    await page.keyboard.press(`${2 - second.right}`);
    await marked(page, false);
  });
});

test('before it is answered nothing on the page tells one choice from another, nor where a nameless pip stands', async ({
  page,
}) => {
  test.setTimeout(120_000);
  for (const drill of DRILLS) {
    await open(page, drill);
    const { ask, subject, unnamedPips } = lookAt(drill, 0);
    await expect(page.locator('.verdict')).toHaveCount(0);
    const sheet = await page.locator('.open-drill').evaluate((element) => element.outerHTML);
    if (unnamedPips && subject.hz !== undefined) {
      expect(sheet).not.toContain(en.tubeTags.frequency(subject.hz));
      expect(sheet).not.toContain(`${subject.hz}`);
    }
    await expect(page.locator('.tube')).toHaveAttribute('aria-label', words.tube);
    if (ask.kind !== 'choice') continue;
    // Without its own number and words, each choice is the same to the last attribute.
    const choices = await page.locator('.choice').evaluateAll((all) =>
      all.map((one) => {
        const copy = one.cloneNode(true) as Element;
        for (const own of copy.querySelectorAll('.key, .choice-name, .frame')) own.remove();
        return copy.outerHTML;
      }),
    );
    expect(choices).toHaveLength(ask.choices.length);
    expect(new Set(choices).size, drill).toBe(1);
  }
});

test('each drill leads to its page of the handbook, and the room to each drill', async ({ page }) => {
  await page.goto('/');
  await page.getByRole('button', { name: en.shell.drills, exact: true }).click();
  await expect(page.locator('.drills-intro').first()).toHaveText(words.intro);
  for (const drill of ['what-lies-here', 'per-cent'] as const) {
    await page.getByRole('link', { name: words.names[drill] }).click();
    await expect(page.locator('.drill-head h2')).toHaveText(words.names[drill]);
    await page.locator('.choice').first().click();
    await expect(page.locator('.verdict-page')).toHaveAttribute('href', handbookHash(DRILL_PAGES[drill]));
  }
  await page.locator('.verdict-page').click();
  await expect(page.locator('.room-handbook h1')).toBeVisible();
});

test('nothing stands in a reader’s way', SIZES, async ({ page }) => {
  for (const drill of ['which-part', 'zero', 'overload'] as const)
    await test.step(drill, async () => {
      await open(page, drill);
      await expect(page.locator('.drill-head h2')).toHaveText(words.names[drill]);
      await expect(verdict(page)).toHaveCount(0);
      await isSound(page);
      if (drill === 'overload') await page.getByRole('button', { name: words.halve }).click();
      await page.locator('.choice, .turn-panel .button').first().click();
      await expect(verdict(page)).toBeVisible();
      await isSound(page);
    });
});

test('forced colours leave the open drill, the tick and the marked answer to be seen', async ({ page }) => {
  await page.emulateMedia({ forcedColors: 'active' });
  await open(page, 'which-way');
  await page.keyboard.press('1');
  await expect(verdict(page)).toBeVisible();
  await expect(page.locator('.choice.right .tick')).toBeVisible();
  await expect(page.locator('.drill-card.now [aria-current]')).toBeVisible();
  await isSound(page);
});
