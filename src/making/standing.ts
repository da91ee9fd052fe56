/** How a receiver in the making stands: what its deck and its file come to, the response of its design, its sheet measured on it, and all that is still wrong. */
import type { Problem, Result } from '../base/result.ts';
import { partsWithin } from '../files/checkParts.ts';
import { readNewReceiver } from '../files/readReceiverPair.ts';
import type { Deck } from '../physics/deck.ts';
import type { ResponseCurve } from '../receiver/curveReading.ts';
import { evaluateSpecification, type SpecItem } from '../receiver/specification.ts';
import { createStatedResponse } from '../receiver/statedResponse.ts';
import { readDeckFile } from './deckFile.ts';
import { layOut } from './layOut.ts';
import { type MadeReceiver, makeReceiver } from './makeReceiver.ts';
import type { Draft, MakerWords } from './wholeReceiver.ts';

/** A receiver in the making: the text of its deck, and as much of its file as has been said. */
export interface Making {
  readonly deckText: string;
  readonly draft: Draft;
}

export interface Drawn {
  readonly curve: ResponseCurve;
  /** the highest level between the sheet's ends, in the unit of the curve */
  readonly top: number;
  readonly items: readonly SpecItem[];
}

export interface Standing {
  readonly deck: Result<Deck>;
  /** null where the deck cannot be read */
  readonly made: Result<MadeReceiver> | null;
  readonly drawn: Drawn | null;
}

export const deckName = ({ draft }: Making): string => String(draft.deck);
const receiverName = ({ draft }: Making): string => `${String(draft.id)}.json`;

export function standingOf(making: Making, say: MakerWords): Standing {
  const deck = readDeckFile(making.deckText, deckName(making));
  if (!deck.ok) return { deck, made: null, drawn: null };
  const names = { id: String(making.draft.id), deck: deckName(making) };
  const made = makeReceiver(making.draft, deck.value, receiverName(making), names, say);
  return { deck, made, drawn: made.ok ? drawnOf(made.value, deck.value) : null };
}

function drawnOf({ receiver }: MadeReceiver, deck: Deck): Drawn | null {
  const [response] = receiver.responses;
  if (response === undefined) return null;
  const { fromHz, toHz } = response.specification;
  const stated = createStatedResponse(receiver, deck, response);
  let top = 0;
  stated.hz.forEach((hz, i) => {
    if (hz >= fromHz && hz <= toHz) top = Math.max(top, Math.abs(stated.nominal.volts[i]!));
  });
  const items = evaluateSpecification(response.specification, stated.hz, stated.nominal.volts, null);
  return { curve: { hz: stated.hz, volts: stated.nominal.volts }, top, items };
}

/** The two files as they are saved. */
export interface SavedFiles {
  readonly deck: { readonly file: string; readonly text: string };
  readonly receiver: { readonly file: string; readonly text: string };
}

export function savedFiles(making: Making, made: MadeReceiver): SavedFiles {
  return {
    deck: { file: deckName(making), text: making.deckText },
    receiver: { file: receiverName(making), text: layOut(made.json) },
  };
}

/** What a deck must have to become a receiver, where nobody has said it in another way: asked for in the deck's own terms, since the file is made from it. */
function deckLacks(making: Making, deck: Deck, say: MakerWords): readonly Problem[] {
  const { adjusters, responses } = making.draft;
  const said = (found: string, wanted: string): Problem => {
    return { file: deckName(making), place: '', found: ['said', found], wanted: ['said', wanted] };
  };
  const noWayIn = responses[0]?.setUp?.injectAt === '' && !deck.elements.some(({ kind }) => kind === 'I');
  return [
    ...(noWayIn ? [said(say.noSource, say.wantSource)] : []),
    ...(adjusters.length === 0 ? [said(say.noTunedCoil, say.wantTunedCoil)] : []),
  ];
}

/** Parts that no set for the frequencies of the draft has: told by their lines where no receiver comes of the deck at all. */
function partSlips(making: Making, deck: Deck): readonly Problem[] {
  const { centreHz, spanHz } = making.draft.responses[0]?.setUp ?? {};
  if (typeof centreHz !== 'number' || typeof spanHz !== 'number') return [];
  return partsWithin([centreHz - spanHz / 2, centreHz + spanHz / 2], deck, deckName(making));
}

/** Everything that `check` would say of the two files; none: they can be saved. */
export function problemsLeft(making: Making, { deck, made }: Standing, say: MakerWords): readonly Problem[] {
  if (!deck.ok) return deck.problems;
  const lacking = deckLacks(making, deck.value, say);
  if (lacking.length > 0) return lacking;
  if (made === null) return [];
  if (!made.ok) {
    // Where a part is out by its suffix, whatever else is wrong comes of that.
    const slips = partSlips(making, deck.value);
    return slips.length > 0 ? slips : made.problems;
  }
  const read = readNewReceiver(savedFiles(making, made.value));
  return read.ok ? [] : read.problems;
}
