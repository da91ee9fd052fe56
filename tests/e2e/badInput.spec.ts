/** Wrong files, sixty kinds of them, on every page that takes files: each is refused whole, by its name and with its reasons, and nothing of it is loaded. Common practice, no source. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { classroomWords } from '../../src/words/en/classroom.ts';
import { courseWords } from '../../src/words/en/course.ts';
import { workshopWords } from '../../src/words/en/workshop.ts';
import { expect, test } from './page.ts';
import { fileOf, goodScenario, WRONG_FILES } from './wrongFiles.ts';

test.use({ sharesWindow: true });

const { own } = courseWords;

test('the course refuses sixty kinds of wrong files, each with its reasons, and takes what is good beside them', async ({
  page,
}) => {
  expect(WRONG_FILES).toHaveLength(60);
  await page.goto('/#/course');
  const input = page.locator('input[data-picks=own]');
  const place = page.locator('.own-place');
  const refused = place.locator('.own-refused > div');
  // So many at a time are looked at; of more the page says so.
  for (const files of [WRONG_FILES.slice(40), WRONG_FILES.slice(0, 40)]) {
    await input.setInputFiles([...files]);
    await expect(refused).toHaveCount(files.length, { timeout: 60_000 });
    for (const [i, { name }] of files.entries()) {
      await expect(refused.nth(i).locator('b')).toHaveText(own.refused(name));
      expect(await refused.nth(i).locator('li').count(), name).toBeGreaterThan(0);
    }
  }
  await expect(place.locator('.card-open')).toHaveCount(0);
  await expect(page.locator('.evening-place')).toHaveCount(0);
  // Each of several reasons stands there with its place.
  const many = refused.nth(WRONG_FILES.findIndex(({ name }) => name === 'many-wrong.json')).locator('li');
  for (const key of ['/title', '/order', '/toleranceFactor'])
    await expect(many.filter({ hasText: key })).toHaveText(/line \d+, column \d+/);
  await page.reload();
  await expect(place.locator('.card-open')).toHaveCount(0);

  // One good and one bad; the same twice; a byte order mark; lines that end as on another system.
  await input.setInputFiles([fileOf('bad.json', '{'), fileOf('good.json', goodScenario())]);
  await expect(refused).toHaveCount(1);
  await expect(place.locator('.own-news')).toContainText(own.taken(['The boat shed']));
  await expect(place.locator('.card-open')).toHaveCount(1);
  await input.setInputFiles([fileOf('good.json', goodScenario()), fileOf('copy.json', goodScenario())]);
  await expect(refused).toHaveCount(0);
  await expect(place.locator('.card-open')).toHaveCount(1);
  await input.setInputFiles([fileOf('marked.json', `\ufeff${goodScenario('marked-one', 'With a mark')}`)]);
  await expect(place.locator('.card-open')).toHaveCount(2);
  const lines = goodScenario('other-lines', 'Other lines').replaceAll('\n', '\r\n');
  await input.setInputFiles([fileOf('lines.json', lines)]);
  await expect(place.locator('.card-open')).toHaveCount(3);
});

test('the class lists sixty kinds of wrong files as not ours, and says what stands in each', async ({ page }) => {
  await page.goto('/#/class');
  await page.locator('input[data-picks=files]').setInputFiles([...WRONG_FILES]);
  // What an instructor may hand out is told of by itself, and not taken either.
  const handedOut = WRONG_FILES.filter(({ name, buffer }) => {
    const kind = /"format":\s*"haystack-(scenario|evening|sealed-evening|receiver)"/.test(buffer.toString('utf8'));
    return kind || name === 'deck.cir' || name.startsWith('utf16');
  });
  const rows = WRONG_FILES.length - handedOut.length;
  // The file of an exam that holds no run has no row of its own.
  await expect(page.locator('.run')).toHaveCount(rows, { timeout: 60_000 });
  await expect(page.locator('.run[data-verdict=unreadable]')).toHaveCount(rows);
  const complaints = page.locator('.complaints li');
  // The one deck among them is taken for that of the receiver, and told of with it.
  for (const { name } of handedOut.filter((one) => one.name !== 'deck.cir'))
    await expect(complaints.filter({ hasText: name }).first()).toBeVisible();
  // All that is wrong with one, each by itself, with its place and once with its name.
  const many = complaints.filter({ hasText: 'many-wrong.json' });
  await expect(many).toHaveText([/\/title/, /\/order/, /\/toleranceFactor/]);
  for (const said of await many.allTextContents()) expect(said).toMatch(/^many-wrong\.json, line \d+, column \d+/);
  await expect(page.locator('.handed-out li')).toHaveCount(0);
  await page
    .locator('.run')
    .nth(2)
    .getByRole('button', { name: classroomWords.open(classroomWords.nobody, 3) })
    .click();
  await expect(page.locator('.opened .reason').first()).not.toBeEmpty();
});

test('the workshop opens no wrong file as a draft', async ({ page }) => {
  await page.goto('/#/workshop');
  const input = page.locator('input[type=file]').first();
  await expect(page.getByRole('button', { name: workshopWords.openFile, exact: true })).toBeVisible();
  const drafts = page.locator('.draft-bar select').first().locator('option');
  const before = await drafts.count();
  expect(before).toBeGreaterThan(0);
  // Whoever is at work on a draft may open one that is not whole yet, so what only fits no course is no reason here.
  const never = WRONG_FILES.filter(({ name }) =>
    /^(empty|spaces|list\.|cut|utf16|latin1|nul|picture|newer|stranger|run|packed|paper|wide|lines|other|hex|half|deep|evening|a-very)/.test(
      name,
    ),
  );
  expect(never.length).toBeGreaterThan(9);
  for (const file of never) {
    await input.setInputFiles([file]);
    await expect(page.locator('.desk-brought')).toContainText(file.name);
    expect(await page.locator('.desk-brought li').count(), file.name).toBeGreaterThan(0);
  }
  expect(await drafts.count()).toBe(before);
  // Several at once: what is good lies on the desk, and each of the others says what is wrong with it.
  await input.setInputFiles([...never.slice(0, 2), fileOf('good.json', goodScenario())]);
  await expect(drafts).toHaveCount(before + 1);
  for (const { name } of never.slice(0, 2)) await expect(page.locator('.desk-brought')).toContainText(name);
  await expect(page.locator('.desk-open b')).toContainText('The boat shed');
});

test('the desk for receivers begins nothing with a wrong file', async ({ page }) => {
  await page.goto('/#/workshop/receiver');
  const input = page.locator('input[data-picks=receiver]').first();
  const refused = page.locator('.made-refused li');
  const wrong = WRONG_FILES.filter(({ name }) => name.endsWith('.json') || /^(picture|archive)/.test(name));
  const good = WRONG_FILES.find(({ name }) => name === 'deck.cir')!;
  for (const file of wrong) {
    await input.setInputFiles([file]);
    await expect(refused.first()).not.toBeEmpty();
    await expect(page.locator('.made-desk')).toHaveCount(0);
  }
  // A good deck begins nothing either where what lies beside it is none; nor do three files, or two decks.
  for (const files of [
    [good, ...wrong.slice(0, 1)],
    [good, ...wrong.slice(8, 10)],
    [good, { ...good, name: 'b.cir' }],
  ]) {
    await input.setInputFiles(files);
    await expect(refused.first()).not.toBeEmpty();
    await expect(page.locator('.made-desk')).toHaveCount(0);
  }
});

test('a folder that is dropped and a file that is dropped where nothing takes it leave the page as it is', async ({
  page,
}) => {
  const folder = mkdtempSync(path.join(tmpdir(), 'haystack-drop-'));
  mkdirSync(path.join(folder, 'inside'));
  writeFileSync(path.join(folder, 'inside', 'good.json'), goodScenario());
  writeFileSync(path.join(folder, 'page.html'), '<title>away</title>');
  const client = await page.context().newCDPSession(page);
  const drop = async (files: readonly string[]): Promise<void> => {
    const data = { items: [], files: [...files], dragOperationsMask: 1 };
    for (const type of ['dragEnter', 'dragOver', 'drop'] as const)
      await client.send('Input.dispatchDragEvent', { type, x: 500, y: 300, data });
  };
  await page.goto('/#/course');
  const place = page.locator('.own-place');
  await expect(place).toBeVisible();
  await drop([path.join(folder, 'inside')]);
  await expect(place.locator('.own-refused b')).toHaveText(own.refused('inside'));
  await expect(place.locator('.card-open')).toHaveCount(0);
  await page.goto('/#/workshop/receiver');
  await expect(page.locator('input[data-picks=receiver]').first()).toBeAttached();
  await drop([path.join(folder, 'inside')]);
  await expect(page.locator('.made-refused li').first()).toContainText('inside');
  for (const room of ['handbook', 'drills', 'workshop', 'workshop/evening', 'papers']) {
    await page.goto(`/#/${room}`);
    await expect(page.locator('main h1, main h2').first()).toBeVisible();
    await drop([path.join(folder, 'page.html')]);
    await expect(page.locator('main h1, main h2').first()).toBeVisible();
    expect(page.url()).toContain(`#/${room}`);
  }
  rmSync(folder, { recursive: true, force: true });
});
