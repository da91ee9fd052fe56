/**
 * The peeker: plays the set-up of sealed jobs and looks into every corner that can be read without a debugger (text, roles and states, attributes, address,
 * storage, downloads, sounds asked for) for what a sealed run may not tell. What may be read of it is what an eye at the bench sees.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { Page } from '@playwright/test';
import { type BenchSetup, designOf, initialState } from '../../src/bench/setup.ts';
import { attemptSetup } from '../../src/certify/attempt.ts';
import { slugLetters } from '../../src/receiver/slugLetters.ts';
import { countedPar } from '../../src/scenario/par.ts';
import { atHandWords, headerWords, rackWords } from '../../src/words/en/bench.ts';
import { dialogWords } from '../../src/words/en/benchTalk.ts';
import { findingCardWords } from '../../src/words/en/finding.ts';
import { format } from '../../src/words/en/numbers.ts';
import { sheetWords } from '../../src/words/en/sheet.ts';
import { connectionActs, safetyActs, setUpActs, stateAfter, yActs } from '../session/acts.ts';
import { BenchFace } from './face.ts';
import { KeyHand } from './keyHand.ts';
import { begin, cardOf, expect, openJob, rail, railSays, shippedSetup, test } from './page.ts';
import { stored } from './storedRecords.ts';

const SEALED = [
  ['am', 'radio-sealed'],
  ['front-end', 'gannet-sealed'],
  ['vision-if', 'brent-sealed'],
  ['sound-fm', 'tuner-sealed'],
] as const;

/** All that can be read of the page, and of what it keeps. */
async function everythingReadable(page: Page): Promise<string> {
  const inPage = await page.evaluate(async () => {
    const lines: string[] = [location.href, document.title, document.cookie];
    for (const element of document.querySelectorAll('body, body *')) {
      for (const { name, value } of element.attributes) {
        // Where drawings lie and how they are painted says where things are on the page.
        if (!/^(d|style|class|transform|viewBox|points|stroke.*|x1?2?|y1?2?|cx|cy|r|rx|width|height|fill)$/.test(name))
          lines.push(`${element.tagName} ${name}=${value}`);
      }
      if (element instanceof HTMLInputElement) lines.push(`value ${element.value}`);
      for (const node of element.childNodes) if (node.nodeType === Node.TEXT_NODE) lines.push(node.nodeValue ?? '');
    }
    return lines.join('\n');
  });
  return `${inPage}\n${await stores(page)}`;
}

/** Local and session storage, and every record of every database, as they lie there. */
async function stores(page: Page): Promise<string> {
  return page.evaluate(async () => {
    const found: string[] = [];
    for (const storage of [localStorage, sessionStorage])
      for (let i = 0; i < storage.length; i++) found.push(`${storage.key(i)}: ${storage.getItem(storage.key(i)!)}`);
    const settled = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    for (const { name } of await indexedDB.databases()) {
      const base = await settled(indexedDB.open(name!));
      for (const shelf of base.objectStoreNames) {
        const records = await settled(base.transaction(shelf).objectStore(shelf).getAll());
        found.push(...records.map((record) => `${shelf}: ${JSON.stringify(record)}`));
      }
      base.close();
    }
    return found.join('\n');
  });
}

/** Figures that would give the job away, as a page or a record might write them. */
function secretsOf(setup: BenchSetup): readonly RegExp[] {
  const { scenario } = setup;
  const { seed, set } = scenario;
  const escaped = (figure: string): string => figure.replace('.', '\\.');
  const exact = (value: number): RegExp => new RegExp(`(?<![\\d.])${escaped(String(value))}(?![\\d])`);
  // To a hundredth of a turn as it might be written, and finer as it might be kept; whole and half turns would be met everywhere.
  const depths = Object.values(initialState(setup).slugs)
    .map(({ screwTurns }) => screwTurns.toFixed(3))
    .filter((depth) => !/[05]0\d$/.test(depth))
    .flatMap((depth) => [new RegExp(`(?<![\\d.])${escaped(depth)}`), exact(Number(depth.slice(0, -1)))]);
  const told = countedPar(scenario.par);
  const design = setup.design?.receiver.adjusters ?? [];
  const dealt = setup.receiver.adjusters.filter((a, i) => a.nominalHenries !== design[i]?.nominalHenries);
  return [
    ...[seed, set ?? seed].map(exact),
    ...depths,
    ...dealt.map((adjuster) => exact(adjuster.nominalHenries)),
    ...scenario.faults.map((fault) => new RegExp(`"kind":"${fault.kind}"`)),
    /"(phaseLagDegrees|dialErrorHz|xSwapped|randomTurns|faults|seed|set|residualPhaseDegrees|compressionDb|spanCovers)"/,
    /data-(seed|fault|phase|start|truth)/,
    /\bcore \d+ of \d+ turns deep\b/,
    // Par counts the turns that lie astray and each part that has failed.
    new RegExp(`Turns.par ${escaped(format.eighths(told.turns))}\\b|par ${escaped(format.turnsLong(told.turns))}`),
    new RegExp(`"par":\\{[^}]*${scenario.par.seconds}`),
  ];
}

