/**
 * The service sheet's demands, each measured on a response curve and set beside its limits. Everything that says "inside" or "outside" comes from here.
 *
 * Levels are carrier magnitudes relative to the peak between `fromHz` and `toHz` (or to the level at `referenceHz`), linear; decibels are 20 log10 of
 * the same. One kind of item for each kind of demand:
 *   point      level at a frequency (ratio)
 *   window     highest over lowest level in a stretch (dB)
 *   tilt       level at the lower frequency over that at the higher (dB)
 *   trap       level at the trap's frequency (dB)
 *   notch      where the nearest local minimum lies, less the trap's frequency (Hz)
 *   skirt      highest level in a stretch (ratio)
 *   bandwidth  distance between the outer crossings of a level (Hz)
 *   centre     middle of those crossings, less the wanted centre (Hz)
 *   gain       level at a frequency (S-curve: height) over the nominal design's (dB)
 *   peak       where the highest level lies, less the wanted place (Hz)
 * and of an S-curve
 *   zero        where the curve crosses zero, less the centre (Hz)
 *   polarity    1 where it rises or falls as wanted, else 0 (ratio)
 *   separation  distance between the peaks (Hz)
 *   symmetry    height of the peak above the centre over that of the one below (ratio)
 *   linearity   distance from a straight line (ratio, see sCurveReading.ts)
 */
import { isInside as insideLimits } from '../base/limits.ts';
import { highest, lowest, nearestNotch, outerCrossings, type ResponseCurve, voltsAt } from './curveReading.ts';
import type { Specification, SpecSCurve } from './receiver.ts';
import { nonLinearity, readSCurve, type SCurve, valueAt } from './sCurveReading.ts';
import { headsOf } from './specHeads.ts';
import type { SpecItem, SpecItemKind } from './specItem.ts';

export type { SpecItem, SpecItemKind };

/** What a dead curve measures, so that every number stays finite. */
const FLOOR_DB = -200;
/** What a peak measures against no peak. */
const MOST_RATIO = 100;

/**
 * Every item of the sheet. `volts` may be in any unit for the relative items; `nominal` is the nominal design's curve in the same unit (null: `volts` is
 * in the unit of the response, and the sheet's own nominal figure serves). The curve must reach from `fromHz` to `toHz`.
 */
export function evaluateSpecification(
  spec: Specification,
  hz: Float64Array,
  volts: Float64Array,
  nominal: ResponseCurve | null,
): SpecItem[] {
  const curve: ResponseCurve = { hz, volts };
  if (spec.sCurve !== null) return sCurveItems(spec, spec.sCurve, curve, nominal);
  const reference =
    spec.referenceHz === undefined ? highest(curve, spec.fromHz, spec.toHz).volts : voltsAt(curve, spec.referenceHz);
  const ratio = (level: number): number => (reference > 0 ? level / reference : 0);
  const db = (level: number): number => decibels(ratio(level));
  const heads = headsOf(spec);
  const items: SpecItem[] = [];
  for (const [i, p] of spec.points.entries())
    items.push({ ...heads.points[i]!, measured: ratio(voltsAt(curve, p.hz)) });
  for (const [i, w] of spec.windows.entries()) {
    const measured = db(highest(curve, w.fromHz, w.toHz).volts) - db(lowest(curve, w.fromHz, w.toHz).volts);
    items.push({ ...heads.windows[i]!, measured });
  }
  for (const [i, t] of spec.tilts.entries())
    items.push({ ...heads.tilts[i]!, measured: db(voltsAt(curve, t.lowHz)) - db(voltsAt(curve, t.highHz)) });
  for (const [i, t] of spec.traps.entries()) {
    items.push({ ...heads.traps[i]!, measured: db(voltsAt(curve, t.hz)) });
    const notch = heads.notches[i];
    if (notch != null) items.push({ ...notch, measured: notchOffset(curve, t.hz, spec) });
  }
  for (const [i, s] of spec.skirts.entries())
    items.push({ ...heads.skirts[i]!, measured: ratio(highest(curve, s.fromHz, s.toHz).volts) });
  for (const [i, b] of spec.bandwidths.entries()) {
    const edges = outerCrossings(curve, reference * 10 ** (b.levelDb / 20), spec.fromHz, spec.toHz);
    const lowHz = edges === null ? spec.fromHz : edges.lowHz;
    const highHz = edges === null ? spec.fromHz : edges.highHz;
    items.push({ ...heads.bandwidths[i]!, hz: lowHz, toHz: highHz, measured: highHz - lowHz });
    const centre = heads.centres[i];
    if (centre != null) items.push({ ...centre, measured: (lowHz + highHz) / 2 - centre.hz });
  }
  if (spec.gain !== null) {
    const { hz: gainHz, nominal: printed } = spec.gain;
    const wanted = nominal === null ? printed : voltsAt(nominal, gainHz);
    items.push({ ...heads.gain!, measured: decibels(voltsAt(curve, gainHz) / wanted) });
  }
  for (const [i, p] of spec.peaks.entries())
    items.push({ ...heads.peaks[i]!, measured: highest(curve, spec.fromHz, spec.toHz).hz - p.hz });
  return items;
}

