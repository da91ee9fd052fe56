/** A hand does at the page what an event says at the bench. Two hands share the acts' order and differ in their means. */
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import type { LeadId, ToolId } from '../../src/bench/benchState.ts';
import { printedTray } from '../../src/bench/parts.ts';
import { initialState } from '../../src/bench/setup.ts';
import { placeAskedFor, trueFinding } from '../../src/bench/witness.ts';
import { slugNameFirst } from '../../src/describe/slugName.ts';
import { trueDiagnosis } from '../../src/grading/diagnosis.ts';
import { slugLetters } from '../../src/receiver/slugLetters.ts';
import type { FindingAnswer } from '../../src/scenario/findingAnswer.ts';
import type { ProofId } from '../../src/scenario/proofId.ts';
import { atHandWords, headerWords } from '../../src/words/en/bench.ts';
import { dialogWords } from '../../src/words/en/benchTalk.ts';
import { diagnosisWords } from '../../src/words/en/diagnosis.ts';
import { findingCardWords } from '../../src/words/en/finding.ts';
import { en } from '../../src/words/en/index.ts';
import { partsWords } from '../../src/words/en/parts.ts';
import { stateAfter } from '../session/acts.ts';
import type { BenchFace } from './face.ts';
import { expect } from './page.ts';

/** Knobs of the proofs, and how long a look takes: what is seen counts where the knob stood longest, and it stands a moment at each click on its way. */
const LOOKED_AT: ReadonlySet<string> = new Set(['levelDb', 'phasingDegrees', 'yVoltsPerDiv']);
const LOOK_MS = 500;

export abstract class Hand {
  /** turns of each slug since the run began, as the page reads them */
  private readonly turned = new Map<string, number>();

  constructor(protected readonly face: BenchFace) {}

  /** presses the button with focus or pointer */
  abstract press(name: string, within?: 'dialog'): Promise<void>;
  protected abstract flip(control: string, on: boolean): Promise<void>;
  protected abstract choose(control: string, value: string): Promise<void>;
  protected abstract turnKnob(control: string, value: number): Promise<void>;
  protected abstract connect(lead: LeadId, to: string): Promise<void>;
  protected abstract takeOff(lead: LeadId): Promise<void>;
  protected abstract crystal(hz: number): Promise<void>;
  protected abstract takeTool(tool: ToolId | null, held: ToolId | null): Promise<void>;
  /** whole 1/32 turns */
  protected abstract turnSlug(slug: string, parts: number): Promise<void>;

  /** From the tray, by the name that the tray gives it. */
  private async replacePart(element: string): Promise<void> {
    const { page, setup } = this.face;
    const part = printedTray(setup).find((one) => one.name === element)!;
    const name = partsWords.name(part, part.slug === null ? null : slugLetters(setup.receiver).get(part.slug)!);
    await this.press(atHandWords.parts);
    await this.press(name, 'dialog');
    await this.press(partsWords.replace, 'dialog');
    await expect(page.getByRole('dialog')).toContainText(partsWords.done(name));
    await this.press(dialogWords.close, 'dialog');
  }

  /** a capacitor is clipped across it, and the tray left lying */
  private async bridgePart(element: string | null): Promise<void> {
    const { page, setup } = this.face;
    const bench = page.getByRole('navigation', { name: atHandWords.name });
    if (element === null) {
      await this.press(atHandWords.bridged);
      await this.press(partsWords.unbridge, 'dialog');
    } else {
      const name = partsWords.name(printedTray(setup).find((one) => one.name === element)!, null);
      await this.press(atHandWords.parts);
      await this.press(name, 'dialog');
      await this.press(partsWords.bridge, 'dialog');
      await expect(page.getByRole('dialog')).toContainText(partsWords.bridgeOn(name));
    }
    await this.press(dialogWords.close, 'dialog');
    await expect(bench).toContainText(element === null ? atHandWords.parts : atHandWords.bridged);
  }