/** A pip may not be called by its crystal anywhere but in the rack. */
function namesPips(page: Page): Promise<readonly string[]> {
  return page.locator('.bench-tube').evaluate((station) => {
    const said = [...station.querySelectorAll('[aria-label]')].map((one) => one.getAttribute('aria-label') ?? '');
    return [...said, station.textContent ?? ''].filter((text) => /\d\s?[kM]?Hz|megahertz|kilohertz/.test(text));
  });
}

/** An attempt is made beside the page, and on a slow machine that takes its time. */
const MADE_WITHIN_MS = 120_000;

function dealt(shipped: BenchSetup, attempt: number): BenchSetup {
  const made = attemptSetup(designOf(shipped), shipped.scenario, attempt);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

/** The first attempt whose depths all have a hundredth of a turn: a depth of whole tenths is written in many a place by chance. */
function tellingAttempt(shipped: BenchSetup): number {
  const tells = (attempt: number): boolean =>
    Object.values(initialState(dealt(shipped, attempt)).slugs).every(
      ({ screwTurns }) => !/0\d$/.test(screwTurns.toFixed(3)),
    );
  for (let attempt = 1; attempt <= 40; attempt++) if (tells(attempt)) return attempt;
  throw new Error(`${shipped.scenario.id}: forty attempts, and none with depths that can be told`);
}

/** The page draws its next attempt by chance; here chance says this number. */
async function drawsAttempt(page: Page, attempt: number): Promise<void> {
  await page.addInitScript((number) => {
    const real = crypto.getRandomValues.bind(crypto);
    const drawn = (into: ArrayBufferView): ArrayBufferView =>
      into instanceof Uint32Array && into.length === 1 ? into.fill(number) : real(into as Uint8Array<ArrayBuffer>);
    crypto.getRandomValues = drawn as typeof real;
  }, attempt);
}

for (const [track, id] of SEALED) {
  test(`nothing of ${id} can be read before the signature`, async ({ page }) => {
    const shipped = shippedSetup(track, id);
    expect(shipped.scenario.sealed).toBe(true);
    const drawn = tellingAttempt(shipped);
    await drawsAttempt(page, drawn);
    await page.goto('/');
    await expect(cardOf(page, shipped)).toBeVisible();
    const course = await everythingReadable(page);
    await cardOf(page, shipped).click();
    await expect(page.getByRole('dialog', { name: shipped.scenario.title })).toBeVisible({ timeout: MADE_WITHIN_MS });
    const briefing = await everythingReadable(page);
    await begin(page);
    // Each attempt is dealt afresh, by the number in the record: what must not be read is what that number makes.
    await expect.poll(async () => (await stored(page, 'open')).length).toBe(1);
    expect((await stored(page, 'open'))[0]).toMatchObject({ attempt: drawn });
    const setup = dealt(shipped, drawn);
    const secrets = [...secretsOf(shipped), ...secretsOf(setup)];
    const tellsNothing = (all: string, when: string): void => {
      expect(all.length, when).toBeGreaterThan(2000);
      for (const secret of secrets) expect(secret.exec(all)?.[0], `${when}: ${secret}`).toBeUndefined();
    };
    const nothingTold = async (when: string): Promise<void> => tellsNothing(await everythingReadable(page), when);
    tellsNothing(course, 'course');
    tellsNothing(briefing, 'briefing');
    await nothingTold('bare bench');

    const hand = new KeyHand(new BenchFace(page, setup, (tab) => tab.click()));
    let state = initialState(setup);
    const take = async (acts: ReturnType<typeof safetyActs>): Promise<void> => {
      await hand.do(acts);
      state = stateAfter(setup, acts, state);
    };
    await take(safetyActs(setup));
    await take(connectionActs(setup, state));
    await take(setUpActs(setup));
    await take(yActs(setup, state));
    // Set on every sheet, and nowhere else from the start.
    await expect.poll(() => stores(page)).toContain('"pipHeightDiv"');
    await nothingTold('set up');

    // All is set up, and nobody says so; pips are counted, not named.
    await expect(rail(page)).toHaveAttribute('aria-label', railSays([]));
    await expect(page.locator('.advice, .advice-here, .hint-list')).toHaveCount(0);
    await expect(page.locator('.pip-disc')).toHaveCount(0);
    const label = page.locator('.bench-tube .tube');
    await expect(label).toHaveAttribute('aria-label', /pip 1 from the left/);
    expect(await namesPips(page)).toEqual([]);
    await expect(page.getByRole('button', { name: rackWords.crystalIn(state.crystals[0]!) })).toBeVisible();

    // Each slug as found: how far it has been turned, and nothing else.
    for (const slug of await page.locator('[data-slug]').all()) {
      await expect(slug).toHaveAttribute('aria-valuetext', /^as found$/);
      expect(Number(await slug.getAttribute('aria-valuemin'))).toBe(-Number(await slug.getAttribute('aria-valuemax')));
    }
    expect(slugLetters(setup.receiver).size).toBe(await page.locator('[data-slug]').count());

    // The learner ticks his own sheet, by key and by pointer, right or wrong.
    const box = (n: number) => page.getByRole('button', { name: sheetWords.tickStep(n), exact: true });
    await box(1).focus();
    await page.keyboard.press('Space');
    await expect(box(1)).toHaveAttribute('aria-pressed', 'true');
    await expect(rail(page)).toHaveAttribute('aria-label', railSays(['safe']));
    await box(2).click();
    await expect(rail(page)).toHaveAttribute('aria-label', railSays(['safe', 'connect']));
    await box(1).click();
    await expect(box(1)).toHaveAttribute('aria-pressed', 'false');
    await box(1).click();

    // The same run after the page has gone and come back, with its ticks; the copy that the page leaves says no more.
    await expect.poll(() => stores(page)).toContain('"ticked":[0,1]');
    await page.reload();
    await rail(page).waitFor({ timeout: MADE_WITHIN_MS });
    const resume = page.getByRole('button', { name: dialogWords.suspended.resume });
    if ((await resume.count()) > 0) await resume.click();
    await expect(box(2)).toHaveAttribute('aria-pressed', 'true');
    await nothingTold('taken up again');

    await page.getByRole('button', { name: headerWords.signOff, exact: true }).click();
    const dialog = page.getByRole('dialog');
    await expect(dialog).toContainText(dialogWords.signOff.sealed);
    await expect(dialog.locator('.missing')).toHaveCount(0);
    await nothingTold('asked to sign');
  });
}

/** What can be read of a sealed set on its open bench: the bench, its parts tray, and the question at signing. The tube's own words say what an eye sees there. */
async function readsAt(page: Page, setup: BenchSetup): Promise<readonly string[]> {
  await cardOf(page, setup).click();
  await expect(page.getByRole('dialog', { name: setup.scenario.title })).toBeVisible({ timeout: MADE_WITHIN_MS });
  await begin(page);
  const once = (): Promise<string> =>
    page.evaluate(() => {
      const lines: string[] = [];
      for (const element of document.querySelectorAll('body, body *')) {
        if (element.closest('.bench-tube, [role=timer]') !== null) continue;
        lines.push(element.tagName);
        for (const { name, value } of element.attributes) if (name !== 'style') lines.push(`${name}=${value}`);
        for (const node of element.childNodes) if (node.nodeType === Node.TEXT_NODE) lines.push(node.nodeValue ?? '');
      }
      // Names that the page makes up for its drawings as it goes.
      return lines.join('\n').replace(/P\d+-\d+/g, 'P');
    });
  // What is still being laid out reads otherwise a moment later.
  const read = async (): Promise<string> => {
    let last = await once();
    await expect(async () => {
      const before = last;
      last = await once();
      expect(last).toBe(before);
    }).toPass({ timeout: 30_000 });
    return last;
  };
  const bench = await read();
  await page.getByRole('button', { name: atHandWords.parts, exact: true }).click();
  await expect(page.getByRole('dialog').locator('.parts li').first()).toBeVisible();
  const tray = await read();
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: headerWords.signOff, exact: true }).click();
  await expect(page.getByRole('dialog')).toContainText(dialogWords.signOff.sealed);
  return [bench, tray, await read()];
}

