/**
 * The receiver's noise as the tube and the meter have it: how it lifts what the diodes make of the carrier, and how far it makes that stray.
 *
 * The lift is in the mean and is drawn as it is; the straying is left to the tube's chance (face.ts), from sweep to sweep another. Where stages behind each other limit,
 * the noise is that of the small signal: a limiter's quieting is not modelled. The noise of a video sweep's sidebands is not either.
 */
import { type NoisyDetector, noisyDetector, shareBehindPole } from '../physics/noisyDetector.ts';
import { NO_NOISE, type NodeNoise } from '../receiver/receiverNoise.ts';
import { lifeOf } from '../scenario/life.ts';
import type { LineVolts } from './conditions.ts';
import type { Moment } from './moment.ts';
import type { Observation } from './observation.ts';

/** A carrier may be larger than what was looked at by this many deviations. */
const MARGIN = 8;

/** Noise at the node of an observation, scaled as the scenario has it. */
export function noiseAt(moment: Moment, lineVolts: LineVolts, { node }: Pick<Observation, 'node'>): NodeNoise {
  const share = lifeOf(moment.setup.scenario).noise;
  if (share === 0 || !moment.running || moment.state.controls.sourceMode === 'video') return NO_NOISE;
  const { full } = moment;
  const level = new Float64Array(full.hz.length);
  const carrierVolts = (at: string): number =>
    moment.connections.rf === null ? 0 : full.station.magnitude(at, level).reduce((most, v) => Math.max(most, v), 0);
  const { sigmaVolts, bandHz } = moment.circuit.noise.at(moment.conditions(lineVolts), node, carrierVolts);
  return { sigmaVolts: share * sigmaVolts, bandHz };
}

/** An observation whose diodes have the noise in them: what they make of a carrier, on the average. */
export function withNoise(observation: Observation, noisy: NoisyDetector | null): Observation {
  if (noisy === null || observation.raw) return observation;
  const out = new Float64Array(2);
  return {
    ...observation,
    detect(amplitudeVolts) {
      noisy.at(amplitudeVolts, out);
      return observation.detect(amplitudeVolts) + out[0]!;
    },
  };
}

/** Its diode in the noise; of the raw input, which has none, the envelope itself. Null where there is no noise. */
export function noisyDiode(
  { detect, raw }: Observation,
  { sigmaVolts }: NodeNoise,
  mostVolts: number,
): NoisyDetector | null {
  if (sigmaVolts === 0) return null;
  return noisyDetector(raw ? (volts) => volts : detect, sigmaVolts, mostVolts + MARGIN * sigmaVolts);
}

/** Carriers on the raw input stand higher by the noise, in place. */
export function liftRaw(carriers: Float64Array, noisy: NoisyDetector): void {
  const out = new Float64Array(2);
  for (let i = 0; i < carriers.length; i++) {
    noisy.at(carriers[i]!, out);
    carriers[i] = carriers[i]! + out[0]!;
  }
}

/** Grass at the Y input: how far each sample strays, volts rms, and how much of a sample's straying is still there in the next one. */
export interface Grass {
  readonly strayVolts: Float64Array;
  readonly memory: number;
}

/** Writes to `out`, from the carriers of the diode or of both; `stepSeconds` from sample to sample. */
export function grassOf(
  { pair, raw, loadSeconds, leadSeconds }: Observation,
  { sigmaVolts, bandHz }: NodeNoise,
  noisy: NoisyDetector,
  carriers: Float64Array,
  minus: Float64Array | null,
  stepSeconds: number,
  out: Float64Array,
): Grass {
  if (raw) return { strayVolts: out.fill(sigmaVolts), memory: 0 };
  const poleSeconds = loadSeconds + leadSeconds;
  // A ratio detector gives half of the difference.
  const share = shareBehindPole(bandHz, poleSeconds) * (pair?.kind === 'ratio' && pair.tap === 'output' ? 0.5 : 1);
  const both = new Float64Array(2);
  for (let i = 0; i < out.length; i++) {
    noisy.at(carriers[i]!, both);
    let stray = both[1]!;
    if (minus !== null) {
      noisy.at(minus[i]!, both);
      stray = Math.hypot(stray, both[1]!);
    }
    out[i] = share * stray;
  }
  return { strayVolts: out, memory: Math.exp(-stepSeconds / poleSeconds) };
}
