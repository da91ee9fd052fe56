/** The bench as it stands at this second: what goes on by itself, a set that warms up, goes on between the acts too. */
import type { BenchState } from '../bench/benchState.ts';
import { warming } from '../bench/heat.ts';
import { keepLast } from '../bench/kept.ts';
import type { BenchSetup } from '../bench/setup.ts';

export interface BenchMoment {
  /** the same object until an act or, while something goes on by itself, the next second */
  of(state: BenchState): BenchState;
  /** time alone changes what is seen */
  moves(state: BenchState): boolean;
}

export function createBenchMoment(setup: BenchSetup, elapsedMs: () => number): BenchMoment {
  const later = keepLast(
    (state: BenchState, seconds: number) => [state, seconds],
    (state, seconds): BenchState => ({ ...state, seconds }),
  );
  const moves = (state: BenchState): boolean => warming(setup, state);
  return {
    moves,
    of(state) {
      const seconds = Math.floor(elapsedMs() / 1000);
      return seconds > state.seconds && moves(state) ? later(state, seconds) : state;
    },
  };
}
