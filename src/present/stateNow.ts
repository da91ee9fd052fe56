/** The bench's state with the seconds of this moment: between two acts a set goes on warming up, and what is said of it goes with it. */
import type { BenchState } from '../bench/benchState.ts';
import type { BenchPort } from './ports.ts';

export function stateNow(port: Pick<BenchPort, 'state' | 'elapsedSeconds'>): BenchState {
  const state = port.state();
  const seconds = Math.floor(port.elapsedSeconds());
  return seconds > state.seconds ? { ...state, seconds } : state;
}
