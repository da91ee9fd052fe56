/** The bias supply's two outputs: each has its lead, its knob without a sign and its polarity. The first line that a sheet names has the first of them. */
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

/** Volts of an output with their sign. */
export function outputVolts({ volts, polarity }: BiasOutput, controls: Controls): number {
  return controls[polarity] === '-' ? 0 - controls[volts] : controls[volts];
}

/** How knob and polarity stand for these volts. */
export function biasControls(output: BiasOutput, volts: number): Partial<Controls> {
  return { [output.volts]: Math.abs(volts), [output.polarity]: volts < 0 ? '-' : '+' };
}
