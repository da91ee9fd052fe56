/** Storage that is full, doubled, spoilt or torn off: no run is lost, and what cannot be done is said. */
import { readFileSync } from 'node:fs';
import type { Download, Locator, Page } from '@playwright/test';
import { readRunFile } from '../../src/files/runFileSchema.ts';
import { headerWords } from '../../src/words/en/bench.ts';
import { dialogWords } from '../../src/words/en/benchTalk.ts';
import { courseWords } from '../../src/words/en/course.ts';
import { shellWords } from '../../src/words/en/shell.ts';
import { storeWords as words } from '../../src/words/en/store.ts';
import { BenchFace } from './face.ts';
import { KeyHand } from './keyHand.ts';
import { begin, cardOf, expect, openJob, shippedSetup, test } from './page.ts';
import { isSound } from './soundPage.ts';
import { scribble, stored, withDisk } from './storedRecords.ts';

type Stored = Awaited<ReturnType<typeof stored>>;

const setup = shippedSetup('first-sweep', 'first-curve');
const { id } = setup.scenario;
const BENCH = `/#/bench/${id}`;

const faceOf = (page: Page): BenchFace => new BenchFace(page, setup, (tab) => tab.click());
const button = (page: Page, name: string): Locator => page.getByRole('button', { name, exact: true });
const slip = (page: Page, text: string): Locator => page.locator('.slip', { hasText: text });
const benchStands = (page: Page): Promise<void> => expect(page.getByRole('timer')).toBeVisible();

const setLevel = (page: Page, value: number): Promise<void> =>
  new KeyHand(faceOf(page)).do([{ type: 'controlSet', control: 'levelDb', value }]);

async function levelStands(page: Page, value: number): Promise<void> {
  const { slider, fitting } = await faceOf(page).knob('levelDb');
  await expect(slider).toHaveValue(String(fitting.scale.indexOf(value)));
}

/** Until the act stands in the database. */
async function lastActStored(page: Page, act: Record<string, unknown>): Promise<void> {
  await expect
    .poll(async () => (await stored(page, 'open')).map(({ events }) => (events as unknown[]).at(-1)))
    .toEqual([expect.objectContaining(act)]);
}

/** The records of a shelf, once there are as many as there shall be: a run is written while the page goes on. */
async function standing(page: Page, shelf: Parameters<typeof stored>[1], count: number): Promise<Stored> {
  let all: Stored = [];
  await expect
    .poll(async () => {
      all = await stored(page, shelf);
      return all.length;
    })
    .toBe(count);
  return all;
}

const levelStored = (page: Page, value: number): Promise<void> => lastActStored(page, { control: 'levelDb', value });

async function openBench(page: Page): Promise<void> {
  await openJob(page, setup);
  await begin(page);
}

/** A run in which no slug was turned has nothing to sign. */
async function signOff(page: Page): Promise<void> {
  await turnASlug(page);
  await sign(page);
  await expect(page.locator('.score-figure')).toBeVisible();
}

async function sign(page: Page): Promise<void> {
  await button(page, headerWords.signOff).click();
  await answerSign(page);
}

const answerSign = (page: Page): Promise<void> =>
  page.getByRole('dialog').getByRole('button', { name: dialogWords.signOff.sign, exact: true }).click();

const turnASlug = (page: Page): Promise<void> =>
  new KeyHand(faceOf(page)).do([
    { type: 'toolTaken', tool: 'hex' },
    { type: 'slugTurned', slug: 'T1T', turns: 1 / 8 },
  ]);

const textOf = async (download: Download): Promise<string> => readFileSync(await download.path(), 'utf8');

