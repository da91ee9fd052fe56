/**
 * Pips of the markers added after detection: the sweep's sample beats with a crystal and a low-pass passes the low beats.
 *
 * Beat phase psi(t) = 2 pi * integral of (f(t) - f_m) dt + phi, for the sine-shaped sweep of sweep.ts; near a crossing it is
 * pi S_r (t - t0)^2 + phi with S_r the rate there (Hz/s). pip = amplitude * Re LPF{ e^{j psi} }, LPF one pole at `halfWidthHz`.
 * phi is the phase at the crossing on the trace and slides from sweep to sweep; the phase on the retrace follows from psi.
 * Visible width is about 2 halfWidthHz at each crossing; below sqrt(S_r) the low-pass cannot follow and the pip shrinks.
 * Source: zero-beat marker, common practice; filter loss as computed in the checks (largest output 0.7823 at 0.3 sqrt(S_r), phi 0).
 */

import { rateHzPerSecond, xOfFrequency } from './sweep.ts';

export interface PipSweep {
  readonly centreHz: number;
  readonly spanHz: number;
  readonly mainsHz: number;
  /** samples of the forward half; the trace has 2 * points */
  readonly points: number;
}

/** LPF{ e^{j psi} } with phi = 0 at the samples from `first` on (indices into the whole period). */
export interface PipStretch {
  readonly first: number;
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** A pip without its phase: at most one stretch on the trace and one on the retrace. Worth keeping while the sweep stands. */
export type PipShape = readonly PipStretch[];

/** Adds one pip of known shape to a trace of a whole period (2 * points samples, see sweep.ts). `amplitude`: height of the full beat, in the unit of the trace. */
export function addPip(trace: Float64Array, shape: PipShape, amplitude: number, phaseRadians: number): void {
  const c = amplitude * Math.cos(phaseRadians);
  const s = amplitude * Math.sin(phaseRadians);
  for (const { first, re, im } of shape) {
    for (let i = 0; i < re.length; i++) trace[first + i] = trace[first + i]! + c * re[i]! - s * im[i]!;
  }
}

/** The shape of a marker's pips under a sweep. Empty when the marker is further outside the sweep than its width. */
export function pipShape(sweep: PipSweep, markerHz: number, halfWidthHz: number): PipShape {
  const { centreHz, spanHz, mainsHz } = sweep;
  if (!(spanHz > 0) || !(halfWidthHz > 0)) return [];
  const x = xOfFrequency(markerHz, centreHz, spanHz);
  const rate = rateHzPerSecond(spanHz, mainsHz, markerHz - centreHz);
  const reachHz = cappedReach(Math.max(6 * halfWidthHz, 5 * Math.sqrt(rate)), spanHz, mainsHz, rate);
  const reach = (2 * reachHz) / spanHz;
  if (x - reach >= 1 || x + reach <= -1) return [];
  const from = Math.asin(Math.max(-1, x - reach));
  const to = Math.asin(Math.min(1, x + reach));
  const crossing = Math.asin(Math.min(1, Math.max(-1, x)));
  const beat: Beat = { sweep, markerHz, halfWidthHz, crossing, reachHz };
  return [stretch(beat, from, to), stretch(beat, Math.PI - to, Math.PI - from)];
}

interface Beat {
  readonly sweep: PipSweep;
  readonly markerHz: number;
  readonly halfWidthHz: number;
  /** angle of the crossing on the trace */
  readonly crossing: number;
  readonly reachHz: number;
}

/** More cycles than this on each side of a crossing are not worth computing: the low-pass has long taken them out. */
const MAX_CYCLES = 600;

function cappedReach(wantedHz: number, spanHz: number, mainsHz: number, rate: number): number {
  const cycles = (wantedHz * wantedHz) / (2 * Math.max(rate, mainsHz * spanHz * 0.1));
  return cycles > MAX_CYCLES ? wantedHz * Math.sqrt(MAX_CYCLES / cycles) : wantedHz;
}

/** Integrates the low-pass over angles from..to (radians of the mains period) and reads it off at the samples in between. */
function stretch(beat: Beat, from: number, to: number): PipStretch {
  const { sweep, markerHz, halfWidthHz, crossing, reachHz } = beat;
  const { centreHz, spanHz, mainsHz, points } = sweep;
  const w = 2 * Math.PI * mainsHz;
  const first = Math.max(0, Math.ceil(((from + Math.PI / 2) * points) / Math.PI - 0.5));
  const last = Math.min(2 * points - 1, Math.floor(((to + Math.PI / 2) * points) / Math.PI - 0.5));
  const re = new Float64Array(Math.max(0, last - first + 1));
  const im = new Float64Array(re.length);
  if (re.length === 0) return { first, re, im };

  const tau = 1 / (2 * Math.PI * halfWidthHz);
  const seconds = (to - from) / w;
  const steps = Math.ceil(seconds * Math.max(12 * reachHz, 8 / tau)) + 2;
  const h = seconds / steps;
  const oneLessE = -Math.expm1(-h / tau);
  const e = 1 - oneLessE;
  const lag = (tau / h) * oneLessE;
  const offset = (angle: number): number => centreHz + (spanHz / 2) * Math.sin(angle) - markerHz;
  const phase = (angle: number): number =>
    2 *
    Math.PI *
    (((centreHz - markerHz) * (angle - crossing)) / w - ((spanHz / 2) * (Math.cos(angle) - Math.cos(crossing))) / w);
  const fade = (angle: number): number => {
    const far = Math.abs(offset(angle)) / reachHz;
    return far < 0.6 ? 1 : far >= 1 ? 0 : Math.cos(((far - 0.6) / 0.4) * (Math.PI / 2)) ** 2;
  };

  const psi = phase(from);
  let xr = Math.cos(psi);
  let xi = Math.sin(psi);
  // Starts in the steady state for the beat of that moment, so that the low-pass has nothing to swing in from.
  const d = offset(from) / halfWidthHz;
  let yr = (xr + xi * d) / (1 + d * d);
  let yi = (xi - xr * d) / (1 + d * d);
  let sample = first;
  for (let k = 1; k <= steps && sample <= last; k++) {
    const next = phase(from + w * h * k);
    const nr = Math.cos(next);
    const ni = Math.sin(next);
    const zr = nr - (nr - xr) * lag + e * (yr - xr);
    const zi = ni - (ni - xi) * lag + e * (yi - xi);
    for (; sample <= last; sample++) {
      const angle = (Math.PI * (sample + 0.5)) / points - Math.PI / 2;
      const t = (angle - from) / (w * h) - (k - 1);
      if (t > 1 && k < steps) break;
      const level = fade(angle);
      re[sample - first] = level * (yr + t * (zr - yr));
      im[sample - first] = level * (yi + t * (zi - yi));
    }
    xr = nr;
    xi = ni;
    yr = zr;
    yi = zi;
  }
  return { first, re, im };
}
