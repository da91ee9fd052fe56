/**
 * The needle: direct volts at the meter's point. Detector load: the diode's mean, with the meter's 20 kilohm a volt of range across it.
 * AGC line: its volts. Elsewhere: what the set holds there at rest. Without power only the bias supply and the diode are left.
 */

import { carrierAt, type Moment, meanDetected } from './moment.ts';
import type { DetectorStore } from './observation.ts';
import { lawOf, meteredLoad } from './observation.ts';
import type { BenchSetup } from './setup.ts';

/** `scratch` is as long as a trace; the full scan must have been solved. */
export function meterReading(
  { receiver }: BenchSetup,
  moment: Moment,
  lineVolts: number | null,
  detectors: DetectorStore,
  scratch: Float64Array,
): number {
  const { state, running } = moment;
  const point = receiver.testPoints.find((p) => p.id === state.leads.meter);
  if (point === undefined) return 0;
  const atRest = running ? point.dcVolts : 0;
  if (point.role === 'agc') return lineVolts ?? atRest;
  const detector = point.role === 'detector' ? receiver.detectors.find((d) => d.id === point.detector) : undefined;
  if (detector === undefined) return atRest;
  carrierAt(moment, moment.full, detector.node, scratch);
  const loadOhms = meteredLoad(state, point.id, detector.loadOhms);
  const size = meanDetected(moment, scratch, detectors.of({ ...lawOf(detector), loadOhms }));
  return detector.polarity === 'negative' ? atRest - size : atRest + size;
}
