/** Lines of a sheet in the making: put on, given other limits, taken off. What the design gives stands in the middle of what is asked. */
import { clamp } from '../base/rounding.ts';
import type { Deck } from '../physics/deck.ts';
import type { Receiver, SheetResponse, Specification } from '../receiver/receiver.ts';
import { evaluateSpecification, type SpecItem } from '../receiver/specification.ts';
import { createStatedResponse } from '../receiver/statedResponse.ts';

export const LINE_KINDS = ['point', 'window', 'trap', 'bandwidth', 'tilt', 'skirt', 'peak'] as const;
export type LineKind = (typeof LINE_KINDS)[number];
/** These ask about a stretch; a bandwidth asks at a level; the rest at a frequency. */
export const OF_STRETCH: ReadonlySet<LineKind> = new Set(['window', 'tilt', 'skirt']);

export interface NewLine {
  readonly kind: LineKind;
  /** of a bandwidth the level, decibels; of a peak it says nothing */
  readonly at: number;
  readonly to: number;
}

export type LineRefusal = 'outside' | 'twice' | 'backwards' | 'noWidth' | 'noTrap';

/** The one number of a line that is its limit, as people say it. */
export interface LineLimit {
  readonly value: number;
  readonly unit: 'percent' | 'dB' | 'Hz';
  /** both ways from what the design gives, or a bound on one side */
  readonly sign: 'either' | 'most' | 'least';
}

const WEIGHT = 1;
const LEVEL_ROOM = 0.05;
const DB_ROOM = 1;

export function addLine(
  receiver: Receiver,
  deck: Deck,
  response: SheetResponse,
  line: NewLine,
): Specification | LineRefusal {
  const spec = response.specification;
  const { kind, at, to } = line;
  const inside = (hz: number): boolean => hz >= spec.fromHz && hz <= spec.toHz;
  if (kind === 'bandwidth' ? !(at < 0 && at >= -60) : kind !== 'peak' && !inside(at)) return 'outside';
  if (OF_STRETCH.has(kind)) {
    if (!inside(to)) return 'outside';
    if (to <= at) return 'backwards';
  }
  const empty: Specification = {
    ...spec,
    ...{ points: [], windows: [], tilts: [], traps: [], skirts: [], bandwidths: [], peaks: [], gain: null },
  };
  const width = spec.toHz - spec.fromHz;
  const gauge: Specification = {
    ...empty,
    ...(kind === 'point' ? { points: [{ hz: at, target: 0, low: -9, high: 9, weight: WEIGHT }] } : {}),
    ...(kind === 'window' ? { windows: [{ fromHz: at, toHz: to, maxRippleDb: 60, weight: WEIGHT }] } : {}),
    ...(kind === 'tilt' ? { tilts: [{ lowHz: at, highHz: to, maxDb: 60, weight: WEIGHT }] } : {}),
    ...(kind === 'trap' ? { traps: [{ hz: at, maxDb: 0, notchWithinHz: null, weight: WEIGHT }] } : {}),
    ...(kind === 'skirt' ? { skirts: [{ fromHz: at, toHz: to, max: 9, weight: WEIGHT }] } : {}),
    ...(kind === 'bandwidth'
      ? {
          bandwidths: [
            { levelDb: at, minHz: 0, maxHz: width, centreHz: null, centreToleranceHz: null, weight: WEIGHT },
          ],
        }
      : {}),
    ...(kind === 'peak' ? { peaks: [{ hz: (spec.fromHz + spec.toHz) / 2, toleranceHz: width, weight: WEIGHT }] } : {}),
  };
  const stated = createStatedResponse(receiver, deck, { ...response, specification: gauge });
  const [item] = evaluateSpecification(gauge, stated.hz, stated.nominal.volts, null);
  const { measured } = item!;
  const wide = kind === 'peak' ? Math.round((spec.fromHz + spec.toHz) / 2 + measured) : at;
  if (idsOf(spec).has(kind === 'peak' ? `peak:${wide}` : item!.id)) return 'twice';
  switch (kind) {
    case 'point': {
      const target = rounded(measured);
      const [low, high] = [Math.max(0, rounded(target - LEVEL_ROOM)), rounded(target + LEVEL_ROOM)];
      return {
        ...spec,
        points: [...spec.points, { hz: at, target, low, high, weight: WEIGHT }].sort((a, b) => a.hz - b.hz),
      };
    }
    case 'window':
      return {
        ...spec,
        windows: [...spec.windows, { fromHz: at, toHz: to, maxRippleDb: tenth(measured + DB_ROOM), weight: WEIGHT }],
      };
    case 'tilt':
      return {
        ...spec,
        tilts: [...spec.tilts, { lowHz: at, highHz: to, maxDb: tenth(Math.abs(measured) + DB_ROOM), weight: WEIGHT }],
      };
    case 'trap': {
      const maxDb = Math.ceil(measured + 3);
      return maxDb > -1
        ? 'noTrap'
        : { ...spec, traps: [...spec.traps, { hz: at, maxDb, notchWithinHz: null, weight: WEIGHT }] };
    }
    case 'skirt':
      return {
        ...spec,
        skirts: [
          ...spec.skirts,
          { fromHz: at, toHz: to, max: Math.min(1, rounded(1.5 * measured + 0.02)), weight: WEIGHT },
        ],
      };
    case 'bandwidth': {
      if (!(measured > 0 && measured < 0.98 * width)) return 'noWidth';
      const either = 0.08 * measured;
      const ends = { minHz: Math.round(measured - either), maxHz: Math.round(measured + either) };
      return {
        ...spec,
        bandwidths: [
          ...spec.bandwidths,
          { levelDb: at, ...ends, centreHz: null, centreToleranceHz: null, weight: WEIGHT },
        ],
      };
    }
    case 'peak':
      return { ...spec, peaks: [...spec.peaks, { hz: wide, toleranceHz: Math.round(width / 40), weight: WEIGHT }] };
  }
}

