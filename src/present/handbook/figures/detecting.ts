/** Figures of detectors: how a diode bends a curve, and the S-curve of two circuits and two diodes. */
import { type Diode, detectEnvelope } from '../../../physics/diode.ts';
import { fmOutput } from '../../../physics/fmDetector.ts';
import { grid, levels, once, retune, solverOf, tank } from '../circuits.ts';
import { type LiveFigure, reading, shareOf, slider } from '../liveFigure.ts';
import { crossings, highest } from '../read.ts';

/** A germanium diode into 10 kilohm: 1 microamp, kT/q at 300 K. */
const DIODE: Diode = { saturationAmps: 1e-6, emissionVolts: 25.852e-3, loadOhms: 10e3 };

const FROM = 39e6;
const TO = 49e6;
const circuit = once(() => {
  const solver = solverOf('before a diode', ['I1 0 a AC 1m', tank('a', 'a', { hz: 44e6, q: 15, henries: 1e-6 })]);
  const hz = grid(FROM, TO, 401);
  const y = levels(solver, 'a', hz);
  return { hz, y: shareOf(y, highest(hz, y).level) };
});

/** What of the top the diode gives where the carrier stands at half of its top. */
export const halfReads = (volts: number): number => detectEnvelope(volts / 2, DIODE) / detectEnvelope(volts, DIODE);

export const detector: LiveFigure<'detector'> = {
  // Volts of the carrier's peak at the top of the curve, in decibels below one volt.
  controls: { drive: slider(-46, 6, 2, -30, 'dB', 0) },
  draw({ drive }) {
    const { hz, y } = circuit();
    const volts = 10 ** (drive / 20);
    const top = detectEnvelope(volts, DIODE);
    return {
      plot: {
        from: FROM,
        to: TO,
        low: 0,
        high: 1,
        lines: [
          { look: 'wax', x: hz, y },
          { look: 'now', x: hz, y: y.map((v) => detectEnvelope(v * volts, DIODE) / top) },
        ],
      },
      readings: { output: reading(top, 'mV', 1), half: reading(halfReads(volts), 'share', 0) },
    };
  },
};

/** A pair at 10.7 MHz whose secondary has four times the primary's inductance. */
export const PAIR = { hz: 10.7e6, q: 60, k: 0.025, primary: 2e-6, secondary: 8e-6 } as const;

const pair = once(() =>
  solverOf('discriminator', [
    'I1 0 p AC 1m',
    tank('p', 'p', { hz: PAIR.hz, q: PAIR.q, henries: PAIR.primary }),
    tank('s', 's', { hz: PAIR.hz, q: PAIR.q, henries: PAIR.secondary }),
    `K1 Lp Ls ${PAIR.k}`,
  ]),
);

export interface SReading {
  readonly hz: Float64Array;
  readonly volts: Float64Array;
  readonly crossing: number;
  readonly apart: number;
  /** the taller peak over the smaller */
  readonly heights: number;
}

/** Two diodes on the primary with half of the secondary added and taken away. */
export function readS(primaryHz: number, secondaryHz: number, points = 1201): SReading {
  retune(pair(), 'p', { hz: primaryHz, q: PAIR.q, henries: PAIR.primary });
  retune(pair(), 's', { hz: secondaryHz, q: PAIR.q, henries: PAIR.secondary });
  const hz = grid(10.4e6, 11e6, points);
  pair().setFrequencies(hz);
  pair().solve();
  const [pr, pi, sr, si] = [pair().real('p'), pair().imag('p'), pair().real('s'), pair().imag('s')];
  const volts = hz.map((_, i) => {
    const half = (sign: number): number => Math.hypot(pr[i]! + (sign * sr[i]!) / 2, pi[i]! + (sign * si[i]!) / 2);
    return fmOutput('discriminator', half(1), half(-1), 0);
  });
  const up = highest(hz, volts);
  const down = highest(hz, volts, -1);
  const [from, to] = [Math.min(up.hz, down.hz), Math.max(up.hz, down.hz)];
  const crossing = crossings(hz, volts, 0).find((at) => at > from && at < to) ?? Number.NaN;
  const tall = Math.max(up.level, -down.level);
  return { hz, volts, crossing, apart: to - from, heights: tall / Math.min(up.level, -down.level) };
}

export const sCurve: LiveFigure<'sCurve'> = {
  controls: {
    primary: slider(-60e3, 60e3, 5e3, 0, 'kHz', 0),
    secondary: slider(-60e3, 60e3, 5e3, 0, 'kHz', 0),
  },
  draw({ primary, secondary }) {
    const right = readS(PAIR.hz, PAIR.hz);
    const now = readS(PAIR.hz + primary, PAIR.hz + secondary);
    const most = highest(right.hz, right.volts).level;
    return {
      plot: {
        from: 10.4e6,
        to: 11e6,
        low: -1.15,
        high: 1.15,
        lines: [
          { look: 'wax', x: right.hz, y: shareOf(right.volts, most) },
          { look: 'now', x: now.hz, y: shareOf(now.volts, most) },
        ],
        dots: [{ x: now.crossing, y: 0 }],
      },
      readings: {
        crossing: reading(now.crossing, 'MHz', 3),
        apart: reading(now.apart, 'kHz', 0),
        heights: reading(now.heights - 1, 'share', 1),
      },
    };
  },
};
