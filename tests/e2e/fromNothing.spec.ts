/**
 * The instructors' page from its first line to its last, by a new instructor and a candidate, through the page alone: a receiver from a deck that nobody has seen, a fault scenario on it from an
 * empty draft, certified, tried and handed out, a sheet sealed, taken and passed, handed in, graded, and put on paper.
 */
import { readFileSync } from 'node:fs';
import type { Browser, Page } from '@playwright/test';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { benchSetup } from '../../src/certify/benchSetup.ts';
import { readReceiverPair } from '../../src/files/readReceiverPair.ts';
import { parseScenario } from '../../src/files/scenarioSchema.ts';
import { classroomWords } from '../../src/words/en/classroom.ts';
import { courseWords } from '../../src/words/en/course.ts';
import { eveningWords } from '../../src/words/en/evening.ts';
import { examWords } from '../../src/words/en/exam.ts';
import { ownReceiverWords as own } from '../../src/words/en/ownReceiver.ts';
import { papersWords } from '../../src/words/en/papers.ts';
import { workshopWords as say } from '../../src/words/en/workshop.ts';
import { inside, scratch } from '../cli/commandLine.ts';
import { BenchFace } from './face.ts';
import { begin, expect, test } from './page.ts';
import { pointerActs } from './pointerActs.ts';
import { PointerHand } from './pointerHand.ts';

const DECK = `* Plover beacon set, long-wave IF at 110 kHz with a whistle trap at 119 kHz
Isig 0 mix AC 1u
C1 mix 0 1n
L1 mix 0 2.0935m
RQ1 mix 0 27k
C2 in2 0 1n
L2 in2 0 2.0935m
RQ2 in2 0 27k
K12 L1 L2 0.05
G1 pl 0 in2 0 1.2m
C3 pl 0 1n
L3 pl 0 2.0935m
RQ3 pl 0 33k
Ct tr 0 820p
Lt tr 0 2.1814m
RQt tr 0 400k
K3t L3 Lt 0.04
.ac lin 281 95k 125k
.print ac vdb(pl)
.end
`;
const PHRASE = 'kettle, oar and almanac';
const SHEET = 'First Tuesday';

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const field = (page: Page, name: string) => page.getByLabel(name, { exact: true });
const brought = (name: string, text: string) => ({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });

async function saved(page: Page, press: () => Promise<void>): Promise<{ name: string; text: string }> {
  const coming = page.waitForEvent('download');
  await press();
  const download = await coming;
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') };
}
const type = async (page: Page, label: string, text: string): Promise<void> => {
  await field(page, label).fill(text);
  await field(page, label).press('Enter');
};

/** What the saved files come to, for the hands that do the job. */
function setupFrom(deck: string, receiver: string, scenario: string): BenchSetup {
  const pair = readReceiverPair({ deck: { file: 'a.cir', text: deck }, receiver: { file: 'a.json', text: receiver } });
  const parsed = parseScenario(JSON.parse(scenario), 'scenario.json');
  if (!pair.ok || !parsed.ok) throw new Error(JSON.stringify([pair, parsed]));
  const setup = benchSetup(pair.value, parsed.value);
  if (!setup.ok) throw new Error(JSON.stringify(setup.problems));
  return setup.value;
}

/** A receiver of one's own: slugs named, the trap named, a line put on, a can dragged, kept and saved. */
async function receiverMade(page: Page): Promise<{ deck: string; receiver: string }> {
  await page.goto('/#/workshop/receiver');
  await expect(page.getByText(own.begin.drop)).toBeVisible();
  await page.locator('input[data-picks=receiver]').setInputFiles([brought('plover.cir', DECK)]);
  await expect(button(page, own.save.deck)).toBeEnabled();
  await expect(field(page, own.network.setName)).toHaveValue('Plover beacon set');
  for (const [coil, name] of [
    ['L1', 'MIX'],
    ['L2', 'GRID'],
    ['L3', 'DET'],
    ['Lt', 'WHISTLE'],
  ] as const)
    await type(page, own.network.slugName(coil), name);
  await type(page, own.network.trap('WHISTLE'), '119');
  await expect(field(page, own.network.tool('WHISTLE'))).toBeVisible();
  await field(page, own.network.tool('MIX')).selectOption({ label: own.network.tools.blade });
  await expect(button(page, own.save.deck)).toBeEnabled();
  const can = page.locator('.made-thing[aria-label^="Can"]').first();
  const before = (await can.getAttribute('aria-label'))!;
  const box = (await can.boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 10, y + 70, { steps: 5 });
  await page.mouse.up();
  await expect(can).not.toHaveAttribute('aria-label', before);
  await expect(button(page, own.save.deck)).toBeEnabled();
  const deck = await saved(page, () => button(page, own.save.deck).click());
  const receiver = await saved(page, () => button(page, own.save.receiver).click());
  expect([deck.name, receiver.name]).toEqual(['plover.cir', 'plover.json']);
  await button(page, own.save.keep).click();
  await expect(page.getByText(own.save.kept('Plover beacon set'))).toBeVisible();
  return { deck: deck.text, receiver: receiver.text };
}

