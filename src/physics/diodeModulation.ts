/**
 * What a loaded diode presents to a small modulation of its carrier.
 *
 * Let the amplitude at the node swing by p about A, at W radians a second, and the phase stand. The fundamental current follows A and the load's volts V: dI = c p + b v, the
 * mean current too: dI_0 = a p - g v. The load has 1/R at rest and Y_l = 1/R + j W C at W, so v = a p / (g + Y_l), and
 *   dI / p = Y_p = (Y A)' + b V' ( (g + 1/R) / (g + Y_l) - 1 ),
 * ' by A along the standing law (v free), since there a = V' (g + 1/R) and c = (Y A)' - b V'. g and b, how mean and fundamental current answer the load's volts at one
 * amplitude, are read off two standing laws of nearly equal loads. A swing of the phase alone meets Y itself.
 * Validity: small modulation, slow against the carrier. Source: small-signal analysis about a standing state (any text); cf. Clarke and Hess, Communication Circuits,
 * 1971 (from memory).
 */
import { admittanceAt } from './admittance.ts';
import { type DiodeLaw, diodeLaw } from './diodeLaw.ts';

/** How far apart the two loads lie. */
const LOADS_APART = 1.02;
const STEP = 1e-3;

export interface DiodeModulation {
  /** writes Y_p less Y at modulating frequencies `hz` (below zero: the other sideband's), siemens */
  excess(hz: number, out: Float64Array): void;
}

const lighterLaws = new WeakMap<DiodeLaw, DiodeLaw>();

/** The same diode with a little less load. */
function lighterLaw(law: DiodeLaw): DiodeLaw {
  const { diode } = law;
  const lighter = lighterLaws.get(law) ?? diodeLaw({ ...diode, loadOhms: diode.loadOhms * LOADS_APART });
  lighterLaws.set(law, lighter);
  return lighter;
}

/** About a carrier of `amplitudeVolts`. */
export function createDiodeModulation(law: DiodeLaw, amplitudeVolts: number): DiodeModulation {
  const { diode, admittance, detect } = law;
  const amplitude = Math.max(amplitudeVolts, 1e-6);
  const y = new Float64Array(4);
  admittanceAt(admittance, amplitude, y);
  const slope = [y[2]! * amplitude, y[3]! * amplitude] as const;
  const volts = detect(amplitude);
  const perAmplitude = (detect(amplitude * (1 + STEP)) - detect(amplitude * (1 - STEP))) / (2 * STEP * amplitude);
  const lighter = lighterLaw(law);
  const other = new Float64Array(4);
  admittanceAt(lighter.admittance, amplitude, other);
  const more = lighter.detect(amplitude) - volts;
  const g = (volts / diode.loadOhms - lighter.detect(amplitude) / (diode.loadOhms * LOADS_APART)) / more;
  const b = [((other[0]! - y[0]!) * amplitude) / more, ((other[1]! - y[1]!) * amplitude) / more] as const;
  const rest = g + 1 / diode.loadOhms;
  return {
    excess(hz, out) {
      const susceptance = 2 * Math.PI * hz * diode.loadFarads;
      const size = rest * rest + susceptance * susceptance;
      // (g + 1/R) / (g + Y_l) - 1
      const re = (rest * rest) / size - 1;
      const im = (-rest * susceptance) / size;
      out[0] = slope[0] + perAmplitude * (b[0] * re - b[1] * im);
      out[1] = slope[1] + perAmplitude * (b[0] * im + b[1] * re);
    },
  };
}
