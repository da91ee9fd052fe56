/** A small mixed class is brought to the class room: each file told apart, sorted, printed, saved as a table, opened as a report, and nothing kept in the learner's logbook. */
import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { classroomWords as say } from '../../src/words/en/classroom.ts';
import { MARKUP_NAME, madeClass } from '../judge/madeClass.ts';
import { expect, test } from './page.ts';
import { isSound } from './soundPage.ts';

test.use({ sharesWindow: true });

const made = madeClass();
const all = Object.keys(made.files).length;

async function bringClass(page: Page): Promise<void> {
  const files = Object.entries(made.files).map(([name, text]) => ({
    name,
    mimeType: 'application/json',
    buffer: Buffer.from(text),
  }));
  await page.locator('input[data-picks=files]').setInputFiles(files);
  await expect(page.getByText(say.graded(all))).toBeVisible({ timeout: 60_000 });
}

test('a mixed class is told apart, and text is text', async ({ page }) => {
  await page.goto('/');
  await page.getByRole('button', { name: 'Class', exact: true }).click();
  await expect(page.getByRole('heading', { name: say.title, exact: true })).toBeVisible();
  await expect(page.getByText(say.what)).toBeVisible();
  await expect(page.getByText(say.how)).toBeVisible();
  await bringClass(page);
  const states = page.locator('.run .state .pill:first-child');
  await expect(states).toHaveText([
    ...['verified', 'verified', 'altered', 'altered', 'unfinished', 'otherScenario', 'otherRules', 'impossible'].map(
      (outcome) => say.outcomes[outcome as keyof typeof say.outcomes],
    ),
    ...Array.from({ length: 3 }, () => say.outcomes.unreadable),
  ]);
  await expect(page.locator('.run .state').nth(1)).toContainText(say.sameAs(1));
  await expect(page.locator('.run .learner button bdi').nth(1)).toHaveText(MARKUP_NAME);
  expect(await page.locator('img').count()).toBe(0);
  await expect(page.locator('.run').first().getByRole('img', { name: say.yes })).toHaveCount(4);
  await expect(page.locator('.run .points').first()).toHaveText(`${made.total}`);
  // By points, most first; a second time the other way.
  const points = page.getByRole('columnheader', { name: say.columns.points }).getByRole('button');
  await points.click();
  await expect(page.locator('.run .points').first()).toHaveText(`${made.total}`);
  await expect(page.locator('.run .points').last()).toHaveText('\u2013');
  await points.press('Enter');
  await expect(page.locator('.run .points').first()).not.toHaveText(`${made.total}`);
  await isSound(page);
  // A refused file says why, with its place.
  await page.getByRole('button', { name: say.open(say.nobody, 9) }).press('Enter');
  await expect(page.locator('.opened .reason')).toContainText('line 1, column');
  await isSound(page);
  // The report of a run that was never signed off says so above its points.
  await page.getByRole('button', { name: say.open('Emil', 5) }).press('Enter');
  await page.getByRole('button', { name: say.report }).click();
  await expect(page.getByText(say.neverSigned)).toBeVisible();
});

test('a row has a note that stays, and its report is not the learner’s own', async ({ page }) => {
  await page.goto('/#/class');
  await bringClass(page);
  await page.getByRole('button', { name: say.open('Anna', 1) }).click();
  await page.getByLabel(say.yourNote('Anna')).fill('A fine top.');
  await expect(page.locator('.run .note').first()).toHaveText('A fine top.');
  await page.getByRole('button', { name: say.report }).click();
  await expect(page.locator('.score-figure')).toHaveText(`${made.total}`);
  await expect(page.getByText(say.reportOf('a-anna.json'))).toBeVisible();
  await isSound(page);
  await page.getByRole('button', { name: say.backToClass }).click();
  // The list is still there, and nobody's course has a run in it.
  await expect(page.locator('.run')).toHaveCount(all);
  await expect(page.getByRole('button', { name: 'Report', exact: true })).toHaveCount(0);
  await page.reload();
  await expect(page.locator('.run')).toHaveCount(0);
  await bringClass(page);
  await expect(page.locator('.run .note').first()).toHaveText('A fine top.');
  await page.getByRole('button', { name: say.open('Anna', 1) }).click();
  await page.getByRole('button', { name: say.report }).click();
  await page.getByRole('button', { name: say.keepRun }).click();
  await expect(page.getByText(say.kept)).toBeVisible();
  await page.goto('/');
  await expect(page.getByRole('button', { name: 'Report', exact: true })).toBeVisible();
});

