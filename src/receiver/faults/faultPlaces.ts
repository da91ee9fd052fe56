/** Where a fault may sit: walks over the places of a receiver, always in the same order. */
import { type Deck, type DeckElement, findElement, nodeKey, type Transconductance } from '../../physics/deck.ts';
import type { Adjuster, Detector, Receiver, Stage } from '../receiver.ts';
import { mainResponse } from '../responses.ts';

/** What a fault is applied to: a receiver and its deck. */
export interface FaultySet {
  readonly receiver: Receiver;
  readonly deck: Deck;
}

export interface FaultPlaces {
  readonly element: DeckElement;
  readonly stage: Stage;
  readonly slug: Adjuster;
  readonly trap: Adjuster;
  readonly detector: Detector;
  readonly trapPair: { readonly first: Adjuster; readonly second: Adjuster };
  /** two stages, as elements of the deck; the signal comes to `early` first */
  readonly stagePair: { readonly early: Transconductance; readonly late: Transconductance };
  readonly supplyPair: SupplyPair;
}

/** Coils at the outputs of two stages, both with an end on the supply (earth, to the signal). */
export interface SupplyPair {
  readonly first: string;
  readonly second: string;
  /** one stage right after the other */
  readonly neighbours: boolean;
  /** impedance common to both at which the set would sing, were all circuits of one tune: w^2 L1 L2 / (gm R1 R2) over the gain of the stages between */
  readonly singsOhms: number;
}

export type PlaceKind = keyof FaultPlaces;
export type FaultPlace = { readonly [P in PlaceKind]: { readonly at: P; readonly place: FaultPlaces[P] } }[PlaceKind];

export function faultPlaces(set: FaultySet): readonly FaultPlace[] {
  const { receiver, deck } = set;
  const { adjusters, stages, detectors } = receiver;
  const traps = adjusters.filter((a) => a.trapHz !== null);
  const sources = stages.flatMap((s) => deck.elements.filter((e) => e.kind === 'G' && e.name === s.element));
  return [
    ...deck.elements.map((place) => ({ at: 'element', place }) as const),
    ...stages.map((place) => ({ at: 'stage', place }) as const),
    ...adjusters.map((place) => ({ at: 'slug', place }) as const),
    ...traps.map((place) => ({ at: 'trap', place }) as const),
    ...detectors.map((place) => ({ at: 'detector', place }) as const),
    ...traps.flatMap((first, i) =>
      traps.slice(i + 1).map((second) => ({ at: 'trapPair', place: { first, second } }) as const),
    ),
    ...(sources as readonly Transconductance[]).flatMap((late, i, all) =>
      all.slice(0, i).map((early) => ({ at: 'stagePair', place: { early, late } }) as const),
    ),
    ...supplyPairs(set).map((place) => ({ at: 'supplyPair', place }) as const),
  ];
}

/**
 * The capacitors that tune a trap's coil: one across it, or two in a chain across it (a bridged T); else, where one end is earthed by way of something, the one
 * from its other end to earth. In the order of the deck.
 */
export function trapCapacitors(deck: Deck, coil: string): readonly string[] {
  const found = findElement(deck, coil);
  if (found?.kind !== 'L') return [];
  const [a, b] = found.nodes.map(nodeKey) as [string, string];
  const capacitors = deck.elements.flatMap((e) =>
    e.kind === 'C' ? [{ name: e.name, ends: e.nodes.map(nodeKey) as [string, string] }] : [],
  );
  const joins = ([p, q]: readonly [string, string], one: string, other: string): boolean =>
    (p === one && q === other) || (p === other && q === one);
  const across = capacitors.filter((c) => joins(c.ends, a, b));
  if (across.length > 0) return across.map((c) => c.name);
  const far = ({ ends: [p, q] }: (typeof capacitors)[number], near: string): string | null =>
    p === near ? q : q === near ? p : null;
  const chains = capacitors.flatMap((first) => {
    const middle = far(first, a);
    if (middle === null || middle === '0') return [];
    const second = capacitors.find((c) => c !== first && joins(c.ends, middle, b));
    return second === undefined ? [] : [first.name, second.name];
  });
  if (chains.length > 0) return chains;
  const hot = a === '0' ? b : a;
  return capacitors.filter((c) => joins(c.ends, hot, '0')).map((c) => c.name);
}

