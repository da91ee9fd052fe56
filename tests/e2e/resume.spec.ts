/** Leaving in the middle: a reload, a closed page, and a browser that keeps nothing. */
import type { Page } from '@playwright/test';
import { headerWords } from '../../src/words/en/bench.ts';
import { dialogWords } from '../../src/words/en/benchTalk.ts';
import { courseWords } from '../../src/words/en/course.ts';
import { shellWords } from '../../src/words/en/shell.ts';
import { storeWords } from '../../src/words/en/store.ts';
import { BenchFace } from './face.ts';
import { KeyHand } from './keyHand.ts';
import { begin, elapsedSeconds, expect, openCard, rail, railSays, shippedSetup, test } from './page.ts';

const setup = shippedSetup('vision-if', 'traps-astray');
/** A page that is opened again may need this long to stand; the clock does not count it, but the reading does. */
const SECONDS_APART = 12;

const faceOf = (page: Page): BenchFace => new BenchFace(page, setup, (tab) => tab.click());

async function workALittle(page: Page): Promise<void> {
  await openCard(page, setup);
  await begin(page);
  await new KeyHand(faceOf(page)).do([
    { type: 'controlSet', control: 'levelDb', value: -52 },
    { type: 'controlSet', control: 'phasingDegrees', value: 14 },
    { type: 'controlSet', control: 'blanking', value: true },
    { type: 'crystalPlugged', hz: 41250000 },
    { type: 'leadRemoved', lead: 'earth' },
    { type: 'toolTaken', tool: 'blade' },
    { type: 'slugTurned', slug: 'A1', turns: -1.5 },
    { type: 'slugTurned', slug: 'A2', turns: 9 / 32 },
  ]);
  // Two turns do not align this set, and the strap is off.
  await expect(rail(page)).toHaveAttribute('aria-label', railSays(['safe']));
}

interface Standing {
  readonly slugs: readonly (string | null)[];
  readonly knobs: readonly (string | null)[];
  readonly leads: readonly (string | null)[];
  readonly switches: readonly boolean[];
  readonly crystals: readonly (string | null)[];
  readonly turns: string | null;
  readonly rail: string | null;
}

async function standing(page: Page): Promise<Standing> {
  await expect(page.locator('[data-slug][aria-valuenow]')).toHaveCount(setup.receiver.adjusters.length);
  // At one glance: what is read piece by piece may be of different moments.
  return page.evaluate(() => {
    const all = (selector: string) => [...document.querySelectorAll(selector)];
    const attributes = (selector: string, name: string) => all(selector).map((element) => element.getAttribute(name));
    return {
      slugs: attributes('[data-slug]', 'aria-valuetext'),
      knobs: attributes('.bench input[type=range]', 'aria-valuetext'),
      leads: attributes('.lead-grip', 'aria-label'),
      switches: all('input[role=switch]').map((one) => (one as HTMLInputElement).checked),
      crystals: attributes('.crystal', 'aria-label'),
      turns: document.querySelector('.counter.turns .H')?.textContent ?? null,
      rail: document.querySelector('.phase-rail')?.getAttribute('aria-label') ?? null,
    };
  });
}

async function standsAsBefore(page: Page, before: Standing, seconds: number): Promise<void> {
  await expect(page.getByRole('timer')).toBeVisible();
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await expect(async () => expect(await standing(page)).toEqual(before)).toPass({ timeout: 20_000 });
  const now = await elapsedSeconds(page);
  expect(now).toBeGreaterThanOrEqual(seconds - 1);
  expect(now).toBeLessThanOrEqual(seconds + SECONDS_APART);
}

test.describe(() => {
  test.use({ sharesWindow: true });

  test('a reload in the middle of a run takes nothing away', async ({ page }) => {
    await workALittle(page);
    const before = await standing(page);
    expect(before.turns).not.toBe('0');
    const seconds = await elapsedSeconds(page);
    await page.reload();
    await standsAsBefore(page, before, seconds);
  });
});

test('a page that was closed is found again as it was, from the course', async ({ page, context }) => {
  await workALittle(page);
  const before = await standing(page);
  const seconds = await elapsedSeconds(page);
  await page.close();
  const again = await context.newPage();
  await again.goto('/');
  await expect(again.locator('.card.now')).toContainText(courseWords.onBench);
  await again.locator('.card.now .card-open').click();
  await standsAsBefore(again, before, seconds);
});

test.describe(() => {
  test.use({ sharesWindow: true });

  test('a suspended run stays covered over a reload, and its clock stands', async ({ page }) => {
    await workALittle(page);
    await page.getByRole('button', { name: headerWords.menu }).click();
    await page.getByRole('menuitem', { name: headerWords.suspend }).click();
    const cover = page.getByRole('dialog', { name: dialogWords.suspended.title });
    await expect(cover).toBeVisible();
    const before = await page.getByRole('timer').textContent();
    await page.reload();
    await expect(cover).toBeVisible();
    await page.waitForTimeout(1200);
    expect(await page.getByRole('timer').textContent()).toBe(before);
    await page.getByRole('button', { name: dialogWords.suspended.resume }).click();
    await expect(cover).toHaveCount(0);
    await expect(page.getByRole('timer')).not.toHaveText(before!);
  });
});

test('without storage the run goes on in memory, and the course says so', async ({ page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(IDBFactory.prototype, 'open', {
      value: () => {
        throw new DOMException('blocked', 'SecurityError');
      },
    });
  });
  await workALittle(page);
  const before = await standing(page);
  await page.getByRole('button', { name: shellWords.home }).click();
  await expect(page.locator('.course .slip')).toContainText(storeWords.trouble.memoryOnly);
  await page.locator('.card.now .card-open').click();
  await page.getByRole('button', { name: dialogWords.suspended.resume }).click();
  await expect(async () => expect(await standing(page)).toEqual(before)).toPass({ timeout: 20_000 });
});