  /** the prods are held to it; what the meter says stands in the tray */
  private async meterPart(element: string): Promise<void> {
    const { page, setup } = this.face;
    const part = printedTray(setup).find((one) => one.name === element)!;
    const name = partsWords.name(part, part.slug === null ? null : slugLetters(setup.receiver).get(part.slug)!);
    await this.press(atHandWords.parts);
    await this.press(name, 'dialog');
    await this.press(partsWords.meter, 'dialog');
    await expect(page.getByRole('dialog').getByRole('status')).toContainText(`${name}:`);
    await this.press(dialogWords.close, 'dialog');
  }

  /** all that has been done since the run began */
  private readonly made: BenchEvent[] = [];
  private held: ToolId | null = null;
  /** when the hand let go of each knob of the proofs */
  private readonly leftAtMs = new Map<string, number>();
  protected ends = false;

  /** `ends`: the act ends the run, so that what it did can no longer be read off the control */
  async do(acts: readonly BenchEvent[], ends = false): Promise<void> {
    this.ends = ends;
    for (const act of merged(acts)) {
      await this.act(act);
      this.made.push(...inTurns(act));
    }
  }

  /** the knobs as the page shows them, for the controls that are not hidden on the back of a panel */
  async reading(control: string): Promise<string> {
    return (await this.face.knob(control)).slider.inputValue();
  }

  private async act(act: BenchEvent): Promise<void> {
    switch (act.type) {
      case 'cautionsAcknowledged':
        // Ticked in the briefing: without the tick no run begins.
        return;
      case 'isolationSwitched':
        return this.flip('isolation', act.on);
      case 'powerSwitched':
        return this.flip('mains', act.on);
      case 'controlSet':
        return this.setControl(act.control, act.value);
      case 'leadConnected':
        await this.connect(act.lead, act.to);
        if (!this.ends) await this.face.leadIsOn(act.lead, act.to);
        return;
      case 'leadRemoved':
        await this.takeOff(act.lead);
        return this.face.leadIsLoose(act.lead);
      case 'crystalPlugged':
      case 'crystalPulled': {
        const plugged = act.type === 'crystalPlugged';
        if ((await this.face.crystal(act.hz).getAttribute('aria-pressed')) !== String(plugged))
          await this.crystal(act.hz);
        return this.face.crystalIs(act.hz, plugged);
      }
      case 'toolTaken':
        if (act.tool === this.held) return;
        await this.takeTool(act.tool, this.held);
        this.held = act.tool;
        return;
      case 'slugTurned':
        return this.turn(act.slug, act.turns);
      case 'diagnosisStated':
        // Said in the dialog, with the signature.
        return;
      case 'findingStated':
        return this.writeFinding(act.proof, act.answer, act.figure);
      case 'partReplaced':
        return this.replacePart(act.element);
      case 'partBridged':
        return this.bridgePart(act.element);
      case 'partMetered':
        return this.meterPart(act.element);
      default:
        throw new Error(`no hand for ${act.type}`);
    }
  }

  /** one of the choices of the diagnosis, in the dialog */
  protected abstract tick(words: string): Promise<void>;

  /** Signed in the dialog, with what was wrong where it is asked. */
  async sign(): Promise<void> {
    const { page, setup } = this.face;
    await this.press(headerWords.signOff);
    const diagnosis = trueDiagnosis(setup);
    if (diagnosis?.type === 'diagnosisStated') {
      const form = page.getByRole('dialog').locator('.diagnosis');
      await expect(page.getByRole('dialog')).toContainText(diagnosisWords.unsaid);
      await expect(form.getByRole('checkbox', { checked: true })).toHaveCount(0);
      const { slugs, parts, setUp } = diagnosis;
      const tray = printedTray(setup).filter(({ name }) => parts.includes(name));
      const letters = slugLetters(setup.receiver);
      const named = [
        ...slugs.map((id) => slugNameFirst(en, setup.receiver, id)),
        ...tray.map((part) => partsWords.name(part, part.slug === null ? null : letters.get(part.slug)!)),
        ...setUp.map((matter) => diagnosisWords.matters[matter]),
      ];
      for (const words of named.length === 0 ? [diagnosisWords.nothing] : named) await this.tick(words);
      await expect(form.getByRole('checkbox', { checked: true })).toHaveCount(
        Math.max(named.length, 1) + (slugs.length + parts.length === 0 && setUp.length > 0 ? 1 : 0),
      );
    }
    await this.press(dialogWords.signOff.sign, 'dialog');
  }

