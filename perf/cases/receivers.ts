/** Every shipped receiver: a whole solve at 1024 points over its first response, and an update after its least favourable slug. */

import { seededRandom } from '../../src/base/random.ts';
import { createSolver, type Solver } from '../../src/physics/solver.ts';
import type { Adjuster, Receiver } from '../../src/receiver/receiver.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import { shippedLibrary } from '../../tests/files/shipped.ts';
import { grid, networkOf } from '../../tests/physics/decks.ts';
import type { PerfCase, Sample } from '../case.ts';
import { median, timed } from '../case.ts';
import { voltageSum, wholeSolve } from '../solving.ts';

const RECEIVERS = [...shippedLibrary().receivers.values()];

function solverOf({ receiver, deck }: (typeof RECEIVERS)[number]): Solver {
  const { fromHz, toHz } = mainResponse(receiver).specification;
  const solver = createSolver(networkOf(deck), grid(fromHz, toHz, 1024));
  solver.solve();
  return solver;
}

/** Sets the coil and those on the same slug to a factor of what they are as designed. */
function turned(solver: Solver, { element, ganged }: Adjuster, nominal: ReadonlyMap<string, number>, factor: number) {
  for (const coil of [element, ...ganged]) solver.setValue(coil, nominal.get(coil)! * factor);
}

async function worstSlug(solver: Solver, receiver: Receiver, seed: number): Promise<Sample> {
  let worst: readonly number[] | null = null;
  let sum = 0;
  for (const adjuster of receiver.adjusters) {
    const nominal = new Map([adjuster.element, ...adjuster.ganged].map((coil) => [coil, solver.value(coil)]));
    const random = seededRandom(seed);
    const sample = await timed({
      warmUp: 150,
      runs: 150,
      run() {
        turned(solver, adjuster, nominal, 0.98 + 0.04 * random());
        solver.solve();
      },
      checksum: () => voltageSum(solver),
    });
    turned(solver, adjuster, nominal, 1);
    sum += sample.checksum;
    if (worst === null || median(sample.micros) > median(worst)) worst = sample.micros;
  }
  // The checksum is of all slugs: which one is the worst is a matter of the day.
  return { micros: worst!, checksum: sum };
}

export const cases: readonly PerfCase[] = RECEIVERS.flatMap((loaded): PerfCase[] => {
  const { id } = loaded.receiver;
  return [
    {
      id: `all-solve-${id}`,
      title: `${id}, 1024 points, whole solve`,
      measure: () => wholeSolve(solverOf(loaded)),
    },
    {
      id: `all-slug-${id}`,
      title: `${id}, 1024 points, after its least favourable slug`,
      against: `all-solve-${id}`,
      measure: (seed) => worstSlug(solverOf(loaded), loaded.receiver, seed),
    },
  ];
});
