/** A receiver of one's own from a deck, by pointer and by key: mended, named, its sheet changed, set out, saved as two files that the command line accepts, opened again, and kept for scenarios. */
import { readFileSync } from 'node:fs';
import type { Download, Page } from '@playwright/test';
import { readReceiverPair } from '../../src/files/readReceiverPair.ts';
import { EXAMPLE_DECK } from '../../src/making/exampleDeck.ts';
import { classroomWords } from '../../src/words/en/classroom.ts';
import { en } from '../../src/words/en/index.ts';
import { ownReceiverWords as say } from '../../src/words/en/ownReceiver.ts';
import { pair, sheetOn } from '../app/harbourCan.ts';
import { expect, test } from './page.ts';
import { isSound } from './soundPage.ts';

test.use({ sharesWindow: true });

const WRONG = EXAMPLE_DECK.replace('K2 L2p L2s', 'K2 L2p L2x');

interface Brought {
  readonly name: string;
  readonly text: string | Buffer;
}

async function bring(page: Page, ...files: readonly Brought[]): Promise<void> {
  await page
    .locator('input[data-picks=receiver]')
    .setInputFiles(files.map(({ name, text }) => ({ name, mimeType: 'text/plain', buffer: Buffer.from(text) })));
}

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const ready = (page: Page) => expect(button(page, say.save.deck)).toBeEnabled();

async function saved(page: Page, name: string): Promise<Brought> {
  const coming = page.waitForEvent('download');
  await button(page, name).click();
  const download: Download = await coming;
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') };
}

test('a deck becomes a receiver: mended, named, its sheet changed, saved and opened again', async ({ page }) => {
  await page.goto('/#/workshop/receiver');
  await expect(page.getByText(say.begin.what)).toBeVisible();
  await isSound(page);
  await bring(page, { name: 'Harbour watch.cir', text: WRONG });
  // The wrong line is marked, and what is likely meant is offered under it.
  await expect(page.locator('.made-lines li.wrong')).toContainText('K2 L2p L2x');
  await expect(page.getByText(say.response.waits)).toBeVisible();
  // Nothing is said to be right of what cannot be known yet.
  const checks = page.locator('.made-checks');
  await expect(checks.getByRole('img', { name: say.save.notKnown })).toHaveCount(3);
  await expect(checks.getByRole('img', { name: classroomWords.yes })).toHaveCount(0);
  await button(page, say.deck.put('L2s')).click();
  await expect(page.locator('.made-lines li.wrong')).toHaveCount(0);
  await expect(page.locator('.made-tube svg')).toBeVisible();
  await ready(page);
  await isSound(page);
  // Names.
  await page.getByLabel(say.network.setName, { exact: true }).fill('Harbour watch');
  await page.getByLabel(say.network.slugName('L1'), { exact: true }).fill('MIX');
  await page.getByLabel(say.network.slugName('L1'), { exact: true }).press('Enter');
  await expect(page.getByRole('button', { name: /^Can T1, / })).toBeVisible();
  const travel = page.getByLabel(say.network.travel('MIX'), { exact: true });
  await travel.fill('1');
  await travel.press('Enter');
  await expect(page.getByRole('list', { name: say.save.left })).toContainText('/adjusters/0/travelTurns');
  await expect(button(page, say.save.deck)).toBeDisabled();
  await travel.fill('16');
  await travel.press('Enter');
  await ready(page);
  // A line of the sheet is put on, another given a limit that slugs cannot hold, and taken off.
  await page.getByLabel(say.response.at, { exact: true }).fill('458');
  await button(page, say.response.put).click();
  const line = page.locator('.made-sheet li', { hasText: 'Level 458' });
  await expect(line).toBeVisible();
  await line.getByRole('textbox').fill('0.1');
  await line.getByRole('textbox').press('Enter');
  await expect(page.locator('.made-slack')).toContainText('no longer holds');
  await line.getByRole('textbox').fill('7');
  await line.getByRole('textbox').press('Enter');
  await expect(page.locator('.made-slack')).toContainText('still holds');
  await page.getByLabel(say.response.at, { exact: true }).fill('900');
  await button(page, say.response.put).click();
  await expect(page.getByText(say.response.refusals.outside)).toBeVisible();
  await ready(page);
  // The two files pass every check, and are opened again as they were.
  const deck = await saved(page, say.save.deck);
  const receiver = await saved(page, say.save.receiver);
  expect([deck.name, receiver.name]).toEqual(['harbour-watch.cir', 'harbour-watch.json']);
  const read = readReceiverPair({
    deck: { file: deck.name, text: String(deck.text) },
    receiver: { file: receiver.name, text: String(receiver.text) },
  });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  expect(read.value.receiver.adjusters[0]).toMatchObject({ id: 'MIX', travelTurns: 16 });
  expect(read.value.receiver.responses[0]!.specification.points.map(({ hz }) => hz)).toContain(458e3);
  // It outlives a reload, with the page as it was left; back and on again go on from there.
  await page.reload();
  await ready(page);
  await expect(page.getByLabel(say.network.setName, { exact: true })).toHaveValue('Harbour watch');
  await expect(page.locator('.made-undo')).toBeDisabled();
  // What is typed is a step once it has been entered.
  await page.getByLabel(say.network.setName, { exact: true }).fill('Harbour mist');
  await page.getByLabel(say.network.setName, { exact: true }).press('Enter');
  await page.locator('.made-undo').click();
  await expect(page.getByLabel(say.network.setName, { exact: true })).toHaveValue('Harbour watch');
  await page.locator('.made-redo').click();
  await expect(page.getByLabel(say.network.setName, { exact: true })).toHaveValue('Harbour mist');
  await page.locator('.made-undo').click();
  await button(page, say.begin.another).click();
  await expect(button(page, say.begin.goOnLong('Harbour watch'))).toBeVisible();
  await bring(page, receiver);
  await expect(page.getByRole('alert')).toContainText(say.begin.noDeck);
  await bring(page, deck, receiver);
  await ready(page);
  await expect(page.getByLabel(say.network.slugName('L1'), { exact: true })).toHaveValue('MIX');
  expect((await saved(page, say.save.receiver)).text).toBe(receiver.text);
});

