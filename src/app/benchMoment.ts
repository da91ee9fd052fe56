/**
 * The bench as it stands at this second: what goes on by itself goes on between the acts too. A set that warms up does so once a second, and grass that can be seen
 * is drawn anew with each tick of the clock: once a second, and more rarely where nothing is done for a while, so that a bench at rest costs next to nothing.
 * Whoever wants no motion has the grass stand still.
 */
import type { BenchState } from '../bench/benchState.ts';
import type { BenchDisplay } from '../bench/display.ts';
import { warming } from '../bench/heat.ts';
import { keepLast } from '../bench/kept.ts';
import type { BenchSetup } from '../bench/setup.ts';

export interface BenchMoment {
  /** the same object until an act or, while something goes on by itself, the next second */
  of(state: BenchState): BenchState;
  /** the set is on its way to be warm: time alone changes what is measured */
  warms(state: BenchState): boolean;
  /** asked at each tick with what the tube shows: true while it has grass to be drawn anew */
  stirs(display: BenchDisplay): boolean;
}

/** Grass of less than this, rms, is the line itself to the eye. */
const SEEN_DIV = 0.04;

export function createBenchMoment(
  setup: BenchSetup,
  elapsedMs: () => number,
  wantsNoMotion: () => boolean = () => true,
): BenchMoment {
  const later = keepLast(
    (state: BenchState, seconds: number) => [state, seconds],
    (state, seconds): BenchState => ({ ...state, seconds }),
  );
  let stirring = false;
  const now = (): number => Math.floor(elapsedMs() / 1000);
  return {
    warms: (state) => warming(setup, { ...state, seconds: Math.max(state.seconds, now()) }),
    stirs({ grassDiv }) {
      stirring = grassDiv > SEEN_DIV && !wantsNoMotion();
      return stirring;
    },
    of(state) {
      const seconds = now();
      return seconds > state.seconds && (stirring || warming(setup, state)) ? later(state, seconds) : state;
    },
  };
}
