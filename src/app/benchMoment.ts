/**
 * The bench as it stands at this second: what goes on by itself goes on between the acts too. A set that warms up does so once a second, and grass that can be seen
 * is drawn anew with each tick of the clock: once a second, and more rarely where nothing is done for a while, so that a bench at rest costs next to nothing.
 * A joint that opens or closes by itself is seen at the next tick. Whoever wants no motion has the grass stand still.
 */
import type { BenchState } from '../bench/benchState.ts';
import type { BenchDisplay } from '../bench/display.ts';
import { createComings } from '../bench/faultsNow.ts';
import { warming } from '../bench/heat.ts';
import { keepLast } from '../bench/kept.ts';
import type { BenchSetup } from '../bench/setup.ts';

export interface BenchMoment {
  /** the same object until an act or, while something goes on by itself, the next second */
  of(state: BenchState): BenchState;
  /** the set is on its way to be warm: time alone changes what is measured */
  warms(state: BenchState): boolean;
  /** asked at each tick: true where a part has failed or come back by itself since it was last asked, or since the last act */
  turns(state: BenchState): boolean;
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
  // One object for as long as the same parts are away.
  const otherwise = keepLast(
    (state: BenchState, away: string) => [state, away],
    (state): BenchState => ({ ...state, seconds: now() }),
  );
  const awayAt = createComings(setup);
  let asked: string | null = null;
  let stirring = false;
  const now = (): number => Math.floor(elapsedMs() / 1000);
  return {
    warms: (state) => warming(setup, { ...state, seconds: Math.max(state.seconds, now()) }),
    turns(state) {
      const before = asked;
      asked = awayAt(Math.max(state.seconds, now()));
      return before !== null && asked !== before;
    },
    stirs({ grassDiv }) {
      stirring = grassDiv > SEEN_DIV && !wantsNoMotion();
      return stirring;
    },
    of(state) {
      const seconds = now();
      if (seconds <= state.seconds) return state;
      if (stirring || warming(setup, state)) return later(state, seconds);
      const away = awayAt(seconds);
      return away === awayAt(state.seconds) ? state : otherwise(state, away);
    },
  };
}
