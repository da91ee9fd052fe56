/** The hand on the keyboard: focus and keys, no pointer. */
import type { LeadId, ToolId } from '../../src/bench/benchState.ts';
import { slugLetters } from '../../src/receiver/slugLetters.ts';
import { hasNotches } from './face.ts';
import { Hand } from './hand.ts';
import { expect } from './page.ts';

/** A shorter way than this goes by arrows, a longer one is typed. */
const ARROWS = 6;
const TOOL_KEYS: Readonly<Record<ToolId, string>> = { hex: '1', blade: '2', steel: '3' };

export class KeyHand extends Hand {
  async press(name: string, within?: 'dialog'): Promise<void> {
    const { page } = this.face;
    const scope = within === undefined ? page : page.getByRole('dialog');
    await scope.getByRole('button', { name, exact: true }).focus();
    await page.keyboard.press('Enter');
  }

  protected async chooseFinding(_words: string, digit: string): Promise<void> {
    await this.key('w');
    await this.key(digit);
  }

  protected async tick(words: string): Promise<void> {
    await this.face.page.getByRole('dialog').getByRole('checkbox', { name: words, exact: true }).focus();
    await this.key('Space');
  }

  protected async flip(control: string, on: boolean): Promise<void> {
    const toggle = await this.face.toggle(control);
    await toggle.focus();
    if ((await toggle.isChecked()) !== on) await this.key('Space');
    await expect(toggle).toBeChecked({ checked: on });
  }

  protected async choose(control: string, value: string): Promise<void> {
    const { group, position } = await this.face.positions(control, value);
    await group.getByRole('radio', { checked: true }).focus();
    for (let i = 0; i < 3 && !(await position.isChecked()); i++) await this.key('ArrowRight');
    await expect(position).toBeChecked();
  }

  protected async turnKnob(control: string, value: number): Promise<void> {
    const { fitting, slider } = await this.face.knob(control);
    const { scale, coarse } = fitting;
    await slider.focus();
    const away = Math.round(scale.indexOf(value)) - Number(await slider.inputValue());
    if (away % coarse === 0 && Math.abs(away) <= ARROWS * coarse) {
      let at = Number(await slider.inputValue());
      for (let i = 0; i < Math.abs(away) / coarse; i++) {
        // A knob that goes by notches takes ordinary steps with shift.
        await this.key(`${hasNotches(control) ? 'Shift+' : ''}${away > 0 ? 'ArrowUp' : 'ArrowDown'}`);
        at += Math.sign(away) * coarse;
        await expect(slider).toHaveValue(String(at));
      }
      return;
    }
    await this.key('Enter');
    await expect(this.face.page.locator('.entry input')).toBeFocused();
    await this.face.page.keyboard.type(fitting.shown(value));
    await this.key('Enter');
    await expect(slider).toBeFocused();
  }

  protected async connect(lead: LeadId, to: string): Promise<void> {
    await this.face.grip(lead).focus();
    await this.key('Enter');
    await this.walkTo(this.face.target(to));
    await this.key('Enter');
  }

  protected async takeOff(lead: LeadId): Promise<void> {
    await this.face.grip(lead).focus();
    await this.key('Delete');
  }

  protected async crystal(hz: number): Promise<void> {
    await this.face.crystal(hz).focus();
    await this.key('Space');
  }

  protected async takeTool(tool: ToolId | null): Promise<void> {
    await this.key(tool === null ? '0' : TOOL_KEYS[tool]);
  }

  protected async turnSlug(slug: string, parts: number): Promise<void> {
    await this.key(slugLetters(this.face.setup.receiver).get(slug)!.toLowerCase());
    await expect(this.face.slug(slug)).toBeFocused();
    const bracket = parts < 0 ? 'BracketLeft' : 'BracketRight';
    for (let i = 0; i < Math.floor(Math.abs(parts) / 4); i++) await this.key(bracket);
    for (let i = 0; i < Math.abs(parts) % 4; i++) await this.key(`Shift+${bracket}`);
  }

  private async walkTo(target: ReturnType<KeyHand['face']['target']>): Promise<void> {
    await expect(target).toBeVisible();
    for (let i = 0; i < 12; i++) {
      if (await target.evaluate((element) => element === document.activeElement)) return;
      await this.key('ArrowDown');
    }
    await expect(target).toBeFocused();
  }

  private key(name: string): Promise<void> {
    return this.face.page.keyboard.press(name);
  }
}
