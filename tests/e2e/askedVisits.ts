/** Takes one page to what the bench asks of the learner: the card of findings, proof by proof, and the question at signing in each of its kinds. */
import type { Page } from '@playwright/test';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import { type BenchSetup, initialState } from '../../src/bench/setup.ts';
import type { TimedEvent } from '../../src/files/runFile.ts';
import { scenarioHash } from '../../src/files/scenarioFile.ts';
import { PROOFS } from '../../src/scenario/proofId.ts';
import type { OpenRecord } from '../../src/services/store/layout.ts';
import { createSession } from '../../src/session/session.ts';
import { alignmentActs, connectionActs, proofActs, safetyActs, setUpActs, stateAfter, yActs } from '../session/acts.ts';
import { expect, shippedSetup } from './page.ts';
import { scribble } from './storedRecords.ts';
import { BENCH_SIZES, drawn, inSizes, type Look } from './visits.ts';

/** The whole work on a set with every proof made, and of none said what was seen. */
function provedActs(setup: BenchSetup): readonly BenchEvent[] {
  const acts: BenchEvent[] = [];
  let state = initialState(setup);
  const take = (more: readonly BenchEvent[]): void => {
    acts.push(...more);
    state = stateAfter(setup, more, state);
  };
  take(safetyActs(setup));
  take(connectionActs(setup, state));
  take(setUpActs(setup));
  take(alignmentActs(setup, state));
  take(yActs(setup, state));
  for (const proof of setup.scenario.proofs) take(proofActs(proof, setup, state));
  return acts;
}

/** A run that lies open in the page's own storage, as if it had been worked on here. */
async function layOpen(
  page: Page,
  search: string,
  setup: BenchSetup,
  acts: readonly BenchEvent[],
  elapsedSeconds = 60,
): Promise<void> {
  const { scenario } = setup;
  const session = createSession(setup);
  session.send({ type: 'BEGIN' });
  const record: OpenRecord = {
    runId: 'laid-open',
    scenarioId: scenario.id,
    learner: null,
    scenario: scenario.sealed ? null : scenario,
    scenarioHash: scenario.sealed ? scenarioHash(scenario) : null,
    attempt: null,
    events: acts.map((event, i): TimedEvent => ({ ...event, atMs: 100 * (i + 1) })),
    elapsedMs: elapsedSeconds * 1000,
    session: session.snapshot(),
    turns: 0,
    savedAtMs: 1,
  };
  await page.goto(`/${search}`);
  await drawn(page);
  await scribble(page, 'open', [{ ...record }]);
  await page.goto('about:blank');
  await page.goto(`/${search}#/bench/${scenario.id}`);
}

/** The card of each proof, of one that did not fit, of one of which nothing could be read, and folded away. */
export async function visitFindings(page: Page, search: string, look: Look): Promise<void> {
  const { scenario, ...rest } = shippedSetup('vision-if', 'flat-top');
  const setup = { ...rest, scenario: { ...scenario, proofs: [...PROOFS] } };
  await layOpen(page, search, setup, provedActs(setup));
  const card = page.locator('.finding');
  const links = card.locator('.finding-links .link');
  await expect(card.locator('.finding-choices')).toBeVisible({ timeout: 60_000 });
  await card.locator('input[type=radio]').first().check();
  await card.locator('input[type=text]').fill('99');
  await card.locator('.button').click();
  await expect(card.locator('.finding-again')).toBeVisible();
  await inSizes(page, BENCH_SIZES, look, 'finding, asked again');
  await links.nth(2).click();
  await expect(page.locator('.finding.folded')).toBeVisible();
  await inSizes(page, BENCH_SIZES, look, 'finding, folded');
  await card.locator('.button').click();
  for (const proof of PROOFS.slice(1)) {
    await links.nth(1).click();
    await expect(card.locator('.finding-choices')).toBeVisible();
    await inSizes(page, BENCH_SIZES, look, `finding, ${proof}`, '.finding');
  }
  await links.nth(1).click();
  await expect(card).toHaveCount(0);

  const sealed = shippedSetup('first-sweep', 'can-examined');
  const connected = [...safetyActs(sealed), ...connectionActs(sealed)];
  const bare = stateAfter(sealed, connected, initialState(sealed));
  await layOpen(page, search, sealed, [...connected, ...proofActs('halveLevel', sealed, bare)]);
  // With the set-up still to be done only its bar comes by itself.
  await expect(page.locator('.finding.folded')).toBeVisible({ timeout: 60_000 });
  await card.locator('.button').click();
  await expect(card.getByRole('status')).toBeVisible();
  await inSizes(page, BENCH_SIZES, look, 'finding, nothing to read', '.finding');
}

/** The question at signing: refused, of a sealed job, of a sealed job with what was wrong, and with the time up. */
export async function visitSigning(page: Page, search: string, look: Look): Promise<void> {
  const dialog = page.locator('dialog[open]');
  for (const [track, id] of [
    ['first-sweep', 'can-examined'],
    ['fault-finding', 'not-a-word'],
  ] as const) {
    const setup = shippedSetup(track, id);
    await layOpen(page, search, setup, safetyActs(setup));
    await page.locator('.sign-off').click({ timeout: 60_000 });
    await expect(dialog).toBeVisible();
    await inSizes(page, BENCH_SIZES, look, `signing ${id}`, 'dialog[open]');
  }
  const setup = shippedSetup('vision-if', 'from-cold');
  await layOpen(page, search, setup, safetyActs(setup), setup.scenario.timeLimitSeconds! + 1);
  await expect(dialog).toBeVisible({ timeout: 60_000 });
  await dialog.locator('.button.primary').click();
  await expect(dialog.getByRole('alert')).not.toHaveText('');
  await inSizes(page, BENCH_SIZES, look, 'signing, time up and refused', 'dialog[open]');
}
