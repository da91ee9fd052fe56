/** Single faults that make sense at a receiver: what a trouble chart would list, and what the endless track draws from. */
import { type Deck, findElement } from '../../physics/deck.ts';
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
    const capacitor = trapCapacitor(deck, trap.element);
    if (capacitor !== null) faults.push({ kind: 'driftedCapacitor', element: capacitor, factor: DRIFT });
    faults.push({ kind: 'shortedTrap', slug: trap.id });
  }
  for (const { id, kind } of detectors) if (kind === 'envelope') faults.push({ kind: 'reversedDiode', detector: id });
  return faults;
}

/** The capacitor at the node of a trap's coil that is not earth. */
export function trapCapacitor(deck: Deck, coil: string): string | null {
  const found = findElement(deck, coil);
  if (found?.kind !== 'L') return null;
  const node = found.nodes.find((n) => n !== '0');
  const capacitor = deck.elements.find((e) => e.kind === 'C' && e.nodes.some((n) => n === node));
  return capacitor?.name ?? null;
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
