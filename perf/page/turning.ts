/** A hand on the ring of the magnified slug, going slowly to and fro, and what the tube shows meanwhile. */
import { writeFileSync } from 'node:fs';
import type { Page } from '@playwright/test';

const SPAN_MS = 6000;
/** a mouse tells of itself about this often */
const MOVE_MS = 8;
const SWING_TURNS = 0.3;
const SWING_MS = 3000;

export interface Turning {
  /** new pictures of the tube, a second */
  readonly pictures: number;
  /** animation frames of the page, a second */
  readonly frames: number;
  /** between two frames: the longest, and what one in twenty is longer than */
  readonly longestMs: number;
  readonly lateMs: number;
}

/** what inPage.js gives */
interface Counted {
  readonly pictures: number;
  readonly frames: number;
  /** in order of length */
  readonly gaps: readonly number[];
}

export async function turning(page: Page, slower: number, profileTo: string | null = null): Promise<Turning> {
  const session = await page.context().newCDPSession(page);
  const box = (await page.locator('.slug-ring').boundingBox())!;
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const spot = (ms: number): { x: number; y: number } => {
    const angle = 2 * Math.PI * SWING_TURNS * Math.sin((2 * Math.PI * ms) / SWING_MS);
    const reach = 0.42 * box.width;
    return { x: middle.x + reach * Math.sin(angle), y: middle.y - reach * Math.cos(angle) };
  };
  await session.send('Emulation.setCPUThrottlingRate', { rate: slower });
  await session.send('Input.dispatchMouseEvent', { type: 'mousePressed', ...spot(0), button: 'left', clickCount: 1 });
  const fromMs = performance.now();
  let pending = 0;
  const timer = setInterval(() => {
    // A page that lags gets the newest place of the hand, as it would from a mouse.
    if (pending > 1) return;
    pending++;
    const at = spot(performance.now() - fromMs);
    session.send('Input.dispatchMouseEvent', { type: 'mouseMoved', ...at, button: 'left', buttons: 1 }).then(
      () => pending--,
      () => clearInterval(timer),
    );
  }, MOVE_MS);
  // The first second is for the compiler.
  await page.waitForTimeout(1000);
  if (profileTo !== null) {
    await session.send('Profiler.enable');
    await session.send('Profiler.start');
  }
  await page.evaluate('counted.begin()');
  await page.waitForTimeout(SPAN_MS);
  const { pictures, frames, gaps } = (await page.evaluate('counted.end()')) as Counted;
  clearInterval(timer);
  if (profileTo !== null) {
    writeFileSync(profileTo, JSON.stringify((await session.send('Profiler.stop')).profile));
  }
  await session.send('Input.dispatchMouseEvent', { type: 'mouseReleased', ...spot(0), button: 'left', clickCount: 1 });
  await session.send('Emulation.setCPUThrottlingRate', { rate: 1 });
  await session.detach();
  return { pictures, frames, longestMs: gaps.at(-1)!, lateMs: gaps[Math.floor(0.95 * gaps.length)]! };
}
