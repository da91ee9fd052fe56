/**
 * A receiver's response under the conditions that its sheet states: sheet injection, sheet level, reference bias, the deck as it is. This is the truth that
 * is graded; what the tube shows may be something else.
 *
 * A diode loads its circuit by the carrier there, and stages give way a little, so the curve belongs to a level: the sheet's own. Every detector has its own load; where
 * the sheet observes with the probe, and the deck has a place for it, the probe's diode hangs on.
 * The unit is that of the quantity: volts (peak) at a node for each ampere (peak) of injected current, into the deck's own source where the sheet injects
 * there, or as a Norton source with the sweep source's 75 ohm and the lead's 75 ohm across a node; for a video sweep the modulation at the node for each
 * ampere of modulated carrier; for a difference volts per volt, with a sign: both diodes' carriers over the volts that drive their stage, which of a limiter are
 * those that its output still follows.
 */

import { once } from '../base/once.ts';
import { type Deck, findElement, nodeKey } from '../physics/deck.ts';
import { diodeLaw } from '../physics/diodeLaw.ts';
import { type DeckEdit, editDeck } from '../physics/editDeck.ts';
import type { ResponseCurve } from './curveReading.ts';
import { detectorDiode, detectorLoads } from './diodes.ts';
import { biasValues, slugValues } from './elementValues.ts';
import type { PathLoad } from './pathLoad.ts';
import { probeDiode } from './probeDiode.ts';
import type { Detector, Injection, Receiver, SheetResponse } from './receiver.ts';
import { createSignalPath, PLAIN_SWEEP, type SignalPath, type SourceKind } from './signalPath.ts';
import { nominalTurns } from './slugLaw.ts';
import { LEAD_OHMS, SOURCE_OHMS, sourceVolts, VIDEO_DEPTH } from './sourceLevel.ts';
import { specificationFrequencies } from './specificationGrid.ts';

export type CoreTurns = Readonly<Record<string, number>>;

export interface StatedResponse {
  readonly response: SheetResponse;
  readonly hz: Float64Array;
  /** core positions by slug id, turns from the outer stop; a slug left out stands at its nominal position */
  solve(coreTurnsById: CoreTurns): ResponseCurve;
  /** the curve with every slug at its nominal position */
  readonly nominal: ResponseCurve;
  /** the solved path behind it, as the last `solve` left it: for sensitivities and levels */
  readonly path: SignalPath;
  /** the deck source that the sheet drives */
  readonly drive: string;
  readonly source: SourceKind;
  /** peak, at the sheet's level; and what a level at a node is divided by: of a video sweep the part of the amps that is modulated */
  readonly amps: number;
  readonly perUnit: number;
}

/** Source and lead resistance in parallel. */
const TERMINATED_OHMS = 1 / (1 / SOURCE_OHMS + 1 / LEAD_OHMS);
const DRIVE = 'Istated';

/** Solves at `hz`, or at the frequencies that the sheet needs. `deck` may be an edited one; slugs and bias are set as the sheet says. `probePulses`: see `probeDiode`. */
export function createStatedResponse(
  receiver: Receiver,
  deck: Deck,
  response: SheetResponse,
  hz: Float64Array = specificationFrequencies(response.specification),
  probePulses = true,
): StatedResponse {
  const { injection, node } = sheetInjection(receiver, response);
  const driven = injection.kind === 'deckSource' ? deck : editDeck(deck, driveNode(node));
  const drive = injection.kind === 'deckSource' ? injection.element : DRIVE;
  const path = createSignalPath(receiver, driven);
  for (const stage of receiver.stages) path.setSaturation(stage.element, stage.saturationVolts);
  path.setLoads(sheetLoads(receiver, deck, response, probePulses));
  const amps = sheetSiemens(receiver, response) * sourceVolts(response.setUp.levelDb);
  const perUnit = response.setUp.source === 'video' ? amps * VIDEO_DEPTH : amps;
  for (const law of receiver.biasLines) {
    const volts = response.setUp.biases.find((b) => b.at === law.at)?.volts ?? law.referenceVolts;
    for (const value of biasValues(receiver, deck, law.at, volts)) path.setValue(value);
  }
  const source = sheetSource(response);
  const nominal = new Map(receiver.adjusters.map((adjuster) => [adjuster.id, nominalTurns(adjuster)]));
  const set = new Map<string, number>();
  const read = quantityReader(receiver, deck, response, hz.length);

  /** the curve that the path stands at; null where somebody has had the path since, or it has never been solved */
  let curve: Float64Array | null = null;
  const solveAt = (coreTurnsById: CoreTurns): ResponseCurve => {
    let moved = curve === null;
    for (const adjuster of receiver.adjusters) {
      const turns = coreTurnsById[adjuster.id] ?? nominal.get(adjuster.id)!;
      if (set.get(adjuster.id) === turns) continue;
      set.set(adjuster.id, turns);
      moved = true;
      for (const value of slugValues(adjuster, deck, turns)) path.setValue(value);
    }
    if (moved || curve === null) {
      curve = null;
      path.solve(hz, drive, amps, source);
      curve = read(path, perUnit);
    }
    return { hz, volts: curve.slice() };
  };
  let standing: CoreTurns | null = null;
  // Most are never asked for it: a whole sweep saved. Whoever asks finds the path as it stood.
  const nominalCurve = once(() => {
    const curve = solveAt({});
    if (standing === null) standing = {};
    else solveAt(standing);
    return curve;
  });
  return {
    response,
    hz,
    solve(coreTurnsById) {
      standing = coreTurnsById;
      return solveAt(coreTurnsById);
    },
    get nominal() {
      return nominalCurve();
    },
    get path() {
      if (standing === null) nominalCurve();
      curve = null;
      return path;
    },
    drive,
    source,
    amps,
    perUnit,
  };
}