/** A curve that never crosses zero is as far off as the sheet can see. */
function sCurveItems(
  spec: Specification,
  demand: SpecSCurve,
  curve: ResponseCurve,
  nominal: ResponseCurve | null,
): SpecItem[] {
  const { centreHz, zero, separation, symmetry, linearity, risesWithFrequency } = demand;
  const read = readSCurve(curve, centreHz, spec.fromHz, spec.toHz);
  const [upper, lower] = read.top.hz > read.bottom.hz ? [read.top, read.bottom] : [read.bottom, read.top];
  const rises = upper === read.top;
  const lowSize = Math.abs(lower.volts);
  const item = (kind: SpecItemKind, hz: number, toHz: number | null, unit: SpecItem['unit']) => ({
    ...{ id: `${kind}:${centreHz}`, kind, hz, toHz, unit },
  });
  const items: SpecItem[] = [
    {
      ...item('zero', centreHz, null, 'hz'),
      measured: read.zeroHz === null ? spec.toHz - spec.fromHz : read.zeroHz - centreHz,
      ...{ low: -zero.toleranceHz, high: zero.toleranceHz, tolerance: zero.toleranceHz, weight: zero.weight },
    },
    {
      ...item('polarity', lower.hz, upper.hz, 'ratio'),
      measured: rises === risesWithFrequency ? 1 : 0,
      ...{ low: 1, high: null, tolerance: 0.1, weight: zero.weight / 2 },
    },
    {
      ...item('separation', lower.hz, upper.hz, 'hz'),
      measured: upper.hz - lower.hz,
      ...{ low: separation.minHz, high: separation.maxHz, tolerance: (separation.maxHz - separation.minHz) / 2 },
      weight: separation.weight,
    },
    {
      ...item('symmetry', lower.hz, upper.hz, 'ratio'),
      measured: lowSize > 0 ? Math.min(Math.abs(upper.volts) / lowSize, MOST_RATIO) : MOST_RATIO,
      ...{ low: symmetry.low, high: symmetry.high, tolerance: (symmetry.high - symmetry.low) / 2 },
      weight: symmetry.weight,
    },
  ];
  if (linearity !== null) {
    const { withinHz, max, weight } = linearity;
    items.push({
      ...item('linearity', centreHz - withinHz, centreHz + withinHz, 'ratio'),
      measured: nonLinearity(curve, centreHz, withinHz),
      ...{ low: null, high: max, tolerance: max, weight },
    });
  }
  for (const p of spec.points) {
    const measured = read.height > 0 ? valueAt(curve, p.hz) / read.height : 0;
    const { low, high, weight } = p;
    items.push({
      ...item('point', p.hz, null, 'ratio'),
      id: `point:${p.hz}`,
      measured,
      low,
      high,
      tolerance: (high - low) / 2,
      weight,
    });
  }
  if (spec.gain !== null) items.push(sCurveGain(spec, spec.gain, read, nominal));
  return items;
}