/** Both coils of a coupling are turned by slugs, and the coupling is loose enough to be a part of its own. */
export function joinsTwoSlugs(element: DeckElement, adjusters: Receiver['adjusters']): boolean {
  if (element.kind !== 'K') return false;
  const turned = (coil: string) =>
    adjusters.some((a) => [a.element, ...a.ganged].some((e) => e.toLowerCase() === coil.toLowerCase()));
  return element.coils.every(turned) && element.value < 0.5;
}

/** Of two nodes the one that is not earth. */
export function hotNode(nodes: readonly [string, string]): string {
  return nodeKey(nodes[0]) === '0' ? nodes[1] : nodes[0];
}

/** An element's name as the deck spells it. */
export function nameOf(deck: Deck, element: string): string {
  return findElement(deck, element)?.name ?? element;
}

/** The coil that a slug turns. */
export function coilOf({ receiver, deck }: FaultySet, slug: string): string {
  return nameOf(deck, receiver.adjusters.find((a) => a.id === slug)?.element ?? '');
}

function supplyPairs({ receiver, deck }: FaultySet): readonly SupplyPair[] {
  const w = 2 * Math.PI * mainResponse(receiver).setUp.centreHz;
  const outputs = receiver.stages.flatMap(({ element }) => {
    const stage = findElement(deck, element);
    if (stage?.kind !== 'G') return [];
    const node = nodeKey(hotNode(stage.nodes));
    const atNode = deck.elements.filter((e) => e.kind !== 'K' && isBetween(e.nodes, node));
    const coil = atNode.find((e) => e.kind === 'L');
    const siemens = atNode.reduce((sum, e) => (e.kind === 'R' ? sum + 1 / e.value : sum), 0);
    if (coil === undefined || siemens === 0) return [];
    return [{ coil: coil.name, wL: w * coil.value, ohms: 1 / siemens, gm: stage.value }];
  });
  return outputs.flatMap((late, n) =>
    outputs.slice(0, n).map((early, i) => {
      const between = outputs.slice(i + 1, n);
      const gain = between.reduce((all, one) => all * one.gm * one.ohms, 1);
      const singsOhms = (early.wL * late.wL) / (late.gm * early.ohms * late.ohms * gain);
      return { first: early.coil, second: late.coil, neighbours: between.length === 0, singsOhms };
    }),
  );
}

function isBetween(nodes: readonly [string, string], node: string): boolean {
  const [a, b] = nodes.map(nodeKey);
  return (a === node && b === '0') || (b === node && a === '0');
}

/** Where a stage's cathode stands while its bypass is open. */
export function cathodeNode(stage: string): string {
  return `cathode_${stage}`;
}

/** Where the cold end of a coil stands while its decoupling is open. */
export function supplyNode(coil: string): string {
  return `supply_${coil}`;
}

/** Which ends of an element are on earth. */
export function earthedEnds(nodes: readonly [string, string]): readonly (0 | 1)[] {
  return ([0, 1] as const).filter((end) => nodeKey(nodes[end]) === '0');
}

export function biasedStages({ stages, biasLines }: Receiver): readonly Stage[] {
  return stages.filter(({ agc }) => biasLines.some((line) => line.at === agc));
}

/** What valve and wiring leave of a capacitor that is open: one part in seven, and more than bias may take out of it. */
export function straysAt({ receiver, deck }: FaultySet, capacitor: string): number {
  const taken = biasedStages(receiver)
    .filter((stage) => stage.inputCapacitor?.toLowerCase() === capacitor.toLowerCase())
    .map((stage) => receiver.biasLines.find((line) => line.at === stage.agc)?.capacitanceFarads ?? 0);
  return Math.max((findElement(deck, capacitor)?.value ?? 0) / 7, ...taken.map((farads) => 1.5 * farads));
}
