/** An exam from end to end: sealed in the workshop, opened by its phrase, done, handed in as one file, taken apart by the class; and what it does not let anybody do. */
import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { headerWords } from '../../src/words/en/bench.ts';
import { dialogWords } from '../../src/words/en/benchTalk.ts';
import { classroomWords } from '../../src/words/en/classroom.ts';
import { courseWords } from '../../src/words/en/course.ts';
import { eveningWords } from '../../src/words/en/evening.ts';
import { examWords as say } from '../../src/words/en/exam.ts';
import { fitsIn, SIZES, SIZES_TO_READ } from './fits.ts';
import { begin, expect, test } from './page.ts';

test.use({ sharesWindow: true });

const PHRASE = 'lantern on the slip';

async function made(page: Page): Promise<string> {
  await page.goto('/#/workshop/evening');
  await page.getByLabel(eveningWords.name, { exact: true }).fill('Winter exam');
  await page.getByLabel(eveningWords.minutes, { exact: true }).fill('90');
  for (const id of ['flat-top', 'radio-sealed']) {
    await page.getByLabel(eveningWords.addOne).selectOption(id);
    await page.getByRole('button', { name: eveningWords.add, exact: true }).press('Enter');
  }
  await page.getByLabel(eveningWords.passMark).fill('3');
  await page.getByLabel(eveningWords.minutesOf('Too good a top')).fill('91');
  await page.getByLabel(eveningWords.exam.seal).check();
  const save = page.getByRole('button', { name: eveningWords.exam.save, exact: true });
  await expect(save).toBeDisabled();
  await page.getByLabel(eveningWords.exam.phrase).fill(PHRASE);
  // Neither more passes than scenarios, nor more time for one than for all.
  await expect(page.getByText(eveningWords.lacks.passMark)).toBeVisible();
  await expect(page.getByText(eveningWords.lacks.minutesEach)).toBeVisible();
  await expect(save).toBeDisabled();
  await page.getByLabel(eveningWords.passMark).fill('2');
  await page.getByLabel(eveningWords.minutesOf('Too good a top')).fill('25');
  await fitsIn(page, SIZES, () => expect(save).toBeVisible());
  const saving = page.waitForEvent('download');
  await save.press('Enter');
  return readFileSync(await (await saving).path(), 'utf8');
}

