/** Shortest paths through the session's states, walked at the page's own controls; the page must stand where the model says after every act. */
import type { Page } from '@playwright/test';
import type { Phase } from '../../src/session/phase.ts';
import { headerWords } from '../../src/words/en/bench.ts';
import { dialogWords } from '../../src/words/en/benchTalk.ts';
import { type PathStep, type SessionPath, shortestPaths, type Working } from '../session/paths.ts';
import { BenchFace } from './face.ts';
import { KeyHand } from './keyHand.ts';
import { begin, expect, openJob, rail, railSays, shippedSetup, test } from './page.ts';

test.use({ sharesWindow: true });

const setup = shippedSetup('vision-if', 'from-cold');
const paths = shortestPaths(setup);
const { signOff, suspended, stopped, abandon } = dialogWords;

/** What the page lets one do in each stage; an hour's wait and clearing through a dialog are no acts of a hand. */
function pageAllows(path: SessionPath): boolean {
  let stage = 'briefing';
  return path.steps.every(({ act, value }) => {
    const fits =
      act.restSeconds <= 5 &&
      act.session !== 'ABANDON' &&
      !(act.name === 'suspend' && stage === 'signing') &&
      !(act.name === 'sign' && stage !== 'signing');
    stage = stageOf(value);
    return fits;
  });
}

const stageOf = (value: unknown): string => (typeof value === 'string' ? value : Object.keys(value as object)[0]!);

/** A sixteenth of a turn does not bring this set inside its limits: the rail never says that it is aligned. */
function doneOf({ safety, connection, setUp, proof }: Working): readonly Phase[] {
  const done: [Phase, boolean][] = [
    ['safe', safety === 'made'],
    ['connect', connection === 'made'],
    ['setUp', Object.values(setUp).every((part) => part === 'right')],
    ['prove', proof === 'proved'],
  ];
  return done.filter(([, is]) => is).map(([phase]) => phase);
}

async function pageStandsAt(page: Page, value: unknown): Promise<void> {
  switch (stageOf(value)) {
    case 'working':
      await expect(page.getByRole('dialog')).toHaveCount(0);
      return expect(rail(page)).toHaveAttribute(
        'aria-label',
        railSays(doneOf((value as { working: Working }).working)),
      );
    case 'signing':
      return expect(page.getByRole('dialog', { name: signOff.title })).toBeVisible();
    case 'suspended':
      return expect(page.getByRole('dialog', { name: suspended.title })).toBeVisible();
    case 'stopped':
      return expect(page.getByRole('dialog', { name: stopped.title })).toBeVisible();
    case 'graded':
      return expect(page).toHaveURL(/#\/report\//);
    default:
      throw new Error(`no page for ${JSON.stringify(value)}`);
  }
}

async function take(page: Page, hand: KeyHand, step: PathStep): Promise<void> {
  const { act, value } = step;
  // A live chassis ends the run at the first lead: the others are not reached any more.
  const bench = stageOf(value) === 'stopped' ? act.bench.slice(0, 1) : act.bench;
  if (act.session === 'BEGIN') await begin(page);
  else if (act.session === 'ASK_TO_SIGN') await hand.press(headerWords.signOff);
  else if (act.session === 'KEEP_WORKING') await hand.press(signOff.keep, 'dialog');
  else if (act.session === 'RESUME') await hand.press(suspended.resume, 'dialog');
  else if (act.session === 'REPORT') await hand.press(stopped.again, 'dialog');
  else if (act.session === 'SUSPEND') await choose(page, headerWords.suspend);
  else if (act.name === 'sign') await hand.press(signOff.sign, 'dialog');
  else await hand.do(bench, stageOf(value) === 'stopped');
  await pageStandsAt(page, value);
}

async function choose(page: Page, item: string): Promise<void> {
  await page.getByRole('button', { name: headerWords.menu }).click();
  await page.getByRole('menuitem', { name: item }).click();
}

const walkable = paths.filter(pageAllows);
const nameOf = (steps: readonly PathStep[]): string => steps.map((step) => step.act.name).join(', ');
const short = walkable.filter((path) => path.steps.length <= 5);
const long = walkable.filter((path) => path.steps.length > 5 && nameOf(path.steps).includes('set up, turn a slug'));

for (const path of short) {
  test(path.name, async ({ page }) => {
    await openJob(page, setup);
    const hand = handOn(page);
    for (const step of path.steps) await take(page, hand, step);
  });
}

test('every disturbance of a proved set and its mending, one after another, then the signature', async ({ page }) => {
  // The paths share their beginning up to the proofs, and those with a mending come back to that state.
  const tails = long.map(({ steps }) => steps.map((step) => step.act.name).indexOf('prove'));
  const proved = long.filter((path, i) => tails[i]! > 0 && path.steps.length > tails[i]! + 1);
  const proveAt = (path: SessionPath): number => path.steps.findIndex((step) => step.act.name === 'prove');
  const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);
  const returns = proved.filter((path) => same(path.steps.at(-1)!.value, path.steps[proveAt(path)]!.value));
  const ends = proved.filter((path) => stageOf(path.steps.at(-1)!.value) === 'graded');
  expect(returns.length).toBeGreaterThanOrEqual(7);
  expect(ends.length).toBeGreaterThanOrEqual(1);

  await openJob(page, setup);
  const hand = handOn(page);
  const first = returns[0]!;
  for (const step of first.steps) await take(page, hand, step);
  for (const path of [...returns.slice(1), ends[0]!])
    for (const step of path.steps.slice(proveAt(path) + 1)) await take(page, hand, step);
});

test('clearing the bench from its menu goes back to the course and leaves nothing on the bench', async ({ page }) => {
  await openJob(page, setup);
  await begin(page);
  await choose(page, headerWords.abandon);
  await page.getByRole('dialog').getByRole('button', { name: abandon.yes, exact: true }).click();
  await expect(page).toHaveURL(/#\/course$/);
  await expect(page.locator('.card-open')).not.toHaveCount(0);
  await expect(page.locator('.card.now')).toHaveCount(0);
});

test('enough of the model is walked here', () => {
  expect(short.length).toBeGreaterThanOrEqual(4);
  expect(long.length).toBeGreaterThanOrEqual(9);
});

function handOn(page: Page): KeyHand {
  return new KeyHand(new BenchFace(page, setup, (tab) => tab.click()));
}
