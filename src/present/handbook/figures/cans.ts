/** Figures of tuned circuits: one slug, one can of two circuits, three staggered stages. */
import { slugShare } from '../../../receiver/slugLaw.ts';
import { decibels, grid, levels, once, retune, solverOf, tank } from '../circuits.ts';
import { type LiveFigure, reading, shareOf, slider, waxAndNow } from '../liveFigure.ts';
import { halfPower, highest, peaks, widthAt } from '../read.ts';

/** A core of twenty turns of travel that moves its coil by a fifth each way. */
export const SLUG = { hz: 44e6, q: 15, henries: 1e-6, travelTurns: 20, reach: 0.2 } as const;

/** Inductance with the core so many turns further in than half way. */
function slugCoil(turns: number): number {
  const { henries, reach, travelTurns } = SLUG;
  return henries * (1 - reach + 2 * reach * slugShare({}, 0.5 + turns / travelTurns));
}

const tuned = once(() => solverOf('one slug', ['I1 0 a AC 1m', tank('a', 'a', SLUG)]));

function withCore(turns: number, hz: Float64Array): Float64Array {
  tuned().setValue('La', slugCoil(turns));
  return levels(tuned(), 'a', hz);
}

export const slug: LiveFigure<'slug'> = {
  controls: { turns: slider(-4, 4, 0.125, 0, 'turns', 3) },
  draw({ turns }) {
    const hz = grid(39e6, 49e6, 401);
    const home = withCore(0, hz);
    const top = highest(hz, home).level;
    const now = withCore(turns, hz);
    const peak = highest(hz, now);
    return {
      plot: {
        from: 39e6,
        to: 49e6,
        low: 0,
        high: 1.05,
        lines: waxAndNow(hz, home, now, top),
        coreTurns: turns,
      },
      readings: {
        peak: reading(peak.hz, 'MHz', 2),
        moved: reading(peak.hz - highest(hz, home).hz, 'kHz', 0),
      },
    };
  },
};

export const CAN = { hz: 10.7e6, henries: 2e-6, q: 60 } as const;

const can = once(() =>
  solverOf('one can', ['I1 0 a AC 1m', tank('a', 'a', CAN), tank('b', 'b', CAN), `K1 La Lb ${1 / CAN.q}`]),
);

export interface CanReading {
  readonly hz: Float64Array;
  /** of the best that the same two circuits can give: half the root of their resistances, at critical coupling */
  readonly y: Float64Array;
  /** hertz; null with one hump */
  readonly apart: number | null;
  readonly dipDb: number | null;
  readonly width: number | null;
  readonly height: number;
}

export function readCan(k: number, q: number, points = 801): CanReading {
  const solver = can();
  retune(solver, 'a', { ...CAN, q });
  retune(solver, 'b', { ...CAN, q });
  solver.setValue('K1', k);
  const hz = grid(10.1e6, 11.3e6, points);
  const best = 1e-3 * q * 2 * Math.PI * CAN.hz * CAN.henries * 0.5;
  const y = shareOf(levels(solver, 'b', hz), best);
  const humps = peaks(hz, y);
  const [low, high] = humps;
  const dip =
    low === undefined || high === undefined
      ? null
      : highest(
          hz,
          y.map((v, i) => (hz[i]! > low.hz && hz[i]! < high.hz ? v : 9)),
          -1,
        );
  const deep = dip === null ? 0 : decibels(dip.level / ((low!.level + high!.level) / 2));
  // A crown that is flat to a thousandth of a decibel has one hump, whatever the samples say.
  const dipDb = deep < -1e-3 ? deep : null;
  const top = highest(hz, y).level;
  return {
    hz,
    y,
    apart: dipDb === null ? null : high!.hz - low!.hz,
    dipDb,
    width: widthAt(hz, y, halfPower(top)),
    height: top,
  };
}

