/**
 * A receiver's response under the conditions that its sheet states: sheet injection, reference bias, small signal, the deck as it is. This is the truth that
 * is graded; what the tube shows may be something else.
 *
 * The unit is that of the quantity: volts (peak) at a node for one ampere (peak) of injected current, into the deck's own source where the sheet injects
 * there, or as a Norton source with the sweep source's 75 ohm and the lead's 75 ohm across a node; for a video sweep the modulation at the node for one
 * ampere of carrier, fully modulated; for a difference volts per volt, with a sign.
 */

import type { Deck } from '../physics/deck.ts';
import { type DeckEdit, editDeck } from '../physics/editDeck.ts';
import type { ResponseCurve } from './curveReading.ts';
import { biasValues, slugValues } from './elementValues.ts';
import type { Injection, Receiver, SheetResponse } from './receiver.ts';
import { createSignalPath, PLAIN_SWEEP, type SignalPath, type SourceKind } from './signalPath.ts';
import { nominalTurns } from './slugLaw.ts';
import { LEAD_OHMS, SOURCE_OHMS } from './sourceLevel.ts';
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
}

/** Source and lead resistance in parallel. */
const TERMINATED_OHMS = 1 / (1 / SOURCE_OHMS + 1 / LEAD_OHMS);
const DRIVE = 'Istated';

/** Solves at `hz`, or at the frequencies that the sheet needs. `deck` may be an edited one; slugs and bias are set as the sheet says. */
export function createStatedResponse(
  receiver: Receiver,
  deck: Deck,
  response: SheetResponse,
  hz: Float64Array = specificationFrequencies(response.specification),
): StatedResponse {
  const { injection, node } = sheetInjection(receiver, response);
  const driven = injection.kind === 'deckSource' ? deck : editDeck(deck, driveNode(node));
  const drive = injection.kind === 'deckSource' ? injection.element : DRIVE;
  const path = createSignalPath(receiver, driven);
  for (const law of receiver.biasLines) {
    const volts = response.setUp.biases.find((b) => b.at === law.at)?.volts ?? law.referenceVolts;
    for (const value of biasValues(receiver, deck, law.at, volts)) path.setValue(value);
  }
  const source = sheetSource(response);
  const nominal = new Map(receiver.adjusters.map((adjuster) => [adjuster.id, nominalTurns(adjuster)]));
  const set = new Map<string, number>();
  const read = quantityReader(response, hz.length);

  const solve = (coreTurnsById: CoreTurns): ResponseCurve => {
    for (const adjuster of receiver.adjusters) {
      const turns = coreTurnsById[adjuster.id] ?? nominal.get(adjuster.id)!;
      if (set.get(adjuster.id) === turns) continue;
      set.set(adjuster.id, turns);
      for (const value of slugValues(adjuster, deck, turns)) path.setValue(value);
    }
    path.solve(hz, drive, 1, source);
    return { hz, volts: read(path) };
  };
  return { response, hz, solve, nominal: solve({}), path, drive, source };
}

/** How the source must stand for a response of the sheet. `depth` of a video sweep's modulation; stated responses have 1. */
export function sheetSource({ setUp }: SheetResponse, depth = 1): SourceKind {
  return setUp.source === 'video' ? { kind: 'video', carrierHz: setUp.carrierHz!, depth } : PLAIN_SWEEP;
}

/** Amperes in the stated injection for each volt (peak, open circuit) of the sweep source. */
export function sheetSiemens(receiver: Receiver, response: SheetResponse): number {
  const { injection } = sheetInjection(receiver, response);
  return injection.kind === 'deckSource' ? injection.siemens : 1 / SOURCE_OHMS;
}

/** Gives a new array each time: the path's own buffers are used again by its next solve. */
function quantityReader({ quantity }: SheetResponse, count: number): (path: SignalPath) => Float64Array {
  if (quantity.kind === 'carrier') return (path) => path.magnitude(quantity.node, new Float64Array(count));
  const minus = new Float64Array(count);
  const per = new Float64Array(count);
  return (path) => {
    const volts = path.magnitude(quantity.plus, new Float64Array(count));
    path.magnitude(quantity.minus, minus);
    path.magnitude(quantity.per, per);
    for (let i = 0; i < count; i++) volts[i] = per[i]! > 0 ? (volts[i]! - minus[i]!) / per[i]! : 0;
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
