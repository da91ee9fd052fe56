/**
 * One set of a design, as it came off the line: parts within their tolerance, and each slug right at a depth of its own.
 *
 * Every value is uniform within its spread, value = design * (1 + s (2 u - 1)), u from the seeded generator, element by element in the order of the deck, two numbers
 * drawn for each (the second is kept for later use, so that a spread put to nought moves nothing else). A coupling near 1 may not pass it: it moves by s min(|k|, 1 - |k|).
 * Left as they are: coils (their slugs are what is set), current sources, what belongs to the bench (its probe, the 75 ohm of its source).
 *
 * The right depth of a slug is uniform from a quarter to three quarters of its travel; of a core that can be screwed right through (`twoPeaks`), where the winding is
 * met from the outer side, from 0.15 to 0.35. The winding's range is moved so that the coil has the wanted inductance at that depth, max / min staying as designed.
 * Uniform spreads inside the printed tolerance: common practice in worst-case and yield work, no source.
 */
import { seededRandom } from '../base/random.ts';
import { type Deck, type DeckElement, nodeKey } from '../physics/deck.ts';
import type { Adjuster, Receiver, Spreads } from './receiver.ts';
import { slugShare } from './slugLaw.ts';

/** A receiver with its deck. */
export interface SetParts {
  readonly receiver: Receiver;
  readonly deck: Deck;
}

const FULL_SPREADS: Spreads = { capacitors: 0.05, resistors: 0.1, couplings: 0.05, transconductances: 0.15 };

const DEPTHS = [0.25, 0.75] as const;
const DEPTHS_TWO_PEAKS = [0.15, 0.35] as const;
/** How far below and above the design a trial may look, as a share of it: capacitors and couplings within their spreads need less. */
const TRIAL_REACH = 0.8;

/** The spreads of a receiver: what its file says, or the full ones. */
export function spreadsOf(receiver: Receiver): Spreads {
  return { ...FULL_SPREADS, ...receiver.spreads };
}

/** Draw number `draw` of the sets of a seed: the parts, every slug still as the design has it. */
export function drawParts({ receiver, deck }: SetParts, seed: number, draw: number, spreads: Spreads): SetParts {
  const chance = seededRandom(mixed(seed, draw));
  const benchOwn = benchElements(receiver, deck);
  const elements = deck.elements.map((element): DeckElement => {
    const at = 2 * chance() - 1;
    chance();
    const spread = benchOwn.has(element.name.toLowerCase()) ? 0 : spreadOf(element, spreads);
    return spread === 0 ? element : { ...element, value: element.value + spread * at };
  });
  const values = new Map(elements.map((element) => [element.name.toLowerCase(), element.value]));
  const stages = receiver.stages.map((stage) => ({ ...stage, gmSiemens: values.get(stage.element.toLowerCase())! }));
  return { receiver: { ...receiver, stages }, deck: { ...deck, elements } };
}

/** The greatest departure of an element, in its own unit. */
function spreadOf({ kind, value }: DeckElement, spreads: Spreads): number {
  switch (kind) {
    case 'C':
      return spreads.capacitors * value;
    case 'R':
      return spreads.resistors * value;
    case 'G':
      return spreads.transconductances * value;
    case 'K':
      return spreads.couplings * Math.min(Math.abs(value), 1 - Math.abs(value));
    case 'L':
    case 'I':
      return 0;
  }
}

const SOURCE_OHMS = 75;

/** What stands in the deck for the bench itself: its probe, and the source's own resistance where the deck's source drives. */
function benchElements({ probeInDeck }: Receiver, deck: Deck): ReadonlySet<string> {
  const driven = new Set(deck.elements.flatMap((e) => (e.kind === 'I' ? e.nodes.map(nodeKey) : [])));
  const own = deck.elements.filter(
    (e) => e.kind === 'R' && e.value === SOURCE_OHMS && e.nodes.every((node) => driven.has(nodeKey(node))),
  );
  return new Set([...(probeInDeck?.elements ?? []), ...own.map((e) => e.name)].map((name) => name.toLowerCase()));
}

/** The depth at which each slug of the set of a seed is right, as a share of its travel, by slug id. The same for every draw of the seed. */
export function slugDepths({ adjusters }: Receiver, seed: number): Readonly<Record<string, number>> {
  const chance = seededRandom(mixed(seed, -1));
  return Object.fromEntries(
    adjusters.map((adjuster) => {
      const [from, to] = adjuster.twoPeaks === undefined ? DEPTHS : DEPTHS_TWO_PEAKS;
      return [adjuster.id, from + (to - from) * chance()];
    }),
  );
}

/**
 * The set with every coil's winding moved: `henries` by slug id is what the slug should have at `depths`, a share of the travel. That inductance is then its nominal,
 * in the deck too, ganged windings in proportion.
 */
export function placeSlugs(
  { receiver, deck }: SetParts,
  henries: Readonly<Record<string, number>>,
  depths: Readonly<Record<string, number>>,
): SetParts {
  const factors = new Map<string, number>();
  const adjusters = receiver.adjusters.map((adjuster): Adjuster => {
    const wanted = henries[adjuster.id]!;
    for (const element of [adjuster.element, ...adjuster.ganged])
      factors.set(element.toLowerCase(), wanted / adjuster.nominalHenries);
    const reach = adjuster.maxHenries / adjuster.minHenries;
    const minHenries = wanted / (1 + (reach - 1) * slugShare(adjuster, depths[adjuster.id]!));
    return { ...adjuster, nominalHenries: wanted, minHenries, maxHenries: minHenries * reach };
  });
  return { receiver: { ...receiver, adjusters }, deck: scaledCoils(deck, factors) };
}

/** The same set with cores that reach far enough for a trial to find where each is right. */
export function withLongReach({ receiver, deck }: SetParts): SetParts {
  const adjusters = receiver.adjusters.map((adjuster) => ({
    ...adjuster,
    minHenries: adjuster.nominalHenries * TRIAL_REACH,
    maxHenries: adjuster.nominalHenries * (2 - TRIAL_REACH),
  }));
  return { receiver: { ...receiver, adjusters }, deck };
}

function scaledCoils(deck: Deck, factors: ReadonlyMap<string, number>): Deck {
  const elements = deck.elements.map((element) => {
    const factor = factors.get(element.name.toLowerCase());
    return factor === undefined ? element : { ...element, value: element.value * factor };
  });
  return { ...deck, elements };
}

/** One seed made of two numbers, for things that are tried one after the other under one number. The multiplier is that of the golden ratio in 32 bits (Knuth, The Art of Computer Programming 3, 6.4; from memory). */
export function mixed(seed: number, draw: number): number {
  return (seed ^ Math.imul(draw + 1, 0x9e3779b1)) | 0;
}
