/** Where each control is found in the page: its panel's side, its role and its accessible name. */
import { expect, type Locator, type Page } from '@playwright/test';
import type { LeadId, ToolId } from '../../src/bench/benchState.ts';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { fitKnob, type KnobControl, type KnobFitting } from '../../src/present/controlScales.ts';
import {
  biasWords,
  leadWords,
  panelWords,
  rackWords,
  safeWords,
  sweepWords,
  tubeControlWords,
} from '../../src/words/en/bench.ts';
import { aloud, frequency } from '../../src/words/en/benchFigures.ts';
import { sceneWords } from '../../src/words/en/scene.ts';

/** On the bias panel's sides where it has sides. */
const SIDES: Readonly<Record<string, string>> = {
  biasAVolts: panelWords.biasSide,
  biasAPolarity: panelWords.biasSide,
  biasBVolts: panelWords.biasSide,
  biasBPolarity: panelWords.biasSide,
  meterMode: panelWords.biasSide,
  rfTerminated: panelWords.leadsSide,
  rfCapacitor: panelWords.leadsSide,
  yTip: panelWords.leadsSide,
  isolation: panelWords.safeSide,
  mains: panelWords.safeSide,
};

const SWITCHES: Readonly<Record<string, string>> = {
  blanking: sweepWords.blanking,
  mirror: sweepWords.mirror,
  slowSweep: sweepWords.slow,
  comb: rackWords.comb,
  tunableOn: rackWords.tunable,
  ySmoothing: tubeControlWords.smoothing,
  yInvert: tubeControlWords.invert,
  rfTerminated: leadWords.termination,
  rfCapacitor: leadWords.capacitor,
  isolation: safeWords.isolation,
  mains: safeWords.mains,
};

const GROUPS: Readonly<Record<string, { readonly label: string; readonly studs: Readonly<Record<string, string>> }>> = {
  biasAPolarity: { label: biasWords.polarity.A, studs: biasWords.polarities },
  biasBPolarity: { label: biasWords.polarity.B, studs: biasWords.polarities },
  sourceMode: { label: sweepWords.mode, studs: sweepWords.modesSpoken },
  markerRoute: { label: rackWords.route, studs: rackWords.routesSpoken },
  meterMode: { label: biasWords.mode, studs: biasWords.modesSpoken },
  yCoupling: { label: tubeControlWords.yCoupling, studs: tubeControlWords.couplings },
  yInput: { label: tubeControlWords.yInput, studs: tubeControlWords.inputsSpoken },
  yTip: { label: leadWords.tip, studs: leadWords.tipsSpoken },
};

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
    const fitting = fitKnob(this.setup, control as KnobControl);
    return { fitting, slider: this.page.getByRole('slider', { name: fitting.label, exact: true }) };
  }

  async toggle(control: string): Promise<Locator> {
    await this.toFront(control);
    return this.page.getByRole('switch', { name: SWITCHES[control]!, exact: true });
  }

  /** the radio group of a control with named studs, and the stud for a value */
  async studs(control: string, value: string): Promise<{ readonly group: Locator; readonly stud: Locator }> {
    await this.toFront(control);
    const { label, studs } = GROUPS[control]!;
    const group = this.page.getByRole('radiogroup', { name: label, exact: true });
    return { group, stud: group.getByRole('radio', { name: studs[value]!, exact: true }) };
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
    return control in SWITCHES;
  }

  isStuds(control: string): boolean {
    return control in GROUPS;
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
    const side = SIDES[control];
    if (side === undefined) return;
    const tab = this.page.getByRole('tab', { name: side, exact: true });
    if ((await tab.count()) === 0 || (await tab.getAttribute('aria-selected')) === 'true') return;
    await this.open(tab);
    await expect(tab).toHaveAttribute('aria-selected', 'true');
  }
}
