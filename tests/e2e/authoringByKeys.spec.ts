/** A fault scenario by keys alone: from the course page to the workshop, slugs, cards, words, certified, handed out as file, link and place on an evening sheet; and a receiver in the making. */
import { readFileSync } from 'node:fs';
import type { Locator, Page } from '@playwright/test';
import { ownReceiverWords } from '../../src/words/en/ownReceiver.ts';
import { shellWords } from '../../src/words/en/shell.ts';
import { workshopWords as say } from '../../src/words/en/workshop.ts';
import { expect, test } from './page.ts';

test.use({ sharesWindow: true });

/** More places to stop at than any page has. */
const MOST_TABS = 200;

type Where = 'there' | 'before' | 'after';

/** Steps by the tab key, the shorter way, until it stands there: whatever cannot be reached so fails. */
async function tabTo(page: Page, target: Locator): Promise<void> {
  await expect(target).toBeVisible();
  for (let i = 0; i < MOST_TABS; i++) {
    const where = await target.evaluate((element): Where => {
      const now = document.activeElement ?? document.body;
      if (element.contains(now)) return 'there';
      const isAfter = element.compareDocumentPosition(now) & Node.DOCUMENT_POSITION_FOLLOWING;
      return isAfter !== 0 && now !== document.body ? 'after' : 'before';
    });
    if (where === 'there') return;
    await page.keyboard.press(where === 'after' ? 'Shift+Tab' : 'Tab');
  }
  throw new Error(`not reached by the tab key: ${target}`);
}

/** Presses a key where it stands; whoever works by keys then still stands somewhere. */
async function press(page: Page, key: string): Promise<void> {
  await page.keyboard.press(key);
  await expect.poll(() => page.evaluate(() => document.activeElement?.matches(':not(body, :disabled)'))).toBe(true);
}

async function act(page: Page, target: Locator, key = 'Enter'): Promise<void> {
  await tabTo(page, target);
  await press(page, key);
}

async function write(page: Page, target: Locator, text: string): Promise<void> {
  await tabTo(page, target);
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(text);
}

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const field = (page: Page, name: string) => page.getByLabel(name, { exact: true });

