/** Whether the faults of a scenario can be had at its receiver: parts that exist and are of the right kind, and a set that is still a circuit. */

import type { Phrase } from '../base/phrases.ts';
import type { Problem } from '../base/result.ts';
import { buildNetwork } from '../physics/buildNetwork.ts';
import { type Deck, type DeckElement, findElement, nodeKey } from '../physics/deck.ts';
import { deckProblems } from '../physics/deckProblems.ts';
import { cureOf } from '../receiver/faults/cure.ts';
import { type Fault, faultRowOf } from '../receiver/faults/fault.ts';
import { faultEffects } from '../receiver/faults/faultEffects.ts';
import type { FaultField } from '../receiver/faults/faultField.ts';
import { biasedStages } from '../receiver/faults/faultPlaces.ts';
import { partsTray } from '../receiver/faults/partsTray.ts';
import type { Receiver, Stage } from '../receiver/receiver.ts';
import { type Complain, oneOf, type Path } from './complaints.ts';
import { placeInFile } from './faultFile.ts';
import { asFarAsKnown, eachKnown } from './known.ts';

export function checkFaults(faults: readonly Fault[], receiver: Receiver, deck: Deck, complain: Complain): void {
  let whole = true;
  const tell: Complain = (...args) => {
    whole = false;
    complain(...args);
  };
  eachKnown(
    () => faults,
    (fault, i) => {
      checkFault(fault, receiver, deck, ['faults', i], tell);
    },
  );
  // Faults are checked together where each of them is known; where one is not, this check ends.
  if (!whole || [...faults].length === 0) return;
  complainOfNoParts(faults, receiver, deck, tell);
  complainOfSameParts(faults, receiver, deck, tell);
  complainOfNothing(faults, receiver, deck, tell);
  complainOfTakenNames(faults, receiver, deck, tell);
  if (!whole) return;
  const left = firstOutOfBounds(faults, receiver, deck);
  if (left !== null) {
    complain(left.faults.length === 1 ? ['faults', left.faults[0]!] : ['faults'], left.found, left.wanted);
    return;
  }
  const built = buildNetwork(faultEffects(receiver, deck, faults, []).deck, receiver.deck);
  if (built.ok) return;
  const { found, wanted } = noCircuit(built.problems[0]);
  complain(['faults'], found, wanted);
}

/** What is no part that a hand can hold (`notParts` of the receiver) does not fail by itself, and could not be replaced. */
function complainOfNoParts(faults: readonly Fault[], receiver: Receiver, deck: Deck, complain: Complain): void {
  const tray = new Set(partsTray(receiver, deck).map(({ name }) => name));
  eachKnown(
    () => faults,
    (fault, i) => {
      const cure = cureOf(fault, receiver, deck);
      const none = cure.kind === 'replace' ? cure.parts.find((part) => !tray.has(part)) : undefined;
      if (none === undefined) return;
      complain(['faults', i], ['noPart', fault.kind, none], ['partInTray']);
    },
  );
}

/** A part fails in each way once: of two such faults one would undo or overlay the other. What no part cures is there once. */
function complainOfSameParts(faults: readonly Fault[], receiver: Receiver, deck: Deck, complain: Complain): void {
  const seen = new Set<string>();
  eachKnown(
    () => faults,
    (fault, i) => {
      const cure = cureOf(fault, receiver, deck);
      const parts = cure.kind === 'replace' ? cure.parts : [''];
      const again = parts.find((part) => seen.has(`${fault.kind} ${part.toLowerCase()}`));
      for (const part of parts) seen.add(`${fault.kind} ${part.toLowerCase()}`);
      if (again === undefined) return;
      complain(['faults', i], ['faultTwice', fault.kind, again === '' ? null : again], ['faultOnce']);
    },
  );
}

/** For example a decoupling of coils that do not end on the supply. */
function complainOfNothing(faults: readonly Fault[], receiver: Receiver, deck: Deck, complain: Complain): void {
  eachKnown(
    () => faults,
    (fault, i) => {
      if (faultRowOf(fault).edits?.(fault, { receiver, deck }).length !== 0) return;
      complain(['faults', i], ['faultOfNothing', fault.kind], ['faultThatChanges']);
    },
  );
}

