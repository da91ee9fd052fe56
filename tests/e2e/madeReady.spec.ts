/** A helper who sets the bench up: asked for in the briefing by whoever has done it three times alone, by nobody else, and told of in the report. */
import { kindOfSetUp } from '../../src/bench/madeReady.ts';
import { keptRecord } from '../../src/services/store/layout.ts';
import { dialogWords } from '../../src/words/en/benchTalk.ts';
import { reportWords } from '../../src/words/en/reportPage.ts';
import { layoutFaults } from './layoutFaults.ts';
import { expect, rail, railSays, shippedSetup, test } from './page.ts';
import { scribble, stored } from './storedRecords.ts';

test.use({ sharesWindow: true });

const setup = shippedSetup('first-sweep', 'off-centre');
const { helper, helperOffer, acknowledge, begin } = dialogWords.briefing;

/** A kept run that shows a set-up of the kind. */
const shown = (runId: string) =>
  keptRecord({
    ...{ runId, scenarioId: 'both-ways', track: 'first-sweep', receiver: 'loose-can-10m7', sealed: false },
    ...{ learner: null, total: 92, passed: true, lines: [], signedAtMs: 0, serial: Number(runId) },
    setUp: kindOfSetUp(setup),
  });

test('has the bench set up after three set-ups alone, by keyboard @shelf @upright', async ({ page }) => {
  await page.goto('/#/bench/off-centre');
  const dialog = page.getByRole('dialog', { name: setup.scenario.title });
  await expect(dialog).toBeVisible();
  await expect(dialog.getByRole('button', { name: helper })).toHaveCount(0);
  await scribble(
    page,
    'kept',
    ['1', '2', '3'].map((runId) => ({ ...shown(runId) })),
  );
  await page.reload();
  await expect(dialog.getByText(helperOffer(3, 5))).toBeVisible();
  expect(await page.evaluate(layoutFaults, 'dialog')).toEqual([]);
  const tick = dialog.getByRole('checkbox', { name: acknowledge });
  if ((await tick.count()) > 0) {
    await expect(dialog.getByRole('button', { name: helper })).toBeDisabled();
    await tick.press(' ');
  }
  await expect(dialog.getByRole('button', { name: begin, exact: true })).toBeVisible();
  await dialog.getByRole('button', { name: helper }).press('Enter');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await expect(rail(page)).toHaveAttribute('aria-label', railSays(['safe', 'connect', 'setUp']));

  await page.locator('.sign-off').press('Enter');
  const question = page.getByRole('dialog', { name: dialogWords.signOff.title });
  await question.getByRole('button', { name: dialogWords.signOff.sign, exact: true }).press('Enter');
  await expect(page.getByText(reportWords.helped(5)).first()).toBeVisible();
  // What somebody else set up shows nothing.
  await expect.poll(async () => (await stored(page, 'kept')).length).toBe(4);
  expect((await stored(page, 'kept')).filter((run) => run.setUp !== undefined)).toHaveLength(3);
});
