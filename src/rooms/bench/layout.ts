/**
 * Where everything on the bench page stands, in CSS pixels of the page, for the three forms of the page.
 * Pure: the same size gives the same places. Under 680 wide there is no bench (null): half of 1366, a common screen at 200 %, is just enough.
 */
import { fullLayout } from './layoutFull.ts';
import { shelfLayout, uprightLayout } from './layoutShelf.ts';
import type { BenchLayout } from './layoutTypes.ts';

export type { BenchForm, BenchLayout, Jack, JackId, PanelId } from './layoutTypes.ts';
export { hoodSize, PLAN } from './layoutTypes.ts';

/** `finger`: the pointer is a finger; `tall`: the strip holds a sentence and a row of buttons below it */
export function benchLayout(width: number, height: number, finger = false, tall = false): BenchLayout | null {
  if (width < 680) return null;
  if (width < 1000 || (width < 1424 && height > width * 1.1)) return uprightLayout(width, height, tall, finger);
  if (width >= 1424 && height >= 880) return fullLayout(width, height);
  return shelfLayout(width, height, finger, tall);
}
