/**
 * The receiver's noise as the tube and the meter have it: how it lifts what the diodes make of the carrier, and how far it makes that stray.
 *
 * The lift is in the mean and is drawn as it is; the straying is left to the tube's chance (face.ts), from sweep to sweep another. The noise is that of the small signal;
 * behind a limiter it is less by as much as the carrier fills it, place by place along the sweep (physics/limiterQuieting.ts). The noise of a video sweep's sidebands is not
 * modelled.
 */
import { noisyDetector, shareBehindPole } from '../physics/noisyDetector.ts';
import { NO_NOISE, type NodeNoise } from '../receiver/receiverNoise.ts';
import { lifeOf } from '../scenario/life.ts';
import type { LineVolts } from './conditions.ts';
import { type Moment, TRACE_POINTS } from './moment.ts';
import type { Detect, Half, Observation } from './observation.ts';

/** A carrier may exceed the range that was looked at by this many deviations. */
const MARGIN = 8;

/** Noise at the node of an observation, scaled as the scenario has it. */
export function noiseAt(moment: Moment, lineVolts: LineVolts, { node }: Pick<Observation, 'node'>): NodeNoise {
  const share = lifeOf(moment.setup.scenario).noise;
  if (share === 0 || !moment.running || moment.state.controls.sourceMode === 'video') return NO_NOISE;
  const { full } = moment;
  const level = new Float64Array(full.hz.length);
  const carrierVolts = (at: string): number =>
    moment.connections.rf === null ? 0 : full.solvers.magnitude(at, level).reduce((most, v) => Math.max(most, v), 0);
  const { sigmaVolts, bandHz } = moment.circuit.noise.at(moment.conditions(lineVolts), node, carrierVolts);
  return { sigmaVolts: share * sigmaVolts, bandHz };
}

/** The receiver's noise at the diode, or the envelope of the raw input, sample by sample of a period. */
export interface Noisy {
  /** see `NoisyDetector` */
  at(amplitudeVolts: number, sample: number, out: Float64Array): void;
  stray(amplitudeVolts: number, sample: number): number;
  /** how much of the noise is there, 1 = all */
  quiet(sample: number): number;
}

/** How much of the noise the limiters before a node leave, over a period of the sweep; null where none stands before it. A blanked retrace has no carrier to fill them. */
export function quietingAt({ full, state, swept }: Moment, { node }: Pick<Observation, 'node'>): Float64Array | null {
  const share = full.solvers.quieting(node);
  if (share === null) return null;
  const { blanking } = state.controls;
  return Float64Array.from({ length: 2 * TRACE_POINTS }, (_, i) => {
    if (i >= TRACE_POINTS && blanking && swept) return 1;
    return share[swept ? (i < TRACE_POINTS ? i : 2 * TRACE_POINTS - 1 - i) : 0]!;
  });
}

/** An observation whose diodes have noise on them: what they make of a carrier on average. */
export function withNoise(observation: Observation, noisy: Noisy | null): Observation {
  if (noisy === null || observation.raw) return observation;
  const out = new Float64Array(2);
  const lift: Detect = (amplitudeVolts, sample = 0) => {
    noisy.at(amplitudeVolts, sample, out);
    return out[0]!;
  };
  const lifted = <H extends Half>(half: H): H => ({
    ...half,
    lift,
    detect: (amplitudeVolts: number, sample?: number) =>
      half.plain(amplitudeVolts, sample ?? 0) + lift(amplitudeVolts, sample),
  });
  const { minus } = observation;
  return { ...lifted(observation), minus: minus === null ? null : lifted(minus) };
}

/** Its diode in the noise; of the raw input, which has none, the envelope itself. Null where there is no noise. */
export function noisyDiode(
  { detect, raw }: Observation,
  { sigmaVolts }: NodeNoise,
  mostVolts: number,
  quieting: Float64Array | null,
): Noisy | null {
  if (sigmaVolts === 0) return null;
  const diode = noisyDetector(raw ? (volts) => volts : detect, sigmaVolts, mostVolts + MARGIN * sigmaVolts);
  const quiet = (sample: number): number => quieting?.[sample] ?? 1;
  return {
    quiet,
    at: (amplitudeVolts, sample, out) => diode.at(amplitudeVolts, out, quiet(sample)),
    stray: (amplitudeVolts, sample) => diode.stray(amplitudeVolts, quiet(sample)),
  };
}

/** Carriers on the raw input stand higher by the noise, in place. */
export function liftRaw(carriers: Float64Array, noisy: Noisy): void {
  const out = new Float64Array(2);
  for (let i = 0; i < carriers.length; i++) {
    noisy.at(carriers[i]!, i, out);
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
  noisy: Noisy,
  carriers: Float64Array,
  minus: Float64Array | null,
  stepSeconds: number,
  out: Float64Array,
): Grass {
  if (raw) {
    for (let i = 0; i < out.length; i++) out[i] = sigmaVolts * noisy.quiet(i);
    return { strayVolts: out, memory: 0 };
  }
  const poleSeconds = loadSeconds + leadSeconds;
  // A ratio detector gives half of the difference.
  const share = shareBehindPole(bandHz, poleSeconds) * (pair?.kind === 'ratio' && pair.tap === 'output' ? 0.5 : 1);
  for (let i = 0; i < out.length; i++) {
    // In a blanked retrace one sample is as the other.
    const same =
      i > 0 &&
      carriers[i] === carriers[i - 1] &&
      minus?.[i] === minus?.[i - 1] &&
      noisy.quiet(i) === noisy.quiet(i - 1);
    if (same) {
      out[i] = out[i - 1]!;
      continue;
    }
    const stray = noisy.stray(carriers[i]!, i);
    out[i] = share * (minus === null ? stray : Math.hypot(stray, noisy.stray(minus[i]!, i)));
  }
  return { strayVolts: out, memory: Math.exp(-stepSeconds / poleSeconds) };
}