  /** one of the choices of the card, by its words and by the digit beside them */
  protected abstract chooseFinding(words: string, digit: string): Promise<void>;

  private async writeFinding(proof: ProofId, answer: FindingAnswer, planned: number | null): Promise<void> {
    const card = this.face.page.locator('.finding');
    await expect(card).toContainText(findingCardWords.proofs[proof].act);
    const figure = this.figureFor(proof, (await card.textContent()) ?? '') ?? planned;
    if (answer === 'notLooked' || answer === 'again') throw new Error(`no hand for ${answer}`);
    const words = findingCardWords.answers[answer];
    const digit = await card.locator('.finding-choices label', { hasText: words }).locator('kbd').textContent();
    await this.chooseFinding(words, digit ?? '');
    await expect(card.getByRole('radio', { checked: true })).toHaveCount(1);
    const read = card.getByRole('textbox');
    await read.focus();
    await this.face.page.keyboard.type((figure ?? 0).toFixed(2));
    await this.press(findingCardWords.write);
    await expect(card.filter({ hasText: findingCardWords.proofs[proof].act })).toHaveCount(0);
  }

  /** Which pip is asked about is the page's own chance, and which place the attempt's: the height there, where the card names one. */
  private figureFor(proof: ProofId, asked: string): number | null {
    const { setup } = this.face;
    const state = stateAfter(setup, this.made, initialState(setup));
    const pip = /\bpip (\d+)\b/.exec(asked);
    const atPlace = setup.scenario.sealed && placeAskedFor(setup, state, proof) !== null;
    if (pip === null && !atPlace) return null;
    const finding = trueFinding(setup, state, proof, pip === null ? undefined : Number(pip[1]));
    return finding.type === 'findingStated' ? finding.figure : null;
  }

  private async setControl(control: string, value: number | boolean | string): Promise<void> {
    if (typeof value === 'boolean') return this.flip(control, value);
    if (typeof value === 'string') return this.choose(control, value);
    const { fitting, slider } = await this.face.knob(control);
    const position = String(Math.round(fitting.scale.indexOf(value)));
    if ((await slider.inputValue()) !== position) {
      await this.looked(control);
      await this.turnKnob(control, value);
    }
    await expect(slider).toHaveValue(position);
    if (LOOKED_AT.has(control)) this.leftAtMs.set(control, performance.now());
  }

  /** A knob that is turned on has stood for as long as a look takes: what is left of that is waited for. */
  private async looked(control: string): Promise<void> {
    const left = this.leftAtMs.get(control);
    if (left === undefined) return;
    const restMs = LOOK_MS - (performance.now() - left);
    if (restMs > 0) await this.face.page.waitForTimeout(restMs);
  }

  private async turn(slug: string, turns: number): Promise<void> {
    const parts = Math.round(turns * 32);
    await this.turnSlug(slug, parts);
    const total = (this.turned.get(slug) ?? 0) + parts / 32;
    this.turned.set(slug, total);
    await expect(this.face.slug(slug)).toHaveAttribute('aria-valuenow', String(total));
  }
}

/** Turns of the same slug that follow each other are one turn: steps of 1/32 are counted once. */
export function merged(acts: readonly BenchEvent[]): readonly BenchEvent[] {
  const out: BenchEvent[] = [];
  for (const act of acts) {
    const last = out.at(-1);
    if (act.type === 'slugTurned' && last?.type === 'slugTurned' && last.slug === act.slug)
      out[out.length - 1] = { ...act, turns: act.turns + last.turns };
    else out.push(act);
  }
  return out;
}

/** A long turn as the bench takes it: a turn at a time. */
function inTurns(act: BenchEvent): readonly BenchEvent[] {
  if (act.type !== 'slugTurned' || Math.abs(act.turns) <= 1) return [act];
  const whole = Math.sign(act.turns);
  return [{ ...act, turns: whole }, ...inTurns({ ...act, turns: act.turns - whole })];
}
