/**
 * The receiver's noise as the tube and the meter have it: how it lifts what the diodes make of the carrier, and how far it makes that stray.
 *
 * The lift is in the mean and is drawn as it is; the straying is left to the tube's chance (face.ts), from sweep to sweep another. Where stages behind each other limit,
 * the noise is that of the small signal: a limiter's quieting is not modelled. The noise of a video sweep's sidebands is not either.
 */
import { noisyDetector, shareBehindPole } from '../physics/noisyDetector.ts';
import { NO_NOISE, type NodeNoise } from '../receiver/receiverNoise.ts';
import { lifeOf } from '../scenario/life.ts';
import type { LineVolts } from './conditions.ts';
import type { Moment } from './moment.ts';
import type { Observation } from './observation.ts';

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
export function withNoise(observation: Observation, { sigmaVolts }: NodeNoise, mostVolts: number): Observation {
  if (sigmaVolts === 0 || observation.raw) return observation;
  const noisy = noisyDetector(observation.detect, sigmaVolts, mostVolts);
  const out = new Float64Array(2);
  return {
    ...observation,
    detect(amplitudeVolts) {
      noisy.at(amplitudeVolts, out);
      return observation.detect(amplitudeVolts) + out[0]!;
    },
  };
}

/** The raw input has no diode: the envelope itself stands higher, in place. */
export function liftRaw(carriers: Float64Array, { sigmaVolts }: NodeNoise, mostVolts: number): void {
  const noisy = noisyDetector((volts) => volts, sigmaVolts, mostVolts);
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
  { detect, pair, raw, loadSeconds, leadSeconds }: Observation,
  { sigmaVolts, bandHz }: NodeNoise,
  carriers: Float64Array,
  minus: Float64Array | null,
  mostVolts: number,
  stepSeconds: number,
  out: Float64Array,
): Grass | null {
  if (sigmaVolts === 0) return null;
  if (raw) return { strayVolts: out.fill(sigmaVolts), memory: 0 };
  const noisy = noisyDetector(detect, sigmaVolts, mostVolts);
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