test.describe('a full disk', () => {
  test('takes no signed run away: it is told, can be saved, and is stored when there is room', async ({ page }) => {
    const disk = await withDisk(page);
    await openBench(page);
    await setLevel(page, -40);
    await levelStored(page, -40);
    await disk.full();
    await signOff(page);
    const told = slip(page, words.report.notStored);
    await expect(told).toBeVisible();
    await expect(told).toHaveRole('alert');
    await isSound(page);
    expect(await stored(page, 'kept')).toEqual([]);
    expect(await stored(page, 'open')).toHaveLength(1);

    const saving = page.waitForEvent('download');
    await told.getByRole('button', { name: words.report.save }).click();
    const file = readRunFile(await textOf(await saving), 'saved.json');
    expect(file.ok && file.value.events.at(-1)).toMatchObject({ type: 'signedOff' });

    const refused = await disk.refusals();
    await told.getByRole('button', { name: words.tryAgain }).click();
    // Room that came before the disk has refused would let this attempt through.
    await expect.poll(() => disk.refusals()).toBeGreaterThan(refused);
    await expect(told).toBeVisible();
    await disk.free();
    await told.getByRole('button', { name: words.tryAgain }).click();
    await expect(page.locator('.slip')).toHaveCount(0);
    await standing(page, 'kept', 1);
    await standing(page, 'open', 0);
    await page.reload();
    await expect(page.locator('.score-figure')).toBeVisible();
  });

  test('leaves the open record for the next page where the signed run was not stored', async ({ page }) => {
    const disk = await withDisk(page);
    await openBench(page);
    await setLevel(page, -40);
    await levelStored(page, -40);
    await disk.full();
    await signOff(page);
    // In this page the run is signed; the next one has never heard of it.
    await page.goto('/');
    await expect(page.locator('.card.now')).toContainText(courseWords.onBench);
    await cardOf(page, setup).click();
    await benchStands(page);
    await levelStands(page, -40);
  });

  test('is told at the bench, once, and work goes on', async ({ page }) => {
    const disk = await withDisk(page);
    await openBench(page);
    await disk.full();
    await setLevel(page, -40);
    const told = slip(page, words.trouble.full);
    await expect(told).toBeVisible();
    await isSound(page);
    await told.getByRole('button', { name: words.seen }).click();
    await expect(told).toHaveCount(0);
    await setLevel(page, -41);
    await levelStands(page, -41);
    await expect(told).toHaveCount(0);
    await disk.free();
    await setLevel(page, -42);
    await levelStored(page, -42);
    await disk.full();
    await setLevel(page, -43);
    await expect(told).toBeVisible();
  });
});

test.describe('two tabs on one job', () => {
  test('one has the bench; the other says so, takes it over with everything done, and gives it back', async ({
    page,
    context,
  }) => {
    await openBench(page);
    const other = await context.newPage();
    await other.goto(BENCH);
    await expect(other.getByRole('heading', { name: words.elsewhere.title })).toBeVisible();
    await isSound(other);
    // Not yet written when the other asks for it.
    await setLevel(page, -40);
    await button(other, words.elsewhere.takeOver).click();
    await benchStands(other);
    await levelStands(other, -40);
    const lost = page.getByRole('dialog', { name: words.lost.title });
    await expect(lost).toBeVisible();
    await isSound(page);
    const time = (await page.getByRole('timer').textContent())!;

    await setLevel(other, -41);
    // A second of work there, which is no second here.
    await expect(other.getByRole('timer')).not.toHaveText(time);
    await lost.getByRole('button', { name: words.lost.takeBack }).click();
    await expect(lost).toHaveCount(0);
    await levelStands(page, -41);
    await expect(page.getByRole('timer')).not.toHaveText(time);
    await expect(other.getByRole('dialog', { name: words.lost.title })).toBeVisible();
    await standing(page, 'open', 1);
  });

  test('the second gets the bench by itself when the first is closed', async ({ page, context }) => {
    await openBench(page);
    await setLevel(page, -40);
    const other = await context.newPage();
    await other.goto(BENCH);
    await expect(other.getByRole('heading', { name: words.elsewhere.title })).toBeVisible();
    await page.close();
    await benchStands(other);
    await levelStands(other, -40);
  });

  test('the course of the other tab hears of a run that was signed', async ({ page, context }) => {
    const other = await context.newPage();
    await other.goto('/');
    await openBench(page);
    await signOff(page);
    await expect(other.getByRole('button', { name: shellWords.reports, exact: true })).toBeVisible();
  });

  test('where the browser has no locks both say so, and both reports are kept', async ({ page, context }) => {
    await context.addInitScript(() => {
      Object.defineProperty(Navigator.prototype, 'locks', { get: () => undefined });
    });
    await openBench(page);
    await expect(slip(page, words.unguarded)).toBeVisible();
    await setLevel(page, -40);
    await levelStored(page, -40);
    const other = await context.newPage();
    await other.goto(BENCH);
    await benchStands(other);
    await slip(other, words.unguarded).getByRole('button', { name: words.seen }).click();
    await setLevel(other, -41);
    await slip(page, words.unguarded).getByRole('button', { name: words.seen }).click();
    await signOff(page);
    const [first] = await standing(page, 'texts', 1);
    await signOff(other);
    const texts = await standing(page, 'texts', 2);
    expect(texts).toContainEqual(first);
    expect(new Set(texts.map(({ runId }) => runId)).size).toBe(2);
    expect(page.url()).not.toBe(other.url());
  });
});

