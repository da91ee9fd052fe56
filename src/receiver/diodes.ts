/** The diodes of a receiver as loads of its circuit. */
import type { Deck } from '../physics/deck.ts';
import type { HungLead } from '../physics/diodeHarmonics.ts';
import { diodeLaw, type LoadedDiode } from '../physics/diodeLaw.ts';
import { harmonicCircuit } from './harmonics.ts';
import type { PathLoad } from './pathLoad.ts';
import type { Detector } from './receiver.ts';

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

/** What a detector with that diode hangs on its nodes: one diode, or two alike. */
export function detectorLoads(detector: Detector, diode: LoadedDiode): readonly PathLoad[] {
  const law = diodeLaw(diode);
  const nodes = detector.kind === 'envelope' ? [detector.node] : [detector.plus, detector.minus];
  return nodes.map((node) => ({ node, law }));
}