async function scenarioMade(page: Page): Promise<{ file: string; certificate: string; link: string }> {
  await page.goto('/');
  await button(page, 'Workshop').click();
  await expect(page.getByRole('heading', { name: say.scenario.title })).toBeVisible();
  await expect(page.locator('.seen-tube .tube')).toBeVisible({ timeout: 60_000 });
  const receiver = page.getByRole('combobox', { name: say.receiverField, exact: true });
  const option = (await receiver.locator('option').allTextContents()).find((text) => text.includes('Plover'))!;
  await receiver.selectOption({ label: option });
  await expect(page.locator('.plan-slug')).toHaveCount(4);
  const hole = page.locator('.plan-slug').nth(2);
  await hole.scrollIntoViewIfNeeded();
  const box = (await hole.boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y - 16);
  await page.mouse.down();
  for (let i = 1; i <= 8; i++)
    await page.mouse.move(x + 16 * Math.sin((Math.PI * i) / 8), y - 16 * Math.cos((Math.PI * i) / 8));
  await page.mouse.up();
  await expect(hole).toHaveAttribute('aria-valuetext', say.turned('1/2 turn', 'in'));
  await button(page, say.faults.wrongLoad).click();
  await expect(page.locator('.wrong-card')).toHaveCount(1);
  const part = page.getByRole('combobox', { name: new RegExp(`^${say.faults.wrongLoad}, ${say.fields.element}`) });
  await part.selectOption('RQ3');
  await type(page, `${say.faults.wrongLoad}, ${say.value(say.fields.ohms!)}`, '10k');
  for (const [label, text] of [
    [say.form.name, 'Back from the lightship'],
    [say.form.brief, 'A beacon receiver that whistles.'],
    [say.form.story, 'It was wet once, and then it was mended.'],
    [say.form.lesson, 'A curve that is too wide has lost its load, not its tuning.'],
    [say.form.id, 'lightship'],
    [say.form.author, 'Harbour club'],
  ] as const)
    await type(page, label, text);
  await expect(page.locator('.problems .desk-note')).toHaveText(say.noProblems);
  await button(page, say.proof.start).click();
  await expect(page.locator('.draft-stamp')).toContainText(say.proof.solvable, { timeout: 120_000 });
  await expect(page.locator('.certify-passed')).toContainText(/passed, \d+ points/, { timeout: 120_000 });
  await page.locator('.certify').scrollIntoViewIfNeeded();
  const file = await saved(page, () => button(page, say.proof.handOut.file).click());
  expect(file.name).toBe('lightship.json');
  const certificate = await saved(page, () => button(page, say.proof.saveCertificate).click());
  await button(page, say.proof.handOut.link).click();
  const link = await page.locator('.hand-link input').inputValue();
  await button(page, say.proof.handOut.evening).click();
  await expect(page.locator('.hand-out')).toContainText(say.proof.handOut.told.onSheet);
  await page.getByRole('button', { name: say.tryLong }).click();
  await expect(page.getByRole('dialog', { name: 'Back from the lightship' })).toBeVisible({ timeout: 30_000 });
  await begin(page);
  await page.goto('/#/course');
  await page.locator('.own-place').scrollIntoViewIfNeeded();
  return { file: file.text, certificate: certificate.text, link };
}

