/** Lines of a sheet in the making given other limits, or taken off. */
import type { Specification, SpecSCurve } from '../receiver/receiver.ts';
import type { SpecItem } from '../receiver/specification.ts';
import { rounded } from './sheetLines.ts';

/** The one number of a line that is its limit, as people say it. */
export interface LineLimit {
  readonly value: number;
  readonly unit: 'percent' | 'dB' | 'Hz';
  /** both ways from what the design gives, or a bound on one side */
  readonly sign: 'either' | 'most' | 'least';
}

/** null: a line that leaves no room, such as the sense of an S-curve. */
export function limitOf(item: SpecItem): LineLimit | null {
  const { kind, low, high, tolerance } = item;
  // A share of the other peak: as much up as down on a scale of ratios.
  if (kind === 'symmetry') return { value: 100 * (Math.sqrt(high! / low!) - 1), unit: 'percent', sign: 'either' };
  if (kind === 'linearity') return { value: 100 * high!, unit: 'percent', sign: 'most' };
  if (kind === 'point') return { value: 100 * tolerance, unit: 'percent', sign: 'either' };
  if (kind === 'skirt') return { value: 100 * high!, unit: 'percent', sign: 'most' };
  if (kind === 'window' || kind === 'trap') return { value: high!, unit: 'dB', sign: 'most' };
  if (kind === 'tilt') return { value: high!, unit: 'dB', sign: 'either' };
  if (kind === 'gain') return { value: low!, unit: 'dB', sign: 'least' };
  if (IN_HERTZ.has(kind)) return { value: tolerance, unit: 'Hz', sign: 'either' };
  return null;
}

const IN_HERTZ: ReadonlySet<SpecItem['kind']> = new Set([
  ...(['bandwidth', 'peak', 'notch', 'centre', 'zero', 'separation'] as const),
]);

/** What every S-curve is asked for. */
const NEEDED: ReadonlySet<SpecItem['kind']> = new Set(['zero', 'polarity', 'separation', 'symmetry']);

export const canBeTakenOff = ({ kind }: SpecItem): boolean => !NEEDED.has(kind);

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
            const low = rounded(p.target - value / 100);
            // Of an S-curve levels have a sign.
            return { ...p, low: spec.sCurve === null ? Math.max(0, low) : low, high: rounded(p.target + value / 100) };
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
    case 'zero':
      return ofSCurve(spec, (s) => ({ ...s, zero: { ...s.zero, toleranceHz: value } }));
    case 'separation':
      return ofSCurve(spec, (s) => ({
        ...s,
        separation: {
          ...s.separation,
          minHz: Math.max(0, Math.round(measured - value)),
          maxHz: Math.round(measured + value),
        },
      }));
    case 'symmetry': {
      const uneven = 1 + value / 100;
      const [low, high] = [rounded(measured / uneven), rounded(measured * uneven)];
      return ofSCurve(spec, (s) => ({ ...s, symmetry: { ...s.symmetry, low, high } }));
    }
    case 'linearity':
      return ofSCurve(spec, (s) =>
        s.linearity === null ? s : { ...s, linearity: { ...s.linearity, max: value / 100 } },
      );
    case 'gain':
      return spec.gain === null ? spec : { ...spec, gain: { ...spec.gain, minDb: -Math.abs(value) } };
    default:
      return spec;
  }
}

function ofSCurve(spec: Specification, change: (asked: SpecSCurve) => SpecSCurve): Specification {
  return spec.sCurve === null ? spec : { ...spec, sCurve: change(spec.sCurve) };
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
    sCurve:
      spec.sCurve !== null && id === `linearity:${spec.sCurve.centreHz}`
        ? { ...spec.sCurve, linearity: null }
        : spec.sCurve,
    gain: spec.gain !== null && id === `gain:${spec.gain.hz}` ? null : spec.gain,
  };
}
