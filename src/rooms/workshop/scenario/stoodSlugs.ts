/** How the slugs of a draft stand, and how far each may go: a file must hold for the printed design as well as for the set that it deals. */
import { type BenchSetup, initialState } from '../../../bench/setup.ts';
import type { Adjuster } from '../../../receiver/receiver.ts';
import { nominalTurns } from '../../../receiver/slugLaw.ts';
import { slugLetters } from '../../../receiver/slugLetters.ts';
import type { Draft } from '../../../workshop/draft.ts';

export interface StoodSlug {
  readonly id: string;
  readonly adjuster: Adjuster;
  readonly letter: string;
  /** from where it is right, positive = core in */
  readonly turns: number;
  readonly least: number;
  readonly most: number;
}

const EIGHTHS = 8;

export function stoodSlugs(draft: Draft, set: Omit<BenchSetup, 'scenario'>): readonly StoodSlug[] {
  const { receiver } = set;
  const letters = slugLetters(receiver);
  const { slugs } = initialState({ ...set, scenario: draft });
  return receiver.adjusters.map((adjuster) => {
    const { id } = adjuster;
    const printed = set.design?.receiver.adjusters.find((a) => a.id === id) ?? adjuster;
    const least = -Math.min(nominalTurns(adjuster), nominalTurns(printed));
    const most = Math.min(...[adjuster, printed].map((a) => a.travelTurns - nominalTurns(a)));
    return {
      ...{ id, adjuster, letter: letters.get(id)! },
      turns: slugs[id]!.coreTurns - nominalTurns(adjuster),
      // Whole eighths, so that both ends can be reached by steps.
      least: Math.ceil(least * EIGHTHS) / EIGHTHS,
      most: Math.floor(most * EIGHTHS) / EIGHTHS,
    };
  });
}
