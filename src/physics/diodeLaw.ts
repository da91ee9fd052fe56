/**
 * A loaded diode as its circuit and its reader meet it: volts out and admittance presented, by the carrier's amplitude at its node.
 *
 * Without `harmonics` the closed forms of diode.ts. With them the balance of diodeHarmonics.ts, in a table of INTERVALS up to END_VOLTS; beyond, the admittance stands
 * still and the volts go on in a straight line. Interpolation within 5e-5 of each value. Laws are kept: equal diodes share one.
 */
import { once } from '../base/once.ts';
import { type Admittance, cubicAt, tabulateAdmittance } from './admittance.ts';
import { createDetector, type Diode, diodeConductance } from './diode.ts';
import {
  createDiodeBalance,
  type DiodeCircuit,
  type HarmonicCircuit,
  type HungLead,
  smallDiode,
} from './diodeHarmonics.ts';

export interface LoadedDiode extends Diode {
  /** across the load; counts only with harmonics */
  readonly loadFarads: number;
  /** null: circuit and load are short circuits to the carrier's harmonics */
  readonly harmonics: HarmonicCircuit | null;
  /** on the load, for the carrier and its harmonics; counts only with harmonics. Left out: none */
  readonly lead?: HungLead | undefined;
}

export interface DiodeLaw {
  readonly diode: LoadedDiode;
  /** volts on the load for a carrier of so many volts peak */
  detect(amplitudeVolts: number): number;
  readonly admittance: Admittance;
}

const CLOSED_INTERVALS = 512;
const CLOSED_END_VOLTS = 100;
const INTERVALS = 64;
const END_VOLTS = 12;
const MOST_LAWS = 512;

const known = new Map<string, DiodeLaw>();

export function diodeLaw(diode: LoadedDiode): DiodeLaw {
  const { saturationAmps, emissionVolts, loadOhms, loadFarads, harmonics, lead } = diode;
  const hung = lead === undefined ? '' : `|${lead.ohms}|${lead.farads}`;
  const circuit =
    harmonics === null
      ? `${loadFarads}`
      : `${loadFarads}|${harmonics.hz}|${harmonics.re.join(' ')}|${harmonics.im.join(' ')}`;
  const key = `${saturationAmps}|${emissionVolts}|${loadOhms}${hung}|${circuit}`;
  const law = known.get(key) ?? (harmonics === null ? closedLaw(diode) : balancedLaw({ ...diode, harmonics }));
  // Put back at the end, so that the first in the map is the one longest unused.
  known.delete(key);
  known.set(key, law);
  if (known.size > MOST_LAWS) known.delete(known.keys().next().value!);
  return law;
}

function closedLaw(diode: LoadedDiode): DiodeLaw {
  const at = (amplitude: number): [number, number] => [diodeConductance(amplitude, diode), 0];
  return {
    diode,
    detect: createDetector(diode),
    admittance: tabulateAdmittance(diode.emissionVolts, CLOSED_END_VOLTS, CLOSED_INTERVALS, at),
  };
}

function balancedLaw(circuit: DiodeCircuit & LoadedDiode): DiodeLaw {
  const { emissionVolts } = circuit;
  const balance = createDiodeBalance(circuit);
  const small = smallDiode(circuit);
  /** V (nVt + A) / A^2, smooth and bounded from square law to straight line */
  const shape = new Float64Array(INTERVALS + 4);
  let shaped = 0;
  const admittance = tabulateAdmittance(emissionVolts, END_VOLTS, INTERVALS, (amplitude) => {
    const state = amplitude === 0 ? small : balance(amplitude);
    const perSquare = amplitude === 0 ? small.volts : state.volts / amplitude ** 2;
    // Its continuation to the one sample before zero is taken as even, as the volts themselves are.
    shape[shaped] = perSquare * (emissionVolts + (shaped === 0 ? -amplitude : amplitude));
    shaped++;
    return [state.g, state.b];
  });
  const { step } = admittance;
  const within = (amplitude: number): number => {
    const at = Math.min(Math.log1p(amplitude / emissionVolts) / step, INTERVALS);
    admittance.reach(Math.floor(at) + 4);
    return (cubicAt(shape, at) * amplitude * amplitude) / (emissionVolts + amplitude);
  };
  const end = once(() => {
    const volts = within(END_VOLTS);
    return { volts, slope: (volts - within(END_VOLTS * 0.99)) / (END_VOLTS * 0.01) };
  });
  return {
    diode: circuit,
    admittance,
    detect(amplitudeVolts) {
      const amplitude = Math.abs(amplitudeVolts);
      return amplitude < END_VOLTS ? within(amplitude) : end().volts + (amplitude - END_VOLTS) * end().slope;
    },
  };
}
