/** Decks of an AM strip, an FM discriminator and a strip tuned apart, brought to the page: the receiver that it saves is the one that the command line makes; decks that cannot be are told alike in both places. */
import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { ownReceiverWords as say } from '../../src/words/en/ownReceiver.ts';
import { inside, scratch } from '../cli/commandLine.ts';
import { LOCK_STRIP } from '../making/lockStrip.ts';
import { expect, test } from './page.ts';

test.use({ sharesWindow: true });

const AM = `* Quayside bedside set, AM IF at 455 kHz
Isig conv 0 AC 1u
C1 conv 0 180p
L1 conv 0 679.7u
RQ1 conv 0 150k
G1 p1 0 conv 0 1.5m
C2 p1 0 180p
L2 p1 0 679.7u
RQ2 p1 0 120k
Cc p1 g2 100p
Rg g2 0 1meg
G2 p2 0 g2 0 1.5m
C3 p2 0 180p
L3 p2 0 679.7u
RQ3 p2 0 100k
.ac lin 281 435k 475k
.print ac vdb(p2)
.end
`;
const FM = `* Breakwater FM adapter, discriminator at 10.7 MHz
Ilim pl 0 AC 1u
Cp pl 0 50p
Lp pl 0 4.425u
Rp pl 0 15k
Ls1 ct a 2.2125u
Ls2 b ct 2.2125u
Ks1 Ls1 Ls2 0.99
Kp1 Lp Ls1 0.02
Kp2 Lp Ls2 0.02
Cs a b 25p
Rs a b 30k
Cc pl ct 100p
Rct ct 0 100k
.ac lin 281 10.1meg 11.3meg
.print ac vm(a) vm(b)
.end
`;
// A worker that comes to the file a second time needs a folder again.
let files: ReturnType<typeof scratch>;
test.beforeAll(() => {
  files = scratch();
});
test.afterAll(() => files.remove());

async function bring(page: Page, name: string, text: string): Promise<void> {
  await page
    .locator('input[data-picks=receiver]')
    .setInputFiles({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });
}

for (const [name, deck, slugs] of [
  ['quayside.cir', AM, 3],
  ['breakwater.cir', FM, 2],
  ['lock-strip.cir', LOCK_STRIP, 3],
] as const) {
  test(`${name} gives on the page what it gives on the command line`, async ({ page }) => {
    const made = inside('sheet', files.file(name, deck));
    expect([made.err, made.code]).toEqual(['', 0]);
    await page.goto('/#/workshop/receiver');
    await bring(page, name, deck);
    await expect(page.locator('.made-tube svg')).toBeVisible();
    await expect(page.locator('.made-coil input[type=checkbox]:checked')).toHaveCount(slugs);
    const save = page.getByRole('button', { name: say.save.receiver, exact: true });
    await expect(save).toBeEnabled();
    const coming = page.waitForEvent('download');
    await save.click();
    expect(readFileSync(await (await coming).path(), 'utf8')).toBe(made.out);
  });
}

test('the limits of an S-curve are changed on the page, and saved', async ({ page }) => {
  await page.goto('/#/workshop/receiver');
  await bring(page, 'breakwater.cir', FM);
  const line = page.locator('.made-sheet li').filter({ hasText: say.response.others.symmetry });
  // A pair of limits about what the design gives, by the ratio of the two.
  await line.getByRole('textbox').fill('25');
  await line.getByRole('textbox').press('Enter');
  await expect(line.getByRole('textbox')).toHaveValue('25');
  // What makes it an S-curve stays; how straight it is need not be asked for.
  await expect(line.getByRole('button')).toHaveCount(0);
  const straight = page.locator('.made-sheet li').filter({ hasText: say.response.others.linearity });
  await straight.getByRole('button').click();
  await expect(straight).toHaveCount(0);
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: say.save.receiver, exact: true }).click();
  const { sCurve } = JSON.parse(readFileSync(await (await coming).path(), 'utf8')).responses[0].specification;
  expect(Math.sqrt(sCurve.symmetry.high / sCurve.symmetry.low)).toBeCloseTo(1.25, 2);
  expect(sCurve.linearity).toBeNull();
});

test('decks that cannot be are told on the page as on the command line', async ({ page }) => {
  await page.goto('/#/workshop/receiver');
  for (const [name, deck] of [
    ['no-way-in.cir', LOCK_STRIP.replace(/^Isig.*\n/m, '')],
    ['no-coil.cir', LOCK_STRIP.replace(/^L(\d \S+ 0) \S+/gm, 'R9$1 1k')],
    ['far-out.cir', AM.replace('C1 conv 0 180p', 'C1 conv 0 110m')],
    ['loose.cir', AM.replace('C3 p2 0', 'C3 q2 0')],
    ['twice.cir', AM.replace('L2 p1', 'L1 p1')],
    ['no-partner.cir', FM.replace('Kp1 Lp', 'Kp1 Lq')],
    ['minus.cir', AM.replace('RQ1 conv 0 150k', 'RQ1 conv 0 -150k')],
    ['cards.cir', AM.replace('.ac', 'Q1 p1 conv 0 BC1\n.model BC1 NPN\n.ac')],
    ['elsewhere.cir', LOCK_STRIP.replace('24meg 36meg', '60meg 70meg')],
  ] as const) {
    const { err, code } = inside('sheet', files.file(name, deck));
    expect(code, name).toBe(1);
    // Found and wanted, without the place: the page shows the line itself.
    const told = err
      .trim()
      .split('\n')
      .map((line) => /found (.*), wanted (.*)$/.exec(line)!);
    await bring(page, name, deck);
    await expect(page.locator('.made-file')).toContainText(name);
    for (const [, found, wanted] of told)
      await expect(page.locator('.made-desk'), name).toContainText(say.deck.found(found!, wanted!));
    await expect(page.getByRole('button', { name: say.save.deck, exact: true })).toBeDisabled();
  }
});
