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
 *   gain       level at a frequency over the nominal design's (dB)
 */
import { highest, lowest, nearestNotch, outerCrossings, type ResponseCurve, voltsAt } from './curveReading.ts';
import type { Specification } from './receiver.ts';

export type SpecItemKind = 'point' | 'window' | 'tilt' | 'trap' | 'notch' | 'skirt' | 'bandwidth' | 'centre' | 'gain';

export interface SpecItem {
  /** unique in the sheet: `point:45750000`, `window:42900000-44700000`, `bandwidth:-3` */
  readonly id: string;
  readonly kind: SpecItemKind;
  readonly hz: number;
  /** the other end, where the item is about a stretch or a pair */
  readonly toHz: number | null;
  readonly measured: number;
  /** limits, inclusive; null = open */
  readonly low: number | null;
  readonly high: number | null;
  readonly unit: 'ratio' | 'db' | 'hz';
  /** one tolerance, in `unit`: half a window's width, or the limit itself; 6 dB for a trap's depth (twice the level), as for a skirt */
  readonly tolerance: number;
  readonly weight: number;
}

/** What a dead curve measures, so that every figure stays finite. */
const FLOOR_DB = -200;

/**
 * Every item of the sheet. `volts` may be in any unit for the relative items; `nominal` is the nominal design's curve in the same unit (null: `volts` is
 * per ampere of the deck source, and the sheet's own nominal figure serves). The curve must reach from `fromHz` to `toHz`.
 */
export function evaluateSpecification(
  spec: Specification,
  hz: Float64Array,
  volts: Float64Array,
  nominal: ResponseCurve | null,
): SpecItem[] {
  const curve: ResponseCurve = { hz, volts };
  const reference =
    spec.referenceHz === undefined ? highest(curve, spec.fromHz, spec.toHz).volts : voltsAt(curve, spec.referenceHz);
  const ratio = (level: number): number => (reference > 0 ? level / reference : 0);
  const db = (level: number): number => decibels(ratio(level));
  const items: SpecItem[] = [];

  for (const p of spec.points) {
    const item = { id: `point:${p.hz}`, kind: 'point', hz: p.hz, toHz: null, unit: 'ratio' } as const;
    const measured = ratio(voltsAt(curve, p.hz));
    items.push({ ...item, measured, low: p.low, high: p.high, tolerance: (p.high - p.low) / 2, weight: p.weight });
  }
  for (const w of spec.windows) {
    const item = {
      id: `window:${w.fromHz}-${w.toHz}`,
      kind: 'window',
      hz: w.fromHz,
      toHz: w.toHz,
      unit: 'db',
    } as const;
    const measured = db(highest(curve, w.fromHz, w.toHz).volts) - db(lowest(curve, w.fromHz, w.toHz).volts);
    items.push({ ...item, measured, low: null, high: w.maxRippleDb, tolerance: w.maxRippleDb, weight: w.weight });
  }
  for (const t of spec.tilts) {
    const item = { id: `tilt:${t.lowHz}-${t.highHz}`, kind: 'tilt', hz: t.lowHz, toHz: t.highHz, unit: 'db' } as const;
    const measured = db(voltsAt(curve, t.lowHz)) - db(voltsAt(curve, t.highHz));
    items.push({ ...item, measured, low: -t.maxDb, high: t.maxDb, tolerance: t.maxDb, weight: t.weight });
  }
  for (const t of spec.traps) {
    const item = { id: `trap:${t.hz}`, kind: 'trap', hz: t.hz, toHz: null, unit: 'db' } as const;
    const measured = db(voltsAt(curve, t.hz));
    items.push({ ...item, measured, low: null, high: t.maxDb, tolerance: 6, weight: t.weight });
    if (t.notchWithinHz === null) continue;
    const within = t.notchWithinHz;
    items.push({
      ...{ id: `notch:${t.hz}`, kind: 'notch', hz: t.hz, toHz: null, unit: 'hz' },
      ...{ measured: notchOffset(curve, t.hz, spec), low: -within, high: within, tolerance: within, weight: t.weight },
    });
  }
  for (const s of spec.skirts) {
    const item = {
      id: `skirt:${s.fromHz}-${s.toHz}`,
      kind: 'skirt',
      hz: s.fromHz,
      toHz: s.toHz,
      unit: 'ratio',
    } as const;
    const measured = ratio(highest(curve, s.fromHz, s.toHz).volts);
    items.push({ ...item, measured, low: null, high: s.max, tolerance: s.max, weight: s.weight });
  }
  for (const b of spec.bandwidths) {
    const edges = outerCrossings(curve, reference * 10 ** (b.levelDb / 20), spec.fromHz, spec.toHz);
    const lowHz = edges === null ? spec.fromHz : edges.lowHz;
    const highHz = edges === null ? spec.fromHz : edges.highHz;
    items.push({
      ...{ id: `bandwidth:${b.levelDb}`, kind: 'bandwidth', hz: lowHz, toHz: highHz, unit: 'hz' },
      ...{ measured: highHz - lowHz, low: b.minHz, high: b.maxHz, tolerance: (b.maxHz - b.minHz) / 2 },
      weight: b.weight,
    });
    if (b.centreHz === null || b.centreToleranceHz === null) continue;
    const within = b.centreToleranceHz;
    items.push({
      ...{ id: `centre:${b.levelDb}`, kind: 'centre', hz: b.centreHz, toHz: null, unit: 'hz' },
      ...{ measured: (lowHz + highHz) / 2 - b.centreHz, low: -within, high: within, tolerance: within },
      weight: b.weight,
    });
  }
  if (spec.gain !== null) {
    const { hz: gainHz, minDb, nominalVoltsPerAmp, weight } = spec.gain;
    const wanted = nominal === null ? nominalVoltsPerAmp : voltsAt(nominal, gainHz);
    const measured = decibels(voltsAt(curve, gainHz) / wanted);
    const item = { id: `gain:${gainHz}`, kind: 'gain', hz: gainHz, toHz: null, unit: 'db' } as const;
    items.push({ ...item, measured, low: minDb, high: null, tolerance: Math.abs(minDb), weight });
  }
  return items;
}

export function isInside(item: SpecItem): boolean {
  return (item.low === null || item.measured >= item.low) && (item.high === null || item.measured <= item.high);
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
    points: spec.points.map((p) => ({ ...p, low: Math.max(grow(p.target, p.low), 0), high: grow(p.target, p.high) })),
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
    gain: spec.gain === null ? null : { ...spec.gain, minDb: spec.gain.minDb * factor },
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
