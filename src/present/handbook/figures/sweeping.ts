/** Figures of the sweep and the tube: one tuned circuit swept, its scales, two traces out of phase, and a sweep too fast for its circuit. */
import { createFastSweep } from '../../../physics/fastSweep.ts';
import { sweepFrequencies, xDrive } from '../../../physics/sweep.ts';
import { grid, levelAtHz, levels, once, solverOf, tank } from '../circuits.ts';
import { type LiveFigure, places, reading, shareOf, slider } from '../liveFigure.ts';
import { halfPower, highest, widthAt } from '../read.ts';

export const SWEPT = { hz: 44e6, q: 15, henries: 1e-6 } as const;
export const SPAN_HZ = 10e6;
/** Mains of the harbour town. */
export const MAINS_HZ = 50;

const one = once(() => solverOf('one circuit', ['I1 0 a AC 1m', tank('a', 'a', SWEPT)]));
const top = once(() => levelAtHz(one(), 'a', SWEPT.hz));

const across = once(() => {
  const hz = grid(SWEPT.hz - SPAN_HZ / 2, SWEPT.hz + SPAN_HZ / 2, 401);
  return { hz, y: shareOf(levels(one(), 'a', hz), top()) };
});

export const spot: LiveFigure<'spot'> = {
  controls: { moment: slider(0, 1 / (2 * MAINS_HZ), 0.1e-3, 3e-3, 'ms', 1) },
  draw({ moment }) {
    const { hz, y } = across();
    const now = SWEPT.hz + (SPAN_HZ / 2) * Math.sin(2 * Math.PI * MAINS_HZ * moment - Math.PI / 2);
    const level = levelAtHz(one(), 'a', now) / top();
    const drawn = [...hz.filter((f) => f < now), now];
    return {
      plot: {
        from: hz[0]!,
        to: hz.at(-1)!,
        low: 0,
        high: 1,
        lines: [
          { look: 'wax', x: hz, y },
          { look: 'now', x: drawn, y: [...y.subarray(0, drawn.length - 1), level] },
        ],
        dots: [{ x: now, y: level }],
      },
      readings: { frequency: reading(now, 'MHz', 2), level: reading(level, 'share', 0) },
    };
  },
};

export const scale: LiveFigure<'scale'> = {
  controls: { span: slider(2e6, 20e6, 0.5e6, 10e6, 'MHz', 1), gain: slider(0.2, 2, 0.05, 1, 'times', 2) },
  draw({ span, gain }) {
    const hz = grid(SWEPT.hz - span / 2, SWEPT.hz + span / 2, 401);
    const y = shareOf(levels(one(), 'a', hz), top() / gain);
    const wide = grid(SWEPT.hz - SPAN_HZ, SWEPT.hz + SPAN_HZ, 4001);
    return {
      plot: { from: hz[0]!, to: hz.at(-1)!, low: 0, high: 1, lines: [{ look: 'now', x: hz, y }] },
      readings: {
        division: reading(span / 10, 'MHz', 2),
        width: reading(widthAt(wide, levels(one(), 'a', wide), halfPower(top())), 'MHz', 2),
        // The picture's foot and head are six divisions apart.
        height: reading(6 * gain, 'bare', 1),
      },
    };
  },
};

const POINTS = 512;

/** Trace and retrace of a circuit that answers at once, as X and Y of the tube. */
export const phasing: LiveFigure<'phasing'> = {
  controls: { phase: slider(-30, 30, 1, 12, 'degrees', 0), blanking: places(2) },
  draw({ phase, blanking }) {
    const hz = sweepFrequencies(SWEPT.hz, SPAN_HZ, POINTS);
    const y = shareOf(levels(one(), 'a', hz), top());
    const drive = xDrive(POINTS, (phase * Math.PI) / 180);
    const x = Float64Array.from(drive, (v) => SWEPT.hz + (v * SPAN_HZ) / 2);
    const trace = x.slice(0, POINTS);
    const retrace = x.slice(POINTS);
    const back = blanking === 1 ? new Float64Array(POINTS) : y.slice().reverse();
    const peakOf = (places: Float64Array, curve: Float64Array): number =>
      places[curve.reduce((best, v, i) => (v > curve[best]! ? i : best), 0)]!;
    return {
      plot: {
        from: SWEPT.hz - SPAN_HZ / 2,
        to: SWEPT.hz + SPAN_HZ / 2,
        low: 0,
        high: 1,
        lines: [
          { look: 'retrace', x: retrace, y: back },
          { look: 'now', x: trace, y },
        ],
      },
      readings: {
        apart: reading(blanking === 1 ? null : Math.abs(peakOf(trace, y) - peakOf(retrace, back)), 'MHz', 2),
      },
    };
  },
};

export const NARROW = { hz: 455e3, q: 150, henries: 0.8e-3 } as const;

const narrow = once(() => solverOf('one narrow circuit', ['I1 0 a AC 1m', tank('a', 'a', NARROW)]));

/** A forward sweep over one circuit at mains rate, drawn by the instant, against what a slow hand would plot. */
export const fastSweep: LiveFigure<'fastSweep'> = {
  controls: { span: slider(6e3, 120e3, 2e3, 60e3, 'kHz', 0) },
  draw({ span }) {
    const solver = narrow();
    const sweep = createFastSweep(1024);
    const lines = sweep.linesHz(NARROW.hz, span, MAINS_HZ, 1e3);
    solver.setFrequencies(lines);
    solver.solve();
    const out = new Float64Array(2048);
    sweep.envelope(solver.real('a'), solver.imag('a'), false, out);
    const still = levelAtHz(solver, 'a', NARROW.hz);
    const hz = sweepFrequencies(NARROW.hz, span, 1024);
    const slow = shareOf(levels(solver, 'a', hz), still);
    const y = shareOf(out.subarray(0, 1024), still);
    const peak = highest(hz, y);
    return {
      plot: {
        from: NARROW.hz - span / 2,
        to: NARROW.hz + span / 2,
        low: 0,
        high: 1,
        lines: [
          { look: 'wax', x: hz, y: slow },
          { look: 'now', x: hz, y },
        ],
      },
      readings: {
        peak: reading(peak.level, 'share', 0),
        late: reading(peak.hz - NARROW.hz, 'kHz', 2),
        width: reading(widthAt(hz, y, halfPower(peak.level)), 'kHz', 2),
      },
    };
  },
};
