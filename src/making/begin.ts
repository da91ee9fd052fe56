/** Where a receiver in the making comes from: a deck alone, or the two files as they were saved. */
import { bad, good, type Problem, type Result } from '../base/result.ts';
import { readText } from '../files/library.ts';
import { readJson } from '../files/parseJson.ts';
import { readReceiver } from '../files/receiverSchema.ts';
import { withTextPlaces } from '../files/textPlaces.ts';
import { readDeckFile } from './deckFile.ts';
import { firstDraft } from './firstDraft.ts';
import { makeReceiver } from './makeReceiver.ts';
import { setOut } from './setOut.ts';
import { settleLevel } from './settleLevel.ts';
import type { Making } from './standing.ts';
import type { Draft, MakerWords } from './wholeReceiver.ts';

export interface BroughtText {
  readonly file: string;
  readonly text: string;
}

/** What is known before a deck can be read. */
const NOTHING_SAID = { adjusters: [], testPoints: [], responses: [] } as const;

/** A deck alone. One with problems is taken up as it is: its lines are there to be mended, and what can be guessed of it is guessed then. */
export function beginWithDeck({ file, text }: BroughtText, say: MakerWords): Making {
  const id = idOf(file);
  const names = { id, deck: `${id}.cir` };
  const deck = readDeckFile(text, file);
  if (!deck.ok) return { deckText: text, draft: { ...names, ...NOTHING_SAID } };
  const called = setNameOf(deck.value.title);
  const first = firstDraft(deck.value, names);
  const draft = setOut(called === null ? first : { ...first, setName: called }, deck.value);
  const made = makeReceiver(draft, deck.value, file, names, say);
  return { deckText: text, draft: made.ok ? settleLevel(draft, made.value.receiver, deck.value) : draft };
}

/** The same deck with another text; where nothing could be known of it before, its first draft is made now. */
export function withDeckText(making: Making, text: string, say: MakerWords): Making {
  if (making.draft.adjusters.length + making.draft.testPoints.length > 0) return { ...making, deckText: text };
  const begun = beginWithDeck({ file: String(making.draft.deck), text }, say);
  return { ...begun, draft: { ...begun.draft, id: making.draft.id, deck: making.draft.deck } };
}

/** The two files as they were saved. The receiver's file must be of the shape that it is saved in; what is wrong with the deck can be mended. */
export function beginWithBoth(deck: BroughtText, receiver: BroughtText): Result<Making> {
  const { value, problems } = readText(receiver.text, receiver.file, readReceiver);
  const wrong: readonly Problem[] = withTextPlaces(problems, receiver.file, receiver.text);
  if (value === null || wrong.length > 0) return bad(...wrong);
  return good({ deckText: deck.text, draft: readJson(receiver.text, receiver.file).value as Draft });
}

/** The title of a deck up to its first comma or colon; null: it says nothing. */
function setNameOf(title: string): string | null {
  const called = title
    .replace(/^\*\s*/, '')
    .split(/[,:;]/)[0]!
    .trim()
    .slice(0, 60)
    .trim();
  return called === '' ? null : called;
}

/** From the name of a file to the name of a receiver: small letters and digits in words. */
export function idOf(file: string): string {
  const name = file
    .split(/[\\/]/)
    .at(-1)!
    .replace(/\.[^.]*$/, '')
    .toLowerCase();
  const words = name.split(/[^a-z0-9]+/).filter((word) => word !== '');
  return words.join('-').slice(0, 30).replace(/-$/, '') || 'own-set';
}