/** How the source must stand for a response of the sheet. */
function sheetSource({ setUp }: SheetResponse): SourceKind {
  return setUp.source === 'video' ? { kind: 'video', carrierHz: setUp.carrierHz!, depth: VIDEO_DEPTH } : PLAIN_SWEEP;
}

/** Amperes in the stated injection for each volt (peak, open circuit) of the sweep source. */
export function sheetSiemens(receiver: Receiver, response: SheetResponse): number {
  const { injection } = sheetInjection(receiver, response);
  return injection.kind === 'deckSource' ? injection.siemens : 1 / SOURCE_OHMS;
}

/** The diodes that load the circuit when it is measured as the sheet says. */
function sheetLoads(
  receiver: Receiver,
  deck: Deck,
  { setUp, quantity }: SheetResponse,
  probePulses: boolean,
): readonly PathLoad[] {
  const { detectors, probeInDeck } = receiver;
  const loads = detectors.flatMap((detector) => standing(deck, detector));
  const probed = setUp.observeWith === 'probe' && probeInDeck?.testPoint === setUp.observeAt;
  if (!probed || quantity.kind !== 'carrier') return loads;
  const diode = probeDiode(receiver, deck, { id: setUp.observeAt, node: quantity.node }, probePulses);
  return [...loads, { node: quantity.node, law: diodeLaw(diode) }];
}

/** Of a pair the second diode has a load of its own where the first leaks. */
function standing(deck: Deck, detector: Detector): readonly PathLoad[] {
  const diode = detectorDiode(deck, detector);
  if (detector.kind === 'envelope' || detector.minusLoadOhms === undefined) return detectorLoads(detector, diode);
  return detectorLoads(detector, diode, detectorDiode(deck, detector, detector.minusLoadOhms));
}

/** The stage that `per` of a difference drives; null where none does. */
export function drivenStage(receiver: Receiver, deck: Deck, per: string): string | null {
  const driven = receiver.stages.find(({ element }) => {
    const found = findElement(deck, element);
    return found?.kind === 'G' && nodeKey(found.control[0]) === nodeKey(per);
  });
  return driven?.element ?? null;
}

/** Gives a new array each time: the path's own buffers are used again by its next solve. */
function quantityReader(
  receiver: Receiver,
  deck: Deck,
  { quantity }: SheetResponse,
  count: number,
): (path: SignalPath, amps: number) => Float64Array {
  if (quantity.kind === 'carrier') {
    return (path, amps) => {
      const volts = path.magnitude(quantity.node, new Float64Array(count));
      for (let i = 0; i < count; i++) volts[i] = volts[i]! / amps;
      return volts;
    };
  }
  const stage = drivenStage(receiver, deck, quantity.per);
  const minus = new Float64Array(count);
  const per = new Float64Array(count);
  const gain = new Float64Array(count).fill(1);
  const ofChange = new Float64Array(count);
  return (path) => {
    const volts = path.magnitude(quantity.plus, new Float64Array(count));
    path.magnitude(quantity.minus, minus);
    path.magnitude(quantity.per, per);
    if (stage !== null) path.stageGain(stage, gain, ofChange);
    for (let i = 0; i < count; i++) volts[i] = per[i]! > 0 ? (volts[i]! - minus[i]!) / (gain[i]! * per[i]!) : 0;
    return volts;
  };
}

function sheetInjection(
  { id, testPoints }: Receiver,
  { setUp }: SheetResponse,
): { readonly injection: Injection; readonly node: string } {
  const point = testPoints.find((p) => p.id === setUp.injectAt);
  if (point === undefined || point.inject === null || point.node === null) {
    throw new Error(`${id}: the sheet injects at ${setUp.injectAt}, which takes no RF lead`);
  }
  return { injection: point.inject, node: point.node };
}

function driveNode(node: string): DeckEdit[] {
  return [
    { kind: 'add', element: { kind: 'I', name: DRIVE, nodes: ['0', node], value: 1, phaseDegrees: 0, dcAmps: 0 } },
    { kind: 'add', element: { kind: 'R', name: 'Rstated', nodes: [node, '0'], value: TERMINATED_OHMS } },
  ];
}
