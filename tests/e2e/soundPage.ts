/** What holds for every page as it stands: it does not scroll sideways, and the rules of axe find nothing serious in it. */
import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { expect } from './page.ts';

const AXE = readFileSync('node_modules/axe-core/axe.min.js', 'utf8');

interface Axe {
  readonly _audit: { readonly rules: readonly { id: string; impact: string | null }[] };
  run(options: { resultTypes: string[]; rules: Record<string, { enabled: boolean }> }): Promise<{
    passes: unknown[];
    violations: { id: string; impact: string | null; nodes: { target: unknown; failureSummary?: string }[] }[];
  }>;
}

export async function isSound(page: Page): Promise<void> {
  const wide = await page.evaluate(async () => {
    // Letters that stand in for those that are on their way are wider.
    await document.fonts.ready;
    const { scrollWidth, clientWidth } = document.documentElement;
    return scrollWidth - clientWidth;
  });
  expect(wide).toBeLessThanOrEqual(0);
  // Evaluated, not added as a script: the page's own policy lets no inline script in.
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(AXE);
  const found = await page.evaluate(async () => {
    const { axe } = window as unknown as { axe: Axe };
    // A rule says itself how grave it is to break it, and what is no more than moderate would not count. Of what a rule finds in order it names one place only:
    // naming every one takes a third of the time.
    const slight = axe._audit.rules.filter(({ impact }) => impact === 'minor' || impact === 'moderate');
    const { violations, passes } = await axe.run({
      resultTypes: ['violations'],
      rules: Object.fromEntries(slight.map(({ id }) => [id, { enabled: false }])),
    });
    // A run that looked at nothing would find nothing either.
    if (passes.length === 0) throw new Error('nothing was looked at');
    return violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .map(({ id, nodes }) => `${id}: ${nodes.map((n) => `${String(n.target)} ${n.failureSummary ?? ''}`).join('; ')}`);
  });
  expect(found).toEqual([]);
}