test.describe('rubbish', () => {
  test.use({ sharesWindow: true });

  test('on every shelf costs those records only, and can be saved and removed', async ({ page }) => {
    await openBench(page);
    await setLevel(page, -40);
    await levelStored(page, -40);
    await page.goto('about:blank');
    await page.goto('/');
    await scribble(page, 'open', [{ runId: 'a', scenarioId: 7, events: 'x' }]);
    await scribble(page, 'kept', [{ runId: 'b', lines: 3 }]);
    await scribble(page, 'texts', [{ runId: 'c', text: {} }]);
    await scribble(page, 'aside', [{ id: 'd' }]);
    await page.reload();
    const told = slip(page, words.aside.unreadable(2));
    await expect(told).toBeVisible();
    await expect(page.locator('.card.now')).toContainText(courseWords.onBench);
    await isSound(page);
    const saving = page.waitForEvent('download');
    await told.getByRole('button', { name: words.saveAside(2) }).click();
    const records = JSON.parse(await textOf(await saving)) as { text: string }[];
    expect(records.map(({ text }) => JSON.parse(text).runId).sort()).toEqual(['a', 'b']);
    await told.getByRole('button', { name: words.removeAside }).click();
    await expect(told).toHaveCount(0);
    await page.reload();
    await expect(page.locator('.card.now')).toBeVisible();
    await expect(page.locator('.slip')).toHaveCount(0);
    await page.locator('.card.now .card-open').click();
    await benchStands(page);
    await levelStands(page, -40);
  });

  test('among the acts of a run: it goes on from before them, and the whole is set aside', async ({ page }) => {
    await openBench(page);
    await setLevel(page, -40);
    await levelStored(page, -40);
    const [run] = await stored(page, 'open');
    await page.goto('about:blank');
    await page.goto('/');
    const late = { atMs: 8.64e7, type: 'slugTurned', slug: 'Z9', turns: 1 };
    await scribble(page, 'open', [{ ...run, events: [...(run!.events as unknown[]), late] }]);
    await page.goto(BENCH);
    await benchStands(page);
    await levelStands(page, -40);
    const told = slip(page, words.aside.stopsShort(1));
    const saving = page.waitForEvent('download');
    await told.getByRole('button', { name: words.saveAside(1) }).click();
    const file = readRunFile(await textOf(await saving), 'aside.json');
    expect(file.ok && file.value.events.at(-1)).toEqual(late);
    await told.getByRole('button', { name: words.seen }).click();
    await setLevel(page, -41);
    await levelStored(page, -41);
  });

  test('in the last copy: it takes no run’s place, and is set aside', async ({ page }) => {
    await openBench(page);
    await setLevel(page, -40);
    await levelStored(page, -40);
    await page.goto('about:blank');
    await page.goto('/');
    await page.evaluate(() => localStorage.setItem('haystack-lifeboat', '{"runId":"x","scenarioId":"first-cur'));
    await page.reload();
    await expect(slip(page, words.aside.unreadable(1))).toBeVisible();
    expect(await page.evaluate(() => localStorage.getItem('haystack-lifeboat'))).toBeNull();
    await page.locator('.card.now .card-open').click();
    await benchStands(page);
    await levelStands(page, -40);
  });

  test('in a kept run’s file: the report says so, and the file can be saved as it is', async ({ page }) => {
    await openBench(page);
    await signOff(page);
    await standing(page, 'texts', 1);
    const [kept] = await standing(page, 'kept', 1);
    await scribble(page, 'texts', [{ runId: kept!.runId, text: '{"format":"haystack-run","version":1' }]);
    await page.reload();
    await expect(page.getByText(words.badText)).toBeVisible();
    const saving = page.waitForEvent('download');
    await button(page, words.report.save).click();
    expect(await textOf(await saving)).toBe('{"format":"haystack-run","version":1');
    await button(page, words.toCourse).click();
    await expect(cardOf(page, setup)).toBeVisible();
  });
});

