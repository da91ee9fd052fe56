/** What a deck says of a receiver before anybody has said more: which coils can be turned, where one may touch, how the bench stands for it. All of it may be changed. */
import { type CurrentSource, type Deck, type DeckElement, nodeKey, type TwoTerminal } from '../physics/deck.ts';
import { coilGroups, nodesOf } from '../physics/deckProblems.ts';
import { SLUG_LETTERS } from '../receiver/slugLetters.ts';
import type { Draft, Json } from './wholeReceiver.ts';

/** A typical diode and load of the valve era, as in the small sets of the course. */
const DIODE = { saturationAmps: 2.6e-7, emissionVolts: 0.027, loadOhms: 470e3, loadFarads: 100e-12 };
const DETECTOR = 'diode';
/** Two diodes of that kind and their loads, as in the FM sets of the course. */
const FM_DIODES = { saturationAmps: 5e-6, emissionVolts: 0.027, loadOhms: 22e3, loadFarads: 330e-12 };
const FM_DETECTOR = 'fm';
const RESERVOIR_FARADS = 4e-6;
/** Of signal points, besides the way in and the detector's. */
const MOST_POINTS = 6;
const FIRST_LEVEL_DB = -20;
/** Siemens of the way in until the response has been solved; `settleLevel` puts the right ones. */
const FIRST_SIEMENS = 1e-5;
/** A resistor up to this across the source is the source's own. */
const SOURCE_OHMS_AT_MOST = 1000;
/** Below this a response is too narrow for a sweep at the rate of the mains. */
const SLOW_BELOW_HZ = 2e6;
const MOST_SPAN_HZ = 30e6;

export function firstDraft(deck: Deck, names: { readonly id: string; readonly deck: string }): Draft {
  const source = deck.elements.find((e): e is CurrentSource => e.kind === 'I');
  const inNode = source?.nodes.find((node) => nodeKey(node) !== '0') ?? null;
  const slugs = slugsOf(deck);
  const pair = printedPair(deck);
  const outNode = pair === null ? outputOf(deck, slugs.at(-1)?.coil ?? null) : null;
  const { centreHz, spanHz } = bandOf(deck, slugs[0]?.coil ?? null);
  const markersHz = [-1, 0, 1].map((k) => centreHz + k * roundTo(spanHz / 4, 2));
  const others = nodesOf(deck).filter(
    (node) => node !== inNode && node !== outNode && (pair === null || !pair.includes(node)),
  );
  const fm = pair === null ? null : fmDetector(pair, /ratio/i.test(deck.title) ? 'ratio' : 'discriminator', centreHz);
  const testPoints: Json[] = [
    ...(inNode === null || source === undefined ? [] : [wayIn(deck, source, inNode)]),
    ...(outNode === null ? [] : [{ id: 'TP1', node: outNode, detector: DETECTOR }]),
    ...(fm === null ? [] : [{ id: 'TP1', ...pointOf(fm) }]),
    ...others.slice(0, MOST_POINTS).map((node, i) => ({ id: `TP${i + 3}`, node })),
    { id: 'Earth', role: 'earth' },
  ];
  return {
    ...{ id: names.id, deck: names.deck },
    adjusters: slugs.map(({ id, coil, ganged, can, hole }) => ({
      ...{ id, element: coil.name },
      ...(ganged.length === 0 ? {} : { ganged }),
      plan: { x: 0, y: 0, can, shape: 'can', hole },
    })),
    testPoints,
    detectors: fm !== null ? [fm] : outNode === null ? [] : [diodeAt(outNode, centreHz)],
    responses: [
      {
        id: 'overall',
        setUp: {
          ...{ centreHz, spanHz, markersHz, levelDb: FIRST_LEVEL_DB },
          ...{ injectAt: inNode === null ? '' : 'TP2', observeAt: outNode === null && fm === null ? '' : 'TP1' },
          ...(centreHz < SLOW_BELOW_HZ ? { slowSweep: true } : {}),
        },
      },
    ],
  };
}

export type FmKind = 'discriminator' | 'ratio';

export const fmDetector = ([plus, minus]: readonly [string, string], kind: FmKind, carrierHz: number): Json => ({
  ...{ id: FM_DETECTOR, kind, plus, minus },
  ...FM_DIODES,
  carrierHz,
  reservoirFarads: kind === 'ratio' ? RESERVOIR_FARADS : null,
});

/** Its own test point: a ratio detector is swept with the link of its reservoir open. */
export const pointOf = ({ id, kind }: Json): Json =>
  kind === 'ratio' ? { node: null, detector: id, tap: 'open' } : { node: null, detector: id };

export const diodeAt = (node: string, carrierHz: number): Json => ({
  ...{ id: DETECTOR, kind: 'envelope', node, polarity: 'negative' },
  ...DIODE,
  carrierHz,
});

/** Two nodes that the deck prints, and no more: the ends of an FM detector's transformer. */
function printedPair(deck: Deck): readonly [string, string] | null {
  const printed = deck.outputs.map((output) => /\(([^(),]+)\)$/.exec(output)?.[1]);
  const [plus, minus, more] = nodesOf(deck).filter((node) =>
    printed.some((name) => name !== undefined && nodeKey(name) === nodeKey(node)),
  );
  return plus === undefined || minus === undefined || more !== undefined ? null : [plus, minus];
}

