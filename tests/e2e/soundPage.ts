/** What holds for every page as it stands: it does not scroll sideways, and the rules of axe find nothing in it. */
import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { expect } from './page.ts';

const AXE = readFileSync('node_modules/axe-core/axe.min.js', 'utf8');

/** Rules that axe leaves off unless they are asked for: WCAG 2.2, success criteria 2.5.3 (label in name) and 2.5.8 (target size, minimum). */
const ASKED_BESIDES = ['label-content-name-mismatch', 'target-size'];

interface Axe {
  run(options: { resultTypes: string[]; rules: Record<string, { enabled: boolean }> }): Promise<{
    passes: unknown[];
    violations: { id: string; nodes: { target: unknown; failureSummary?: string }[] }[];
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
  const found = await page.evaluate(async (asked) => {
    const { axe } = window as unknown as { axe: Axe };
    // Of what a rule finds in order it names one place only: naming every one takes a third of the time.
    const { violations, passes } = await axe.run({
      resultTypes: ['violations'],
      rules: Object.fromEntries(asked.map((id) => [id, { enabled: true }])),
    });
    // A run that looked at nothing would find nothing either.
    if (passes.length === 0) throw new Error('nothing was looked at');
    return violations.map(
      ({ id, nodes }) => `${id}: ${nodes.map((n) => `${String(n.target)} ${n.failureSummary ?? ''}`).join('; ')}`,
    );
  }, ASKED_BESIDES);
  expect(found).toEqual([]);
}
