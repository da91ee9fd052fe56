/**
 * The one way in for a receiver that is not the project's own: its deck and its file, as texts from anywhere, read through every check that there is.
 * What comes out can be put on a bench; otherwise every problem of both texts is told, with line and column where the text has one.
 */
import { bad, type Result } from '../base/result.ts';
import { checkDesign } from './checkDesign.ts';
import { checkParts } from './checkParts.ts';
import { checkSweep } from './checkSweep.ts';
import { type LoadedReceiver, loadReceiver, type NamedText } from './library.ts';
import { withTextPlaces } from './textPlaces.ts';

export interface ReceiverPair {
  readonly deck: NamedText;
  readonly receiver: NamedText;
}

export function readReceiverPair({ deck, receiver }: ReceiverPair): Result<LoadedReceiver> {
  const loaded = loadReceiver(receiver, deck);
  if (!loaded.ok) return loaded;
  const problems = [
    ...checkParts(loaded.value.receiver, loaded.value.deck, deck.file),
    ...checkDesign(loaded.value.receiver, loaded.value.deck, receiver.file),
    ...checkSweep(loaded.value.receiver, loaded.value.deck, receiver.file),
  ];
  return problems.length === 0 ? loaded : bad(...withTextPlaces(problems, receiver.file, receiver.text));
}
