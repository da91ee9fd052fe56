/** Watching the technician at a job: asked for at the bench, by keyboard; played, stepped, taken over, and never counted. */
import { atHandWords, headerWords } from '../../src/words/en/bench.ts';
import { dialogWords } from '../../src/words/en/benchTalk.ts';
import { demonstrationWords as say } from '../../src/words/en/demonstration.ts';
import { sceneWords } from '../../src/words/en/scene.ts';
import { layoutFaults } from './layoutFaults.ts';
import { MOVING } from './moving.ts';
import { expect, test } from './page.ts';

test.use({ ...MOVING, sharesWindow: true });

test('asked for in the menu, stepped, played, taken over and signed without a mark @shelf @upright', async ({
  page,
}) => {
  await page.goto('/#/bench/first-curve');
  const tick = page.getByRole('checkbox', { name: dialogWords.briefing.acknowledge });
  await expect(page.getByRole('dialog')).toBeVisible();
  if ((await tick.count()) > 0) await tick.check();
  await page.getByRole('button', { name: dialogWords.briefing.begin, exact: true }).click();
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await page.getByRole('button', { name: headerWords.menu }).press('Enter');
  await page.getByRole('menuitem', { name: say.watch }).press('Enter');

  const region = page.getByRole('region', { name: say.name });
  await expect(region).toContainText(say.remarks.safe(false), { timeout: 60_000 });
  await expect(page).toHaveURL(/#\/bench\/first-curve\/shown$/);
  // Who listens hears each saying as it comes.
  await expect(region.getByRole('status')).toHaveText(say.remarks.safe(false));
  await expect(region.getByRole('button', { name: say.play })).toBeFocused();
  await expect.poll(() => page.evaluate(layoutFaults, '.shown')).toEqual([]);
  // Its strip hides nothing of the set and the tools.
  const strip = (await region.boundingBox())!;
  const tools = (await page.getByRole('heading', { name: sceneWords.toolsTitle }).boundingBox())!;
  const apart = [
    strip.x + strip.width <= tools.x,
    strip.y + strip.height <= tools.y,
    tools.y + tools.height <= strip.y,
  ];
  expect(apart).toContain(true);

  const next = region.getByRole('button', { name: say.step });
  for (const text of [say.remarks.leads('TP0'), say.remarks.source, say.remarks.fills, say.remarks.phasing]) {
    await next.press('Enter');
    await expect(region.getByRole('status')).toHaveText(text);
  }
  // One step back, and on again: by button and by key.
  await region.getByRole('button', { name: say.back }).press('Enter');
  await expect(region.getByRole('status')).toHaveText(say.remarks.fills);
  await page.keyboard.press(',');
  await expect(region.getByRole('status')).toHaveText(say.remarks.source);
  for (const text of [say.remarks.fills, say.remarks.phasing]) {
    await page.keyboard.press('.');
    await expect(region.getByRole('status')).toHaveText(text);
  }
  await expect(page.locator('.guide-light').first()).toBeVisible();
  await region.getByRole('combobox', { name: say.speed }).selectOption('quick');
  await region.getByRole('button', { name: say.play }).press('Enter');
  await expect(region.getByRole('status')).toContainText('By the notebook', { timeout: 60_000 });

  // Nobody else's hand turns anything meanwhile.
  await page.locator('.sign-off').press('Enter');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await region.getByRole('button', { name: say.takeOver }).press('Enter');
  await expect(region).toHaveCount(0);
  await expect(page.getByText(say.taken)).toBeVisible();
  await expect.poll(() => page.evaluate(layoutFaults, '.slip-stack')).toEqual([]);
  // Who cannot see the curve hears it here as at any bench: the one on the tube, and the one that the sheet asks for.
  await page.evaluate(() => {
    const heard: { type: string; values: number }[] = [];
    const { prototype } = AudioContext;
    const voice = prototype.createOscillator;
    prototype.createOscillator = function () {
      const made = voice.call(this);
      const { frequency } = made;
      const curve = frequency.setValueCurveAtTime;
      frequency.setValueCurveAtTime = (values, ...when) => {
        heard.push({ type: made.type, values: [...values].length });
        return curve.call(frequency, values, ...when);
      };
      return made;
    };
    Object.assign(window, { heard });
  });
  await page.locator('.sign-off').press('t');
  const longTones = () =>
    page.evaluate(() =>
      (window as unknown as { heard: { type: string; values: number }[] }).heard
        .filter(({ values }) => values > 2)
        .map(({ type }) => type),
    );
  await expect.poll(longTones).toEqual(['sine', 'sawtooth']);

  // His bench is the learner's now, with its switch for sound.
  await expect(page.locator('[data-choice=sound]')).toHaveText(atHandWords.sound.off);
  await page.locator('[data-choice=sound]').press('Enter');
  await expect(page.locator('[data-choice=sound]')).toHaveText(atHandWords.sound.low);

  await page.locator('.sign-off').press('Enter');
  const question = page.getByRole('dialog', { name: dialogWords.signOff.title });
  await question.getByRole('button', { name: dialogWords.signOff.sign, exact: true }).press('Enter');
  await expect(page.getByRole('heading', { name: say.signed })).toBeVisible();
  // The run that lay open is as it was, and no run has been kept.
  await page.getByRole('button', { name: say.fromStart }).press('Enter');
  await expect(page.getByRole('dialog', { name: dialogWords.suspended.title })).toBeVisible();
  await page.goto('/');
  await expect(page.locator('.card-open').first()).toBeVisible();
  await expect(page.locator('.stack-bar span')).toHaveCount(0);
});

test('a sealed job is shown to nobody', async ({ page }) => {
  await page.goto('/#/bench/can-examined/shown');
  await expect(page.getByRole('heading', { name: say.sealed })).toBeVisible();
});
