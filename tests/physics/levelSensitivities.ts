/** How the level of a node changes with each coil, put together from the changes of its complex voltage as the receivers' responses are. */
import { inductanceSlopes, levelSlopes } from '../../src/physics/sensitivity.ts';
import type { Solver } from '../../src/physics/solver.ts';

/** d|V|/dL, volt per henry, by the names of the coils, at each of the solver's frequencies; 0 where the node is dead. */
export function levelSensitivities(
  solver: Solver,
  node: string,
  coils: readonly string[],
): ReadonlyMap<string, Float64Array> {
  const slopes = inductanceSlopes(solver, [node], coils);
  const ofLevel = levelSlopes(solver.real(node), solver.imag(node));
  return new Map([...slopes].map(([name, [slope]]) => [name, ofLevel(slope!)] as const));
}
