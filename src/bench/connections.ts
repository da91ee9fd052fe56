/**
 * What the leads and the tool do to the circuit: the deck that is really on the bench at this moment.
 *
 * - RF lead on a node: the source's 75 ohm lies across it, and the lead's 75 ohm termination when fitted, fed by volts / 75 amps (Norton).
 *   RF lead on the receiver's own input: the deck's current source is driven; the deck holds its resistances already.
 * - Probe on a signal point: 10 pF (its diode, which loads the point by the carrier there, is in loads.ts). Where the deck stands for the bench's probe resting on a
 *   point, that part is taken out while it rests elsewhere.
 * - Plain Y lead: its 100 pF on a signal point. On a detector's load it reaches the last coil through the diode's own 1 pF:
 *   dC = Cd (CL + Clead) / (Cd + CL + Clead) - Cd CL / (Cd + CL). Behind the isolating resistor: 10 kilohm on a signal point, nothing on a load.
 * - Steel blade in a slug: a loss resistor across the coil, w L Q at the sheet's centre frequency (its inductance is in conditions.ts).
 * - A hand at the end of any tool in a slug: a few hundredths of a picofarad from the coil to earth, gone when the tool is lifted out (common practice, no source).
 * - A good capacitor across one that is suspected: bridge.ts.
 */
import { type Deck, type DeckElement, findElement, nodeKey } from '../physics/deck.ts';
import { type DeckEdit, editDeck } from '../physics/editDeck.ts';
import { BENCH_PROBE } from '../receiver/benchProbe.ts';
import type { Receiver, TestPoint } from '../receiver/receiver.ts';
import { mainResponse } from '../receiver/responses.ts';
import { LEAD_OHMS, SOURCE_OHMS } from '../receiver/sourceLevel.ts';
import { lifeOf } from '../scenario/life.ts';
import type { BenchState, YTip } from './benchState.ts';
import { bridgeEdits } from './bridge.ts';
import { DIODE_FARADS, ISOLATING_OHMS, STEEL_Q, Y_LEAD_FARADS } from './instruments.ts';
import type { BenchSetup } from './setup.ts';
import { steelIn } from './tools.ts';

/** The current source that the RF lead drives when it stands on a node. */
export const RF_SOURCE = 'Ibench_rf';

export interface Connections {
  readonly rf: TestPoint | null;
  readonly terminated: boolean;
  readonly y: TestPoint | null;
  readonly tip: YTip;
  /** slug that a steel blade stands in */
  readonly steelIn: string | null;
  /** slug that a hand is at, with a tool in it */
  readonly handAt: string | null;
  /** capacitor that a good one is clipped across */
  readonly bridged: string | null;
}

export function connectionsOf({ receiver, scenario }: BenchSetup, state: BenchState): Connections {
  return {
    rf: pointOf(receiver, state.leads.rf),
    terminated: state.controls.rfTerminated,
    y: pointOf(receiver, state.leads.y),
    tip: state.controls.yTip,
    steelIn: steelIn(state),
    handAt: lifeOf(scenario).handFarads > 0 ? state.toolIn : null,
    bridged: state.bridged,
  };
}

/** Equal keys mean the same deck. */
export function connectionKey({ rf, terminated, y, tip, steelIn, handAt, bridged }: Connections): string {
  return [rf?.id, terminated, y?.id, tip, steelIn, handAt, bridged].join('|');
}

