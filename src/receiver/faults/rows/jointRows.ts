/** Joints that are whole at one time and open at another, by the seconds of the bench. The share: our own, no source. */
import { seededRandom } from '../../../base/random.ts';
import { type Deck, findElement } from '../../../physics/deck.ts';
import type { DeckEdit } from '../../../physics/editDeck.ts';
import { elementOf, numberFrom } from '../faultField.ts';
import { nameOf } from '../faultPlaces.ts';
import { faultRow } from '../faultRow.ts';
import { OPEN_C, OPEN_RESISTOR } from './sizes.ts';

/** Of all spells those in which the joint is open. */
const OPEN_SHARE = 0.6;

export const JOINT_ROWS = {
  /** a joint that makes and breaks: open for a spell, whole for a spell, as it likes */
  intermittentJoint: faultRow({
    fields: { element: elementOf('R', 'C'), seconds: numberFrom(1, 600) },
    present: ({ seconds }, now) => seededRandom(now.seed + Math.floor(now.seconds / seconds))() < OPEN_SHARE,
    edits: ({ element }, { deck }) => opened(deck, element),
    cure: { by: 'part', parts: ({ element }, { deck }) => [nameOf(deck, element)] },
    symptom: 'curve',
    // Found by waiting for it.
    sits: null,
  }),
  /** a cold joint that opens when the set has warmed through, and stays open */
  coldJoint: faultRow({
    fields: { element: elementOf('R', 'C'), afterSeconds: numberFrom(0, 3600) },
    present: ({ afterSeconds }, now) => now.seconds >= afterSeconds,
    edits: ({ element }, { deck }) => opened(deck, element),
    cure: { by: 'part', parts: ({ element }, { deck }) => [nameOf(deck, element)] },
    symptom: 'curve',
    // Found by waiting for it.
    sits: null,
  }),
} as const;

function opened(deck: Deck, element: string): readonly DeckEdit[] {
  const factor = findElement(deck, element)?.kind === 'R' ? OPEN_RESISTOR : OPEN_C;
  return [{ kind: 'scale', name: element, factor }];
}