test('things on the plan are dragged and moved by key, and never onto one another', async ({ page }) => {
  await page.goto('/#/workshop/receiver');
  await button(page, say.begin.example).click();
  await ready(page);
  const can = page.getByRole('button', { name: /^Can T1, / });
  const before = (await can.getAttribute('aria-label'))!;
  await can.press('ArrowDown');
  await expect(can).not.toHaveAttribute('aria-label', before);
  await button(page, say.plan.undo).click();
  await expect(can).toHaveAttribute('aria-label', before);
  // By pointer into the open: it stays there.
  const box = (await can.boundingBox())!;
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  await page.mouse.move(middle.x, middle.y);
  await page.mouse.down();
  await page.mouse.move(middle.x, middle.y + 90, { steps: 4 });
  await page.mouse.up();
  await expect(can).not.toHaveAttribute('aria-label', before);
  await button(page, say.plan.undo).click();
  await expect(can).toHaveAttribute('aria-label', before);
  // Onto the valve: it goes back, and is told why.
  const valve = (await page.getByRole('button', { name: /^Valve V1, / }).boundingBox())!;
  await page.mouse.move(middle.x, middle.y);
  await page.mouse.down();
  await page.mouse.move(valve.x + valve.width / 2, valve.y + valve.height / 2, { steps: 4 });
  await expect(page.locator('.made-thing.hindered')).toHaveCount(1);
  // What both would cover is hatched, and where it goes back to is dashed.
  const clash = (await page.locator('.made-clash').boundingBox())!;
  expect(clash.width).toBeLessThanOrEqual(valve.width + 1);
  const back = (await page.locator('.made-back').boundingBox())!;
  expect(Math.abs(back.x + back.width / 2 - middle.x)).toBeLessThan(2);
  await page.mouse.up();
  await expect(can).toHaveAttribute('aria-label', before);
  await expect(page.getByText(say.plan.on('slugCan', 'T1', 'valve', 'V1'))).toBeVisible();
  await can.focus();
  for (let i = 0; i < 20; i++) await page.keyboard.press('ArrowLeft');
  await expect(page.getByText(say.plan.on('slugCan', 'T1', 'testPoint', 'TP1'))).toBeVisible();
  await ready(page);
  await isSound(page);
});

