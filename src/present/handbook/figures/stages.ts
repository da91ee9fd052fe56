/** Figures of the stages and what hangs on them: bias, overload, a probe, a lead, the slope under the carrier, faults by their shape. */
import { leadFactor } from '../../../bench/instruments.ts';
import { stageAtBias } from '../../../receiver/biasLaw.ts';
import type { BiasLaw } from '../../../receiver/receiver.ts';
import { decibels, grid, levels, once, solverOf, tank, tankFarads } from '../circuits.ts';
import { type LiveFigure, places, reading, shareOf, slider, waxAndNow } from '../liveFigure.ts';
import { halfPower, highest, widthAt } from '../read.ts';
import { STRIP, stagesAt, stripLevels } from './cans.ts';

const COIL = { hz: 44e6, q: 15, henries: 1e-6 } as const;
const FROM = 39e6;
const TO = 49e6;
const hz = grid(FROM, TO, 401);

const alone = once(() => solverOf('a coil', ['I1 0 a AC 1m', tank('a', 'a', COIL), 'Cx a 0 1e-18']));

/** The coil with so many farads more across it. */
function withFarads(farads: number, at: Float64Array = hz): Float64Array {
  alone().setValue('Cx', Math.max(farads, 1e-18));
  return levels(alone(), 'a', at);
}

/** A valve of remote cut-off, 4.3 mS at 1 V and 0.04 mS at 20 V; its grid is 1 pF more at work than cut off. */
export const VALVE: BiasLaw = {
  kind: 'exponential',
  referenceVolts: -1,
  scaleVolts: 4.062,
  capacitanceFarads: 1e-12,
  unclampedRestVolts: -1,
  unclampedVoltsPerDetectedVolt: 0,
};

/** What a bias does to the stage and the coil at its grid, against one volt. */
export function atBias(volts: number): { readonly y: Float64Array; readonly gain: number; readonly peakHz: number } {
  const { gmRelative, inputFarads } = stageAtBias(VALVE, volts);
  // The coil is in tune at the reference, with the grid's capacitance counted in.
  alone().setValue('Ca', tankFarads(COIL) + inputFarads);
  const y = withFarads(0);
  alone().setValue('Ca', tankFarads(COIL));
  const peak = highest(hz, y);
  return { y: y.map((v) => v * gmRelative), gain: gmRelative, peakHz: peak.hz };
}

export const bias: LiveFigure<'bias'> = {
  controls: { bias: slider(-12, -1, 0.5, -4, 'V', 1) },
  draw(settings) {
    const rest = atBias(VALVE.referenceVolts);
    const now = atBias(settings.bias);
    const top = highest(hz, rest.y).level;
    return {
      plot: {
        from: FROM,
        to: TO,
        low: 0,
        high: 1,
        lines: waxAndNow(hz, rest.y, now.y, top),
      },
      readings: {
        gain: reading(decibels(now.gain), 'dB', 1),
        moved: reading(now.peakHz - rest.peakHz, 'kHz', 0),
      },
    };
  },
};

/** A stage that saturates at half a volt at its grid, behind the coil. */
const SATURATION_VOLTS = 0.5;
const driven = once(() => {
  const solver = solverOf('a stage', ['I1 0 a AC 1m', tank('a', 'a', COIL), 'G1 b 0 a 0 5m', 'Rb b 0 1k']);
  solver.setSaturation('G1', SATURATION_VOLTS);
  return solver;
});

const top = once(() => highest(hz, withFarads(0)).level / 1e-3);

/** The curve with its top driven to so many decibels over the volts at which the stage saturates. */
export function overdriven(db: number): { readonly y: Float64Array; readonly compressionDb: number } {
  driven().setDrive('I1', (SATURATION_VOLTS * 10 ** (db / 20)) / top());
  const y = levels(driven(), 'b', hz);
  return { y, compressionDb: driven().worstCompressionDb() };
}

export const overload: LiveFigure<'overload'> = {
  controls: { drive: slider(-20, 9, 1, 6, 'dB', 0) },
  draw({ drive }) {
    const { y, compressionDb } = overdriven(drive);
    const small = overdriven(-60).y;
    const now = highest(hz, y).level;
    return {
      plot: {
        from: FROM,
        to: TO,
        low: 0,
        high: 1,
        lines: [
          { look: 'wax', x: hz, y: shareOf(small, highest(hz, small).level) },
          { look: 'now', x: hz, y: shareOf(y, now) },
        ],
      },
      readings: {
        compression: reading(compressionDb, 'dB', 1),
        width: reading(widthAt(hz, y, halfPower(now)), 'MHz', 2),
      },
    };
  },
};

/** A coil with twenty picofarads across it, and the probe's on top. */
export const PROBED = { hz: 44e6, farads: 20e-12, q: 15 } as const;
const probed = once(() => {
  const henries = 1 / ((2 * Math.PI * PROBED.hz) ** 2 * PROBED.farads);
  return solverOf('a probed coil', ['I1 0 a AC 1m', tank('a', 'a', { ...PROBED, henries }), 'Cx a 0 1e-18']);
});

