/** Whether the faults of a scenario can be had at its receiver: parts that exist and are of the right kind, and a set that is still a circuit. */

import { buildNetwork } from '../physics/buildNetwork.ts';
import { type Deck, type DeckElement, findElement, nodeKey } from '../physics/deck.ts';
import type { Fault } from '../receiver/faults/fault.ts';
import { faultEffects } from '../receiver/faults/faultEffects.ts';
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
  const element = (name: string, kinds: readonly DeckElement['kind'][], key: string): void => {
    const found = findElement(deck, name);
    if (found !== undefined && kinds.includes(found.kind)) return;
    const known = deck.elements.filter((e) => kinds.includes(e.kind)).map((e) => e.name);
    complain([...at, key], `"${name}"`, oneOfThese(known));
  };
  const among = (name: string, known: readonly string[], key: string): void => {
    if (!known.includes(name)) complain([...at, key], `"${name}"`, oneOfThese(known));
  };
  switch (fault.kind) {
    case 'openResistor':
    case 'wrongLoad':
      element(fault.element, ['R'], 'element');
      return;
    case 'driftedCapacitor':
      element(fault.element, ['C'], 'element');
      return;
    case 'weakStage':
    case 'openBypass':
      among(
        fault.element,
        receiver.stages.map((s) => s.element),
        'element',
      );
      return;
    case 'openCoupling':
      element(fault.element, ['K', 'C'], 'element');
      return;
    case 'swappedTraps':
      element(fault.first, ['C'], 'first');
      element(fault.second, ['C'], 'second');
      return;
    case 'shortedTrap':
    case 'crackedSlug':
      among(
        fault.slug,
        receiver.adjusters.map((a) => a.id),
        'slug',
      );
      return;
    case 'leakyBiasLine':
      among(
        fault.at,
        receiver.biasLines.map((l) => l.at),
        'at',
      );
      return;
    case 'missingShield': {
      const nodes = new Set(deck.elements.flatMap((e) => (e.kind === 'K' ? [] : e.nodes.map(nodeKey))));
      for (const key of ['from', 'to'] as const) {
        if (!nodes.has(nodeKey(fault[key]))) complain([...at, key], `"${fault[key]}"`, 'a node of the deck');
      }
      return;
    }
    case 'reversedDiode':
      among(
        fault.detector,
        receiver.detectors.filter((d) => d.kind === 'envelope').map((d) => d.id),
        'detector',
      );
      return;
    case 'leakyDiode':
      among(
        fault.detector,
        receiver.detectors.map((d) => d.id),
        'detector',
      );
      return;
    case 'screwedIn':
    case 'looseEarth':
    case 'unmatchedLead':
      return;
  }
}
