/** The diodes of a receiver as loads of its circuit. */
import type { Deck } from '../physics/deck.ts';
import type { HungLead } from '../physics/diodeHarmonics.ts';
import { diodeLaw, type LoadedDiode } from '../physics/diodeLaw.ts';
import { circuitsOf, harmonicCircuit } from './harmonics.ts';
import type { PathLoad } from './pathLoad.ts';
import type { Detector, FmDetector } from './receiver.ts';

/** `loadOhms`, `loadFarads` may differ from the detector's own, and a `lead` be there: a meter or a lead hangs on its load. */
export function detectorDiode(
  deck: Deck,
  detector: Detector,
  loadOhms: number = detector.loadOhms,
  loadFarads: number = detector.loadFarads,
  lead?: HungLead,
): LoadedDiode {
  const { saturationAmps, emissionVolts } = detector;
  const harmonics = harmonicCircuit(deck, detector);
  const diode = { saturationAmps, emissionVolts, loadOhms, loadFarads, harmonics };
  return lead === undefined ? diode : { ...diode, lead };
}

/** The same at one of its nodes, which has a circuit and a load of its own, and at its own frequencies. */
export function diodeAt(
  deck: Deck,
  detector: FmDetector,
  node: string,
  loadOhms: number,
  loadFarads: number,
): LoadedDiode {
  const { saturationAmps, emissionVolts } = detector;
  return { saturationAmps, emissionVolts, loadOhms, loadFarads, ...circuitsOf(deck, node, detector) };
}

/** The nodes of its diodes. */
export function diodeNodes(detector: Detector): readonly string[] {
  return detector.kind === 'envelope' ? [detector.node] : [detector.plus, detector.minus];
}

/** What a detector with that diode hangs on its nodes: one diode, or two, of which the second may be another. */
export function detectorLoads(detector: Detector, diode: LoadedDiode, second = diode): readonly PathLoad[] {
  const law = diodeLaw(diode);
  if (detector.kind === 'envelope') return [{ node: detector.node, law }];
  return [
    { node: detector.plus, law },
    { node: detector.minus, law: second === diode ? law : diodeLaw(second) },
  ];
}
