/**
 * Deals one set of a design from a seed: parts are drawn and the slugs' best places searched, draw after draw, until one meets the printed sheet with something to spare.
 *
 * The order of the draws is that of their numbers, 0, 1, 2 ..., so a seed means the same set everywhere, and goes on meaning it: the search looks through the bench of one engine, whichever today's is. The best place is found from the design's own inductances as a
 * good hand would (search.ts): each trap alone, the curve laid on the printed one, then the lines of the sheet. That place is this set's nominal; the printed sheet stays
 * the design's.
 */
import { DEALS_ON } from '../base/engine.ts';
import { once } from '../base/once.ts';
import { modelOf } from '../bench/benchModel.ts';
import { drawParts, placeSlugs, type SetParts, slugDepths, withLongReach } from '../receiver/individualSet.ts';
import type { Spreads } from '../receiver/receiver.ts';
import { nominalTurns, slugHenries, turnsForHenries } from '../receiver/slugLaw.ts';
import { faradsAt } from './coilFarads.ts';
import { createDemands, type Standing } from './demands.ts';
import { search, worstOf } from './search.ts';

export interface DealtSet {
  readonly set: SetParts;
  /** which draw it was, from 0 */
  readonly draw: number;
  /** the line of the sheet that its best place is nearest to losing */
  readonly narrowest: Standing;
}

export type Deal =
  | { readonly ok: true; readonly dealt: DealtSet }
  /** no draw can be aligned: the least bad, and the line that fails on it */
  | { readonly ok: false; readonly draws: number; readonly narrowest: Standing };

const MOST_DRAWS = 12;
const TRIES = 2;
/** Tolerances that the worst line must be inside by. */
const SPARE = 0.1;

/** How hard the search tries for a set. */
export interface Pains {
  /** give up after so many draws */
  readonly mostDraws?: number;
  /** searches for each */
  readonly tries?: number;
  /** see `SearchTask` */
  readonly hopeless?: number;
}

/** With less effort a seed deals the same set or none. */
export function dealSet(design: SetParts, seed: number, spreads: Spreads, pains: Pains = {}): Deal {
  const { mostDraws = MOST_DRAWS } = pains;
  const depths = slugDepths(design.receiver, seed);
  let least: Standing | null = null;
  for (let draw = 0; draw < mostDraws; draw++) {
    const drawn = drawParts(design, seed, draw, spreads);
    const { henries, narrowest } = bestPlace(design, withLongReach(drawn), pains);
    if (least === null || narrowest.excess < least.excess) least = narrowest;
    if (narrowest.excess > -SPARE) continue;
    return { ok: true, dealt: { set: placeSlugs(drawn, henries, depths), draw, narrowest } };
  }
  return { ok: false, draws: mostDraws, narrowest: least! };
}

function bestPlace(
  design: SetParts,
  { receiver, deck }: SetParts,
  { tries = TRIES, hopeless }: Pains,
): { readonly henries: Readonly<Record<string, number>>; readonly narrowest: Standing } {
  const slugs = receiver.adjusters.map((a) => a.id);
  const make = (responses: typeof receiver.responses) =>
    createDemands(
      receiver,
      deck,
      responses,
      1,
      slugs,
      { receiver: design.receiver, deck: design.deck },
      undefined,
      modelOf(DEALS_ON).probePulses,
    );
  const demands = make(receiver.responses);
  const start = Object.fromEntries(
    receiver.adjusters.map((a) => {
      const henries = (a.nominalHenries * faradsAt(design.deck, a.element)) / faradsAt(deck, a.element);
      return [a.id, turnsForHenries(a, henries) ?? nominalTurns(a)];
    }),
  );
  const stages = once(() =>
    receiver.responses.length < 2 ? [] : [...receiver.responses].reverse().map((one) => make([one])),
  );
  const { adjusters } = receiver;
  const found = search({ demands, stages, adjusters, start, seed: 1, mostTries: tries, stopWhenMet: true, hopeless });
  const henries = Object.fromEntries(adjusters.map((a) => [a.id, slugHenries(a, found.turns[a.id]!)]));
  return { henries, narrowest: worstOf(demands.standings(found.turns)) };
}
