/** Files that somebody brings for a receiver of their own: one deck, or a deck and its receiver file. Sizes are looked at before anything is read. */
import { harmless } from '../../base/harmless.ts';
import { problemSentence } from '../../describe/problem.ts';
import { readText } from '../../files/library.ts';
import { readReceiver } from '../../files/receiverSchema.ts';
import { withTextPlaces } from '../../files/textPlaces.ts';
import { notRead, sizeProblem, textOfBytes } from '../../judge/readBytes.ts';
import type { BroughtText } from '../../making/begin.ts';
import { MAX_TEXT } from '../../physics/deckWords.ts';
import type { Words } from '../../words/words.ts';

export type Brought =
  | { readonly deck: BroughtText; readonly receiver: BroughtText | null }
  | { readonly refused: readonly string[] };

/** Reasons that are listed of one file. */
const MOST_REASONS = 60;

export async function readBrought(words: Words, files: readonly File[]): Promise<Brought> {
  const say = words.ownReceiver.begin;
  const refused: string[] = [];
  const texts: BroughtText[] = [];
  if (files.length > 2) return { refused: [say.tooMany] };
  for (const file of files) {
    const text = await textOf(words, file);
    if (text.ok) texts.push({ file: file.name, text: text.value });
    else refused.push(...text.problems.map((problem) => problemSentence(words, problem)));
  }
  if (refused.length > 0) return { refused };
  const receivers = texts.filter(isJson);
  const decks = texts.filter((one) => !isJson(one));
  if (receivers.length > 1 || decks.length > 1) return { refused: [say.tooMany] };
  const [deck] = decks;
  const [receiver] = receivers;
  if (deck !== undefined) return { deck, receiver: receiver ?? null };
  if (receiver === undefined) return { refused: [say.noDeck] };
  // What is no receiver file needs no deck: it is told what is wrong with it.
  const { file, text } = receiver;
  const { problems } = readText(text, file, readReceiver);
  const told = withTextPlaces(problems, file, text).map((problem) => harmless(problemSentence(words, problem)));
  const isReceiver = problems.every(({ place }) => place !== '' && place !== '/format' && place !== '/version');
  const reasons = told.slice(0, MOST_REASONS);
  return { refused: isReceiver ? [...reasons, say.noDeck] : reasons };
}

const isJson = ({ file, text }: BroughtText): boolean => /\.json$/i.test(file) || /^\uFEFF?\s*[{[]/.test(text);
const decoded = (bytes: Uint8Array): string => new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);

async function textOf(words: Words, file: File) {
  const tooLarge = sizeProblem(words, file.size, file.name);
  if (tooLarge !== null) return tooLarge;
  // Of a file that is longer than any deck may be, so much is enough to say so; a receiver file may be longer.
  // A folder gives no bytes, nor does a file that has gone since.
  const most = /\.json$/i.test(file.name) ? file.size : Math.min(file.size, 4 * MAX_TEXT + 4);
  try {
    return textOfBytes(words, new Uint8Array(await file.slice(0, most).arrayBuffer()), file.name, decoded);
  } catch (error) {
    return notRead(words, error instanceof Error ? error.name : String(error), file.name);
  }
}
