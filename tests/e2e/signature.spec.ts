/** Who signs: the name is asked for once, remembered, and stands in the run file under its seal. */
import { readFileSync } from 'node:fs';
import { judgeText } from '../../src/judge/judgeRun.ts';
import { headerWords } from '../../src/words/en/bench.ts';
import { dialogWords, refusalWords } from '../../src/words/en/benchTalk.ts';
import { reportWords } from '../../src/words/en/reportPage.ts';
import { begin, expect, openJob, shippedSetup, test } from './page.ts';
import { isSound } from './soundPage.ts';

test.use({ sharesWindow: true });

const setup = shippedSetup('vision-if', 'flat-top');
const NAME = 'Ines, no. 17';

test('the name goes from the signature into the run file, and is there for the next run', {
  tag: ['@shelf', '@upright'],
}, async ({ page }) => {
  const field = page.getByRole('textbox', { name: dialogWords.signOff.learner });
  const signOff = page.getByRole('button', { name: headerWords.signOff, exact: true });
  await openJob(page, setup);
  await begin(page);
  await signOff.click();
  await expect(field).toHaveValue('');
  await field.fill(NAME);
  await isSound(page);
  await page.getByRole('dialog').getByRole('button', { name: dialogWords.signOff.sign, exact: true }).click();
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: reportWords.exportRun, exact: true }).first().click();
  const text = readFileSync(await (await saving).path(), 'utf8');
  const { design } = setup;
  const { verdict, run } = judgeText(text, 'run.json', () => ({
    ok: true,
    value: { ...(design ?? setup), scenarioHash: null },
  }));
  expect(verdict.kind).toBe('verified');
  expect(run).toMatchObject({
    learner: NAME,
    day: expect.stringMatching(/^\d{4}-\d\d-\d\d$/),
    runId: expect.any(String),
  });

  await page.goto('/');
  await openJob(page, setup);
  await begin(page);
  await signOff.click();
  await expect(field).toHaveValue(NAME);
});

test('on a bare bench the question says that there is nothing to sign', async ({ page }) => {
  await openJob(page, shippedSetup('first-sweep', 'first-curve'));
  await begin(page);
  await page.getByRole('button', { name: headerWords.signOff, exact: true }).click();
  const question = page.getByRole('dialog');
  await expect(question.getByRole('alert')).toHaveText('');
  await question.getByRole('button', { name: dialogWords.signOff.sign, exact: true }).click();
  await expect(question.getByRole('alert')).toHaveText(refusalWords.nothingToSign);
  await isSound(page);
  await question.getByRole('button', { name: dialogWords.signOff.keep, exact: true }).click();
  await expect(question).toHaveCount(0);
});
