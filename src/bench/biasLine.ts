/**
 * The AGC line: clamped by a bias lead, or left to follow the signal.
 *
 * Left alone it stands at V = rest + slope * D(V), D the detector's mean output over the mains period, which itself falls as the line takes the
 * gain down. The crossing is found by bisection and false position (Illinois rule) between "no signal" and "all the signal that rest bias
 * gives", a fixed number of rounds, always from the same ends, so that the same bench gives the same volts. A meter on the unclamped
 * line draws current through the line's own resistance and pulls it towards earth.
 */
import { unclampedVolts } from '../receiver/biasLaw.ts';
import type { BiasLaw } from '../receiver/receiver.ts';
import type { BenchState } from './benchState.ts';
import { AGC_LINE_OHMS, METER_OHMS_PER_VOLT } from './instruments.ts';
import { carrierAt, type Moment, meanDetected } from './moment.ts';
import { type DetectorStore, lawOf } from './observation.ts';
import type { BenchSetup } from './setup.ts';

/** Volts on the line at this moment; null where the receiver has none. A line left to itself is dead without power. */
export function lineVoltsAt(setup: BenchSetup, moment: Moment, detectors: DetectorStore): number | null {
  const clamped = clampedVolts(setup, moment.state);
  const law = setup.receiver.biasLaw;
  if (clamped !== null || law === null) return clamped;
  if (!moment.running) return 0;
  const [detector] = setup.receiver.detectors;
  const detect = detector === undefined ? null : detectors.of(lawOf(detector));
  const samples = new Float64Array(moment.thin.hz.length);
  return settledVolts(law, meterLoading(setup, moment.state), (volts) => {
    if (detector === undefined || detect === null || moment.connections.rf === null) return 0;
    moment.thin.station.solve(moment.thin.hz, moment.conditions(volts));
    carrierAt(moment, moment.thin, detector.node, samples);
    return meanDetected(moment, samples, detect);
  });
}

/** Volts of the bias supply where one of its leads stands on the AGC line; null where none does. */
export function clampedVolts({ receiver }: BenchSetup, { leads, controls }: BenchState): number | null {
  const line = receiver.testPoints.find((p) => p.role === 'agc')?.id;
  if (line === undefined) return null;
  if (leads.biasA === line) return signed(controls.biasAVolts, controls.biasAPolarity);
  if (leads.biasB === line) return signed(controls.biasBVolts, controls.biasBPolarity);
  return null;
}

const ROUNDS = 24;
const CLOSE_VOLTS = 1e-4;

/** `meanDetected` gives the detector's mean output, without sign, for a line at some volts. */
export function settledVolts(law: BiasLaw, loading: number, meanDetected: (lineVolts: number) => number): number {
  const wanted = (volts: number) => loading * unclampedVolts(law, meanDetected(volts));
  let a = loading * law.unclampedRestVolts;
  let b = wanted(a);
  let errorA = a - b;
  let errorB = b - wanted(b);
  if (errorA === 0 || errorA * errorB > 0) return b;
  for (let i = 0; i < ROUNDS && Math.abs(b - a) > CLOSE_VOLTS; i++) {
    const guess = (a * errorB - b * errorA) / (errorB - errorA);
    const error = guess - wanted(guess);
    if (Math.abs(error) < CLOSE_VOLTS) return guess;
    if (error * errorB < 0) {
      a = b;
      errorA = errorB;
    } else errorA /= 2;
    b = guess;
    errorB = error;
  }
  return b;
}

/** Share of the unclamped line's volts that a meter on it leaves. */
export function meterLoading({ receiver }: BenchSetup, { leads, controls }: BenchState): number {
  const line = receiver.testPoints.find((p) => p.role === 'agc')?.id;
  if (line === undefined || leads.meter !== line) return 1;
  const meterOhms = METER_OHMS_PER_VOLT * controls.meterRangeVolts;
  return meterOhms / (meterOhms + AGC_LINE_OHMS);
}

function signed(volts: number, polarity: '+' | '-'): number {
  return polarity === '-' ? 0 - volts : volts;
}
