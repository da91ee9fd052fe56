/**
 * What the tip of the Y lead brings to the tube.
 *
 * - Plain wire or resistor on a detector's load: the volts of that diode; on an FM detector's output or reservoir, what its two diodes make of it.
 * - Probe on a signal point: the volts of the probe's own diode.
 * - Plain wire or resistor on a signal point, or the probe on a detector's load: nothing that the tube could follow.
 * With the tube's raw input the carrier itself is shown, before any diode: at a detector's load the tube takes it from the diode's coil without
 * loading it; on a signal point through whatever the tip is, and the isolating resistor with the lead behind it lets little of it through.
 */
import { type DiodeLaw, diodeLaw, type LoadedDiode } from '../physics/diodeLaw.ts';
import { BENCH_PROBE } from '../receiver/benchProbe.ts';
import { signOf } from '../receiver/detectorSign.ts';
import type { Detector, FmDetector, TestPoint } from '../receiver/receiver.ts';
import type { Connections } from './connections.ts';
import { ISOLATING_OHMS, SMOOTHING_FARADS, TUBE_SECONDS, Y_LEAD_FARADS } from './instruments.ts';
import { diodesNow, type LoadingState, leadFarads, probeNow } from './loads.ts';
import type { BenchSetup } from './setup.ts';

/** `sample`: its place in the period, where what the diode makes of a carrier depends on it; left out: in the middle of its band. */
export type Detect = (amplitudeVolts: number, sample?: number) => number;

/** Writes the crests for two carriers at a place in the period to the two places of `out`. */
export type Crests = (plusVolts: number, minusVolts: number, sample: number, out: Float64Array) => void;

/** A diode and its load. */
export interface Half {
  /** volts for a carrier, without sign, with the set's noise where it is added */
  readonly detect: Detect;
  /** the same without noise */
  readonly plain: Detect;
  /** what noise adds: `detect` less `plain`; null: none */
  readonly lift: Detect | null;
  readonly law: DiodeLaw;
  /** time constant of the load, seconds */
  readonly loadSeconds: number;
}

/** How two rectified voltages become one. */
export interface PairOutput {
  readonly kind: FmDetector['kind'];
  readonly tap: 'output' | 'sum';
  /** of the reservoir with both loads; 0 in a discriminator */
  readonly reservoirSeconds: number;
}

export interface Observation extends Half {
  /** the node of the diode; of an FM detector the one that counts positive */
  readonly node: string;
  /** the other node of an FM detector, and the diode there */
  readonly minusNode: string | null;
  readonly minus: Half | null;
  readonly sign: 1 | -1;
  readonly pair: PairOutput | null;
  /** makes of both carriers, of a sample, what each diode's crest is; null: they are that themselves */
  readonly crests: Crests | null;
  /** that charge and discharge with the load's own capacitor, where the tip is a resistor small against the load */
  readonly leadFarads: number;
  /** of tip, lead, smoothing and tube */
  readonly leadSeconds: number;
  readonly raw: boolean;
}

/** Null where nothing comes through. */
export function observe(setup: BenchSetup, state: LoadingState, connections: Connections): Observation | null {
  const { y, tip } = connections;
  if (y === null) return null;
  const raw = state.controls.yInput === 'raw';
  if (y.role === 'detector') {
    const detector = setup.receiver.detectors.find((d) => d.id === y.detector);
    if (detector === undefined || tip === 'probe') return null;
    const [diode, other] = diodesNow(setup, detector, state, connections);
    const ohms = diode!.loadOhms;
    const tipOhms = tip === 'resistor' ? ISOLATING_OHMS : ohms;
    const common = {
      ...halfOf(diode!),
      minus: other === undefined ? null : halfOf(other),
      crests: null,
      leadFarads: leadFarads(connections, detector),
      leadSeconds: TUBE_SECONDS + leadSeconds(state, tipOhms, tip === 'resistor' ? Y_LEAD_FARADS : 0),
      raw,
    };
    return { ...common, ...nodesOf(detector, y, loadOhmsOf(diode!, other)) };
  }
  if (y.node === null || (tip !== 'probe' && !raw)) return null;
  return {
    ...halfOf(probeNow(setup, y)),
    node: y.node,
    minusNode: null,
    minus: null,
    sign: signOf(BENCH_PROBE.polarity),
    pair: null,
    crests: null,
    leadFarads: 0,
    leadSeconds: TUBE_SECONDS + leadSeconds(state, ISOLATING_OHMS, 0),
    raw,
  };
}

