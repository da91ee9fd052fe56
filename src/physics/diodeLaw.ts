/**
 * A loaded diode as its circuit and its reader meet it: volts out and admittance presented, by the carrier's amplitude at its node.
 *
 * Beside the carrier's own frequency the circuit is another at the harmonics, and the load's capacitor too: with `beside` the balance is drawn up at three frequencies, a parabola between them.
 *
 * Without `harmonics` the closed forms of diode.ts. With them the balance of diodeHarmonics.ts, in a table of INTERVALS up to END_VOLTS; beyond, the admittance stands
 * still and the volts go on in a straight line. Interpolation within 5e-5 of each value. Laws are kept: equal diodes share one.
 */
import { once } from '../base/once.ts';
import { type Admittance, COARSE, cubicAt, type Drift, driftPlace, tabulateAdmittance } from './admittance.ts';
import { chargingDiode } from './chargingDiode.ts';
import { createDetector, type Diode, diodeConductance } from './diode.ts';
import { createDiodeBalance, type DiodeCircuit, type DiodeState, type HungLead, smallDiode } from './diodeHarmonics.ts';
import type { HarmonicCircuit } from './harmonicCircuit.ts';

export interface LoadedDiode extends Diode {
  /** across the load; counts only with harmonics */
  readonly loadFarads: number;
  /** null: circuit and load are short circuits to the carrier's harmonics */
  readonly harmonics: HarmonicCircuit | null;
  /** the same as far below and above its carrier; left out: as at the carrier all over */
  readonly beside?: readonly [below: HarmonicCircuit, above: HarmonicCircuit] | undefined;
  /** those two are as far off by their periods: over a band so wide that a load which is too small at its lower end does, what is left out goes with powers of the period */
  readonly besideByPeriod?: true | undefined;
  /** from its node to that of the other diode of a pair; left out: it stands alone */
  readonly mutual?: HarmonicCircuit | undefined;
  /** on the load, for the carrier and its harmonics; counts only with harmonics. Left out: none */
  readonly lead?: HungLead | undefined;
}

export interface DiodeLaw {
  readonly diode: LoadedDiode;
  /** volts on the load for a carrier of so many volts peak; `hz` left out: at the middle of its band */
  detect(amplitudeVolts: number, hz?: number): number;
  readonly admittance: Admittance;
}

const CLOSED_INTERVALS = 512;
const CLOSED_END_VOLTS = 100;
const INTERVALS = 64;
const END_VOLTS = 12;
const MOST_LAWS = 512;

const known = new Map<string, DiodeLaw>();

export function diodeLaw(diode: LoadedDiode): DiodeLaw {
  const { saturationAmps, emissionVolts, loadOhms, loadFarads, harmonics, lead, beside, mutual } = diode;
  const hung = lead === undefined ? '' : `|${lead.ohms}|${lead.farads}`;
  const circuit =
    harmonics === null
      ? `${loadFarads}`
      : [harmonics, ...(beside ?? []), ...(mutual === undefined ? [] : [mutual])].reduce(
          (key, { hz, re, im }) => `${key}|${hz}|${re.join(' ')}|${im.join(' ')}`,
          `${loadFarads}`,
        );
  const key = `${saturationAmps}|${emissionVolts}|${loadOhms}${hung}|${circuit}`;
  const law = known.get(key) ?? (harmonics === null ? closedLaw(diode) : balancedLaw({ ...diode, harmonics }));
  // Put back at the end, so that the first in the map is the one longest unused.
  known.delete(key);
  known.set(key, law);
  if (known.size > MOST_LAWS) known.delete(known.keys().next().value!);
  return law;
}

function closedLaw(diode: LoadedDiode): DiodeLaw {
  const detector = createDetector(diode);
  const at = (amplitude: number): [number, number] => [diodeConductance(amplitude, diode), 0];
  const pull: Admittance['pull'] = (crests, seconds, out) => pullOf(law, crests, seconds, out);
  const law: DiodeLaw = {
    diode,
    detect: (amplitudeVolts) => detector(amplitudeVolts),
    admittance: tabulateAdmittance(diode.emissionVolts, CLOSED_END_VOLTS, CLOSED_INTERVALS, at, null, null, pull),
  };
  return law;
}

function pullOf(law: DiodeLaw, crests: Float64Array, periodSeconds: number, out: Float64Array): void {
  let most = 0;
  for (const a of crests) most = Math.max(most, a);
  const { emissionVolts } = law.diode;
  const still = chargingDiode(law, most, 0).charge(crests, periodSeconds, out.fill(0));
  for (let i = 0; i < out.length; i++) out[i] = Math.exp((still[i]! - out[i]!) / emissionVolts);
}

