/**
 * Rubbish in everything that the page keeps, in every database and every place of its memory: each record spoilt field by field. Every room opens all the same, with
 * something in it and a way out, and the run that was begun goes on.
 */
import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { EXAMPLE_DECK } from '../../src/making/exampleDeck.ts';
import { storeWords } from '../../src/words/en/store.ts';
import { keepFixture } from './keptReport.ts';
import { begin, expect, openCard, shippedSetup, test } from './page.ts';

test.use({ sharesWindow: true });

const setup = shippedSetup('first-sweep', 'first-curve');
const KEPT = 'kept-before';

const ROOMS = [
  ...['#/course', '#/bench/from-cold', '#/bench/from-cold/shown', `#/report/${KEPT}`, '#/report/no-such-run'],
  ...['#/workshop', '#/workshop/receiver', '#/workshop/evening', '#/papers', '#/class', '#/class/3'],
  ...['#/drills', '#/handbook', '#/exam/0123456789abcdef', '#/open/rubbish'],
];

/** Every place of the browser's memory that the page writes to. */
const PLACES = [
  ...['haystack.learner', 'haystack.drills', 'haystack.sound', 'haystack.keys', 'haystack.evening'],
  ...['haystack-class-notes', 'haystack-lifeboat', 'haystack.drafts', 'haystack.receiverDrafts'],
];

/** Something of every kind: a run begun, a run kept, a scenario of one's own, a receiver and an evening sheet in the making, a look at a drill answered. */
async function somethingOfEach(page: Page): Promise<void> {
  await keepFixture(page, '', KEPT, 'zero', false);
  const text = readFileSync('tests/fixtures/scenarios/traps-astray.json', 'utf8');
  await page
    .locator('input[data-picks=own]')
    .setInputFiles({ name: 'own.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await page.goto('/#/workshop/evening');
  await page.locator('.evening-add select').selectOption('first-curve');
  await page.locator('.evening-add .button').click();
  await expect(page.locator('.evening-list li')).toHaveCount(1);
  await page.goto('/#/workshop/receiver');
  await page
    .locator('input[data-picks=receiver]')
    .setInputFiles({ name: 'harbour-watch.cir', mimeType: 'text/plain', buffer: Buffer.from(EXAMPLE_DECK) });
  await expect(page.locator('.made-tube svg')).toBeVisible();
  await page.goto('/#/drills/which-way/quay');
  await page.locator('.choice, .turn-panel .button').first().click();
  await expect(page.locator('.verdict')).toBeVisible();
  await openCard(page, setup);
  await begin(page);
  await expect(page.getByRole('timer')).toBeVisible();
}

/** Beside each record of each database one copy for each of its fields and each kind of rubbish in it. Says how many, by database. */
const spoilDatabases = (page: Page): Promise<Record<string, number>> =>
  page.evaluate(async () => {
    const of = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const rubbish = [null, -1, 'x', {}, [[]]];
    const count: Record<string, number> = {};
    for (const { name } of await indexedDB.databases()) {
      const base = await of(indexedDB.open(name!));
      for (const shelf of base.objectStoreNames) {
        const change = base.transaction(shelf, 'readwrite');
        const store = change.objectStore(shelf);
        const key = store.keyPath as string;
        const whole = (await of(store.getAll())) as Record<string, unknown>[];
        const fields = [...whole, {}].flatMap((record) =>
          [...Object.keys(record), 'made-up'].flatMap((field) => rubbish.map((bad) => ({ ...record, [field]: bad }))),
        );
        for (const [i, record] of fields.entries()) store.put({ ...record, [key]: `spoilt-${i}` });
        await new Promise((resolve) => {
          change.oncomplete = resolve;
        });
        count[name!] = (count[name!] ?? 0) + fields.length;
      }
      base.close();
    }
    return count;
  });

/** In the place of what stands in the memory: text cut off, an empty thing, or the same with every value gone. */
const spoilMemory = (page: Page, how: 'cut' | 'empty' | 'hollow'): Promise<void> =>
  page.evaluate(
    ({ places, way }) => {
      const hollow = (value: unknown): unknown => {
        if (Array.isArray(value)) return value.map(hollow);
        if (typeof value !== 'object' || value === null) return null;
        return Object.fromEntries(Object.entries(value).map(([key, of]) => [key, hollow(of)]));
      };
      const hollowed = (text: string): string => {
        try {
          return JSON.stringify(hollow(JSON.parse(text)));
        } catch {
          return 'null';
        }
      };
      for (const place of new Set([...places, ...Object.keys(localStorage)])) {
        const text = localStorage.getItem(place) ?? '{"format":"haystack-run","events":[1]}';
        localStorage.setItem(place, way === 'cut' ? text.slice(0, -1) : way === 'empty' ? '{}' : hollowed(text));
      }
    },
    { places: PLACES, way: how },
  );

async function everyRoomOpens(page: Page): Promise<void> {
  for (const room of ROOMS) {
    await page.goto(`/${room}`);
    await expect(page.locator('main[aria-busy=true]'), room).toHaveCount(0);
    await expect(page.locator('h1, h2').first(), room).toBeVisible();
    await expect(page.getByRole('heading', { name: storeWords.broken.title }), room).toHaveCount(0);
    await expect(page.locator('button:visible, a:visible').first(), room).toBeVisible();
  }
}

test('in every record and every place costs no room and no run', async ({ page }) => {
  test.setTimeout(400_000);
  await somethingOfEach(page);
  await page.goto('about:blank');
  await page.goto('/#/handbook');
  await expect(page.locator('.first-sheet')).toBeVisible();
  const spoilt = await spoilDatabases(page);
  expect(Object.keys(spoilt).sort()).toEqual(['haystack', 'haystack-own', 'haystack-receivers']);
  expect(Math.min(...Object.values(spoilt))).toBeGreaterThan(5);
  for (const how of ['cut', 'empty', 'hollow'] as const) {
    await spoilMemory(page, how);
    await page.reload();
    await everyRoomOpens(page);
  }
  await page.goto('/#/course');
  await page.reload();
  await expect(page.locator('.card.now .card-open', { hasText: setup.scenario.title })).toBeVisible();
  await page.goto(`/#/bench/${setup.scenario.id}`);
  await expect(page.getByRole('timer')).toBeVisible();
  await page.goto(`/#/report/${KEPT}`);
  await expect(page.locator('.score-figure')).toBeVisible();
});
