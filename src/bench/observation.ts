/**
 * What the tip of the Y lead brings to the tube.
 *
 * - Plain wire or resistor on a detector's load: the volts of that diode; on an FM detector's output or reservoir, what its two diodes make of it.
 * - Probe on a signal point: the volts of the probe's own diode.
 * - Plain wire or resistor on a signal point, or the probe on a detector's load: nothing that the tube could follow.
 * With the tube's raw input the carrier itself is shown, before any diode: at a detector's load the tube takes it from the diode's coil without
 * loading it; on a signal point through whatever the tip is, and the isolating resistor with the lead behind it lets little of it through.
 */
import { type DiodeLaw, diodeLaw } from '../physics/diodeLaw.ts';
import { BENCH_PROBE } from '../receiver/benchProbe.ts';
import { signOf } from '../receiver/detectorSign.ts';
import type { Detector, FmDetector, TestPoint } from '../receiver/receiver.ts';
import type { Connections } from './connections.ts';
import { ISOLATING_OHMS, SMOOTHING_FARADS, TUBE_SECONDS, Y_LEAD_FARADS } from './instruments.ts';
import { diodeNow, type LoadingState, leadFarads } from './loads.ts';
import type { BenchSetup } from './setup.ts';

/** `sample`: its place in the period, where what the diode makes of a carrier depends on it. */
export type Detect = (amplitudeVolts: number, sample?: number) => number;

/** How two rectified voltages become one. */
export interface PairOutput {
  readonly kind: FmDetector['kind'];
  readonly tap: 'output' | 'sum';
  /** of the reservoir with both loads; 0 in a discriminator */
  readonly reservoirSeconds: number;
}

export interface Observation {
  /** the node of the diode; of an FM detector the one that counts positive */
  readonly node: string;
  /** the other node of an FM detector */
  readonly minusNode: string | null;
  /** volts of the diode for a carrier, without sign */
  readonly detect: Detect;
  /** of the diode, or of either of two */
  readonly law: DiodeLaw;
  readonly sign: 1 | -1;
  readonly pair: PairOutput | null;
  /** time constant of the diode's load, seconds */
  readonly loadSeconds: number;
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
    const diode = diodeNow(setup, detector, state, connections);
    const ohms = diode.loadOhms;
    const tipOhms = tip === 'resistor' ? ISOLATING_OHMS : ohms;
    const law = diodeLaw(diode);
    const common = {
      detect: law.detect,
      law,
      loadSeconds: ohms * diode.loadFarads,
      leadFarads: leadFarads(connections, detector),
      leadSeconds: TUBE_SECONDS + leadSeconds(state, tipOhms, tip === 'resistor' ? Y_LEAD_FARADS : 0),
      raw,
    };
    return { ...common, ...diodesOf(detector, y, ohms) };
  }
  if (y.node === null || (tip !== 'probe' && !raw)) return null;
  const law = diodeLaw(BENCH_PROBE);
  return {
    node: y.node,
    minusNode: null,
    detect: law.detect,
    law,
    sign: signOf(BENCH_PROBE.polarity),
    pair: null,
    loadSeconds: BENCH_PROBE.loadOhms * BENCH_PROBE.loadFarads,
    leadFarads: 0,
    leadSeconds: TUBE_SECONDS + leadSeconds(state, ISOLATING_OHMS, 0),
    raw,
  };
}

/** Of the tip's resistance with what hangs on it; the smoothing capacitor stands at the tube's end of the lead. */
function leadSeconds({ controls }: LoadingState, tipOhms: number, farads: number): number {
  return tipOhms * (farads + (controls.ySmoothing ? SMOOTHING_FARADS : 0));
}

/** The diode, or the pair of them, behind a point. */
export function diodesOf(
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