test('the table is saved and printed whole, whatever is shown', async ({ page }) => {
  await page.goto('/#/class');
  await bringClass(page);
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: say.csvLong }).click();
  const saved = await saving;
  expect(saved.suggestedFilename()).toBe(say.csvName);
  const lines = readFileSync(await saved.path(), 'utf8').split('\r\n');
  expect(lines[0]).toBe('file,learner,scenario,verdict,passed,points,reason,sameAs');
  expect(lines).toHaveLength(all + 2);
  expect(lines[1]).toBe(`a-anna.json,Anna,first-curve,verified,${made.passed},${made.total},,b-copied.json`);
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('.paper-runs tbody tr')).toHaveCount(all);
  await expect(page.locator('.paper-list')).toBeVisible();
  // As wide as A4 between its margins: no word of a head is broken.
  await page.setViewportSize({ width: 718, height: 1000 });
  const broken = () =>
    page.locator('.paper-runs th').evaluateAll((heads) =>
      heads
        .filter((head) => {
          const words = document.createRange();
          words.selectNodeContents(head);
          return !/\s/.test(head.textContent ?? '') && words.getClientRects().length > 1;
        })
        .map((head) => head.textContent),
    );
  await expect.poll(broken).toEqual([]);
  await expect(page.locator('.class-main')).toBeHidden();
});

test('files may be dropped anywhere, and what is no file is refused in words', async ({ page }) => {
  await page.goto('/#/class');
  await expect(page.locator('.drop-place')).toBeVisible();
  const drop = (parts: Readonly<Record<string, string>>) =>
    page.evaluate((files) => {
      const data = new DataTransfer();
      for (const [name, text] of Object.entries(files)) data.items.add(new File([text], name));
      const told = { bubbles: true, cancelable: true, dataTransfer: data };
      document.querySelector('.class-words')!.dispatchEvent(new DragEvent('drop', told));
    }, parts);
  await drop({});
  await expect(page.getByRole('alert')).toHaveText(say.notFiles);
  await drop({ 'a-anna.json': made.files['a-anna.json']!, 'picture.png': 'not text \u0000' });
  await expect(page.getByText(say.graded(2))).toBeVisible({ timeout: 30_000 });
  await expect(page.locator('.run').nth(1)).toHaveAttribute('data-verdict', 'unreadable');
  await expect(page.getByRole('alert')).toHaveCount(0);
});

test('files and folders are chosen by the picker of the browser, and by the field where there is none', async ({
  page,
}) => {
  await page.goto('/#/class');
  const files = page.getByRole('button', { name: say.chooseFiles, exact: true });
  await expect(files).toBeVisible();
  // What the picker would give: handles, here to files of the browser's own store.
  await page.evaluate(async (texts) => {
    const root = await navigator.storage.getDirectory();
    const folder = await root.getDirectoryHandle('evening', { create: true });
    const written = async (name: string, text: string): Promise<FileSystemFileHandle> => {
      const handle = await folder.getFileHandle(name, { create: true });
      const writing = await handle.createWritable();
      await writing.write(text);
      await writing.close();
      return handle;
    };
    const handles: FileSystemFileHandle[] = [];
    for (const [name, text] of Object.entries(texts)) handles.push(await written(name, text));
    await written('list.txt', 'not a run');
    Object.assign(window, { showOpenFilePicker: async () => handles, showDirectoryPicker: async () => folder });
  }, made.files);
  await files.click();
  await expect(page.getByText(say.graded(all))).toBeVisible({ timeout: 60_000 });
  await page.getByRole('button', { name: say.clear, exact: true }).click();
  await page.getByRole('button', { name: say.chooseFolder, exact: true }).click();
  await expect(page.getByText(say.graded(all))).toBeVisible({ timeout: 60_000 });
  await expect(page.getByRole('alert')).toHaveText(say.leftAlone(1, ['evening/list.txt']));
  // Nothing chosen is nothing done; a picker that the browser keeps back leaves it to the field.
  const turned = (name: string) =>
    page.evaluate((error) => {
      const picker = async () => {
        throw new DOMException('', error);
      };
      Object.assign(window, { showOpenFilePicker: picker, showDirectoryPicker: picker });
    }, name);
  await turned('AbortError');
  await files.click();
  await expect(page.getByText(say.graded(all))).toBeVisible();
  await turned('SecurityError');
  const choosing = page.waitForEvent('filechooser');
  await files.click();
  await (await choosing).setFiles({
    ...{ name: 'late.json', mimeType: 'application/json' },
    buffer: Buffer.from(made.files['a-anna.json']!),
  });
  await expect(page.getByText(say.graded(all + 1))).toBeVisible({ timeout: 30_000 });
});
