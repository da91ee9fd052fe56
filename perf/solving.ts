/** What the cases of the solver have in common. */

import type { Solver } from '../src/physics/solver.ts';
import type { Sample } from './case.ts';
import { timed } from './case.ts';

/** Sum of |V| over all nodes and frequencies. */
export function voltageSum(solver: Solver): number {
  let sum = 0;
  for (const node of solver.nodeNames) for (const volts of solver.magnitude(node)) sum += volts;
  return sum;
}

/** Everything anew, as after a change of frequencies. */
export function wholeSolve(solver: Solver): Promise<Sample> {
  const hz = solver.hz.slice();
  const run = () => {
    solver.setFrequencies(hz);
    solver.solve();
  };
  return timed({ warmUp: 400, runs: 400, run, checksum: () => voltageSum(solver) });
}
