/** Where each control is found in the page: its panel's side, its role and its accessible name. */
import { expect, type Locator, type Page } from '@playwright/test';
import type { ControlId, KnobId } from '../../src/bench/benchEvent.ts';
import type { LeadId, ToolId } from '../../src/bench/benchState.ts';
import type { ControlRow } from '../../src/bench/controls/row.ts';
import { CONTROL_ROWS } from '../../src/bench/controls/rows.ts';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { fitKnob, type KnobFitting } from '../../src/present/controlScales.ts';
import type { ControlWords } from '../../src/words/controlWords.ts';
import { controlWords, panelWords, safeWords } from '../../src/words/en/bench.ts';
import { en } from '../../src/words/en/index.ts';
import { sceneWords } from '../../src/words/en/scene.ts';

const { aloud, frequency } = en.format;

/** The mains are no control of the bench's table. */
const MAINS: Readonly<Record<string, string>> = { isolation: safeWords.isolation, mains: safeWords.mains };

/** On the bias panel's sides where it has sides. */
function sideOf(control: string): string | undefined {
  if (control in MAINS) return panelWords.safeSide;
  const { panel } = CONTROL_ROWS[control as ControlId];
  return panel === 'bias' ? panelWords.biasSide : panel === 'leads' ? panelWords.leadsSide : undefined;
}

const kindOf = (control: string) => (control in MAINS ? 'switch' : CONTROL_ROWS[control as ControlId].kind);

/** Whether wheel and arrows go by round figures instead of steps. */
export function hasNotches(control: string): boolean {
  const row: ControlRow = CONTROL_ROWS[control as ControlId];
  return row.kind === 'range' && row.notch !== undefined;
}
const WORDS: ControlWords = controlWords;

export type SideOpener = (tab: Locator) => Promise<void>;

export interface Knob {
  readonly fitting: KnobFitting;
  readonly slider: Locator;
}

/** Finds controls, and has the side of the panel turned to the front where the control is on the back of it. */
export class BenchFace {
  constructor(
    readonly page: Page,
    readonly setup: BenchSetup,
    private readonly open: SideOpener,
  ) {}

  async knob(control: string): Promise<Knob> {
    await this.toFront(control);
    const fitting = fitKnob(en, this.setup, control as KnobId);
    return { fitting, slider: this.page.getByRole('slider', { name: fitting.label, exact: true }) };
  }

  async toggle(control: string): Promise<Locator> {
    await this.toFront(control);
    return this.page.getByRole('switch', { name: MAINS[control] ?? WORDS[control]!.label, exact: true });
  }

  /** the radio group of a control with named positions, and the position for a value */
  async positions(control: string, value: string): Promise<{ readonly group: Locator; readonly position: Locator }> {
    await this.toFront(control);
    const { label, positions } = WORDS[control]!;
    const { word, spoken = word } = positions![value]!;
    const group = this.page.getByRole('radiogroup', { name: label, exact: true });
    return { group, position: group.getByRole('radio', { name: spoken, exact: true }) };
  }

  crystal(hz: number): Locator {
    return this.page.getByRole('button', { name: `Crystal ${aloud(frequency(hz))},` });
  }

  tool(tool: ToolId): Locator {
    return this.page.getByRole('radio', { name: sceneWords.toolSpoken(tool, false) });
  }

  grip(lead: LeadId): Locator {
    return this.page.locator(`.lead-grip[data-lead="${lead}"]`);
  }

  target(end: string): Locator {
    return this.page.getByRole('button', {
      name: sceneWords.putOn(end === 'tube' ? sceneWords.tubeX : end),
      exact: true,
    });
  }

  slug(id: string): Locator {
    return this.page.locator(`[data-slug="${id}"]`);
  }

  isSwitch(control: string): boolean {
    return kindOf(control) === 'switch';
  }

  hasPositions(control: string): boolean {
    return kindOf(control) === 'positions';
  }

  async leadIsOn(lead: LeadId, end: string): Promise<void> {
    const name = sceneWords.leadOn(lead, end === 'tube' ? sceneWords.tubeX : end);
    await expect(this.grip(lead)).toHaveAttribute('aria-label', name);
  }

  async leadIsLoose(lead: LeadId): Promise<void> {
    await expect(this.grip(lead)).toHaveAttribute('aria-label', sceneWords.leadLoose(lead));
  }

  async crystalIs(hz: number, plugged: boolean): Promise<void> {
    await expect(this.crystal(hz)).toHaveAttribute('aria-pressed', String(plugged));
  }

  private async toFront(control: string): Promise<void> {
    const side = sideOf(control);
    if (side === undefined) return;
    const tab = this.page.getByRole('tab', { name: side, exact: true });
    if ((await tab.count()) === 0 || (await tab.getAttribute('aria-selected')) === 'true') return;
    await this.open(tab);
    await expect(tab).toHaveAttribute('aria-selected', 'true');
  }
}