export function connectedDeck(setup: BenchSetup, connections: Connections): Deck {
  const { receiver, deck, scenario } = setup;
  const { rf, terminated, y, tip, steelIn, handAt, bridged } = connections;
  const edits: DeckEdit[] = [];
  if (rf !== null && rf.inject?.kind === 'node' && rf.node !== null) {
    edits.push(add({ kind: 'I', name: RF_SOURCE, nodes: ['0', rf.node], value: 1, phaseDegrees: 0, dcAmps: 0 }));
    edits.push(add({ kind: 'R', name: 'Rbench_source', nodes: [rf.node, '0'], value: SOURCE_OHMS }));
    if (terminated) edits.push(add({ kind: 'R', name: 'Rbench_end', nodes: [rf.node, '0'], value: LEAD_OHMS }));
  }
  const inDeck = receiver.probeInDeck;
  const probeAtHome = inDeck !== null && tip === 'probe' && y?.id === inDeck.testPoint;
  if (inDeck !== null && !probeAtHome) {
    for (const name of inDeck.elements) edits.push({ kind: 'remove', name });
  }
  if (y !== null && !probeAtHome && y.looseLoop !== true) edits.push(...tipEdits(receiver, y, tip));
  if (steelIn !== null) edits.push(...steelEdits(receiver, deck, steelIn));
  if (handAt !== null) edits.push(...handEdits(receiver, deck, handAt, lifeOf(scenario).handFarads));
  if (bridged !== null) edits.push(...bridgeEdits(setup, bridged));
  return editDeck(deck, edits);
}

/** Capacitance on the detector's load: its own, and the bare lead's. */
export function loadFarads(ownFarads: number, tip: YTip): number {
  return tip === 'plain' ? ownFarads + Y_LEAD_FARADS : ownFarads;
}

function tipEdits(receiver: Receiver, point: TestPoint, tip: YTip): DeckEdit[] {
  const node = point.node;
  const capacitor = (value: number) => add({ kind: 'C', name: 'Cbench_y', nodes: [node ?? '0', '0'], value });
  const resistor = (value: number) => add({ kind: 'R', name: 'Rbench_y', nodes: [node ?? '0', '0'], value });
  if (point.role === 'detector') {
    const detector = receiver.detectors.find((d) => d.id === point.detector);
    if (tip !== 'plain' || detector?.kind !== 'envelope') return [];
    const seen = (farads: number) => (DIODE_FARADS * farads) / (DIODE_FARADS + farads);
    const more = seen(loadFarads(detector.loadFarads, tip)) - seen(detector.loadFarads);
    return [add({ kind: 'C', name: 'Cbench_y', nodes: [detector.node, '0'], value: more })];
  }
  if (node === null) return [];
  switch (tip) {
    case 'probe':
      return [capacitor(BENCH_PROBE.inputFarads)];
    case 'plain':
      return [capacitor(Y_LEAD_FARADS)];
    case 'resistor':
      return [resistor(ISOLATING_OHMS)];
  }
}

function handEdits(receiver: Receiver, deck: Deck, slug: string, farads: number): DeckEdit[] {
  const hot = coilOf(receiver, deck, slug).nodes.find((node) => nodeKey(node) !== '0');
  return hot === undefined ? [] : [add({ kind: 'C', name: 'Cbench_hand', nodes: [hot, '0'], value: farads })];
}

function coilOf(receiver: Receiver, deck: Deck, slug: string) {
  const adjuster = receiver.adjusters.find((a) => a.id === slug);
  const coil = adjuster === undefined ? undefined : findElement(deck, adjuster.element);
  if (coil === undefined || coil.kind !== 'L') throw new Error(`slug ${slug} turns no coil of the deck`);
  return coil;
}

function steelEdits(receiver: Receiver, deck: Deck, slug: string): DeckEdit[] {
  const coil = coilOf(receiver, deck, slug);
  const ohms = 2 * Math.PI * mainResponse(receiver).setUp.centreHz * coil.value * STEEL_Q;
  return [add({ kind: 'R', name: 'Rbench_steel', nodes: coil.nodes, value: ohms })];
}

function add(element: DeckElement): DeckEdit {
  return { kind: 'add', element };
}

function pointOf(receiver: Receiver, end: string | null): TestPoint | null {
  return end === null ? null : (receiver.testPoints.find((p) => p.id === end) ?? null);
}