/** The built page's scripts: only those that hold the scenario need to be gone through on their way. */
const ASSETS = 'dist/assets';
const scriptsOfPage = (): string[] => readdirSync(ASSETS).filter((name) => name.endsWith('.js'));
const textOf = (name: string): string => readFileSync(path.join(ASSETS, name), 'utf8');

test('a sealed set reads the same whether a part has failed in it or not', async ({ page, browser, baseURL }) => {
  const setup = shippedSetup('fault-finding', 'not-a-word');
  expect([setup.scenario.sealed, setup.scenario.faults.length]).toEqual([true, 2]);
  await page.goto('/');
  const failed = await readsAt(page, setup);
  // The same page to somebody new, with the faults cut out of the scenario's file.
  const context = await browser.newContext({ baseURL: baseURL! });
  await context.addInitScript(() => delete (Navigator.prototype as { serviceWorker?: unknown }).serviceWorker);
  let cut = 0;
  const faults = /(faults\W{1,6}?)\[[^\]]*driftedCapacitor[^\]]*looseEarth[^\]]*\]/g;
  const holders = new Set(scriptsOfPage().filter((name) => textOf(name).search(faults) >= 0));
  await context.route(
    ({ pathname }) => holders.has(path.basename(pathname)),
    async (route) => {
      const response = await route.fetch();
      const text = await response.text();
      const body = text.replace(faults, '$1[]');
      if (body !== text) cut++;
      await route.fulfill({ response, body });
    },
  );
  const other = await context.newPage();
  await other.goto('/');
  const sound = await readsAt(other, setup);
  await context.close();
  expect(cut).toBeGreaterThan(0);
  expect(sound).toEqual(failed);
});

