/** How much of its room a sheet's narrowest line uses when every slug is a little out: whether the sheet can be met by people. */
import type { Deck } from '../physics/deck.ts';
import type { Receiver, SheetResponse } from '../receiver/receiver.ts';
import { nominalTurns } from '../receiver/slugLaw.ts';
import { evaluateSpecification, type SpecItem } from '../receiver/specification.ts';
import { createStatedResponse } from '../receiver/statedResponse.ts';

const SMALL_TURN = 1 / 32;

export interface Slack {
  readonly item: SpecItem;
  /** of the room between the design and the nearer limit; above 1 the line no longer holds */
  readonly share: number;
}

/** The worst line; what the slugs move is added up, as if all of them went the wrong way. null: nothing on the sheet moves. */
export function slackOf(receiver: Receiver, deck: Deck, response: SheetResponse): Slack | null {
  const { specification } = response;
  const stated = createStatedResponse(receiver, deck, response);
  const measure = (turns: Readonly<Record<string, number>>): SpecItem[] =>
    evaluateSpecification(specification, stated.hz, stated.solve(turns).volts, null);
  const items = measure({});
  const moves = items.map(() => 0);
  for (const slug of receiver.adjusters) {
    const most = items.map(() => 0);
    for (const away of [-SMALL_TURN, SMALL_TURN])
      measure({ [slug.id]: nominalTurns(slug) + away }).forEach((moved, i) => {
        most[i] = Math.max(most[i]!, Math.abs(moved.measured - items[i]!.measured));
      });
    most.forEach((by, i) => {
      moves[i]! += by;
    });
  }
  const all = items.flatMap((item, i): Slack[] => {
    const room = Math.min(
      item.low === null ? Number.POSITIVE_INFINITY : item.measured - item.low,
      item.high === null ? Number.POSITIVE_INFINITY : item.high - item.measured,
    );
    return moves[i]! > 0 ? [{ item, share: room > 0 ? moves[i]! / room : Number.POSITIVE_INFINITY }] : [];
  });
  return all.reduce<Slack | null>((worst, one) => (worst === null || one.share > worst.share ? one : worst), null);
}
