/**
 * Markers sent through the set instead of being added after detection: each is a carrier of its own at the RF lead, a tenth of the sweep's level for
 * each division of pip height.
 *
 * At the observed node a marker has M = m |H(f_m)| A_source, whatever the sweep is doing, so it vanishes in a trap. With sweep A and markers
 * M = sqrt(sum M_k^2) the diode sees a mean envelope  L (1 + r^2/4 + r^4/64 + r^6/256),  L the larger and r the smaller over the larger (mean of
 * |1 + r e^{j phi}|): a large marker fills the skirts and lifts the base line, blanked retrace included. Near f_m the envelope beats between
 * A + M_k and |A - M_k|. Left out: the markers' own share in overloading a stage, and their pull on an AGC line.
 */
import type { Conditions, SolverSet } from './circuit.ts';
import { standingVolts } from './detection.ts';
import { THROUGH_PER_DIV } from './instruments.ts';
import type { ActiveMarker } from './markers.ts';
import type { Observation } from './observation.ts';

export interface ThroughMarkers {
  /** all of them together at the observed node, volts peak; and at the other node of an FM detector */
  readonly carrierVolts: number;
  readonly minusCarrierVolts: number;
  /** half the swing of each one's beat at the tube's Y input, in the order of the markers */
  readonly beatVolts: Float64Array;
}

/** Solves `spots` at the markers' frequencies. */
export function throughMarkers(
  markers: readonly ActiveMarker[],
  pipHeightDiv: number,
  observation: Observation,
  spots: SolverSet,
  conditions: Conditions,
): ThroughMarkers | null {
  if (markers.length === 0 || pipHeightDiv === 0) return null;
  const hz = Float64Array.from(markers, (m) => m.trueHz);
  spots.solve(hz, conditions);
  const { node, minusNode, pair, raw } = observation;
  const sweep = spots.magnitude(node, new Float64Array(hz.length));
  const minus = minusNode === null ? sweep : spots.magnitude(minusNode, new Float64Array(hz.length));
  const beatVolts = new Float64Array(hz.length);
  let power = 0;
  let minusPower = 0;
  for (const [i, { share }] of markers.entries()) {
    const own = THROUGH_PER_DIV * pipHeightDiv * share;
    const level = sweep[i]!;
    const other = minus[i]!;
    power += (own * level) ** 2;
    minusPower += (own * other) ** 2;
    // A ratio detector's reservoir does not follow the beat.
    const held =
      pair === null ? undefined : standingVolts({ ...observation, pair: { ...pair, tap: 'sum' } }, level, other);
    const at = (swing: number) =>
      standingVolts(observation, Math.abs(1 + swing) * level, Math.abs(1 + swing) * other, held);
    beatVolts[i] = raw ? own * level : Math.abs(at(own) - at(-own)) / 2;
  }
  return { carrierVolts: Math.sqrt(power), minusCarrierVolts: Math.sqrt(minusPower), beatVolts };
}

/** Mean envelope of a carrier and the markers together. */
export function withMarkers(carrierVolts: number, markerVolts: number): number {
  const larger = Math.max(carrierVolts, markerVolts);
  if (larger === 0) return 0;
  const q = (Math.min(carrierVolts, markerVolts) / larger) ** 2;
  return larger * (1 + q / 4 + (q * q) / 64 + (q * q * q) / 256);
}