export function probedPeak(farads: number, at: Float64Array): { readonly y: Float64Array; readonly peakHz: number } {
  probed().setValue('Cx', Math.max(farads, 1e-18));
  const y = levels(probed(), 'a', at);
  return { y, peakHz: highest(at, y).hz };
}

export const probe: LiveFigure<'probe'> = {
  controls: { farads: slider(0, 10e-12, 0.25e-12, 2e-12, 'pF', 2) },
  draw({ farads }) {
    const at = grid(34e6, 50e6, 801);
    const without = probedPeak(0, at);
    const now = probedPeak(farads, at);
    const most = highest(at, without.y).level;
    return {
      plot: {
        from: 34e6,
        to: 50e6,
        low: 0,
        high: 1.1,
        lines: waxAndNow(at, without.y, now.y, most),
      },
      readings: {
        peak: reading(now.peakHz, 'MHz', 2),
        moved: reading(now.peakHz - without.peakHz, 'kHz', 0),
      },
    };
  },
};

/** A flat strip behind a lead: what the lead does to the level is seen on the top that should be level. */
export function leadLevels(terminated: boolean, earthed: boolean, at: Float64Array): Float64Array {
  return at.map((f) => leadFactor(f, terminated, earthed));
}

export const lead: LiveFigure<'lead'> = {
  controls: { end: places(2, 1), earth: places(2, 1) },
  draw({ end, earth }) {
    const at = grid(20e6, 100e6, 801);
    const y = leadLevels(end === 0, earth === 0, at);
    const mean = y.reduce((sum, v) => sum + v, 0) / y.length;
    return {
      plot: {
        from: at[0]!,
        to: at.at(-1)!,
        low: 0,
        high: 1.6,
        lines: [
          { look: 'sheet', x: [at[0]!, at.at(-1)!], y: [1, 1] },
          { look: 'now', x: at, y: shareOf(y, mean) },
        ],
      },
      readings: { tilt: reading(decibels(Math.max(...y) / Math.min(...y)), 'dB', 1) },
    };
  },
};

const STRIP_FROM = 38.5e6;
const STRIP_TO = 48.5e6;

/** How high the strip stands at a frequency, of its height in the middle. */
const stripShare = (at: number): number => {
  const [there, middle] = stripLevels(stagesAt(1), Float64Array.of(at, STRIP.hz));
  return there! / middle!;
};

export const slope: LiveFigure<'slope'> = {
  controls: { carrier: slider(44e6, 48e6, 0.05e6, 45.75e6, 'MHz', 2) },
  draw({ carrier }) {
    const at = grid(STRIP_FROM, STRIP_TO, 601);
    const y = stripLevels(stagesAt(1), at);
    const middle = stripLevels(stagesAt(1), Float64Array.of(STRIP.hz))[0]!;
    const level = stripShare(carrier);
    return {
      plot: {
        from: STRIP_FROM,
        to: STRIP_TO,
        low: 0,
        high: 1.05,
        lines: [
          { look: 'sheet', x: [STRIP_FROM, STRIP_TO], y: [0.5, 0.5] },
          { look: 'now', x: at, y: shareOf(y, middle) },
        ],
        dots: [{ x: carrier, y: level }],
      },
      readings: { level: reading(level, 'share', 0), low: reading(decibels(2 * level), 'dB', 1) },
    };
  },
};

/** What may be wrong with a staggered strip, in the order of the switch: nothing, one slug, a damping resistor open, one stage weak. */
export function faulty(fault: number): Float64Array {
  const at = grid(STRIP_FROM, STRIP_TO, 601);
  const [low, mid, high] = stagesAt(1) as readonly [Stage, Stage, Stage];
  switch (fault) {
    case 1:
      return stripLevels([low, mid, { ...high, hz: high.hz - 1.2e6 }], at);
    case 2:
      return stripLevels([low, { ...mid, width: mid.width / 4 }, high], at);
    case 3:
      return stripLevels([low, { ...mid, width: mid.width * 2.5 }, high], at);
    case 4:
      return stripLevels([low, mid, high], at).map((v) => v / 3);
    default:
      return stripLevels([low, mid, high], at);
  }
}

type Stage = ReturnType<typeof stagesAt>[number];

export const faults: LiveFigure<'faults'> = {
  controls: { fault: places(5, 2) },
  draw({ fault }) {
    const at = grid(STRIP_FROM, STRIP_TO, 601);
    const right = faulty(0);
    const most = highest(at, right).level;
    const y = faulty(fault);
    const now = highest(at, y).level;
    return {
      plot: {
        from: STRIP_FROM,
        to: STRIP_TO,
        low: 0,
        high: Math.max(1, now / most),
        lines: [
          { look: 'sheet', x: at, y: shareOf(right, most) },
          { look: 'now', x: at, y: shareOf(y, most) },
        ],
      },
      readings: {
        height: reading(decibels(now / most), 'dB', 1),
        width: reading(widthAt(at, y, halfPower(now)), 'MHz', 2),
      },
    };
  },
};
