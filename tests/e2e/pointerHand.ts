/** The hand with a mouse: clicks, drags and the wheel, and no key but shift, which makes the notches of some knobs small. */
import type { Locator } from '@playwright/test';
import type { LeadId, ToolId } from '../../src/bench/benchState.ts';
import { sceneWords } from '../../src/words/en/scene.ts';
import { hasNotches } from './face.ts';
import { Hand } from './hand.ts';
import { expect } from './page.ts';

/** A longer way than this many clicks of the wheel is dragged. */
const WHEEL_CLICKS = 5;
/** A press that moves no further turns nothing. */
const STILL_PX = 3;

export class PointerHand extends Hand {
  /** Leads are dragged in turn with being clicked over: both ways are used. */
  private drags = false;

  async press(name: string, within?: 'dialog'): Promise<void> {
    const { page } = this.face;
    const scope = within === undefined ? page : page.getByRole('dialog');
    await scope.getByRole('button', { name, exact: true }).click();
  }

  protected async chooseFinding(words: string): Promise<void> {
    await this.face.page.locator('.finding-choices label', { hasText: words }).click();
  }

  protected async tick(words: string): Promise<void> {
    await this.face.page.getByRole('dialog').getByRole('checkbox', { name: words, exact: true }).click();
  }

  protected async flip(control: string, on: boolean): Promise<void> {
    const toggle = await this.face.toggle(control);
    // On the blade: a press on a word sets the position of that word.
    if ((await toggle.isChecked()) !== on) {
      const plate = toggle
        .locator('xpath=ancestor::*[contains(concat(" ", @class, " "), " switch ")]')
        .locator('.switch-plate');
      await plate.scrollIntoViewIfNeeded();
      const { x, y, width, height } = (await plate.boundingBox())!;
      await this.face.page.mouse.click(x + width / 2, y + height / 3);
    }
    await expect(toggle).toBeChecked({ checked: on });
  }

  protected async choose(control: string, value: string): Promise<void> {
    const { position } = await this.face.positions(control, value);
    if (!(await position.isChecked())) await position.click();
    await expect(position).toBeChecked();
  }

  protected async turnKnob(control: string, value: number): Promise<void> {
    const { fitting, slider } = await this.face.knob(control);
    const { scale, coarse } = fitting;
    const { mouse } = this.face.page;
    const target = Math.round(scale.indexOf(value));
    let at = Number(await slider.inputValue());
    await slider.locator('..').scrollIntoViewIfNeeded();
    const { x, y } = await middle(slider.locator('..'));
    await mouse.move(x, y);
    const pixels = Math.round(((target - at) * Math.max(180, scale.last / coarse / 4)) / scale.last);
    if (Math.abs(target - at) > WHEEL_CLICKS * coarse && Math.abs(pixels) > STILL_PX) {
      await mouse.down();
      await mouse.move(x, y - pixels, { steps: 6 });
      await mouse.up();
      await expect(slider).not.toHaveValue(String(at));
      at = Number(await slider.inputValue());
      await mouse.move(x, y);
    }
    if ((target - at) % coarse !== 0) throw new Error(`${control} ${value} is between two clicks of the wheel`);
    // A knob that goes by notches takes ordinary steps with shift.
    const { keyboard } = this.face.page;
    if (hasNotches(control)) await keyboard.down('Shift');
    while (at !== target) {
      const up = target > at;
      await mouse.wheel(0, up ? -100 : 100);
      at += up ? coarse : -coarse;
      await expect(slider).toHaveValue(String(at));
    }
    if (hasNotches(control)) await keyboard.up('Shift');
  }

  protected async connect(lead: LeadId, to: string): Promise<void> {
    const grip = this.face.grip(lead);
    this.drags = !this.drags;
    if (this.drags) {
      const { mouse } = this.face.page;
      const from = await middle(grip);
      await mouse.move(from.x, from.y);
      await mouse.down();
      await mouse.move(from.x + 8, from.y + 8, { steps: 2 });
      const end = await middle(this.face.target(to));
      await mouse.move(end.x, end.y, { steps: 8 });
      await mouse.up();
    } else {
      await grip.click();
      await this.face.target(to).click();
    }
  }

  protected async takeOff(lead: LeadId): Promise<void> {
    await this.face.grip(lead).click();
    await this.press(sceneWords.layDown);
  }

  protected async crystal(hz: number): Promise<void> {
    await this.face.crystal(hz).click();
  }

  protected async takeTool(tool: ToolId | null, held: ToolId | null): Promise<void> {
    await this.face.tool(tool ?? held!).click();
  }

  protected async turnSlug(slug: string, parts: number): Promise<void> {
    const { page } = this.face;
    await this.face.slug(slug).click();
    const way = parts < 0 ? 'out' : 'in';
    const fine = page.getByRole('button', { name: sceneWords.fineSpoken });
    const button = (step: string) => page.getByRole('button', { name: new RegExp(`^Turn slug . ${step} ${way}$`) });
    // Whole turns by the wheel over the ring, the rest by the buttons.
    const whole = Math.floor(Math.abs(parts) / 32);
    const ring = await middle(page.locator('.slug-ring'));
    await page.mouse.move(ring.x, ring.y);
    for (let i = 0; i < whole; i++) await page.mouse.wheel(0, parts > 0 ? -800 : 800);
    const eighths = Math.floor((Math.abs(parts) % 32) / 4);
    for (let i = 0; i < eighths; i++) await button('1/8').click();
    const rest = Math.abs(parts) % 4;
    if (rest === 0) return;
    await fine.click();
    for (let i = 0; i < rest; i++) await button('1/32').click();
    await fine.click();
  }
}

async function middle(locator: Locator): Promise<{ readonly x: number; readonly y: number }> {
  const box = await locator.boundingBox();
  if (box === null) throw new Error('not on the page');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}
