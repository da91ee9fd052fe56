/** A page looked at in several sizes of window, within a test that is about something else. */
import type { Page } from '@playwright/test';
import { layoutFaults } from './layoutFaults.ts';
import { expect } from './page.ts';

export const SIZES = [
  [1440, 900],
  [1024, 640],
  [820, 1180],
] as const;
export const SIZES_TO_READ = [...SIZES, [390, 844]] as const;

/** `there`: what must be in sight in each size before it is looked at. */
export async function fitsIn(
  page: Page,
  sizes: readonly (readonly [width: number, height: number])[],
  there: () => Promise<void>,
): Promise<void> {
  for (const [width, height] of sizes) {
    await page.setViewportSize({ width, height });
    await there();
    // The window is resized before the page is laid out anew.
    await expect.poll(() => page.evaluate(layoutFaults, 'body')).toEqual([]);
  }
}
