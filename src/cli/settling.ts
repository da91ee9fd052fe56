/**
 * How long a set needs until a carrier that is switched on stands still at the Y lead.
 *
 * Circuits: their response over a band round the carrier, at the level at hand, is turned into the answer to a click; what is still to come of it after t is what a
 * carrier that began t ago still lacks. Loads: so many time constants of the slowest. Source: Fourier pair of response and impulse answer, any signals text (from memory).
 */
import type { LineVolts } from '../bench/conditions.ts';
import { ISOLATING_OHMS, Y_LEAD_FARADS } from '../bench/instruments.ts';
import type { Moment } from '../bench/moment.ts';
import type { Observation } from '../bench/observation.ts';
import type { LoadedDiode } from '../physics/diodeLaw.ts';
import { BENCH_PROBE } from '../receiver/benchProbe.ts';
import type { Detector } from '../receiver/receiver.ts';
import { LOWEST_HZ } from '../receiver/sourceLevel.ts';

export interface DeckDiode {
  readonly detector: Detector;
  /** with what hangs on their load; of an FM detector both */
  readonly diodes: readonly LoadedDiode[];
}

export interface Settling {
  /** until the circuits lack less than `LACKING` of the highest carrier in the band */
  readonly circuitSeconds: number;
  /** time constant of the slowest load or lead */
  readonly loadSeconds: number;
}

const LINES = 512;
export const LACKING = 1e-3;

/**
 * `spanHz` is the sheet's: the band that is looked at is half as wide again on either side. `turned`: a mixer whose oscillator runs above the carrier has turned the spectrum
 * round, and with it the time of the answer.
 */
export function settlingSeconds(
  moment: Moment,
  lineVolts: LineVolts,
  observation: Observation,
  diodes: readonly DeckDiode[],
  spanHz: number,
  turned: boolean,
): Settling {
  const { node, minusNode } = observation;
  const halfHz = Math.min(1.5 * spanHz, moment.centreHz - LOWEST_HZ);
  const stepHz = (2 * Math.max(halfHz, LOWEST_HZ / 2)) / LINES;
  const hz = Float64Array.from({ length: LINES }, (_, k) =>
    Math.max(moment.centreHz + (k - LINES / 2) * stepHz, LOWEST_HZ),
  );
  const { sweep } = moment.circuit;
  sweep.solve(hz, moment.conditions(lineVolts));
  const nodes = minusNode === null ? [node] : [node, minusNode];
  const circuitSeconds = Math.max(
    ...nodes.map((one) => lackingUntil(sweep.real(one), sweep.imag(one), stepHz, turned)),
  );
  const loads = diodes.flatMap((one) => one.diodes.map((diode) => diode.loadOhms * diode.loadFarads));
  return { circuitSeconds, loadSeconds: Math.max(...loads, leadSeconds(moment, diodes)) };
}

/** The lead's capacitance fills through its tip and the load before it; a probe has its own load only. */
function leadSeconds({ connections: { y, tip } }: Moment, diodes: readonly DeckDiode[]): number {
  if (tip === 'probe') return BENCH_PROBE.loadOhms * BENCH_PROBE.loadFarads;
  const seen = diodes.find(({ detector }) => detector.id === y?.detector)?.diodes[0];
  const { loadOhms, loadFarads } = seen ?? { loadOhms: 0, loadFarads: 0 };
  return loadOhms * loadFarads + (loadOhms + ISOLATING_OHMS) * Y_LEAD_FARADS;
}

function lackingUntil(re: Float64Array, im: Float64Array, stepHz: number, turned: boolean): number {
  const shareRe = new Float64Array(LINES);
  const shareIm = new Float64Array(LINES);
  let most = 0;
  for (let k = 0; k < LINES; k++) most = Math.max(most, Math.hypot(re[k]!, im[k]!));
  if (most === 0) return 0;
  // A window without corners, so that the band's edges do not ring.
  const at = (of: Float64Array, k: number) => (of[k]! * (1 - Math.cos((2 * Math.PI * k) / LINES))) / 2 / most / LINES;
  for (let m = 0; m < LINES; m++) {
    for (let k = 0; k < LINES; k++) {
      const angle = ((turned ? -2 : 2) * Math.PI * ((k - LINES / 2) * m)) / LINES;
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      shareRe[m] = shareRe[m]! + at(re, k) * c - at(im, k) * s;
      shareIm[m] = shareIm[m]! + at(re, k) * s + at(im, k) * c;
    }
  }
  // The last eighth of the period lies before the click.
  let [leftRe, leftIm] = [0, 0];
  for (let m = Math.floor((7 * LINES) / 8); m > 0; m--) {
    leftRe += shareRe[m]!;
    leftIm += shareIm[m]!;
    if (Math.hypot(leftRe, leftIm) > LACKING) return (m + 1) / (LINES * stepHz);
  }
  return 1 / (LINES * stepHz);
}