function balancedLaw(circuit: DiodeCircuit & LoadedDiode): DiodeLaw {
  const { emissionVolts } = circuit;
  const balance = createDiodeBalance(circuit);
  const small = smallDiode(circuit);
  /** V (nVt + A) / A^2, smooth and bounded from square law to straight line */
  const shape = new Float64Array(INTERVALS + 4);
  let shaped = 0;
  const at = (amplitude: number): readonly [g: number, b: number] => {
    const state = amplitude === 0 ? small : balance(amplitude);
    const perSquare = amplitude === 0 ? small.volts : state.volts / amplitude ** 2;
    // Its continuation to the one sample before zero is taken as even, as the volts themselves are.
    shape[shaped] = perSquare * (emissionVolts + (shaped === 0 ? -amplitude : amplitude));
    shaped++;
    return [state.g, state.b];
  };
  const drift = circuit.beside === undefined ? null : tabulateDrift(circuit, circuit.beside, (i) => middle(i));
  const pull: Admittance['pull'] = (crests, seconds, out) => pullOf(law, crests, seconds, out);
  const admittance = tabulateAdmittance(emissionVolts, END_VOLTS, INTERVALS, at, drift, circuit.mutual ?? null, pull);
  const { step } = admittance;
  const middle = (sample: number): readonly [g: number, b: number, shape: number] => {
    admittance.reach(sample + 2);
    return [admittance.g[sample + 1]!, admittance.b[sample + 1]!, shape[sample + 1]!];
  };
  const drifted = (amplitude: number, hz: number): number => {
    if (drift === null) return 0;
    const x = driftPlace(drift, hz);
    const place = Math.log(1 + amplitude / emissionVolts) / (COARSE * step);
    const i = Math.min(Math.floor(place), INTERVALS / COARSE - 1);
    const t = place - i;
    if (drift.known < i + 2) drift.reach(i + 2);
    const first = drift.volts[0];
    const second = drift.volts[1];
    const low = x * first[i]! + x * x * second[i]!;
    const high = x * first[i + 1]! + x * x * second[i + 1]!;
    return ((low + t * (high - low)) * amplitude * amplitude) / (emissionVolts + amplitude);
  };
  const within = (amplitude: number): number => {
    const at = Math.min(Math.log1p(amplitude / emissionVolts) / step, INTERVALS);
    const needed = Math.floor(at) + 4;
    if (admittance.known < needed) admittance.reach(needed);
    return (cubicAt(shape, at) * amplitude * amplitude) / (emissionVolts + amplitude);
  };
  const end = once(() => {
    const volts = within(END_VOLTS);
    return { volts, slope: (volts - within(END_VOLTS * 0.99)) / (END_VOLTS * 0.01) };
  });
  const law: DiodeLaw = {
    diode: circuit,
    admittance,
    detect(amplitudeVolts, hz) {
      const amplitude = Math.abs(amplitudeVolts);
      const more = hz === undefined ? 0 : drifted(Math.min(amplitude, END_VOLTS), hz);
      if (amplitude < END_VOLTS) return within(amplitude) + more;
      return end().volts + (amplitude - END_VOLTS) * end().slope + more;
    },
  };
  return law;
}

/** `middle`: g, b and the volts' shape of a fine sample of the table at the carrier itself. */
function tabulateDrift(
  circuit: DiodeCircuit & Pick<LoadedDiode, 'besideByPeriod'>,
  [below, above]: readonly [HarmonicCircuit, HarmonicCircuit],
  middle: (sample: number) => readonly [number, number, number],
): Drift {
  const { emissionVolts, harmonics } = circuit;
  const samples = INTERVALS / COARSE + 1;
  const step = (COARSE * Math.log1p(END_VOLTS / emissionVolts)) / INTERVALS;
  const both = [below, above].map((one) => {
    const own = { ...circuit, harmonics: one };
    return { small: smallDiode(own), balance: createDiodeBalance(own) };
  });
  const pair = (): readonly [Float64Array, Float64Array] => [new Float64Array(samples), new Float64Array(samples)];
  const [g, b, volts] = [pair(), pair(), pair()];
  return {
    hz: harmonics.hz,
    reachHz: above.hz - harmonics.hz,
    byPeriod: circuit.besideByPeriod === true,
    g,
    b,
    volts,
    known: 0,
    reach(count) {
      for (let i = this.known; i < count; i++) {
        const amplitude = emissionVolts * Math.expm1(i * step);
        const [low, high] = both.map(({ small, balance }) => {
          const state: DiodeState = i === 0 ? small : balance(amplitude);
          const perSquare = i === 0 ? state.volts : state.volts / amplitude ** 2;
          return [state.g, state.b, perSquare * (emissionVolts + amplitude)] as const;
        });
        const at = middle(COARSE * i);
        for (const [k, table] of [g, b, volts].entries()) {
          table[0][i] = (high![k]! - low![k]!) / 2;
          table[1][i] = (high![k]! + low![k]!) / 2 - at[k]!;
        }
        this.known = i + 1;
      }
    },
  };
}
