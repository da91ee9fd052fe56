/**
 * How much room a demand of a sheet needs, by its id: what it measures at the design, and how far every slug out by 1/32 turn at once moves it, each to its worse side,
 * and half as much again.
 */
import type { Receiver } from '../receiver/receiver.ts';
import { nominalTurns } from '../receiver/slugLaw.ts';
import type { SpecItem } from '../receiver/specification.ts';

const SMALL_TURN = 1 / 32;
const ROOM = 1.5;

export interface Moved {
  readonly kind: SpecItem['kind'];
  readonly measured: number;
  readonly room: number;
}

/** `measure` tells the same demands in the same order for every set of turns; a slug that is not named stands at its design. */
export function smallMoves(
  { adjusters }: Pick<Receiver, 'adjusters'>,
  measure: (turns: Readonly<Record<string, number>>) => readonly SpecItem[],
): ReadonlyMap<string, Moved> {
  const items = measure({});
  const moves = items.map(() => 0);
  for (const slug of adjusters) {
    const most = items.map(() => 0);
    for (const away of [-SMALL_TURN, SMALL_TURN])
      measure({ [slug.id]: nominalTurns(slug) + away }).forEach(({ measured }, i) => {
        most[i] = Math.max(most[i]!, Math.abs(measured - items[i]!.measured));
      });
    for (const [i, by] of most.entries()) moves[i] = moves[i]! + by;
  }
  return new Map(items.map(({ id, kind, measured }, i) => [id, { kind, measured, room: ROOM * moves[i]! }]));
}
