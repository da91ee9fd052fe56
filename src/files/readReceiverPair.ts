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

/** One that has been kept or handed out: what could once be put on a bench still can. */
export const readReceiverPair = (pair: ReceiverPair): Result<LoadedReceiver> => readWith(pair, [checkDesign]);

/** One that is being made or checked: its sheet must be one that can be followed, too. */
export const readNewReceiver = (pair: ReceiverPair): Result<LoadedReceiver> =>
  readWith(pair, [checkDesign, checkSweep]);

function readWith({ deck, receiver }: ReceiverPair, checks: readonly (typeof checkDesign)[]): Result<LoadedReceiver> {
  const loaded = loadReceiver(receiver, deck);
  if (!loaded.ok) return loaded;
  const { value } = loaded;
  const problems = [
    ...checkParts(value.receiver, value.deck, deck.file),
    ...checks.flatMap((check) => check(value.receiver, value.deck, receiver.file)),
  ];
  return problems.length === 0 ? loaded : bad(...withTextPlaces(problems, receiver.file, receiver.text));
}
