/** The edits that leave one stage as some effect of its bias law has it: gm, input capacitance and input loading, each of those that its receiver names. */
import { findElement } from '../../physics/deck.ts';
import type { DeckEdit } from '../../physics/editDeck.ts';
import type { BiasEffect } from '../biasLaw.ts';
import type { BiasLaw } from '../receiver.ts';
import type { FaultySet } from './faultPlaces.ts';

/** For a stage without a bias line, of which no figures are known, the law of a remote cut-off valve whose capacitance stays. */
const UNLINED: BiasLaw = {
  kind: 'exponential',
  referenceVolts: -1,
  scaleVolts: 1,
  capacitanceFarads: 0,
  unclampedRestVolts: 0,
  unclampedVoltsPerDetectedVolt: 0,
};

export function stageEdits(
  { receiver, deck }: FaultySet,
  element: string,
  effectOf: (law: BiasLaw) => BiasEffect,
): readonly DeckEdit[] {
  const stage = receiver.stages.find((s) => s.element === element);
  if (stage === undefined) return [];
  const { inputCapacitor, inputResistor, agc } = stage;
  const effect = effectOf(receiver.biasLines.find((line) => line.at === agc) ?? UNLINED);
  const edits: DeckEdit[] = [{ kind: 'scale', name: element, factor: effect.gmRelative }];
  const capacitor = inputCapacitor === null ? undefined : findElement(deck, inputCapacitor);
  if (capacitor !== undefined) {
    edits.push({ kind: 'set', name: capacitor.name, value: capacitor.value + effect.inputFarads });
  }
  if (inputResistor !== null) {
    edits.push({ kind: 'scale', name: inputResistor, factor: 1 / effect.inputConductanceRelative });
  }
  return edits;
}
