/**
 * FM detectors: two diodes on the ends of a phase-shifting transformer.
 *
 * E1 and E2 are the rectified volts of the two halves (diode.ts, each with its load's time constant). Discriminator: E1 - E2. Ratio detector: a reservoir holds
 * the sum, V_s = E1 + E2 through one pole of some tenths of a second, and the output is  (V_s / 2) (E1 - E2) / (E1 + E2): half a discriminator's while the level
 * stands still, and deaf to changes of level quicker than the reservoir. When the input falls the diodes draw less and the circuit's Q rises, so the sum can be
 * held until the input has fallen to about a third; below that the diodes are cut off and the output falls with the input.
 * Source: Seeley and Avins, The Ratio Detector, RCA Review, June 1947; Foster and Seeley, Proc. IRE, March 1937 (from memory).
 */
import { periodicOnePole } from './onePole.ts';

export type FmDetectorKind = 'discriminator' | 'ratio';

/** The input may fall to one part in so many before the reservoir cuts the diodes off. */
export const RESERVE = 3;

/** Output for two rectified voltages; `sumVolts` is the held sum of a ratio detector. */
export function fmOutput(kind: FmDetectorKind, plusVolts: number, minusVolts: number, sumVolts: number): number {
  if (kind === 'discriminator') return plusVolts - minusVolts;
  const sum = plusVolts + minusVolts;
  return sum === 0 ? 0 : (0.5 * Math.min(sumVolts, RESERVE * sum) * (plusVolts - minusVolts)) / sum;
}

/**
 * Over one period in the steady state: rectified volts of both halves in, output and held sum out (arrays of one length; `held` may not be an input).
 * `reservoirSeconds` is the time constant of the reservoir with its load; 0 for a discriminator, whose `held` is then the plain sum.
 */
export function fmOutputs(
  kind: FmDetectorKind,
  plus: Float64Array,
  minus: Float64Array,
  reservoirSeconds: number,
  periodSeconds: number,
  out: Float64Array,
  held: Float64Array,
): void {
  for (let i = 0; i < held.length; i++) held[i] = plus[i]! + minus[i]!;
  periodicOnePole(held, kind === 'ratio' ? reservoirSeconds : 0, periodSeconds, held);
  for (let i = 0; i < out.length; i++) out[i] = fmOutput(kind, plus[i]!, minus[i]!, held[i]!);
}