test('an exam is sealed, opened by its phrase, done once, and handed in as one file', { tag: ['@shelf'] }, async ({
  page,
}) => {
  test.setTimeout(240_000);
  const sealed = await made(page);
  expect(sealed).not.toContain('flat-top');
  await page.goto('/#/course');
  await page
    .locator('input[data-picks=own]')
    .setInputFiles({ name: 'exam.json', mimeType: 'application/json', buffer: Buffer.from(sealed) });
  await page.getByRole('button', { name: courseWords.own.exam.goNamed('Winter exam') }).press('Enter');
  await expect(page.getByText(say.sealed(2, 90))).toBeVisible();
  const open = page.getByRole('button', { name: say.open, exact: true });
  await expect(open).toBeDisabled();
  await page.getByLabel(say.number).fill('seven');
  await page.getByLabel(say.phrase).fill('lantern on the ship');
  await open.click();
  await expect(page.getByText(say.badNumber)).toBeVisible();
  await page.getByLabel(say.number).fill('7');
  await open.click();
  await expect(page.getByText(say.wrongPhrase)).toBeVisible();
  await page.getByLabel(say.phrase).fill(` ${PHRASE.toUpperCase()} `);
  await page.getByLabel(say.phrase).press('Enter');
  await expect(page.getByText(say.candidate('7'))).toBeVisible();
  await expect(page.getByRole('timer')).toContainText('1:');
  const items = page.locator('.exam-items li');
  await expect(page.getByText(say.toPass(2, 2))).toBeVisible();
  await expect(page.getByText(say.atEnd)).toBeVisible();
  await expect(items.first()).toContainText(say.minutes(25));
  await expect(items).toHaveText([/To the bench/, new RegExp(say.waits('V-\\d\\d'))]);
  await fitsIn(page, SIZES_TO_READ, () => expect(items).toHaveCount(2));
  await page.setViewportSize({ width: 1440, height: 900 });
  // What waits cannot be had by its address either.
  await page.goto('/#/bench/radio-sealed');
  await expect(page.getByRole('heading', { name: say.notNow })).toBeVisible();
  await page.getByRole('button', { name: say.toExam }).click();
  // Nothing shows meanwhile how the job is done, or how any set stands.
  await page.goto('/#/bench/flat-top/shown');
  await expect(page.getByRole('heading', { name: say.notShown })).toBeVisible();
  await page.goto('/#/workshop');
  await expect(page.getByRole('heading', { name: say.workshopShut })).toBeVisible();
  await page.getByRole('button', { name: say.toExam }).click();
  await items.first().getByRole('button').press('Enter');
  await expect(page.getByRole('dialog')).toBeVisible();
  await begin(page);
  await expect(page.locator('.exam-clock')).toContainText('1:');
  await expect(page.locator('.exam-clock')).toContainText(/This scenario: 0:2[45]:/);
  await page.getByRole('button', { name: headerWords.signOff, exact: true }).press('Enter');
  const question = page.getByRole('dialog', { name: dialogWords.signOff.title });
  await question.getByRole('textbox').fill('somebody else');
  await question.getByRole('button', { name: dialogWords.signOff.sign, exact: true }).press('Enter');
  // What it was worth is told nowhere: not after signing, not on the course, not by the address of its report.
  await expect(page.getByText(say.handedInCount(1, 2))).toBeVisible({ timeout: 60_000 });
  await expect(page.locator('.score-figure')).toHaveCount(0);
  const runId = await page.evaluate(
    () =>
      new Promise<string>((done) => {
        const opening = indexedDB.open('haystack');
        opening.onsuccess = () => {
          const base = opening.result;
          const store = [...base.objectStoreNames].find((name) => name === 'kept')!;
          const asked = base.transaction(store).objectStore(store).getAll();
          asked.onsuccess = () => {
            base.close();
            done((asked.result as { runId: string }[])[0]!.runId);
          };
        };
      }),
  );
  await page.goto(`/#/report/${runId}`);
  await expect(page.getByRole('heading', { name: say.notTold })).toBeVisible();
  await page.goto('/#/course');
  await expect(page.getByRole('button', { name: 'Class', exact: true })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Report', exact: true })).toHaveCount(0);
  // Once is once.
  await page.goto('/#/bench/flat-top');
  await expect(page.getByRole('heading', { name: say.notNow })).toBeVisible();
  await page.getByRole('button', { name: say.toExam }).press('Enter');
  await expect(page.getByText(say.handedInCount(1, 2))).toBeVisible();
  await expect(items.nth(1).getByRole('button')).toBeVisible();
  await page.getByRole('button', { name: say.handIn, exact: true }).press('Enter');
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: say.yes, exact: true }).press('Enter');
  const runs = readFileSync(await (await saving).path(), 'utf8');
  await expect(page.getByText(say.done)).toBeVisible();
  // Now the whole is told: one of two, under the mark.
  const whole = page.locator('.exam-whole');
  await expect(whole).toBeVisible({ timeout: 60_000 });
  await expect(whole.locator('.exam-standing')).toContainText(say.whole.standing.missed);
  await expect(whole.locator('.exam-standing')).toContainText(say.whole.passedOf(0, 2));
  await expect(whole.locator('.exam-standing')).toContainText(say.whole.mark(2));
  await expect(whole.locator('tbody tr')).toHaveCount(2);
  await expect(whole.locator('tbody tr').nth(1)).toContainText(say.whole.missing(0));
  await fitsIn(page, SIZES_TO_READ, () => expect(whole).toBeVisible());
  await page.setViewportSize({ width: 1440, height: 900 });
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('.exam-on-paper')).toContainText(say.candidate('7'));
  await expect(page.locator('.exam-on-paper tbody tr')).toHaveCount(2);
  await expect(page.locator('.exam-main')).toBeHidden();
  await page.emulateMedia({ media: 'screen' });
  await page.evaluate(() => dispatchEvent(new Event('afterprint')));
  await whole.getByRole('button', { name: /Report of/ }).press('Enter');
  await expect(page.locator('.score-figure')).toBeVisible({ timeout: 60_000 });

  await page.goto('/#/class');
  await page.locator('input[data-picks=files]').setInputFiles({
    name: 'seven.json',
    mimeType: 'application/json',
    buffer: Buffer.from(runs),
  });
  await expect(page.locator('.run .state .pill').first()).toHaveText(classroomWords.outcomes.verified, {
    timeout: 60_000,
  });
  await expect(page.locator('.run .learner button bdi').first()).toHaveText('7');
  const exams = page.locator('.class-exams tbody tr');
  await expect(exams).toHaveCount(1);
  await expect(exams).toHaveAttribute('data-standing', 'missed');
  await expect(exams).toContainText(say.whole.passedShort(0, 2));
  await expect(exams).toContainText(classroomWords.exams.byFile);
  // Another name over the same runs.
  await page
    .locator('input[data-picks=more], input[data-picks=files]')
    .first()
    .setInputFiles({
      name: 'eight.json',
      mimeType: 'application/json',
      buffer: Buffer.from(runs.replace('"candidate":"7"', '"candidate":"8"')),
    });
  await expect(page.locator('.run .state .pill', { hasText: classroomWords.outcomes.unreadable })).toHaveCount(1);
});

test('when the time is over the bench is graded as it stands', async ({ page }) => {
  test.setTimeout(240_000);
  const sealed = await made(page);
  await page.goto('/#/course');
  await page
    .locator('input[data-picks=own]')
    .setInputFiles({ name: 'exam.json', mimeType: 'application/json', buffer: Buffer.from(sealed) });
  await page.getByRole('button', { name: courseWords.own.exam.goNamed('Winter exam') }).click();
  await page.getByLabel(say.number).fill('3');
  await page.getByLabel(say.phrase).fill(PHRASE);
  await page.getByRole('button', { name: say.open, exact: true }).click();
  await page.locator('.exam-items li').first().getByRole('button').click();
  await expect(page.getByRole('dialog')).toBeVisible();
  await begin(page);
  await expect(page.locator('.exam-clock')).toBeVisible();
  // Ninety minutes on, as the day's clock tells them.
  await page.evaluate(() => {
    const now = Date.now.bind(Date);
    Date.now = () => now() + 91 * 60_000;
  });
  await expect(page.getByText(say.handedInCount(1, 2))).toBeVisible({ timeout: 60_000 });
});
