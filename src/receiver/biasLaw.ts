/**
 * What the bias does to a controlled stage: its gain, and the load that it puts on the coil before it.
 *
 * With m = |V| - |V_ref| on the side that the line belongs to:
 *   exponential (remote cut-off valve, the usual semi-log law):  g = exp(-m / scale),  dC = C (sqrt g - 1)
 *   proportional (transistor, gm in step with its current):      g = max(1 + m / scale, 1e-4),  dC = C (g - 1)
 * and in both the input conductance scales with g (transit time and cathode lead loading follow gm).
 * That the three go together, and the input conductance with gm, is Ferris, Proc. IRE 1936, from memory.
 * Validity: small signal, from zero bias to several times the reference.
 *
 * The other sign. A valve's grid that is driven positive draws grid current: the grid cannot follow, the screen supply sags under the
 * plate current, and the grid-to-cathode path becomes a resistance of some hundred ohms across the coil. With w volts on the wrong side:
 *   g = g(0) / (1 + w / 1.5 V),  input conductance = g(0) + w / 0.15 V,  dC stays at its zero-bias figure
 * so at 3 V an input loading of 12 kilohm falls to about 550 ohm and the gm to 60 per cent: the curve sinks and spreads out. A transistor with the
 * wrong sign is off: g = 1e-4 and no load. These figures are our own plain model with no source; they join the law at 0 V without a step
 * for the valve, and stand for "out of its range", which is all that a learner must see.
 */
import type { BiasLaw } from './receiver.ts';

export interface BiasEffect {
  /** gm over gm at the reference bias */
  readonly gmRelative: number;
  /** added to the stage's input capacitor */
  readonly inputFarads: number;
  /** the stage's input resistor is divided by this */
  readonly inputConductanceRelative: number;
}

/** What goes with a gm of `g` times the reference's, by the same law: a tired stage stands where bias would have brought a good one. */
export function stageAtGain({ kind, capacitanceFarads }: BiasLaw, g: number): BiasEffect {
  const inputFarads = capacitanceFarads * ((kind === 'proportional' ? g : Math.sqrt(g)) - 1);
  return { gmRelative: g, inputFarads, inputConductanceRelative: g };
}

const OFF = 1e-4;
const SCREEN_SAG_VOLTS = 1.5;
const GRID_CONDUCTION_VOLTS = 0.15;

/** Effect of `volts` on the AGC line, signed as a meter shows it. */
export function stageAtBias(law: BiasLaw, volts: number): BiasEffect {
  const rightSide = volts * Math.sign(law.referenceVolts);
  const margin = Math.max(rightSide, 0) - Math.abs(law.referenceVolts);
  const wrongVolts = Math.max(-rightSide, 0);
  if (law.kind === 'proportional') {
    const g = wrongVolts > 0 ? OFF : Math.max(1 + margin / law.scaleVolts, OFF);
    return stageAtGain(law, g);
  }
  const g = Math.exp(-margin / law.scaleVolts);
  return {
    ...stageAtGain(law, g),
    gmRelative: g / (1 + wrongVolts / SCREEN_SAG_VOLTS),
    inputConductanceRelative: g + wrongVolts / GRID_CONDUCTION_VOLTS,
  };
}

/** Where the line stands when no bias lead holds it: it follows the detector's average output (volts, taken without its sign). */
export function unclampedVolts(law: BiasLaw, detectedVolts: number): number {
  return law.unclampedRestVolts + law.unclampedVoltsPerDetectedVolt * Math.abs(detectedVolts);
}
