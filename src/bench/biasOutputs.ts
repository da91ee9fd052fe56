/** The bias supply's two outputs: each has its lead, its knob without a sign and its polarity. The first line that a sheet names has the first of them. */
import { seededRandom } from '../base/random.ts';
import { lifeOf } from '../scenario/life.ts';
import type { BenchState, Controls, LeadEnd, LeadId } from './benchState.ts';

export const BIAS_OUTPUTS = [
  { lead: 'biasA', volts: 'biasAVolts', polarity: 'biasAPolarity' },
  { lead: 'biasB', volts: 'biasBVolts', polarity: 'biasBPolarity' },
] as const satisfies readonly { lead: LeadId; volts: keyof Controls; polarity: keyof Controls }[];

export type BiasOutput = (typeof BIAS_OUTPUTS)[number];

/** Where the other output's lead is; null for a lead that has no twin, or one whose twin is in the tray. */
export function twinEnd(leads: BenchState['leads'], lead: LeadId): LeadEnd | null {
  if (!BIAS_OUTPUTS.some((output) => output.lead === lead)) return null;
  const twin = BIAS_OUTPUTS.find((output) => output.lead !== lead);
  return twin === undefined ? null : leads[twin.lead];
}

/** By how much an output gives more than its knob says, as a share: half to all of the scenario's figure, either way, by its seed. The needle shows it. */
export function knobError(
  scenario: Parameters<typeof lifeOf>[0] & { readonly seed: number },
  output?: BiasOutput,
): number {
  const { biasKnobError } = lifeOf(scenario);
  if (biasKnobError === 0 || output === undefined) return 0;
  const chance = seededRandom(scenario.seed + 4);
  const errors = BIAS_OUTPUTS.map(() => (chance() < 0.5 ? -1 : 1) * biasKnobError * (0.5 + 0.5 * chance()));
  return errors[BIAS_OUTPUTS.indexOf(output)] ?? 0;
}

/** Volts of an output with their sign, by its knob. */
export function outputVolts({ volts, polarity }: BiasOutput, controls: Controls): number {
  return controls[polarity] === '-' ? 0 - controls[volts] : controls[volts];
}

/** How knob and polarity stand for these volts. */
export function biasControls(output: BiasOutput, volts: number): Partial<Controls> {
  return { [output.volts]: Math.abs(volts), [output.polarity]: volts < 0 ? '-' : '+' };
}
