/**
 * What faults do: edits of the deck, and what no deck can hold (a core that is stuck, a diode the wrong way round, a lead without contact).
 *
 * Sizes. An open resistor is 1e4 times its value. Shorted turns are 0.3 ohm across the coil. An open coupling keeps one part in a thousand (a K) or in a hundred
 * (a capacitor, through its strays). Feedback of an open bypass and of a missing screen is a capacitor of the size that the fault names between output and input of
 * the stage, or between two nodes, so that blocks of the network merge. A diode's leak lies across its load, and, as the load's capacitor is a short to the carrier,
 * across the circuit that feeds it. Our own plain models, no source; each is checked against a circuit simulator.
 * Faults compose: each edits the deck as the one before left it, in a fixed order of kinds.
 */
import { type Deck, findElement, nodeKey } from '../../physics/deck.ts';
import { type DeckEdit, editDeck } from '../../physics/editDeck.ts';
import type { Receiver } from '../receiver.ts';
import { type Cure, FAULT_KINDS, type Fault } from './fault.ts';

export interface DetectorFault {
  readonly reversed: boolean;
  /** across the diode's load, ohms; null where it does not leak */
  readonly leakOhms: number | null;
}

export interface FaultEffects {
  readonly deck: Deck;
  readonly detectors: Readonly<Record<string, DetectorFault>>;
  /** leak of a bias line to earth, ohms, by its test point */
  readonly leaks: Readonly<Record<string, number>>;
  readonly earthLoose: boolean;
  readonly leadUnmatched: boolean;
}

const OPEN_RESISTOR = 1e4;
const SHORT_OHMS = 0.3;
const OPEN_K = 1e-3;
const OPEN_C = 1e-2;

/** `cured` holds parts that have been replaced, and `lead:earth`, `lead:rf` for leads that have been put on again. */
export function faultEffects(
  receiver: Receiver,
  deck: Deck,
  faults: readonly Fault[],
  cured: readonly string[],
): FaultEffects {
  const active = faults.filter((fault) => !isCured(fault, receiver, deck, cured));
  const ordered = [...active].sort((a, b) => FAULT_KINDS.indexOf(a.kind) - FAULT_KINDS.indexOf(b.kind));
  const detectors: Record<string, DetectorFault> = {};
  const leaks: Record<string, number> = {};
  let edited = deck;
  for (const fault of ordered) {
    edited = editDeck(edited, editsOf(fault, receiver, edited));
    const known = (id: string): DetectorFault => detectors[id] ?? { reversed: false, leakOhms: null };
    if (fault.kind === 'reversedDiode') detectors[fault.detector] = { ...known(fault.detector), reversed: true };
    if (fault.kind === 'leakyDiode') detectors[fault.detector] = { ...known(fault.detector), leakOhms: fault.ohms };
    if (fault.kind === 'leakyBiasLine') leaks[fault.at] = fault.ohms;
  }
  return {
    deck: edited,
    detectors,
    leaks,
    earthLoose: active.some((fault) => fault.kind === 'looseEarth'),
    leadUnmatched: active.some((fault) => fault.kind === 'unmatchedLead'),
  };
}

export function isCured(fault: Fault, receiver: Receiver, deck: Deck, cured: readonly string[]): boolean {
  const cure = cureOf(fault, receiver, deck);
  switch (cure.kind) {
    case 'replace':
      return cure.parts.some((part) => cured.includes(part));
    case 'reconnect':
      return cured.includes(leadMark(cure.lead));
    case 'turn':
      return false;
  }
}

/** How a lead that has been put on again stands in the list of what has been cured. */
export function leadMark(lead: 'earth' | 'rf'): string {
  return `lead:${lead}`;
}

