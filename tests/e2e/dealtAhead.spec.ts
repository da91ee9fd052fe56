/** Attempts at sealed jobs dealt before the card is pressed: whoever presses it gets the one that was dealt when the pointer came, and each opening another. */
import type { Page } from '@playwright/test';
import { headerWords } from '../../src/words/en/bench.ts';
import { dialogWords } from '../../src/words/en/benchTalk.ts';
import { begin, cardOf, expect, shippedSetup, test } from './page.ts';
import { stored } from './storedRecords.ts';

const MADE_WITHIN_MS = 120_000;
const setup = shippedSetup('first-sweep', 'can-examined');

/** Numbers of attempts as the page draws them, and what its workers have been told to deal. */
interface Drawn {
  readonly numbers: readonly number[];
  readonly ordered: readonly number[];
}
const drawn = (page: Page): Promise<Drawn> => page.evaluate(() => (window as unknown as { drawn: Drawn }).drawn);

test('a card that the pointer rests on opens with the attempt that was dealt meanwhile, and the next opening with another', async ({
  page,
}) => {
  await page.addInitScript(() => {
    const seen = { numbers: [] as number[], ordered: [] as number[] };
    Object.assign(window, { drawn: seen });
    const draw = crypto.getRandomValues.bind(crypto);
    crypto.getRandomValues = ((into: ArrayBufferView) => {
      draw(into as Uint8Array<ArrayBuffer>);
      // Attempts are numbered up to here.
      if (into instanceof Uint32Array && into.length === 1) seen.numbers.push(into[0]! & (2 ** 31 - 1));
      return into;
    }) as typeof crypto.getRandomValues;
    const post = Worker.prototype.postMessage;
    function posted(this: Worker, ...of: unknown[]): void {
      const [message] = of as [{ argumentList?: { value?: { attempt?: number } }[] }];
      const attempt = message.argumentList?.[1]?.value?.attempt;
      if (attempt !== undefined && !seen.ordered.includes(attempt)) seen.ordered.push(attempt);
      Reflect.apply(post, this, of);
    }
    Worker.prototype.postMessage = posted;
  });
  await page.goto('/');
  await cardOf(page, setup).hover();
  await expect.poll(async () => (await drawn(page)).ordered.length, { timeout: MADE_WITHIN_MS }).toBe(1);
  const [ahead] = (await drawn(page)).ordered;

  const attempts: unknown[] = [];
  for (const _ of [1, 2]) {
    await cardOf(page, setup).click();
    await expect(page.getByRole('dialog', { name: setup.scenario.title })).toBeVisible({ timeout: MADE_WITHIN_MS });
    await begin(page);
    await expect.poll(async () => (await stored(page, 'open')).length).toBe(1);
    attempts.push((await stored(page, 'open'))[0]!.attempt);
    await page.getByRole('button', { name: headerWords.menu }).click();
    await page.getByRole('menuitem', { name: headerWords.abandon }).click();
    await page.getByRole('dialog').getByRole('button', { name: dialogWords.abandon.yes, exact: true }).click();
    await expect(page).toHaveURL(/#\/course$/);
  }
  expect(attempts[0]).toBe(ahead);
  expect(attempts[1]).not.toBe(ahead);
  const { numbers, ordered } = await drawn(page);
  expect(attempts.every((one) => numbers.includes(one as number))).toBe(true);
  // Each once, in the order of the openings; while the course stood, other jobs may have been dealt.
  expect(ordered.filter((one) => attempts.includes(one))).toEqual(attempts);
});
