/**
 * The technician's notebook: what each slug by itself does to a curve of a sound set of the kind, turned in and out from where it belongs. Anybody can fill it on a practice
 * bench; it comes from the design, as the sheet does, and knows nothing of the set that is to be aligned.
 */
import type { BenchSetup } from '../bench/setup.ts';
import type { Receiver, SheetResponse } from '../receiver/receiver.ts';
import { nominalTurns } from '../receiver/slugLaw.ts';
import { createStatedResponse } from '../receiver/statedResponse.ts';
import type { SlugEffect } from './person/sheet.ts';

const TURNS = [-6, -5, -4, -3, -2, -1.5, -1, -0.5, -0.25, 0, 0.25, 0.5, 1, 1.5, 2, 3, 4, 5, 6];
const RIGHT = TURNS.indexOf(0);

/** For each slug; levels against the highest of the right curve. */
export function slugEffects(
  { receiver, deck }: Pick<BenchSetup, 'receiver' | 'deck'>,
  response: SheetResponse,
  hz: readonly number[],
): readonly SlugEffect[] {
  const stated = createStatedResponse(receiver, deck, response, Float64Array.from(hz));
  const right = stated.nominal.volts;
  const height = right.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
  return receiver.adjusters.map((adjuster) => {
    const home = nominalTurns(adjuster);
    const levels = TURNS.map((turns, i) => {
      const volts = i === RIGHT ? right : stated.solve({ [adjuster.id]: home + turns }).volts;
      return Float64Array.from(volts, (v) => v / height);
    });
    return { slug: adjuster.id, turns: TURNS, levels };
  });
}

/** The same of a stage that is swept from a point of its own: as the tube shows it with a core at some depth. */
export function stageEffects(
  { adjusters }: Receiver,
  slugs: readonly string[],
  read: (depths: Readonly<Record<string, number>>) => readonly number[],
): readonly SlugEffect[] {
  const height = slugs.length === 0 ? 1 : read({}).reduce((most, v) => Math.max(most, Math.abs(v)), 0);
  return adjusters
    .filter(({ id }) => slugs.includes(id))
    .map((adjuster) => {
      const home = nominalTurns(adjuster);
      const levels = TURNS.map((turns) =>
        Float64Array.from(read(turns === 0 ? {} : { [adjuster.id]: home + turns }), (v) => v / height),
      );
      return { slug: adjuster.id, turns: TURNS, levels };
    });
}
