/** Single faults that make sense at a receiver: what a trouble chart would list, and what the endless track draws from. */
import { type Deck, findElement, nodeKey } from '../../physics/deck.ts';
import type { Receiver } from '../receiver.ts';
import type { Fault } from './fault.ts';

/** How far a trap's capacitor has drifted: past what its slug can bring back. */
export const DRIFT = 1.6;
export const WEAK = 0.35;
/** Feedback that peaks a stage without making it howl: its size is a thousandth of its load's own reactance at most. */
const BACK_FARADS = 0.02e-12;

export function plausibleFaults({ adjusters, stages, detectors }: Receiver, deck: Deck): readonly Fault[] {
  const faults: Fault[] = [];
  for (const { kind, name } of deck.elements) {
    if (kind === 'R' && !isSmall(deck, name)) faults.push({ kind: 'openResistor', element: name });
    if (kind === 'K' && joinsTwoSlugs(deck, name, adjusters)) faults.push({ kind: 'openCoupling', element: name });
  }
  for (const { element } of stages) {
    faults.push({ kind: 'weakStage', element, factor: WEAK });
    faults.push({ kind: 'openBypass', element, farads: BACK_FARADS });
  }
  for (const trap of adjusters) {
    if (trap.trapHz === null) continue;
    for (const capacitor of trapCapacitors(deck, trap.element)) {
      faults.push({ kind: 'driftedCapacitor', element: capacitor, factor: DRIFT });
    }
    faults.push({ kind: 'shortedTrap', slug: trap.id });
  }
  for (const { id, kind } of detectors) if (kind === 'envelope') faults.push({ kind: 'reversedDiode', detector: id });
  return faults;
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

/** Links and leads of some ohms are no parts that fail open unseen. */
function isSmall(deck: Deck, name: string): boolean {
  return (findElement(deck, name)?.value ?? 0) < 100;
}

function joinsTwoSlugs(deck: Deck, name: string, adjusters: Receiver['adjusters']): boolean {
  const coupling = findElement(deck, name);
  if (coupling?.kind !== 'K') return false;
  const turned = (coil: string) =>
    adjusters.some((a) => [a.element, ...a.ganged].some((e) => e.toLowerCase() === coil.toLowerCase()));
  return coupling.coils.every(turned) && coupling.value < 0.5;
}
