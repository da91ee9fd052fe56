/** Figures of traps: one that takes from the coil beside it, one that bridges a resistor, and markers across a trap. */
import { withMarkers } from '../../../bench/throughMarkers.ts';
import { addPip, pipShape } from '../../../physics/pip.ts';
import { sweepFrequencies } from '../../../physics/sweep.ts';
import { decibels, grid, levelAtHz, levels, once, solverOf } from '../circuits.ts';
import { type LiveFigure, reading, shareOf, slider, places as switchOf, waxAndNow } from '../liveFigure.ts';
import { highest } from '../read.ts';
import { MAINS_HZ } from './sweeping.ts';

/** A tank at 43.5 MHz and a trap beside its coil. */
export const ABSORBER = {
  tank: { henries: 1e-6, farads: 13.38634e-12, ohms: 18.2212 },
  trap: { hz: 41.25e6, henries: 0.3e-6, q: 150 },
  coupling: 0.05,
} as const;

const absorber = once(() => {
  const { tank, trap, coupling } = ABSORBER;
  const w = 2 * Math.PI * trap.hz;
  return solverOf('tank and trap', [
    'I1 0 p AC 1m',
    `Lp p q ${tank.henries}`,
    `Rp q 0 ${tank.ohms}`,
    `Cp p 0 ${tank.farads}`,
    `Lt t u ${trap.henries}`,
    `Rt u 0 ${(w * trap.henries) / trap.q}`,
    `Ct t 0 ${1 / (w * w * trap.henries)}`,
    `K1 Lp Lt ${coupling}`,
  ]);
});

/** Tunes the trap; its coil keeps the loss that it has at 41.25 MHz. */
function setTrap(hz: number, coupling: number): void {
  absorber().setValue('Ct', 1 / ((2 * Math.PI * hz) ** 2 * ABSORBER.trap.henries));
  absorber().setValue('K1', coupling);
}

/** A trap so far away that it takes nothing. */
const AWAY = 1e-6;

export function trapDepthDb(hz: number, coupling: number): number {
  setTrap(hz, AWAY);
  const without = levelAtHz(absorber(), 'p', hz);
  setTrap(hz, coupling);
  return decibels(without / levelAtHz(absorber(), 'p', hz));
}

export const trap: LiveFigure<'trap'> = {
  controls: {
    tuned: slider(39e6, 48e6, 0.125e6, 41.25e6, 'MHz', 2),
    coupling: slider(0.005, 0.12, 0.005, 0.05, 'share', 1),
  },
  draw({ tuned, coupling }) {
    const hz = grid(38e6, 49e6, 881);
    setTrap(tuned, AWAY);
    const without = levels(absorber(), 'p', hz);
    setTrap(tuned, coupling);
    const y = levels(absorber(), 'p', hz);
    const top = highest(hz, without).level;
    return {
      plot: {
        from: 38e6,
        to: 49e6,
        low: 0,
        high: 1.1,
        lines: waxAndNow(hz, without, y, top),
      },
      readings: {
        depth: reading(trapDepthDb(tuned, coupling), 'dB', 1),
        peak: reading(highest(hz, y).hz, 'MHz', 2),
      },
    };
  },
};

/** Two capacitors in line, a coil across both, a resistor from their junction to earth; between 1 kilohm and 1 kilohm. */
export const BRIDGED = { hz: 41.25e6, henries: 1e-6, coilOhms: 3.239767, endOhms: 1e3 } as const;

/** The resistor that makes the null: (wL)^2 / 4r. */
const bridgedResistor = (): number => (2 * Math.PI * BRIDGED.hz * BRIDGED.henries) ** 2 / (4 * BRIDGED.coilOhms);

const bridged = once(() => {
  const { hz, henries, coilOhms, endOhms } = BRIDGED;
  const farads = 2 / ((2 * Math.PI * hz) ** 2 * henries);
  return solverOf('bridged trap', [
    `I1 0 a AC ${1 / endOhms}`,
    `Ra a 0 ${endOhms}`,
    `L1 a m ${henries}`,
    `R1 m b ${coilOhms}`,
    `C1 a j ${farads}`,
    `C2 j b ${farads}`,
    `Rj j 0 ${bridgedResistor()}`,
    `Rb b 0 ${endOhms}`,
  ]);
});