function sCurveGain(
  spec: Specification,
  { hz, minDb, nominal: printed, weight }: NonNullable<Specification['gain']>,
  read: SCurve,
  nominal: ResponseCurve | null,
): SpecItem {
  const wanted = nominal === null ? printed : readSCurve(nominal, hz, spec.fromHz, spec.toHz).height;
  const measured = decibels(read.height / wanted);
  const item = { id: `gain:${hz}`, kind: 'gain', hz, toHz: null, unit: 'db' } as const;
  return { ...item, measured, low: minDb, high: null, tolerance: Math.abs(minDb), weight };
}

export function isInside(item: SpecItem): boolean {
  return insideLimits(item, item.measured);
}

/**
 * The same sheet with every tolerance widened by `factor` (1 = as printed): windows about their target or middle, limits of ripple, tilt, notch and gain
 * times the factor, levels of traps and skirts times the factor (a trap's decibels rise by 20 log10 of it).
 */
export function widenSpecification(spec: Specification, factor: number): Specification {
  if (factor === 1) return spec;
  const grow = (middle: number, edge: number): number => middle + (edge - middle) * factor;
  const trapDb = 20 * Math.log10(factor);
  return {
    ...spec,
    points: spec.points.map((p) => {
      const low = grow(p.target, p.low);
      return { ...p, low: spec.sCurve === null ? Math.max(low, 0) : low, high: grow(p.target, p.high) };
    }),
    windows: spec.windows.map((w) => ({ ...w, maxRippleDb: w.maxRippleDb * factor })),
    tilts: spec.tilts.map((t) => ({ ...t, maxDb: t.maxDb * factor })),
    traps: spec.traps.map((t) => ({
      ...t,
      maxDb: Math.min(t.maxDb + trapDb, 0),
      notchWithinHz: t.notchWithinHz === null ? null : t.notchWithinHz * factor,
    })),
    skirts: spec.skirts.map((s) => ({ ...s, max: s.max * factor })),
    bandwidths: spec.bandwidths.map((b) => {
      const middle = (b.minHz + b.maxHz) / 2;
      return {
        ...b,
        minHz: Math.max(grow(middle, b.minHz), 0),
        maxHz: grow(middle, b.maxHz),
        centreToleranceHz: b.centreToleranceHz === null ? null : b.centreToleranceHz * factor,
      };
    }),
    peaks: spec.peaks.map((p) => ({ ...p, toleranceHz: p.toleranceHz * factor })),
    sCurve: spec.sCurve === null ? null : widenSCurve(spec.sCurve, factor),
    gain: spec.gain === null ? null : { ...spec.gain, minDb: spec.gain.minDb * factor },
  };
}

function widenSCurve(s: SpecSCurve, factor: number): SpecSCurve {
  const middle = (s.separation.minHz + s.separation.maxHz) / 2;
  const half = ((s.separation.maxHz - s.separation.minHz) / 2) * factor;
  return {
    ...s,
    zero: { ...s.zero, toleranceHz: s.zero.toleranceHz * factor },
    separation: { ...s.separation, minHz: Math.max(middle - half, 0), maxHz: middle + half },
    // A ratio widens in decibels, so that twice too high and twice too low stay the same mistake.
    symmetry: { ...s.symmetry, low: s.symmetry.low ** factor, high: s.symmetry.high ** factor },
    linearity: s.linearity === null ? null : { ...s.linearity, max: s.linearity.max * factor },
  };
}

function notchOffset(curve: ResponseCurve, hz: number, spec: Specification): number {
  const notch = nearestNotch(curve, hz, spec.fromHz, spec.toHz);
  if (notch !== null) return notch.hz - hz;
  // No notch at all: as far off as the sheet can see.
  return hz - spec.fromHz > spec.toHz - hz ? spec.fromHz - hz : spec.toHz - hz;
}

function decibels(ratio: number): number {
  return ratio > 0 ? Math.max(20 * Math.log10(ratio), FLOOR_DB) : FLOOR_DB;
}