/** A diode with its load, at the middle of its band. */
export function halfOf(diode: LoadedDiode): Half {
  const law = diodeLaw(diode);
  const detect: Detect = (amplitudeVolts) => law.detect(amplitudeVolts);
  return { detect, plain: detect, lift: null, law, loadSeconds: diode.loadOhms * diode.loadFarads };
}

/** What the reservoir's volts run off through, as if half of it lay across each load. */
export function loadOhmsOf(plus: LoadedDiode, minus: LoadedDiode | undefined): number {
  return minus === undefined ? plus.loadOhms : (plus.loadOhms + minus.loadOhms) / 2;
}

/** How the pulses of two diodes dent each other's crests over a period: what each goes by over its carrier, of the forward half or of a carrier that stands still. */
export function crestsOf(plus: Float64Array | null, other: Float64Array | null): Crests | null {
  if (plus === null || other === null) return null;
  const [first, second] = [plus.slice(), other.slice()];
  const count = first.length;
  return (plusVolts, minusVolts, sample, out) => {
    let i = 0;
    if (count > 1) i = sample < count ? sample : 2 * count - 1 - sample;
    out[0] = plusVolts * first[i]!;
    out[1] = minusVolts * second[i]!;
  };
}

/** The same where it is known at which frequencies the carriers of a period's samples stand; `hz`: of the forward half, or the one at which all of them stand. */
export function atFrequencies(observation: Observation, hz: Float64Array): Observation {
  const last = 2 * hz.length - 1;
  const hzOf = (sample: number): number =>
    hz.length === 1 ? hz[0]! : hz[sample < hz.length ? sample : last - sample]!;
  const at = <H extends Half>(half: H): H => {
    if (half.law.admittance.drift === null) return half;
    const detect: Detect = (amplitudeVolts, sample) =>
      half.law.detect(amplitudeVolts, sample === undefined ? undefined : hzOf(sample));
    return { ...half, detect, plain: detect };
  };
  const { minus } = observation;
  return { ...at(observation), minus: minus === null ? null : at(minus) };
}

/** Of the tip's resistance with what hangs on it; the smoothing capacitor stands at the tube's end of the lead. */
function leadSeconds({ controls }: LoadingState, tipOhms: number, farads: number): number {
  return tipOhms * (farads + (controls.ySmoothing ? SMOOTHING_FARADS : 0));
}

/** Where the diode, or the pair of them, behind a point is, and how it counts. */
export function nodesOf(
  detector: Detector,
  point: TestPoint,
  loadOhms: number,
): Pick<Observation, 'node' | 'minusNode' | 'sign' | 'pair'> {
  if (detector.kind === 'envelope')
    return { node: detector.node, minusNode: null, sign: signOf(detector.polarity), pair: null };
  const pair = pairOutput(detector, point, loadOhms);
  return { node: detector.plus, minusNode: detector.minus, sign: 1, pair };
}

/** What a point of an FM detector shows; the reservoir lies across both halves of the load, unless its link is open. */
function pairOutput({ kind, reservoirFarads }: FmDetector, { tap }: TestPoint, loadOhms: number): PairOutput {
  if (tap === 'open') return { kind: 'discriminator', tap: 'output', reservoirSeconds: 0 };
  return { kind, tap: tap ?? 'output', reservoirSeconds: 2 * loadOhms * (reservoirFarads ?? 0) };
}

/** How much of a carrier the tip lets through to the raw input, by its share of volts. */
export function rawShare({ y, tip }: Connections, hz: number): number {
  if (y === null || y.role !== 'signal' || tip !== 'resistor') return 1;
  return 1 / Math.hypot(1, 2 * Math.PI * hz * ISOLATING_OHMS * Y_LEAD_FARADS);
}