test('it is kept in this browser, listed on the next visit, edited and taken away', async ({ page }) => {
  await page.goto('/#/workshop/receiver');
  await button(page, say.begin.example).click();
  await ready(page);
  const id = page.getByLabel(say.network.id, { exact: true });
  await id.fill('am-455k');
  await id.press('Enter');
  await ready(page);
  await button(page, say.save.keep).click();
  await expect(page.getByText(say.save.taken('am-455k'))).toBeVisible();
  await id.fill('pier-set');
  await id.press('Enter');
  await ready(page);
  await button(page, say.save.keep).click();
  await expect(page.getByText(say.save.kept('Harbour watch receiver'))).toBeVisible();
  // On to a scenario on it, which is a draft of its own; the desk is the same afterwards.
  await button(page, say.save.scenarioOn).click();
  await expect(page.getByRole('combobox', { name: en.workshop.receiverField, exact: true })).toHaveValue('pier-set');
  await expect(page.locator('.plan-slug')).toHaveCount(3);
  await page.getByRole('button', { name: en.workshop.receiver.tab, exact: true }).click();
  await ready(page);
  // The page comes back as it was left; the list is where another deck begins.
  await page.reload();
  await ready(page);
  await button(page, say.begin.another).click();
  await button(page, say.begin.editLong('Harbour watch receiver')).click();
  await ready(page);
  await expect(id).toHaveValue('pier-set');
  await button(page, say.begin.another).click();
  await button(page, say.begin.dropLong('Harbour watch receiver')).click();
  await expect(page.getByText(say.begin.none)).toBeVisible();
});

test('a receiver that came with an evening sheet is listed, opened as a copy, and thrown away', async ({ page }) => {
  const texts = pair('harbour-can');
  await page.goto('/#/course');
  await page
    .locator('input[data-picks=own]')
    .setInputFiles({ name: 'third.json', mimeType: 'application/json', buffer: Buffer.from(sheetOn(texts)) });
  await expect(page.getByRole('heading', { name: 'Third Thursday' })).toBeVisible({ timeout: 60_000 });
  await page.goto('/#/workshop/receiver');
  const list = page.getByRole('region', { name: say.begin.brought });
  await expect(list.getByRole('listitem')).toContainText('Harbour can');
  await isSound(page);
  await button(page, say.begin.copyLong('Harbour can')).click();
  await ready(page);
  await button(page, say.begin.another).click();
  await button(page, say.begin.dropLong('Harbour can')).click();
  await expect(page.getByRole('dialog')).toContainText(say.begin.dropAsk);
  await button(page, en.workshop.keepIt).click();
  await expect(list.getByRole('listitem')).toHaveCount(1);
  await button(page, say.begin.dropLong('Harbour can')).click();
  await button(page, en.workshop.remove).click();
  await expect(list).toHaveCount(0);
  await expect(page.getByText(say.save.dropped('Harbour can'))).toBeVisible();
});

test('what is no deck is refused at once, with every problem and its place', async ({ page }) => {
  await page.goto('/#/workshop/receiver');
  const alert = page.getByRole('alert');
  await bring(page, { name: 'huge.cir', text: Buffer.alloc(10 * 1024 * 1024, 42) });
  await expect(alert).toContainText('huge.cir');
  await expect(alert).toContainText(en.textFiles.tooLarge(10 * 1024 * 1024));
  await bring(page, { name: 'picture.cir', text: Buffer.from([137, 80, 78, 71, 0, 1, 2, 255]) });
  await expect(alert).toContainText(en.textFiles.binary);
  await bring(page, { name: 'cut.cir', text: EXAMPLE_DECK.replace('.end\n', '') });
  await expect(page.getByText(en.phrases.deckCutOff())).toBeVisible();
  await button(page, say.deck.putEnd).click();
  await ready(page);
  await button(page, say.deck.edit).click();
  await page.getByLabel(say.deck.text).fill(EXAMPLE_DECK.replace('C2s det 0 200p', 'C2s det 0 200x').replace('R', 'Q'));
  await button(page, say.deck.take).click();
  await expect(page.locator('.made-fix').first()).toBeVisible();
  await expect(page.locator('.made-lines li.wrong').first()).toBeVisible();
  await isSound(page);
});
