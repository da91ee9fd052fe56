/**
 * What a detector's nodes look like at the harmonics of its carrier, from the deck at its nominal values: the circuit by itself, every source off.
 *
 * Rounded to a small part of the largest, so that decks which differ only far away share one diode's table (physics/diodeLaw.ts).
 */
import { problemLine } from '../base/result.ts';
import { buildNetwork } from '../physics/buildNetwork.ts';
import { type Deck, nodeKey } from '../physics/deck.ts';
import { editDeck } from '../physics/editDeck.ts';
import { HARMONICS, type HarmonicCircuit } from '../physics/harmonicCircuit.ts';
import { createSolver } from '../physics/solver.ts';
import { deckParts } from './deckParts.ts';
import type { Detector, FmDetector } from './receiver.ts';

const PROBING = 'Iharmonics';
/** Parts of the largest. */
const ROUNDED = 2 ** 20;

const known = new WeakMap<Deck, Map<string, HarmonicCircuit>>();

/** How far beside its carrier the circuit of one of a pair is drawn up too, as a share of it. */
const BESIDE = 0.15;

/** At the carrier; of two nodes the mean. */
export function harmonicCircuit(deck: Deck, detector: Detector): HarmonicCircuit {
  const nodes = detector.kind === 'envelope' ? [detector.node] : [detector.plus, detector.minus];
  return circuitAt(deck, nodes, detector.carrierHz);
}

/** Of one node of a pair, at the carrier, below it and above it; and from it to the other. */
export function circuitsOf(
  deck: Deck,
  node: string,
  { plus, minus, carrierHz }: FmDetector,
): {
  readonly harmonics: HarmonicCircuit;
  readonly beside: readonly [HarmonicCircuit, HarmonicCircuit];
  readonly mutual: HarmonicCircuit;
} {
  const at = (hz: number): HarmonicCircuit => circuitAt(deck, [node], hz);
  return {
    mutual: circuitAt(deck, [plus], carrierHz, minus),
    harmonics: at(carrierHz),
    beside: [at(carrierHz * (1 - BESIDE)), at(carrierHz * (1 + BESIDE))],
  };
}

/** Of a node, at some carriers; null where the deck has no such node. */
export function circuitsAt(deck: Deck, node: string, hz: readonly number[]): readonly HarmonicCircuit[] | null {
  const stands = deckParts(deck).some(({ nodes }) => nodes.has(nodeKey(node)));
  return stands ? hz.map((one) => circuitAt(deck, [node], one)) : null;
}

/** `seenAt`: where the volts are read that a current at a node makes; left out: there. */
function circuitAt(deck: Deck, nodes: readonly string[], hz: number, seenAt?: string): HarmonicCircuit {
  const ofDeck = known.get(deck) ?? new Map<string, HarmonicCircuit>();
  known.set(deck, ofDeck);
  const key = `${nodes.join('|')}|${hz}|${seenAt ?? ''}`;
  const found = ofDeck.get(key) ?? meanCircuit(deck, nodes, hz, seenAt);
  ofDeck.set(key, found);
  return found;
}

function meanCircuit(deck: Deck, nodes: readonly string[], hz: number, seenAt?: string): HarmonicCircuit {
  const all = nodes.map((node) => impedances(deck, node, hz, seenAt ?? node));
  const mean = (of: 're' | 'im'): number[] =>
    Array.from({ length: HARMONICS - 1 }, (_, k) => all.reduce((sum, one) => sum + one[of][k]! / all.length, 0));
  const [re, im] = [mean('re'), mean('im')];
  const most = Math.max(...re.map((v, k) => Math.hypot(v, im[k]!)));
  const unit = 2 ** Math.round(Math.log2(most / ROUNDED));
  const rounded = (list: readonly number[]): number[] => list.map((v) => Math.round(v / unit) * unit);
  return { hz, re: rounded(re), im: rounded(im) };
}

function impedances(
  deck: Deck,
  node: string,
  hz: number,
  seenAt: string,
): { readonly re: Float64Array; readonly im: Float64Array } {
  const part = deckParts(deck).find(({ nodes }) => nodes.has(nodeKey(node)));
  if (part === undefined) throw new Error(`the deck has no node ${node}`);
  const source = { kind: 'I', name: PROBING, nodes: ['0', node], value: 1, phaseDegrees: 0, dcAmps: 0 } as const;
  const built = buildNetwork(editDeck(part.deck, [{ kind: 'add', element: source }]), 'harmonics');
  if (!built.ok) throw new Error(built.problems.map(problemLine).join('\n'));
  const solver = createSolver(
    built.value,
    Float64Array.from({ length: HARMONICS - 1 }, (_, k) => (k + 2) * hz),
  );
  for (const e of part.deck.elements) if (e.kind === 'I') solver.setDrive(e.name, 0);
  solver.solve();
  return { re: solver.real(seenAt), im: solver.imag(seenAt) };
}