export function cureOf(fault: Fault, receiver: Receiver, deck: Deck): Cure {
  switch (fault.kind) {
    case 'openResistor':
    case 'wrongLoad':
    case 'weakStage':
    case 'driftedCapacitor':
    case 'openBypass':
      return replacing(nameOf(deck, fault.element));
    case 'openCoupling': {
      const element = findElement(deck, fault.element);
      // The coupling of two coils goes with the coil that it is wound on.
      return replacing(element?.kind === 'K' ? nameOf(deck, element.coils[1]) : nameOf(deck, fault.element));
    }
    case 'swappedTraps':
      return replacing(nameOf(deck, fault.first), nameOf(deck, fault.second));
    case 'leakyBiasLine':
      return replacing(fault.at);
    case 'missingShield':
      return replacing(SHIELD);
    case 'reversedDiode':
    case 'leakyDiode':
      return replacing(fault.detector);
    case 'shortedTrap':
    case 'crackedSlug':
      return replacing(coilOf(receiver, deck, fault.slug));
    case 'screwedIn':
      return { kind: 'turn' };
    case 'looseEarth':
      return { kind: 'reconnect', lead: 'earth' };
    case 'unmatchedLead':
      return { kind: 'reconnect', lead: 'rf' };
  }
}

function replacing(part: string, ...others: readonly string[]): Cure {
  return { kind: 'replace', part, parts: [part, ...others] };
}

/** The screening can, as a part of the tray. */
export const SHIELD = 'shield';

function editsOf(fault: Fault, receiver: Receiver, deck: Deck): DeckEdit[] {
  switch (fault.kind) {
    case 'openResistor':
      return [{ kind: 'scale', name: fault.element, factor: OPEN_RESISTOR }];
    case 'wrongLoad':
      return [{ kind: 'set', name: fault.element, value: fault.ohms }];
    case 'weakStage':
    case 'driftedCapacitor':
      return [{ kind: 'scale', name: fault.element, factor: fault.factor }];
    case 'shortedTrap': {
      const coil = findElement(deck, coilOf(receiver, deck, fault.slug));
      if (coil?.kind !== 'L') return [];
      return [
        { kind: 'add', element: { kind: 'R', name: `Rshort_${fault.slug}`, nodes: coil.nodes, value: SHORT_OHMS } },
      ];
    }
    case 'openBypass': {
      const stage = findElement(deck, fault.element);
      if (stage?.kind !== 'G') return [];
      const nodes = [hot(stage.nodes), hot(stage.control)] as const;
      return [{ kind: 'add', element: { kind: 'C', name: `Cback_${fault.element}`, nodes, value: fault.farads } }];
    }
    case 'missingShield':
      return [
        {
          kind: 'add',
          element: { kind: 'C', name: 'Cstray_shield', nodes: [fault.from, fault.to], value: fault.farads },
        },
      ];
    case 'openCoupling': {
      const element = findElement(deck, fault.element);
      return [{ kind: 'scale', name: fault.element, factor: element?.kind === 'K' ? OPEN_K : OPEN_C }];
    }
    case 'swappedTraps': {
      const first = findElement(deck, fault.first);
      const second = findElement(deck, fault.second);
      if (first === undefined || second === undefined) return [];
      return [
        { kind: 'set', name: fault.first, value: second.value },
        { kind: 'set', name: fault.second, value: first.value },
      ];
    }
    case 'leakyDiode': {
      const detector = receiver.detectors.find((d) => d.id === fault.detector);
      if (detector === undefined) return [];
      const node = detector.kind === 'envelope' ? detector.node : detector.plus;
      return [
        { kind: 'add', element: { kind: 'R', name: `Rleak_${detector.id}`, nodes: [node, '0'], value: fault.ohms } },
      ];
    }
    case 'leakyBiasLine':
    case 'reversedDiode':
    case 'crackedSlug':
    case 'screwedIn':
    case 'looseEarth':
    case 'unmatchedLead':
      return [];
  }
}

/** Of two nodes the one that is not earth. */
function hot(nodes: readonly [string, string]): string {
  return nodeKey(nodes[0]) === '0' ? nodes[1] : nodes[0];
}

function coilOf({ adjusters }: Receiver, deck: Deck, slug: string): string {
  return nameOf(deck, adjusters.find((a) => a.id === slug)?.element ?? '');
}

function nameOf(deck: Deck, element: string): string {
  return findElement(deck, element)?.name ?? element;
}