/** Faults add elements under names of their own, which the receiver's deck may happen to have, or another fault of the same part: a diode that leaks and is a piece of wire. */
function complainOfTakenNames(faults: readonly Fault[], receiver: Receiver, deck: Deck, complain: Complain): void {
  const added = new Map<string, Fault['kind']>();
  eachKnown(
    () => faults,
    (fault, i) => {
      const names = (faultRowOf(fault).edits?.(fault, { receiver, deck }) ?? []).flatMap((edit) =>
        edit.kind === 'add' ? [edit.element.name] : [],
      );
      for (const name of names)
        if (findElement(deck, name) !== undefined)
          complain(['faults', i], ['faultAdds', fault.kind, name], ['deckWithout', name]);
      const other = names.map((name) => added.get(name.toLowerCase())).find((kind) => kind !== undefined);
      // The same kind twice has been told already.
      if (other !== undefined && other !== fault.kind)
        complain(['faults', i], ['faultBeside', fault.kind, other], ['oneOfTheTwo']);
      for (const name of names) added.set(name.toLowerCase(), fault.kind);
    },
  );
}

interface OutOfBounds {
  /** indices of the faults that stand together */
  readonly faults: readonly number[];
  readonly found: Phrase;
  readonly wanted: Phrase;
}

/**
 * Parts may be replaced in any order, so every choice of the faults must leave values that can be had: each inside the bounds of a deck, and each input capacitor
 * larger than what bias may take out of it. Of those that do not the smallest choice.
 */
function firstOutOfBounds(faults: readonly Fault[], receiver: Receiver, deck: Deck): OutOfBounds | null {
  const choices = Array.from({ length: 2 ** faults.length }, (_, bits) =>
    faults.flatMap((_fault, i) => ((bits >> i) & 1 ? [i] : [])),
  ).sort((a, b) => a.length - b.length);
  for (const choice of choices.slice(1)) {
    const chosen = choice.map((i) => faults[i]!);
    const edited = faultEffects(receiver, deck, chosen, []).deck;
    const [problem] = deckProblems(edited, receiver.deck);
    if (problem !== undefined) return { faults: choice, ...noCircuit(problem) };
    for (const { element, agc, inputCapacitor } of receiver.stages) {
      if (inputCapacitor === null) continue;
      const taken = receiver.biasLines.find((law) => law.at === agc)?.capacitanceFarads ?? 0;
      const { value } = findElement(edited, inputCapacitor)!;
      if (value > taken) continue;
      const wanted: Phrase = ['moreThanBiasOf', taken, element];
      return { faults: choice, found: ['namedValue', inputCapacitor, value, 'F'], wanted };
    }
  }
  return null;
}

function noCircuit(problem: Problem | undefined): { readonly found: Phrase; readonly wanted: Phrase } {
  return { found: ['noCircuit', { phrase: problem?.found ?? ['nothing'] }], wanted: ['stillCircuit'] };
}

function checkFault(fault: Fault, receiver: Receiver, deck: Deck, at: Path, complain: Complain): void {
  const values: Readonly<Record<string, unknown>> = fault;
  for (const [key, field] of Object.entries(faultRowOf(fault).fields)) {
    const known = choicesOf(field, receiver, deck);
    if (known === null) continue;
    asFarAsKnown(() => {
      const value = String(values[key]);
      if (!known.has(value)) complain([...at, ...placeInFile(fault.kind, key)], ['named', value], known.wanted);
    });
  }
}

function stagesOf(of: 'any' | 'biased' | 'valve', receiver: Receiver): readonly Stage[] {
  if (of === 'any') return receiver.stages;
  const valves = receiver.biasLines.filter((line) => of === 'biased' || line.kind === 'exponential');
  return biasedStages(receiver).filter(({ agc }) => valves.some((line) => line.at === agc));
}

interface Choices {
  readonly wanted: Phrase;
  has(name: string): boolean;
}

/** What a field may name at this receiver; null where it names nothing. */
function choicesOf(field: FaultField, receiver: Receiver, deck: Deck): Choices | null {
  const among = (known: readonly string[]): Choices => ({
    wanted: oneOf(known),
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
      return { wanted: oneOf(known), has };
    }
    case 'stage':
      return among(stagesOf(field.of, receiver).map((s) => s.element));
    case 'slug':
      return among(receiver.adjusters.map((a) => a.id));
    case 'line':
      return among(receiver.biasLines.map((l) => l.at));
    case 'detector':
      return among(receiver.detectors.filter((d) => field.of === 'any' || d.kind === field.of).map((d) => d.id));
    case 'node': {
      const nodes = new Set(deck.elements.flatMap((e) => (e.kind === 'K' ? [] : e.nodes.map(nodeKey))));
      return { wanted: ['nodeOfDeck'], has: (name) => nodes.has(nodeKey(name)) };
    }
    case 'number':
      return null;
  }
}
