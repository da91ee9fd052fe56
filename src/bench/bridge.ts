/**
 * A good capacitor of the printed value, clipped across one that is suspected, and taken off again. Both are then in the circuit, and the clips' leads with them: about
 * a picofarad from each end to the chassis (common practice, no source). The inductance of the leads is left out. Where the part of the set is a short for the signal, a
 * bypass or a decoupling, the good one is a tenth of a microfarad, and there is something to bridge only while the set's own is open.
 */
import { type Deck, findElement, nodeKey } from '../physics/deck.ts';
import type { DeckEdit } from '../physics/editDeck.ts';
import { cathodeNode, hotNode, supplyNode } from '../receiver/faults/faultPlaces.ts';
import { type Part, partsTray } from '../receiver/faults/partsTray.ts';
import { offersParts } from '../scenario/diagnosis.ts';
import type { Applied } from './benchEvent.ts';
import { type BenchState, NO_PROOFS } from './benchState.ts';
import { done, refused } from './outcome.ts';
import { stopIfChassisLive } from './power.ts';
import { type BenchSetup, designOf } from './setup.ts';

/** Of one clip and its lead, to the chassis. */
const CLIP_FARADS = 1e-12;
/** A spare bypass or decoupling capacitor. */
const BYPASS_FARADS = 0.1e-6;

/** `null`: it is taken off. */
export function bridgePart(setup: BenchSetup, state: BenchState, name: string | null): Applied {
  const { scenario, receiver, deck } = setup;
  if (!offersParts(scenario)) return refused('notInThisScenario');
  if (state.bridged === name) return refused('alreadySo');
  // Another circuit is another curve: what was proved before is not proved now.
  const after: BenchState = { ...state, bridged: name, proofs: NO_PROOFS };
  if (name === null) return done(after, { kind: 'unclip' });
  const part = partsTray(receiver, deck).find((p) => p.name === name);
  if (part === undefined) return refused('noSuchPart');
  if (!canBeBridged(part)) return refused('noCapacitor');
  if (receiver.mains !== null && !state.cautionsAcknowledged) return refused('cautionsFirst');
  return stopIfChassisLive(setup, after, name, { kind: 'clip' });
}

export function canBeBridged({ kind }: Pick<Part, 'kind'>): boolean {
  return ['capacitor', 'bypass', 'decoupling', 'coupling'].includes(kind);
}

/** What it does to the deck of the set as it stands. */
export function bridgeEdits(setup: BenchSetup, name: string): readonly DeckEdit[] {
  const { deck } = setup;
  const [ends, farads] = endsOf(setup, name);
  const there = ends.filter((node) => hasNode(deck, node));
  const capacitor = (called: string, nodes: readonly [string, string], value: number): DeckEdit => ({
    kind: 'add',
    element: { kind: 'C', name: called, nodes, value },
  });
  const clips = there
    .filter((node) => nodeKey(node) !== '0')
    .map((node, i) => capacitor(`Cbench_clip${i}`, [node, '0'], CLIP_FARADS));
  const [one, other] = there;
  if (one === undefined || other === undefined || nodeKey(one) === nodeKey(other)) return clips;
  return [capacitor('Cbench_bridge', [one, other], farads), ...clips];
}

function endsOf(setup: BenchSetup, name: string): readonly [readonly string[], number] {
  const { receiver, deck } = setup;
  const [kind, at] = name.split(':') as [string, string | undefined];
  if (at === undefined) {
    const now = findElement(deck, name);
    if (now?.kind !== 'C') return [[], 0];
    const printed = findElement(designOf(setup).deck, name);
    return [now.nodes, printed?.value ?? now.value];
  }
  if (kind === 'bypass') return [[cathodeNode(at), '0'], BYPASS_FARADS];
  if (kind === 'decoupling') return [[supplyNode(at), '0'], BYPASS_FARADS];
  // Both ends of a coupling are one node to the signal: the deck has no capacitor there.
  const stage = receiver.stages.find(({ element }) => element.toLowerCase() === at.toLowerCase());
  const valve = stage === undefined ? undefined : findElement(deck, stage.element);
  if (valve?.kind !== 'G') return [[], 0];
  const grid = hotNode(valve.control);
  return [[grid, grid], 0];
}

function hasNode(deck: Deck, node: string): boolean {
  const key = nodeKey(node);
  return key === '0' || deck.elements.some((e) => e.kind !== 'K' && e.nodes.some((end) => nodeKey(end) === key));
}
