/** The light of the tube: painted beside the page where a worker can, by the page where not, and the same picture either way. Common practice, no source. */
import type { Page } from '@playwright/test';
import { MOVING } from './moving.ts';
import { begin, expect, openJob, shippedSetup, test } from './page.ts';

test.use(MOVING);

/** Leads and controls stand ready: there is a curve on the tube before anything is done, and no time has passed on the bench. */
const setup = shippedSetup('am', 'slow-down');

/** A canvas that was lent to a worker gives the page no context any more. */
async function isLent(page: Page): Promise<boolean> {
  const canvas = page.locator('.tube .beam canvas');
  await expect(canvas).toHaveCount(1);
  return canvas.evaluate((element) => {
    try {
      return (element as HTMLCanvasElement).getContext('2d') === null;
    } catch {
      return true;
    }
  });
}

async function openTube(page: Page, lent: boolean): Promise<void> {
  await openJob(page, setup);
  await begin(page);
  await expect(async () => expect(await isLent(page)).toBe(lent)).toPass({ timeout: 20_000 });
}

const glass = (page: Page): Promise<Buffer> => page.locator('.tube').screenshot();

/** How many points of a picture of the tube are bright: green beyond what ink and paper have. */
async function brightPoints(page: Page, png: Buffer): Promise<number> {
  return page.evaluate(
    async (source) => {
      const image = new Image();
      image.src = source;
      await image.decode();
      const canvas = Object.assign(document.createElement('canvas'), { width: image.width, height: image.height });
      const context = canvas.getContext('2d')!;
      context.drawImage(image, 0, 0);
      const { data } = context.getImageData(0, 0, image.width, image.height);
      let count = 0;
      for (let i = 0; i < data.length; i += 4) if (data[i + 1]! > 180 && data[i + 1]! - data[i]! > 40) count++;
      return count;
    },
    `data:image/png;base64,${png.toString('base64')}`,
  );
}

/** The picture, once there is one and it stands: who paints it does so beside the page. */
async function painted(page: Page): Promise<Buffer> {
  let last = await glass(page);
  await expect(async () => {
    const before = last;
    last = await glass(page);
    expect(last.equals(before)).toBe(true);
    expect(await brightPoints(page, last)).toBeGreaterThan(500);
  }).toPass({ timeout: 30_000 });
  return last;
}

const paintsAs = (page: Page, wanted: Buffer): Promise<void> =>
  expect.poll(async () => (await glass(page)).equals(wanted), { timeout: 30_000 }).toBe(true);

test('a worker paints the picture that the page would paint, and the page goes on when the worker breaks down', async ({
  page,
  browser,
  baseURL,
}) => {
  await page.addInitScript(() => {
    const made: Worker[] = [];
    const Real = Worker;
    Object.assign(window, {
      made,
      Worker: class extends Real {
        constructor(...all: ConstructorParameters<typeof Real>) {
          super(...all);
          made.push(this);
        }
      },
    });
  });
  await openTube(page, true);
  const byWorker = await painted(page);

  const context = await browser.newContext({
    baseURL: baseURL!,
    viewport: page.viewportSize(),
    serviceWorkers: 'block',
  });
  const other = await context.newPage();
  // A browser that lends no canvases.
  await other.addInitScript(() => void Reflect.deleteProperty(window, 'OffscreenCanvas'));
  await openTube(other, false);
  await paintsAs(other, byWorker);
  await context.close();

  await page.evaluate(() => {
    const { made } = window as unknown as { made: Worker[] };
    for (const worker of made) worker.dispatchEvent(new Event('error'));
  });
  await expect(async () => expect(await isLent(page)).toBe(false)).toPass({ timeout: 20_000 });
  await paintsAs(page, byWorker);
});

test('a page that may start no worker paints its tube itself', async ({ page }) => {
  await page.addInitScript(() => {
    Object.assign(window, {
      Worker: class {
        constructor() {
          throw new DOMException('not here', 'SecurityError');
        }
      },
    });
  });
  await openTube(page, false);
  await painted(page);
});
