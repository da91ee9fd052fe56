/**
 * The receiver's response under the conditions that its sheet states: sheet injection, reference bias, small signal, the deck as it is. This is the truth that
 * is graded; what the tube shows may be something else.
 *
 * Volts are carrier magnitudes at the sheet's node for one ampere (peak) of injected current: into the deck's own source where the sheet injects there, or
 * as a Norton source with the sweep source's 75 ohm and the lead's 75 ohm across a node.
 */

import { problemLine } from '../base/result.ts';
import type { Deck } from '../physics/deck.ts';
import { type DeckEdit, editDeck } from '../physics/editDeck.ts';
import { buildNetwork } from '../physics/network.ts';
import { createSolver } from '../physics/solver.ts';
import type { ResponseCurve } from './curveReading.ts';
import { biasValues, slugValues } from './elementValues.ts';
import type { Injection, Receiver } from './receiver.ts';
import { nominalTurns } from './slugLaw.ts';
import { specificationFrequencies } from './specificationGrid.ts';

export interface StatedResponse {
  /** core positions by slug id, turns from the outer stop; a slug left out stands at its nominal position */
  solve(coreTurnsById: Readonly<Record<string, number>>): ResponseCurve;
  /** the curve with every slug at its nominal position */
  readonly nominal: ResponseCurve;
}

/** Source and lead resistance in parallel. */
const TERMINATED_OHMS = 75 / 2;
const DRIVE = 'Istated';

/** Solves at `hz`, or at the frequencies that the sheet needs. */
export function createStatedResponse(
  receiver: Receiver,
  deck: Deck,
  hz: Float64Array = specificationFrequencies(receiver.specification),
): StatedResponse {
  const { injection, node } = sheetInjection(receiver);
  const driven = injection.kind === 'deckSource' ? deck : editDeck(deck, driveNode(node));
  const network = buildNetwork(driven, receiver.deck);
  if (!network.ok) throw new Error(network.problems.map(problemLine).join('\n'));
  const solver = createSolver(network.value, hz);
  const drive = injection.kind === 'deckSource' ? injection.element : DRIVE;
  for (const element of driven.elements) {
    if (element.kind === 'I') solver.setDrive(element.name, element.name.toLowerCase() === drive.toLowerCase() ? 1 : 0);
    if (element.kind === 'G') solver.setSaturation(element.name, null);
  }
  const volts = receiver.setUp.bias?.volts ?? receiver.biasLaw?.referenceVolts;
  if (volts !== undefined) for (const v of biasValues(receiver, deck, volts)) solver.setValue(v.element, v.value);
  const nominal = new Map(receiver.adjusters.map((adjuster) => [adjuster.id, nominalTurns(adjuster)]));

  const solve = (coreTurnsById: Readonly<Record<string, number>>): ResponseCurve => {
    for (const adjuster of receiver.adjusters) {
      const turns = coreTurnsById[adjuster.id] ?? nominal.get(adjuster.id)!;
      for (const v of slugValues(adjuster, deck, turns)) solver.setValue(v.element, v.value);
    }
    solver.solve();
    // The solver's own buffers are used again by the next solve.
    return { hz, volts: Float64Array.from(solver.magnitude(receiver.specification.node)) };
  };
  return { solve, nominal: solve({}) };
}

/** Amperes in the stated injection for each volt (peak, open circuit) of the sweep source. */
export function sheetSiemens(receiver: Receiver): number {
  const { injection } = sheetInjection(receiver);
  return injection.kind === 'deckSource' ? injection.siemens : 1 / 75;
}

function sheetInjection(receiver: Receiver): { readonly injection: Injection; readonly node: string } {
  const point = receiver.testPoints.find((p) => p.id === receiver.setUp.injectAt);
  if (point === undefined || point.inject === null || point.node === null) {
    throw new Error(`${receiver.id}: the sheet injects at ${receiver.setUp.injectAt}, which takes no RF lead`);
  }
  return { injection: point.inject, node: point.node };
}

function driveNode(node: string): DeckEdit[] {
  return [
    { kind: 'add', element: { kind: 'I', name: DRIVE, nodes: ['0', node], value: 1, phaseDegrees: 0, dcAmps: 0 } },
    { kind: 'add', element: { kind: 'R', name: 'Rstated', nodes: [node, '0'], value: TERMINATED_OHMS } },
  ];
}
