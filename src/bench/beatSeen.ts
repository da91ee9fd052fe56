/**
 * What an eye makes of a beat at an oscillator's loop. Its phase slides from sweep to sweep, so no single sweep shows how tall it is: the eye takes what all of them
 * together reach. Places without it stand still, and a height is asked about there.
 */
import type { Bench } from './bench.ts';
import type { BenchState } from './benchState.ts';
import { HALF_HEIGHT_DIV, HALF_WIDTH_DIV } from './instruments.ts';
import { SLIDES_ROUND_SECONDS } from './oscillation.ts';
import type { BenchSetup } from './setup.ts';

const PHASES = 16;

/** The Y lead is at the loop of a set's own oscillator. */
export function atOscillatorLoop({ receiver }: BenchSetup, { leads }: BenchState): boolean {
  if (receiver.oscillator === undefined) return false;
  return receiver.testPoints.some((point) => point.id === leads.y && point.looseLoop);
}

/** From the lowest to the highest that the beat reaches on the face at any phase, divisions; `aboutDiv`: within a tenth of that place alone. */
export function beatHeight(bench: Bench, state: BenchState, aboutDiv: number | null = null): number {
  let low = HALF_HEIGHT_DIV;
  let high = -HALF_HEIGHT_DIV;
  for (let phase = 0; phase < PHASES; phase++) {
    const seconds = state.seconds + (phase / PHASES) * SLIDES_ROUND_SECONDS;
    const { data, count } = bench.display({ ...state, seconds }).beam;
    for (let i = 0; i < count / 2; i++) {
      const x = data[3 * i]!;
      if (Math.abs(x) > HALF_WIDTH_DIV || (aboutDiv !== null && Math.abs(x - aboutDiv) > 0.1)) continue;
      const y = Math.max(-HALF_HEIGHT_DIV, Math.min(HALF_HEIGHT_DIV, data[3 * i + 1]!));
      if (y < low) low = y;
      if (y > high) high = y;
    }
  }
  return Math.max(0, high - low);
}

/** Once with the pips off and once with them on the beat: people read either. */
export function beatReadings(bench: Bench, state: BenchState): readonly [number, number] {
  const bare = { ...state, controls: { ...state.controls, pipHeightDiv: 0 } };
  return [beatHeight(bench, bare), beatHeight(bench, state)];
}