async function sheetMade(page: Page): Promise<string> {
  await page.goto('/#/workshop/evening');
  await expect(page.locator('.evening-list li')).toHaveCount(1);
  await type(page, eveningWords.name, SHEET);
  await type(page, eveningWords.author, 'Harbour club');
  await type(page, eveningWords.minutes, '60');
  await page.getByLabel(eveningWords.addOne).selectOption('first-curve');
  await button(page, eveningWords.add).click();
  await type(page, eveningWords.passMark, '1');
  await page.getByLabel(eveningWords.exam.seal).check();
  await type(page, eveningWords.exam.phrase, PHRASE);
  await page.evaluate(() => {
    window.print = () => {};
  });
  await field(page, eveningWords.slips.count).fill('2');
  await button(page, eveningWords.slips.print).click();
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('.hand-slip')).toHaveCount(2);
  await page.emulateMedia({ media: 'screen' });
  const file = await saved(page, () => button(page, eveningWords.exam.save).click());
  expect(file.name).toBe('evening-first-tuesday-sealed.json');
  return file.text;
}

async function candidate(
  browser: Browser,
  baseURL: string,
  sealed: string,
  setups: readonly BenchSetup[],
): Promise<string> {
  const context = await browser.newContext({
    baseURL,
    acceptDownloads: true,
    viewport: { width: 1440, height: 900 },
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  await page.goto('/#/course');
  await page.locator('input[data-picks=own]').setInputFiles(brought('evening-first-tuesday-sealed.json', sealed));
  await page.locator('.own-place').scrollIntoViewIfNeeded();
  await page.getByRole('button', { name: courseWords.own.exam.goNamed(SHEET) }).click();
  await field(page, examWords.number).fill('12');
  await page.getByLabel(examWords.phrase).fill(PHRASE);
  await button(page, examWords.open).click();
  const items = page.locator('.exam-items li');
  await expect(items).toHaveCount(2);
  for (const [i, setup] of setups.entries()) {
    await items.nth(i).getByRole('button').click();
    await expect(page.getByRole('dialog')).toBeVisible();
    await begin(page);
    const hand = new PointerHand(new BenchFace(page, setup, (tab) => tab.click()));
    await hand.do(pointerActs(setup));
    await hand.sign();
    await expect(page.getByText(examWords.handedInCount(i + 1, 2))).toBeVisible({ timeout: 60_000 });
  }
  await button(page, examWords.handIn).click();
  const runs = await saved(page, () => button(page, examWords.yes).click());
  await expect(page.locator('.exam-standing')).toContainText(examWords.whole.standing.passed, { timeout: 60_000 });
  await page
    .locator('.exam-whole')
    .getByRole('button', { name: /Report of/ })
    .first()
    .click();
  await expect(page.locator('.score-figure')).toBeVisible({ timeout: 60_000 });
  await context.close();
  return runs.text;
}

test.use({ sharesWindow: true });

test('from a deck and an empty draft to marks on paper', async ({ page, browser, baseURL }) => {
  test.setTimeout(600_000);
  const { deck, receiver } = await receiverMade(page);
  const files = scratch();
  files.file('plover.cir', deck);
  expect(inside('check', files.file('plover.json', receiver)).code).toBe(0);
  const { file, link } = await scenarioMade(page);
  expect(link.length).toBeLessThanOrEqual(2000);
  expect(inside('check', files.file('lightship.json', file), files.place('plover.json'))).toMatchObject({
    code: 0,
    err: '',
  });
  const sealed = await sheetMade(page);
  const runs = await candidate(browser, baseURL!, sealed, [setupFrom(deck, receiver, file)]);
  files.remove();
  await page.goto('/#/class');
  await page.locator('input[data-picks=files]').setInputFiles([brought('twelve.json', runs)]);
  await expect(page.getByText(classroomWords.graded(1))).toBeVisible({ timeout: 60_000 });
  await expect(page.locator('.class-exams tbody tr')).toHaveAttribute('data-standing', 'passed');
  const csv = await saved(page, () => button(page, classroomWords.csvLong).click());
  expect(csv.text.split('\r\n')[1]).toMatch(/^twelve\/1\.json,12,lightship,verified,true,\d+,,$/);
  await page.locator('.run .learner button').first().click();
  await page.getByRole('button', { name: classroomWords.report }).click();
  await expect(page.locator('.score-figure')).toBeVisible({ timeout: 60_000 });
  // Papers of one's own scenario, as of any other.
  await page.goto('/#/papers');
  await page.getByLabel(papersWords.of).selectOption('lightship');
  for (const paper of ['sheet', 'card', 'transfer'] as const) {
    await button(page, papersWords.names[paper]).click();
    await expect(page.locator('.papers-sheets')).toContainText(papersWords.names[paper]);
  }
});