interface FoundSlug {
  readonly id: string;
  readonly coil: TwoTerminal;
  /** the other half of a centre-tapped winding */
  readonly ganged: readonly string[];
  readonly can: string;
  readonly hole: 'top' | 'bottom';
}

/** Coils with a capacitor across them, those of one transformer two to a can. */
function slugsOf(deck: Deck): FoundSlug[] {
  const found: FoundSlug[] = [];
  let cans = 0;
  for (const group of coilGroups(deck)) {
    const all = group.coils.map((i) => deck.elements[i] as TwoTerminal);
    const halves = new Map(all.flatMap((coil, i) => halvesOf(deck, coil, all.slice(i + 1))));
    const coils = all.filter((coil) => capacitorsAcross(deck, coil).length > 0 || halves.has(coil));
    const gangedOf = (coil: TwoTerminal): readonly string[] => halves.get(coil) ?? [];
    for (let i = 0; i < coils.length; i += 2) {
      const can = `T${++cans}`;
      const [bottom, top] = [coils[i]!, coils[i + 1]];
      found.push({
        id: top === undefined ? can : `${can}B`,
        coil: bottom,
        ganged: gangedOf(bottom),
        can,
        hole: top === undefined ? 'top' : 'bottom',
      });
      if (top !== undefined) found.push({ id: `${can}T`, coil: top, ganged: gangedOf(top), can, hole: 'top' });
    }
  }
  return found.slice(0, SLUG_LETTERS.length);
}

/** Two coils that meet in a tap, with a capacitor across their outer ends, are one winding on one core. */
function halvesOf(
  deck: Deck,
  coil: TwoTerminal,
  others: readonly TwoTerminal[],
): readonly (readonly [TwoTerminal, readonly string[]])[] {
  const ends = coil.nodes.map(nodeKey);
  return others.flatMap((other) => {
    const far = other.nodes.map(nodeKey);
    const tap = ends.find((node) => node !== '0' && far.includes(node));
    if (tap === undefined) return [];
    const outer = [...ends, ...far].filter((node) => node !== tap);
    const across = deck.elements.some(
      (e) => e.kind === 'C' && outer.length === 2 && e.nodes.every((node) => outer.includes(nodeKey(node))),
    );
    return across ? [[coil, [other.name]] as const] : [];
  });
}

function capacitorsAcross(deck: Deck, coil: TwoTerminal): readonly DeckElement[] {
  const ends = coil.nodes.map(nodeKey);
  return deck.elements.filter((e) => e.kind === 'C' && e.nodes.every((n) => ends.includes(nodeKey(n))));
}

/** Where each coil is tuned by itself, by Thomson's formula; null: no capacitor lies across it. */
export function tunedHz(deck: Deck, coil: TwoTerminal): number | null {
  const farads = capacitorsAcross(deck, coil).reduce((sum, { value }) => sum + value, 0);
  return farads === 0 ? null : 1 / (2 * Math.PI * Math.sqrt(coil.value * farads));
}

/** What the deck prints, else the last tuned circuit. */
function outputOf(deck: Deck, last: TwoTerminal | null): string | null {
  const printed = deck.outputs.map((output) => /\(([^(),]+)\)$/.exec(output)?.[1]);
  const known = nodesOf(deck);
  const asked = known.find((node) => printed.some((name) => name !== undefined && nodeKey(name) === nodeKey(node)));
  return asked ?? last?.nodes.find((node) => nodeKey(node) !== '0') ?? known.at(-1) ?? null;
}

function bandOf(deck: Deck, coil: TwoTerminal | null): { readonly centreHz: number; readonly spanHz: number } {
  if (deck.ac !== null && deck.ac.toHz > deck.ac.fromHz) {
    const { fromHz, toHz } = deck.ac;
    return { centreHz: roundTo((fromHz + toHz) / 2, 4), spanHz: Math.min(MOST_SPAN_HZ, roundTo(toHz - fromHz, 2)) };
  }
  const hz = roundTo((coil === null ? null : tunedHz(deck, coil)) ?? 1e6, 4);
  return { centreHz: hz, spanHz: Math.min(MOST_SPAN_HZ, roundTo(hz / 10, 2)) };
}

function wayIn(deck: Deck, source: CurrentSource, node: string): Json {
  const own = deck.elements.find(
    (e) =>
      e.kind === 'R' &&
      e.value <= SOURCE_OHMS_AT_MOST &&
      e.nodes.some((n) => nodeKey(n) === nodeKey(node)) &&
      e.nodes.some((n) => nodeKey(n) === '0'),
  );
  const siemens = own === undefined ? FIRST_SIEMENS : 1 / own.value;
  return { id: 'TP2', node, inject: { kind: 'deckSource', element: source.name, siemens } };
}

/** To so many significant digits. */
const roundTo = (value: number, figures: number): number => Math.round(Number(value.toPrecision(figures)));
