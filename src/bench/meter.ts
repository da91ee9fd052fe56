/**
 * The needle. Direct volts: of a detector's output the mean, with the meter's 20 kilohm a volt of range across its load; of a bias line its volts; elsewhere
 * what the set holds there at rest. Without power only the bias supply and the diode are left. The set's own noise counts with it. Tone: the 400 Hz at a detector's output, volts rms.
 */
import type { LimitCycle } from '../physics/limitCycle.ts';
import { NO_NOISE } from '../receiver/receiverNoise.ts';
import type { LineVolts } from './conditions.ts';
import { createDetection, hurries, observedAt } from './detection.ts';
import { createEnvelopes } from './envelopes.ts';
import { noiseAt, noisyDiode, quietingAt, withNoise } from './grass.ts';
import { diodesNow, leadFarads } from './loads.ts';
import { type Moment, TRACE_POINTS } from './moment.ts';
import { halfOf, loadOhmsOf, nodesOf, type Observation } from './observation.ts';
import { joinSong } from './singing.ts';
import { createTone } from './tone.ts';

/** The full scan must have been solved; of a set that sings, as it is beside its song. */
export function createMeter(): (moment: Moment, lineVolts: LineVolts, song: LimitCycle | null) => number {
  const envelopeOf = createEnvelopes();
  const detection = createDetection(2 * TRACE_POINTS);
  const toneOf = createTone();
  const plus = new Float64Array(2 * TRACE_POINTS);
  const minus = new Float64Array(2 * TRACE_POINTS);

  /** The detector as the meter sees it at its point; null where it stands at none. */
  const metered = ({ state, connections, setup }: Moment): Observation | null => {
    const { receiver } = setup;
    const point = receiver.testPoints.find((p) => p.id === state.leads.meter);
    const detector = point?.role === 'detector' ? receiver.detectors.find((d) => d.id === point.detector) : undefined;
    if (point === undefined || detector === undefined) return null;
    const [diode, other] = diodesNow(setup, detector, state, connections);
    const common = {
      ...halfOf(diode!),
      minus: other === undefined ? null : halfOf(other),
      crests: null,
      leadFarads: leadFarads(connections, detector),
      leadSeconds: 0,
      raw: false,
    };
    return { ...common, ...nodesOf(detector, point, loadOhmsOf(diode!, other)) };
  };

  return (moment, lineVolts, song) => {
    const { state, running, setup } = moment;
    const { receiver } = setup;
    const point = receiver.testPoints.find((p) => p.id === state.leads.meter);
    if (point === undefined) return 0;
    const found = metered(moment);
    const observation = found === null ? null : observedAt(moment, found);
    if (state.controls.meterMode === 'tone') {
      if (observation === null || state.controls.sourceMode !== 'tone') return 0;
      return toneOf(moment, lineVolts, observation).rmsVolts;
    }
    const atRest = running ? point.dcVolts : 0;
    if (point.role === 'agc') return lineVolts[point.id] ?? atRest;
    if (observation === null) return atRest;
    const { mode } = envelopeOf(moment, lineVolts, observation.node, plus);
    if (observation.minusNode !== null) envelopeOf(moment, lineVolts, observation.minusNode, minus);
    if (song !== null) {
      joinSong(plus, song.volts(observation.node));
      if (observation.minusNode !== null) joinSong(minus, song.volts(observation.minusNode));
    }
    const noise = song !== null ? NO_NOISE : noiseAt(moment, lineVolts, observation);
    const most = plus.reduce((a, v) => Math.max(a, v), 0) + minus.reduce((a, v) => Math.max(a, v), 0);
    const noisy = noisyDiode(observation, noise, most, quietingAt(moment, observation));
    detection.detect(
      withNoise(observation, noisy),
      plus,
      minus,
      1 / moment.sweepHz,
      hurries(mode, observation, moment),
    );
    return atRest + plus.reduce((sum, v) => sum + v, 0) / plus.length;
  };
}
