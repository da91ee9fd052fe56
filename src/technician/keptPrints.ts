/**
 * What a sheet and its chart of failures are printed from, kept for the design that was printed last: on a clean bench the seed of a scenario is in the tube's own noise alone, which
 * comes on top of the picture. Whoever works at one set of a design after another has it drawn once; every digit is what drawing anew gives.
 */
import { type Bench, createBench } from '../bench/bench.ts';
import type { BenchState } from '../bench/benchState.ts';
import type { FaultBook } from '../bench/faultsNow.ts';
import { createPictureMaker, type Picture } from '../bench/picture.ts';
import type { BenchSetup } from '../bench/setup.ts';
import { isPresent } from '../receiver/faults/faultEffects.ts';
import type { SetParts } from '../receiver/individualSet.ts';

/** Eight kilobytes each; a chart has some three hundred. */
const MOST_PICTURES = 1000;

interface Kept extends SetParts {
  readonly pictures: Map<string, Picture>;
  readonly figures: Map<string, unknown>;
}

let last: Kept | null = null;

function keptOf({ receiver, deck }: SetParts): Kept {
  if (last?.receiver !== receiver || last.deck !== deck) {
    last = { receiver, deck, pictures: new Map(), figures: new Map() };
  }
  return last;
}

/** What of a scenario without faults, errors and life a picture hangs on. */
const standing = ({ scenario: { responses, bench } }: BenchSetup): unknown => [responses, bench.mainsHz];

/** A figure of a sound set in which there is nothing of the tube's noise; `of` names what it is made of beside the bench. */
export function keptFigure<T>(sound: BenchSetup, of: readonly (string | number)[], make: () => T): T {
  const { figures } = keptOf(sound);
  const key = JSON.stringify([standing(sound), of]);
  if (!figures.has(key)) figures.set(key, make());
  return figures.get(key) as T;
}

/** A bench without life (NO_LIFE) or errors to print from what its tube displays; it measures no facts. */
export function printBench(setup: BenchSetup): Pick<Bench, 'display'> {
  return createBench(setup, keptPictures);
}

function keptPictures(setup: BenchSetup, book: FaultBook): (state: BenchState) => Picture {
  const { pictures } = keptOf(setup);
  const { faults, seed } = setup.scenario;
  let draw: ((state: BenchState) => Picture) | null = null;
  return (state) => {
    const there = faults.map((fault) => isPresent(fault, { seconds: state.seconds, seed }));
    const key = JSON.stringify([standing(setup), faults, there, state]);
    const known = pictures.get(key);
    if (known !== undefined) return known;
    draw ??= createPictureMaker(setup, book);
    const picture = draw(state);
    // What sings has more buffers than one.
    if (picture.song !== null || picture.oscillation !== null || pictures.size >= MOST_PICTURES) return picture;
    const copy = { ...picture, volts: new Float64Array(0), shownVolts: picture.shownVolts.slice() };
    pictures.set(key, copy);
    return copy;
  };
}
