/** A slug turned with a finger on the ring: it turns as far as the finger goes round, nothing scrolls away under it, and what a tap is on is taken. */
import { toolFor } from '../../src/bench/tools.ts';
import { sceneWords } from '../../src/words/en/scene.ts';
import { BenchFace } from './face.ts';
import { begin, expect, openJob, shippedSetup, test } from './page.ts';

test.use({ viewport: { width: 820, height: 1180 }, hasTouch: true, sharesWindow: true });

test('the ring follows a finger, and a tap on a tool, a slug and a lead is taken', async ({ page, context }) => {
  const setup = shippedSetup('vision-if', 'one-slug-out');
  await openJob(page, setup);
  await begin(page);
  const face = new BenchFace(page, setup, (tab) => tab.tap());
  const { id, head } = setup.receiver.adjusters.find((one) => one.id === 'T3')!;
  await face.tool(toolFor(head)).tap();
  await face.slug(id).tap();
  const ring = (await page.locator('.slug-ring').boundingBox())!;
  const [x, y, radius] = [ring.x + ring.width / 2, ring.y + ring.height / 2, ring.width / 2 - 8];
  const client = await context.newCDPSession(page);
  /** round the middle from the right, clockwise, in steps as a finger sends them */
  const round = async (degrees: number): Promise<void> => {
    const at = (part: number) => ({ x: x + radius * Math.cos(part), y: y + radius * Math.sin(part) });
    const touch = (type: 'touchStart' | 'touchMove', part: number) =>
      client.send('Input.dispatchTouchEvent', { type, touchPoints: [at(part)] });
    await touch('touchStart', 0);
    const steps = Math.abs(degrees) / 6;
    for (let i = 1; i <= steps; i++) await touch('touchMove', (((degrees * i) / steps) * Math.PI) / 180);
    await client.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  };
  const scrolled = () =>
    page.evaluate(() => [...document.querySelectorAll('*')].reduce((sum, { scrollTop }) => sum + scrollTop, 0));
  const before = await scrolled();
  await round(90);
  await expect(face.slug(id)).toHaveAttribute('aria-valuenow', '0.25');
  await round(720);
  await expect(face.slug(id)).toHaveAttribute('aria-valuenow', '2.25');
  await round(-360);
  await expect(face.slug(id)).toHaveAttribute('aria-valuenow', '1.25');
  expect(await scrolled()).toBe(before);
  await client.detach();

  await face.grip('rf').tap();
  await face.target('TP2').tap();
  await face.leadIsOn('rf', 'TP2');
  await page.getByRole('button', { name: /^Turn slug . 1\/8 out$/ }).tap();
  await expect(face.slug(id)).toHaveAttribute('aria-valuenow', '1.125');
  await expect(page.locator('.scene-flag', { hasText: sceneWords.ringHint })).toHaveCount(1);
});