/** Decibels against half of the source's volts, which is what comes through where the trap is away. */
export function bridgedDb(hz: Float64Array, resistor: number, tuned: number = BRIDGED.hz): Float64Array {
  bridged().setValue('Rj', resistor * bridgedResistor());
  bridged().setValue('L1', BRIDGED.henries * (BRIDGED.hz / tuned) ** 2);
  return levels(bridged(), 'b', hz).map((volts) => decibels(volts / 0.5));
}

export const bridgedT: LiveFigure<'bridgedT'> = {
  controls: {
    resistor: slider(0.5, 2, 0.05, 1.5, 'times', 2),
    tuned: slider(40.5e6, 42e6, 0.05e6, 41.25e6, 'MHz', 2),
  },
  draw({ resistor, tuned }) {
    const hz = grid(39.75e6, 42.75e6, 601);
    const y = bridgedDb(hz, resistor, tuned);
    return {
      plot: {
        from: hz[0]!,
        to: hz.at(-1)!,
        low: -60,
        high: 0,
        lines: [
          { look: 'sheet', x: hz, y: bridgedDb(hz, 1).map((db) => Math.max(db, -66)) },
          { look: 'now', x: hz, y: y.map((db) => Math.max(db, -66)) },
        ],
      },
      // What comes through at the frequency that is to be stopped.
      readings: { depth: reading(Math.max(-99, bridgedDb(Float64Array.of(BRIDGED.hz), resistor, tuned)[0]!), 'dB', 0) },
    };
  },
};

/** Fine enough for the beat inside a pip; elsewhere one in so many is drawn. */
const POINTS = 16_384;
const COARSE = 32;
const FINE_HZ = 300e3;
const PIP_WIDTH_HZ = 25e3;
const PIP = 0.14;
const MARKED = { centre: 43.5e6, span: 9e6 } as const;

/** The curve with its trap, as seen with a pip added after detection or with a marker that went through the set. */
export const markers: LiveFigure<'markers'> = {
  controls: { marker: slider(40e6, 47e6, 0.25e6, 43.5e6, 'MHz', 2), way: switchOf(2) },
  draw({ marker, way }) {
    setTrap(ABSORBER.trap.hz, 0.12);
    const all = sweepFrequencies(MARKED.centre, MARKED.span, POINTS);
    const places = [...all.keys()].filter((i) => i % COARSE === 0 || Math.abs(all[i]! - marker) < FINE_HZ);
    const hz = Float64Array.from(places, (i) => all[i]!);
    const seen = levels(absorber(), 'p', hz);
    const top = highest(hz, seen).level;
    const y = shareOf(seen, top);
    const own = (PIP * levelAtHz(absorber(), 'p', marker)) / top;
    const through = way === 1;
    const pip = through ? own : PIP;
    const whole = new Float64Array(2 * POINTS);
    const sweep = { centreHz: MARKED.centre, spanHz: MARKED.span, mainsHz: MAINS_HZ, points: POINTS };
    addPip(whole, pipShape(sweep, marker, PIP_WIDTH_HZ), pip, 0);
    const shown = y.map((v, k) => (through ? withMarkers(v, own) : v) + whole[places[k]!]!);
    const base = through ? withMarkers(0, own) : 0;
    return {
      plot: {
        from: MARKED.centre - MARKED.span / 2,
        to: MARKED.centre + MARKED.span / 2,
        low: 0,
        high: 1.15,
        lines: [
          { look: 'retrace', x: [MARKED.centre - MARKED.span / 2, MARKED.centre + MARKED.span / 2], y: [base, base] },
          { look: 'now', x: hz, y: shown },
        ],
      },
      readings: { pip: reading(pip / PIP, 'share', 0), base: reading(base, 'share', 1) },
    };
  },
};
