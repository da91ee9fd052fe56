/**
 * What the slugs and the bias make of the deck: the values that its elements take. The deck holds every element at the nominal slug positions and at
 * the reference bias; these functions give the values anywhere else, ready for a solver's `setValue`.
 */
import { type Deck, findElement } from '../physics/deck.ts';
import { stageAtBias } from './biasLaw.ts';
import type { Adjuster, BiasLaw, Receiver, Stage } from './receiver.ts';
import { couplingFactor, slugHenries } from './slugLaw.ts';

export interface ElementValue {
  readonly element: string;
  /** R ohm, L henry, C farad, G siemens, K as it is */
  readonly value: number;
}

/** The windings on one slug's core: all change by the same factor, so that k stays and M follows the root of their product. */
export function slugValues(adjuster: Adjuster, deck: Deck, coreTurns: number): ElementValue[] {
  const henries = slugHenries(adjuster, coreTurns);
  const factor = henries / adjuster.nominalHenries;
  const ganged = adjuster.ganged.map((element) => ({ element, value: deckValue(deck, element) * factor }));
  const windings = [{ element: adjuster.element, value: henries }, ...ganged];
  if (adjuster.twoPeaks === undefined) return windings;
  const { coupling } = adjuster.twoPeaks;
  return [...windings, { element: coupling, value: deckValue(deck, coupling) * couplingFactor(adjuster, coreTurns) }];
}

/** The stages of one bias line with the line at `volts`: transconductance, input capacitor, input resistor. `line` is its test point. */
export function biasValues(receiver: Receiver, deck: Deck, line: string, volts: number): ElementValue[] {
  const law = receiver.biasLines.find((l) => l.at === line);
  if (law === undefined) throw new Error(`the receiver has no bias line ${line}`);
  return receiver.stages.filter((stage) => stage.agc === line).flatMap((stage) => stageValues(law, stage, deck, volts));
}

/** One controlled stage with its line at `volts`. */
export function stageValues(law: BiasLaw, stage: Stage, deck: Deck, volts: number): ElementValue[] {
  const effect = stageAtBias(law, volts);
  const values = [{ element: stage.element, value: deckValue(deck, stage.element) * effect.gmRelative }];
  if (stage.inputCapacitor !== null) {
    values.push({ element: stage.inputCapacitor, value: deckValue(deck, stage.inputCapacitor) + effect.inputFarads });
  }
  if (stage.inputResistor !== null) {
    const ohms = deckValue(deck, stage.inputResistor) / effect.inputConductanceRelative;
    values.push({ element: stage.inputResistor, value: ohms });
  }
  return values;
}

/** The element's value as the deck has it; the receiver file has been checked against the deck, so a missing one is our error. */
export function deckValue(deck: Deck, element: string): number {
  const found = findElement(deck, element);
  if (found === undefined) throw new Error(`the deck has no element ${element}`);
  return found.value;
}