function idsOf(s: Specification): ReadonlySet<string> {
  return new Set([
    ...s.points.map((p) => `point:${p.hz}`),
    ...s.windows.map((w) => `window:${w.fromHz}-${w.toHz}`),
    ...s.tilts.map((t) => `tilt:${t.lowHz}-${t.highHz}`),
    ...s.traps.map((t) => `trap:${t.hz}`),
    ...s.skirts.map((k) => `skirt:${k.fromHz}-${k.toHz}`),
    ...s.bandwidths.map((b) => `bandwidth:${b.levelDb}`),
    ...s.peaks.map((p) => `peak:${p.hz}`),
  ]);
}

/** null: a line whose limits are not one figure, such as those of an S-curve. */
export function limitOf(item: SpecItem): LineLimit | null {
  const { kind, low, high, tolerance } = item;
  if (kind === 'point') return { value: 100 * tolerance, unit: 'percent', sign: 'either' };
  if (kind === 'skirt') return { value: 100 * high!, unit: 'percent', sign: 'most' };
  if (kind === 'window' || kind === 'trap') return { value: high!, unit: 'dB', sign: 'most' };
  if (kind === 'tilt') return { value: high!, unit: 'dB', sign: 'either' };
  if (kind === 'gain') return { value: low!, unit: 'dB', sign: 'least' };
  if (kind === 'bandwidth' || kind === 'peak' || kind === 'notch' || kind === 'centre')
    return { value: tolerance, unit: 'Hz', sign: 'either' };
  return null;
}

/** The sheet with another limit on a line. */
export function withLimit(spec: Specification, item: SpecItem, value: number): Specification {
  const { id, kind, measured } = item;
  const at = <T>(list: readonly T[], name: (one: T) => string, change: (one: T) => T): T[] =>
    list.map((one) => (name(one) === id ? change(one) : one));
  switch (kind) {
    case 'point':
      return {
        ...spec,
        points: at(
          spec.points,
          (p) => `point:${p.hz}`,
          (p) => {
            return { ...p, low: Math.max(0, rounded(p.target - value / 100)), high: rounded(p.target + value / 100) };
          },
        ),
      };
    case 'window':
      return {
        ...spec,
        windows: at(
          spec.windows,
          (w) => `window:${w.fromHz}-${w.toHz}`,
          (w) => ({ ...w, maxRippleDb: value }),
        ),
      };
    case 'tilt':
      return {
        ...spec,
        tilts: at(
          spec.tilts,
          (t) => `tilt:${t.lowHz}-${t.highHz}`,
          (t) => ({ ...t, maxDb: value }),
        ),
      };
    case 'trap':
      return {
        ...spec,
        traps: at(
          spec.traps,
          (t) => `trap:${t.hz}`,
          (t) => ({ ...t, maxDb: value }),
        ),
      };
    case 'notch':
      return {
        ...spec,
        traps: at(
          spec.traps,
          (t) => `notch:${t.hz}`,
          (t) => ({ ...t, notchWithinHz: value }),
        ),
      };
    case 'skirt':
      return {
        ...spec,
        skirts: at(
          spec.skirts,
          (s) => `skirt:${s.fromHz}-${s.toHz}`,
          (s) => ({ ...s, max: value / 100 }),
        ),
      };
    case 'bandwidth':
      return {
        ...spec,
        bandwidths: at(
          spec.bandwidths,
          (b) => `bandwidth:${b.levelDb}`,
          (b) => {
            return { ...b, minHz: Math.max(0, Math.round(measured - value)), maxHz: Math.round(measured + value) };
          },
        ),
      };
    case 'centre':
      return {
        ...spec,
        bandwidths: at(
          spec.bandwidths,
          (b) => `centre:${b.levelDb}`,
          (b) => ({ ...b, centreToleranceHz: value }),
        ),
      };
    case 'peak':
      return {
        ...spec,
        peaks: at(
          spec.peaks,
          (p) => `peak:${p.hz}`,
          (p) => ({ ...p, toleranceHz: value }),
        ),
      };
    case 'gain':
      return spec.gain === null ? spec : { ...spec, gain: { ...spec.gain, minDb: -Math.abs(value) } };
    default:
      return spec;
  }
}

export function withoutLine(spec: Specification, id: string): Specification {
  return {
    ...spec,
    points: spec.points.filter((p) => `point:${p.hz}` !== id),
    windows: spec.windows.filter((w) => `window:${w.fromHz}-${w.toHz}` !== id),
    tilts: spec.tilts.filter((t) => `tilt:${t.lowHz}-${t.highHz}` !== id),
    traps: spec.traps
      .filter((t) => `trap:${t.hz}` !== id)
      .map((t) => (`notch:${t.hz}` === id ? { ...t, notchWithinHz: null } : t)),
    skirts: spec.skirts.filter((s) => `skirt:${s.fromHz}-${s.toHz}` !== id),
    bandwidths: spec.bandwidths
      .filter((b) => `bandwidth:${b.levelDb}` !== id)
      .map((b) => (`centre:${b.levelDb}` === id ? { ...b, centreHz: null, centreToleranceHz: null } : b)),
    peaks: spec.peaks.filter((p) => `peak:${p.hz}` !== id),
    gain: spec.gain !== null && id === `gain:${spec.gain.hz}` ? null : spec.gain,
  };
}

const rounded = (value: number): number => Number(clamp(value, -9, 9).toFixed(3));
const tenth = (value: number): number => Math.ceil(value * 10) / 10;
