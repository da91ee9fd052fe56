/** What a circuit is to the harmonics of a carrier. */

/** Highest harmonic of the carrier that is reckoned with. */
export const HARMONICS = 20;

/** What stands between a diode's node and ground at the carrier's harmonics. */
export interface HarmonicCircuit {
  /** the carrier */
  readonly hz: number;
  /** ohms at 2 hz, 3 hz ... HARMONICS hz */
  readonly re: readonly number[];
  readonly im: readonly number[];
}
