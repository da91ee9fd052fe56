/** The diodes on the circuit at this moment: each detector's with what hangs on its load, and the probe's where it rests on a point. */
import { diodeLaw, type LoadedDiode } from '../physics/diodeLaw.ts';
import { detectorDiode, diodeAt, diodeNodes } from '../receiver/diodes.ts';
import type { PathLoad } from '../receiver/pathLoad.ts';
import { probeDiode } from '../receiver/probeDiode.ts';
import type { Detector, TestPoint } from '../receiver/receiver.ts';
import { modelOf } from './benchModel.ts';
import type { BenchState } from './benchState.ts';
import { type Connections, loadFarads } from './connections.ts';
import { ISOLATING_OHMS, METER_OHMS_PER_VOLT, Y_LEAD_FARADS } from './instruments.ts';
import type { BenchSetup } from './setup.ts';

export type LoadingState = Pick<BenchState, 'leads' | 'controls'>;

/**
 * A detector's diodes, one or both, the one that counts positive first: their circuit as the deck has it without the leads, their load with the meter across it and with the lead on it, bare or
 * behind its resistor, where they are.
 */
export function diodesNow(
  { receiver: { testPoints }, deck, engine }: BenchSetup,
  detector: Detector,
  { leads, controls }: LoadingState,
  { y, tip }: Connections,
): readonly LoadedDiode[] {
  const metered = testPoints.some((p) => p.id === leads.meter && p.detector === detector.id);
  const meterOhms = METER_OHMS_PER_VOLT * controls.meterRangeVolts;
  const shared = (own: number): number => (metered ? (own * meterOhms) / (own + meterOhms) : own);
  const ohms = shared(detector.loadOhms);
  const touched = restsOn(y, detector);
  const farads = touched ? loadFarads(detector.loadFarads, tip) : detector.loadFarads;
  // Of an FM detector the lead sees both halves' difference, and hangs on neither's load by itself.
  const hangs = touched && tip === 'resistor' && detector.kind === 'envelope';
  // The raw input takes the carrier from the coil and loads nothing (observation.ts).
  const draws = hangs && controls.yInput !== 'raw' && modelOf(engine).leadDraws;
  const lead = draws ? RESISTOR_LEAD : undefined;
  if (detector.kind === 'envelope' || !modelOf(engine).ownDiodes) {
    return diodeNodes(detector).map(() => detectorDiode(deck, detector, ohms, farads, lead));
  }
  const other = shared(detector.minusLoadOhms ?? detector.loadOhms);
  return diodeNodes(detector).map((node, i) => diodeAt(deck, detector, node, i === 0 ? ohms : other, farads));
}

const restsOn = (y: Connections['y'], { id }: Detector): boolean => y?.role === 'detector' && y.detector === id;

const RESISTOR_LEAD = { ohms: ISOLATING_OHMS, farads: Y_LEAD_FARADS };

/** What a lead with a resistor in its tip hangs on the load of a detector, where it rests on it. */
export function leadFarads({ y, tip }: Connections, detector: Detector): number {
  return tip === 'resistor' && restsOn(y, detector) ? Y_LEAD_FARADS : 0;
}

export function loadsNow(setup: BenchSetup, state: LoadingState, connections: Connections): readonly PathLoad[] {
  const own = setup.receiver.detectors.flatMap((detector) => {
    const diodes = diodesNow(setup, detector, state, connections);
    return diodeNodes(detector).map((node, i) => ({ node, law: diodeLaw(diodes[i]!) }));
  });
  const { y, tip } = connections;
  const probed = tip === 'probe' && y?.role === 'signal' && y.node !== null && y.looseLoop !== true;
  return probed ? [...own, { node: y.node, law: diodeLaw(probeNow(setup, y)) }] : own;
}

/** The probe's diode on a point. */
export function probeNow({ receiver, deck, engine }: BenchSetup, point: TestPoint): LoadedDiode {
  return probeDiode(receiver, deck, point, modelOf(engine).probePulses);
}
