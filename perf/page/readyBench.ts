/** A bench made ready by hand in the page: leads, controls, markers, a tool in the slug, a curve on the tube. */
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from '@playwright/test';
import type { Phosphor } from '../../src/bench/benchState.ts';
import { panelWords } from '../../src/words/en/bench.ts';
import { BenchFace } from '../../tests/e2e/face.ts';
import { KeyHand } from '../../tests/e2e/keyHand.ts';
import { begin, expect, openCard, shippedSetup } from '../../tests/e2e/page.ts';
import { wholeJob } from '../../tests/session/acts.ts';

export interface ReadyFor {
  readonly track: string;
  readonly scenario: string;
  readonly phosphor: Phosphor;
  /** the slug under the hand */
  readonly slug: string;
}

export async function readyBench(
  browser: Browser,
  url: string,
  { track, scenario, phosphor, slug }: ReadyFor,
): Promise<{ readonly page: Page; readonly close: () => Promise<void> }> {
  const context = await browser.newContext({
    baseURL: url,
    viewport: { width: 1440, height: 900 },
    serviceWorkers: 'block',
  });
  const page = await context.newPage();
  await page.addInitScript({ path: fileURLToPath(new URL('./inPage.js', import.meta.url)) });
  const setup = shippedSetup(track, scenario);
  await openCard(page, setup);
  await begin(page);
  const acts = wholeJob(setup);
  // Up to the first tool: what is proved after that would be asked of slugs that have been turned.
  const ready = acts.slice(
    0,
    acts.findIndex((act) => act.type === 'toolTaken'),
  );
  const face = new BenchFace(page, setup, (tab) => tab.click());
  const hand = new KeyHand(face);
  await hand.do(ready);
  if (phosphor !== 'P31') {
    // Where the panel is narrow the phosphor is on its other side.
    const corner = page.getByRole('button', { name: panelWords.faceSide });
    if ((await corner.count()) > 0) await corner.click();
    const { position } = await face.positions('phosphor', phosphor);
    await position.click();
  }
  const head = setup.receiver.adjusters.find((adjuster) => adjuster.id === slug)!.head;
  await hand.do([{ type: 'toolTaken', tool: head }]);
  await page.locator(`[data-slug="${slug}"]`).click();
  await expect(page.locator('.slug-ring')).toBeVisible();
  return { page, close: () => context.close() };
}