test('a scenario is made, certified and handed out without a pointer', async ({ page }) => {
  await page.goto('/');
  await expect(page.getByRole('heading', { level: 1 }).first()).toBeVisible();
  await tabTo(page, button(page, shellWords.workshop));
  await page.keyboard.press('Enter');
  await expect(page.locator('.seen-tube .tube')).toBeVisible({ timeout: 60_000 });
  // The receiver, by its first letters.
  await tabTo(page, page.getByRole('combobox', { name: say.receiverField, exact: true }));
  await page.keyboard.type('Bollard');
  await expect(page.locator('.plan-slug')).toHaveCount(2);
  const caughtUp = () => expect(page.locator('.seen')).toHaveAttribute('aria-busy', 'false', { timeout: 60_000 });
  await caughtUp();
  // A slug off, and what comes of it heard.
  const slug = page.locator('.plan-slug').first();
  await tabTo(page, slug);
  for (let i = 0; i < 6; i++) await press(page, 'ArrowUp');
  await expect(slug).toHaveAttribute('aria-valuetext', say.turned('3/4 turn', 'in'));
  await act(page, button(page, say.putRightOf('A')));
  await expect(slug).toHaveAttribute('aria-valuetext', say.turned('right', 'none'));
  await press(page, 'Control+z');
  await expect(slug).toHaveAttribute('aria-valuetext', say.turned('3/4 turn', 'in'));
  await caughtUp();
  await expect(page.locator('.seen-count')).toHaveAttribute('aria-live', 'polite');
  await expect(page.locator('.seen-count')).not.toHaveText(say.noneWrong);
  // Cards come and go: the next chip, the next card has the focus then, and all of it is said.
  const cards = page.locator('.wrong-card');
  await act(page, page.locator('.add-cards .chip', { hasText: say.faults.wrongLoad }));
  await expect(cards).toHaveCount(1);
  await act(page, page.locator('.add-cards .chip', { hasText: say.flaws.phaseLag.name }));
  await expect(page.locator('.add-cards .chip', { hasText: say.flaws.xSwapped.name })).toBeFocused();
  await press(page, 'Enter');
  await expect(cards).toHaveCount(3);
  const heard = page.locator('.cards-panel [aria-live]').first();
  await expect(heard).toContainText(say.flaws.xSwapped.name);
  const ohms = field(page, `${say.faults.wrongLoad}, ${say.value(say.fields.ohms!)}`);
  await write(page, ohms, '1.5k');
  await press(page, 'Enter');
  await expect(ohms).toHaveValue('1.5 k\u03a9');
  await act(page, button(page, say.takeOff(say.faults.wrongLoad)));
  await expect(button(page, say.takeOff(say.flaws.phaseLag.name))).toBeFocused();
  await press(page, 'Enter');
  await press(page, 'Enter');
  await expect(cards).toHaveCount(0);
  await expect(heard).toHaveText(say.nothingWrong);
  // Back as far as it goes, and on: the button keeps the focus when there is no more to undo.
  const undo = page.locator('.desk-undo');
  await tabTo(page, undo);
  for (let left = 9; (await undo.getAttribute('aria-disabled')) !== 'true' && left > -20; left--)
    await press(page, 'Enter');
  await expect(undo).toBeFocused();
  await expect(undo).toHaveText('0');
  await expect(page.locator('.workshop-main > [role=status]')).toHaveText(say.undone(0));
  const redo = page.locator('.desk-redo');
  await tabTo(page, redo);
  await press(page, 'Enter');
  await expect(page.locator('.workshop-main > [role=status]')).toContainText(say.redone(0).slice(0, 8));
  for (let left = 20; (await redo.getAttribute('aria-disabled')) !== 'true' && left > 0; left--)
    await press(page, 'Enter');
  await expect(slug).toHaveAttribute('aria-valuetext', say.turned('3/4 turn', 'in'));
  // Words, a hint put on and taken off, a rule.
  const form = say.form;
  await write(page, field(page, form.name), 'After the regatta');
  await write(page, field(page, form.brief), 'One slug is off.');
  await write(page, field(page, form.story), 'It came back in a pocket.');
  await write(page, field(page, form.lesson), 'Look first.');
  await act(page, button(page, form.addHint));
  await act(page, button(page, form.addHint));
  await write(page, field(page, form.hint(1)), 'Look at the top of the curve.');
  await act(page, button(page, form.dropHint(2)));
  await expect(button(page, form.dropHint(1))).toBeFocused();
  await act(page, page.getByLabel(form.hintsOn, { exact: true }), ' ');
  await expect(page.getByLabel(form.hintsOn, { exact: true })).toBeChecked();
  await expect(page.locator('.problems .desk-note')).toHaveText(say.noProblems);
  // Certified, and out by all three ways.
  const { proof } = say;
  await act(page, button(page, proof.start));
  await expect(page.locator('.draft-stamp')).toContainText(proof.solvable, { timeout: 120_000 });
  await act(page, button(page, proof.handOut.link));
  await expect(page.locator('.hand-out [role=status]')).toContainText(proof.handOut.linkReady);
  await act(page, button(page, proof.handOut.evening));
  await expect(page.locator('.hand-out [role=status]')).toContainText(proof.handOut.told.onSheet);
  const coming = page.waitForEvent('download');
  await act(page, button(page, proof.handOut.file));
  const file: unknown = JSON.parse(readFileSync(await (await coming).path(), 'utf8'));
  expect(file).toMatchObject({ title: 'After the regatta', aids: { hints: true } });
  // The tab that was pressed has the focus in the next place too.
  await act(page, button(page, say.evening.tab));
  await expect(page.locator('.evening-list li')).toHaveCount(1);
  await expect(button(page, say.evening.tab)).toBeFocused();
  await write(page, field(page, say.evening.name), 'Second Thursday');
  await expect(field(page, say.evening.name)).toHaveValue('Second Thursday');
});

test('a receiver is named, its sheet and plan changed, without a pointer', async ({ page }) => {
  const own = ownReceiverWords;
  await page.goto('/#/workshop/receiver');
  await act(page, button(page, own.begin.example));
  await expect(button(page, own.save.deck)).toBeEnabled();
  await act(page, button(page, own.deck.edit));
  await expect(field(page, own.deck.text)).toBeFocused();
  await act(page, button(page, own.deck.leave));
  await act(page, page.getByLabel(own.network.turned('L1')), ' ');
  await expect(page.getByLabel(own.network.turned('L1'))).toBeFocused();
  await press(page, 'Control+z');
  await act(page, button(page, own.network.takeAway('TP3')));
  await act(page, page.locator('.made-sheet .made-small').first());
  await expect(page.locator('.made-sheet .made-small').first()).toBeFocused();
  const can = page.getByRole('button', { name: /^Can T1, / });
  const before = (await can.getAttribute('aria-label'))!;
  await act(page, can, 'ArrowDown');
  await expect(can).not.toHaveAttribute('aria-label', before);
  await act(page, page.locator('.made-parts .made-small').first());
  const undo = page.locator('.made-undo');
  await tabTo(page, undo);
  for (let left = 9; (await undo.getAttribute('aria-disabled')) !== 'true' && left > 0; left--)
    await press(page, 'Enter');
  await expect(undo).toBeFocused();
  await expect(page.locator('.made-bar [role=status]')).toHaveText(say.undone(0));
  await expect(can).toHaveAttribute('aria-label', before);
  await act(page, button(page, say.removeDraft));
  await tabTo(page, button(page, say.remove));
  await press(page, 'Enter');
  await expect(button(page, own.begin.example)).toBeVisible();
});
