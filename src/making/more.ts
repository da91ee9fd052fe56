/** Slugs and test points that are added by hand: named, and given a place where nothing stands. */
import type { Deck } from '../physics/deck.ts';
import { CAN } from '../receiver/planSizes.ts';
import { freshId, withoutSheet } from './edits.ts';
import { freePlace } from './moving.ts';
import { setOut } from './setOut.ts';
import type { Draft } from './wholeReceiver.ts';

/** A test point with its name beside it. */
const POINT_HALF = 12;
const POINT_X = 24;

export function addSlug(draft: Draft, deck: Deck, element: string): Draft {
  const id = freshId([...draft.adjusters, ...cansOf(draft)], 'T');
  const at = freePlace(draft, [CAN / 2, CAN / 2], 100);
  const plan = { x: at?.x ?? 0, y: at?.y ?? 0, can: id, shape: 'can', hole: 'top' };
  const more = withoutSheet({ ...draft, adjusters: [...draft.adjusters, { id, element, plan }] });
  return at === null ? setOut(more, deck) : more;
}

const cansOf = (draft: Draft) =>
  draft.adjusters.map((a) => ({ id: (a.plan as { readonly can?: unknown } | undefined)?.can }));

export function addPoint(draft: Draft, deck: Deck, node: string): Draft {
  const id = freshId(draft.testPoints, 'TP');
  const at = freePlace(draft, POINT_HALF, POINT_X);
  const more = { ...draft, testPoints: [...draft.testPoints, { id, node, plan: at ?? { x: 0, y: 0 } }] };
  return at === null ? setOut(more, deck) : more;
}