export const oneCan: LiveFigure<'oneCan'> = {
  controls: { coupling: slider(0.005, 0.05, 0.0005, 0.03, 'share', 2), q: slider(20, 100, 5, 60, 'bare', 0) },
  draw({ coupling, q }) {
    const now = readCan(coupling, q);
    const critical = readCan(1 / q, q);
    return {
      plot: {
        from: 10.1e6,
        to: 11.3e6,
        low: 0,
        high: 1,
        lines: [
          { look: 'wax', x: critical.hz, y: critical.y },
          { look: 'now', x: now.hz, y: now.y },
        ],
      },
      readings: {
        apart: reading(now.apart, 'kHz', 0),
        dip: reading(now.dipDb, 'dB', 2),
        width: reading(now.width, 'kHz', 0),
        height: reading(now.height, 'share', 0),
      },
    };
  },
};

/** A flat triple: 4 MHz wide round 43.5, stages of 15 pF and 6.2 mS. */
export const STRIP = { hz: 43.5e6, width: 4e6, farads: 15e-12, siemens: 6.2e-3 } as const;

interface Stage {
  readonly hz: number;
  readonly width: number;
}

/** The recipe for three: a wide one in the middle, and two of half its width 0.433 of the band to either side; `spread` 0 puts all three in the middle. */
export function stagesAt(spread: number, middleOff = 0): readonly Stage[] {
  const { hz, width } = STRIP;
  const off = spread * (Math.sqrt(3) / 4) * width;
  return [
    { hz: hz - off, width: width / 2 },
    { hz: hz + middleOff, width },
    { hz: hz + off, width: width / 2 },
  ];
}

const stageTank = ({ hz, width }: Stage) => {
  const henries = 1 / ((2 * Math.PI * hz) ** 2 * STRIP.farads);
  return { hz, q: hz / width, henries };
};

const strip = once(() => {
  const lines = [`I1 0 n0 AC ${STRIP.siemens}`];
  for (const [i, stage] of stagesAt(1).entries()) {
    lines.push(tank(`${i}`, `n${i}`, stageTank(stage)));
    if (i > 0) lines.push(`G${i} n${i} 0 n${i - 1} 0 ${STRIP.siemens}`);
  }
  return solverOf('three stages', lines);
});

/** Volts at the end of the strip for each frequency, from one volt at its first grid. */
export function stripLevels(stages: readonly Stage[], hz: Float64Array): Float64Array {
  for (const [i, stage] of stages.entries()) {
    const { q, henries } = stageTank(stage);
    strip().setValue(`L${i}`, henries);
    strip().setValue(`R${i}`, q * 2 * Math.PI * stage.hz * henries);
  }
  return levels(strip(), 'n2', hz);
}

const STRIP_FROM = 38.5e6;
const STRIP_TO = 48.5e6;

/** The high shoulder over the low one, each three quarters of the way to its edge. */
export function leanDb(hz: Float64Array, y: Float64Array): number {
  const at = (f: number): number => y[Math.round((f - hz[0]!) / (hz[1]! - hz[0]!))]!;
  const off = (3 / 8) * STRIP.width;
  return decibels(at(STRIP.hz + off) / at(STRIP.hz - off));
}

export const stagger: LiveFigure<'stagger'> = {
  controls: {
    spread: slider(0, 1.5, 0.05, 1, 'times', 2),
    middle: slider(-1.5e6, 1.5e6, 0.05e6, 0, 'MHz', 2),
  },
  draw({ spread, middle: off }) {
    const hz = grid(STRIP_FROM, STRIP_TO, 601);
    const right = stripLevels(stagesAt(1), hz);
    const middle = stripLevels(stagesAt(1), Float64Array.of(STRIP.hz))[0]!;
    const now = stripLevels(stagesAt(spread, off), hz);
    const top = highest(hz, now);
    return {
      plot: {
        from: STRIP_FROM,
        to: STRIP_TO,
        low: 0,
        high: 1,
        lines: [
          { look: 'sheet', x: hz, y: shareOf(right, highest(hz, right).level) },
          { look: 'now', x: hz, y: shareOf(now, top.level) },
        ],
      },
      readings: {
        width: reading(widthAt(hz, now, halfPower(top.level)), 'MHz', 2),
        gain: reading(decibels(top.level / middle), 'dB', 1),
        lean: reading(leanDb(hz, now), 'dB', 1),
      },
    };
  },
};