test.describe(() => {
  test.use({ sharesWindow: true });

  test('the peeker finds in a practice run what it looks for', async ({ page }) => {
    const setup = shippedSetup('vision-if', 'from-cold');
    await openJob(page, setup);
    await begin(page);
    await new KeyHand(new BenchFace(page, setup, (tab) => tab.click())).do(safetyActs(setup));
    await expect.poll(() => stores(page)).toContain('"isolationSwitched"');
    const all = await everythingReadable(page);
    for (const secret of [/"phaseLagDegrees"/, /"randomTurns"/, /core \d+ of \d+ turns deep/])
      expect(all).toMatch(secret);
    expect(secretsOf(setup).filter((secret) => secret.test(all)).length).toBeGreaterThanOrEqual(3);
  });

  test('a sealed sheet names the proofs that are asked for, and a knob swung while the bench is set up brings no card over it', async ({
    page,
  }) => {
    const setup = shippedSetup('first-sweep', 'can-examined');
    await openJob(page, setup);
    await begin(page);
    const sheet = page.getByRole('article', { name: sheetWords.kicker });
    await expect(sheet).toContainText(sheetWords.proofsAsked);
    for (const proof of setup.scenario.proofs) await expect(sheet).toContainText(sheetWords.proofs[proof]);

    const hand = new KeyHand(new BenchFace(page, setup, (tab) => tab.click()));
    await hand.do(connectionActs(setup));
    const swing = (value: number) => ({ type: 'controlSet', control: 'phasingDegrees', value }) as const;
    await hand.do([swing(20), swing(0)]);
    // A bar on the head of the sheet, whose own title stands below it.
    const card = page.locator('.finding');
    await expect(card).toHaveClass(/\bfolded\b/);
    const [bar, title] = await Promise.all([card.boundingBox(), sheet.locator('h2').boundingBox()]);
    expect(title!.y).toBeGreaterThanOrEqual(bar!.y + bar!.height);
    await card.getByRole('button').press('Enter');
    // There was no pip then, and the card says of which act it speaks.
    await expect(card).toContainText(findingCardWords.nothingToRead);
    await expect(card).toContainText('The phasing was swung away and back.');
  });
});
