/** The symptom of a fault in figures: a faulty curve beside the sound one. */
import { highest, outerCrossings, type ResponseCurve } from '../curveReading.ts';

export interface Symptom {
  /** level at the peak against the sound curve's, decibels */
  readonly peakDb: number;
  /** how far the peak has moved, hertz */
  readonly peakShiftHz: number;
  /** width at half power over the sound curve's */
  readonly widthRatio: number;
  /** largest change of level anywhere that the sound curve is within 40 dB of its peak, decibels, and where */
  readonly worstDb: number;
  readonly worstHz: number;
}

const SEEN_DB = 40;
const HALF_POWER = Math.SQRT1_2;

/** Both curves on the same frequencies, volts per ampere. */
export function symptomOf(sound: ResponseCurve, faulty: ResponseCurve, fromHz: number, toHz: number): Symptom {
  const before = highest(sound, fromHz, toHz);
  const after = highest(faulty, fromHz, toHz);
  let worstDb = 0;
  let worstHz = before.hz;
  for (let i = 0; i < sound.hz.length; i++) {
    const a = sound.volts[i]!;
    const b = faulty.volts[i]!;
    if (!(a > before.volts * 10 ** (-SEEN_DB / 20)) || !(b > 0)) continue;
    const change = 20 * Math.log10(b / a);
    if (Math.abs(change) > Math.abs(worstDb)) {
      worstDb = change;
      worstHz = sound.hz[i]!;
    }
  }
  return {
    peakDb: 20 * Math.log10(after.volts / before.volts),
    peakShiftHz: after.hz - before.hz,
    widthRatio: widthOf(faulty, after.volts, fromHz, toHz) / widthOf(sound, before.volts, fromHz, toHz),
    worstDb,
    worstHz,
  };
}

function widthOf(curve: ResponseCurve, peakVolts: number, fromHz: number, toHz: number): number {
  const edges = outerCrossings(curve, HALF_POWER * peakVolts, fromHz, toHz);
  return edges === null ? 0 : edges.highHz - edges.lowHz;
}
