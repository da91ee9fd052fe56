/** Whether the faults of a scenario can be had at its receiver: parts that exist and are of the right kind, and a set that is still a circuit. */

import { buildNetwork } from '../physics/buildNetwork.ts';
import { type Deck, type DeckElement, findElement, nodeKey } from '../physics/deck.ts';
import { type Fault, faultRowOf } from '../receiver/faults/fault.ts';
import { faultEffects } from '../receiver/faults/faultEffects.ts';
import type { FaultField } from '../receiver/faults/faultField.ts';
import type { Receiver } from '../receiver/receiver.ts';
import { type Complain, oneOfThese, type Path } from './complaints.ts';

export function checkFaults(faults: readonly Fault[], receiver: Receiver, deck: Deck, complain: Complain): void {
  let whole = true;
  const tell: Complain = (...args) => {
    whole = false;
    complain(...args);
  };
  faults.forEach((fault, i) => {
    checkFault(fault, receiver, deck, ['faults', i], tell);
    if (faults.slice(0, i).some((other) => JSON.stringify(other) === JSON.stringify(fault))) {
      tell(['faults', i], 'a fault that is there already', 'each fault once');
    }
  });
  if (!whole || faults.length === 0) return;
  const built = buildNetwork(faultEffects(receiver, deck, faults, []).deck, receiver.deck);
  if (built.ok) return;
  const [first] = built.problems;
  complain(
    ['faults'],
    `a set that is no circuit any more (${first?.found ?? 'unknown'})`,
    'faults that leave a circuit',
  );
}

function checkFault(fault: Fault, receiver: Receiver, deck: Deck, at: Path, complain: Complain): void {
  const values: Readonly<Record<string, unknown>> = fault;
  for (const [key, field] of Object.entries(faultRowOf(fault).fields)) {
    const known = choicesOf(field, receiver, deck);
    const value = String(values[key]);
    if (known !== null && !known.has(value)) complain([...at, key], `"${value}"`, known.wanted);
  }
}

interface Choices {
  readonly wanted: string;
  has(name: string): boolean;
}

/** What a field may name at this receiver; null where it names nothing. */
function choicesOf(field: FaultField, receiver: Receiver, deck: Deck): Choices | null {
  const among = (known: readonly string[]): Choices => ({
    wanted: oneOfThese(known),
    has: (name) => known.includes(name),
  });
  switch (field.holds) {
    case 'element': {
      const isOf = (kind: DeckElement['kind']): boolean => field.of.some((one) => one === kind);
      const known = deck.elements.filter((e) => isOf(e.kind)).map((e) => e.name);
      const has = (name: string): boolean => {
        const found = findElement(deck, name);
        return found !== undefined && isOf(found.kind);
      };
      return { wanted: oneOfThese(known), has };
    }
    case 'stage':
      return among(receiver.stages.map((s) => s.element));
    case 'slug':
      return among(receiver.adjusters.map((a) => a.id));
    case 'line':
      return among(receiver.biasLines.map((l) => l.at));
    case 'detector':
      return among(receiver.detectors.filter((d) => field.of === 'any' || d.kind === field.of).map((d) => d.id));
    case 'node': {
      const nodes = new Set(deck.elements.flatMap((e) => (e.kind === 'K' ? [] : e.nodes.map(nodeKey))));
      return { wanted: 'a node of the deck', has: (name) => nodes.has(nodeKey(name)) };
    }
    case 'number':
      return null;
  }
}