test.describe('a page that is killed', () => {
  test('in the middle of work leaves the run as it was written last', async ({ page, context }) => {
    await openBench(page);
    await setLevel(page, -40);
    await levelStored(page, -40);
    await kill(page);
    const next = await context.newPage();
    await next.goto(BENCH);
    await benchStands(next);
    await levelStands(next, -40);
  });

  test('in the middle of keeping a signed run leaves it lying open, and no half of a report', async ({
    page,
    context,
  }) => {
    await page.addInitScript(() => {
      const { add } = IDBObjectStore.prototype;
      IDBObjectStore.prototype.add = function (this: IDBObjectStore, ...record) {
        // Everything is handed to the database, and never gets done: one more question keeps it open, again and again.
        const ask = (): void => {
          this.get('nothing').onsuccess = ask;
          (window as unknown as { midway: boolean }).midway = true;
        };
        if (this.name === 'texts') ask();
        return add.apply(this, record);
      };
    });
    await openBench(page);
    await setLevel(page, -40);
    await turnASlug(page);
    await lastActStored(page, { type: 'slugTurned' });
    await sign(page);
    await page.waitForFunction(() => (window as unknown as { midway?: boolean }).midway);
    await kill(page);
    const next = await context.newPage();
    await next.goto('/');
    await expect(next.locator('.card.now')).toContainText(courseWords.onBench);
    expect(await stored(next, 'kept')).toEqual([]);
    expect(await stored(next, 'texts')).toEqual([]);
    await next.locator('.card.now .card-open').click();
    await benchStands(next);
    await levelStands(next, -40);
    // The question is still open.
    await answerSign(next);
    await expect(next.locator('.score-figure')).toBeVisible();
    await standing(next, 'kept', 1);
  });
});

/** Its process ends at once: no closing, no last copy. */
async function kill(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const gone = page.waitForEvent('crash');
  void session.send('Page.crash').catch(() => {});
  await gone;
}

test('a room that fails says so, and the learner saves the run, goes on, and is back at work', async ({
  page,
  watch,
}) => {
  await openBench(page);
  await setLevel(page, -40);
  await levelStored(page, -40);
  await page.addInitScript(() => {
    const { showModal } = HTMLDialogElement.prototype;
    HTMLDialogElement.prototype.showModal = function (this: HTMLDialogElement) {
      if (sessionStorage.getItem('fail') === 'yes') throw new Error('made to fail');
      return showModal.call(this);
    };
    sessionStorage.setItem('fail', sessionStorage.getItem('fail') ?? 'yes');
  });
  await button(page, shellWords.home).click();
  await expect(page.locator('.card.now')).toBeVisible();
  await page.reload();
  await page.locator('.card.now .card-open').click();
  await expect(page.getByRole('heading', { name: words.broken.title })).toBeVisible();
  await expect(page.getByText(words.broken.what('made to fail'))).toBeVisible();
  await isSound(page);
  expect(watch.complaints.splice(0)).toEqual([expect.stringContaining('made to fail')]);

  const saving = page.waitForEvent('download');
  await button(page, words.broken.saveRun).click();
  const file = readRunFile(await textOf(await saving), 'saved.json');
  expect(file.ok && file.value.events.at(-1)).toMatchObject({ control: 'levelDb', value: -40 });
  const savingAll = page.waitForEvent('download');
  await button(page, words.broken.saveAll).click();
  expect(JSON.parse(await textOf(await savingAll))).toMatchObject({ format: 'haystack-logbook' });

  await button(page, words.broken.goOn).click();
  await page.evaluate(() => sessionStorage.setItem('fail', 'no'));
  await page.locator('.card.now .card-open').click();
  await expect(page.getByRole('dialog', { name: dialogWords.suspended.title })).toBeVisible();
  await button(page, dialogWords.suspended.resume).click();
  await levelStands(page, -40);
});
