/** Lines of a sheet in the making given other limits, or taken off. */
import type { Specification, SpecPoint, SpecSCurve } from '../receiver/receiver.ts';
import { headsOf } from '../receiver/specHeads.ts';
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

const IN_HERTZ: ReadonlySet<SpecItem['kind']> = new Set<SpecItem['kind']>([
  'bandwidth',
  'peak',
  'notch',
  'centre',
  'zero',
  'separation',
]);

/** What every S-curve is asked for. */
const NEEDED: ReadonlySet<SpecItem['kind']> = new Set(['zero', 'polarity', 'separation', 'symmetry']);

export const canBeTakenOff = ({ kind }: SpecItem): boolean => !NEEDED.has(kind);

/** The sheet with another limit on a line. */
export function withLimit(spec: Specification, { id, kind, measured }: SpecItem, value: number): Specification {
  const heads = headsOf(spec);
  const change = <T>(list: readonly T[], named: Named, limit: (one: T) => Partial<T>): T[] =>
    changed(list, named, id, limit);
  switch (kind) {
    case 'point': {
      // Of an S-curve levels have a sign.
      const least = spec.sCurve === null ? 0 : Number.NEGATIVE_INFINITY;
      const limits = ({ target }: SpecPoint) => ({
        low: Math.max(least, rounded(target - value / 100)),
        high: rounded(target + value / 100),
      });
      return { ...spec, points: change(spec.points, heads.points, limits) };
    }
    case 'window':
      return { ...spec, windows: change(spec.windows, heads.windows, () => ({ maxRippleDb: value })) };
    case 'tilt':
      return { ...spec, tilts: change(spec.tilts, heads.tilts, () => ({ maxDb: value })) };
    case 'trap':
      return { ...spec, traps: change(spec.traps, heads.traps, () => ({ maxDb: value })) };
    case 'notch':
      return { ...spec, traps: change(spec.traps, heads.notches, () => ({ notchWithinHz: value })) };
    case 'skirt':
      return { ...spec, skirts: change(spec.skirts, heads.skirts, () => ({ max: value / 100 })) };
    case 'bandwidth':
      return { ...spec, bandwidths: change(spec.bandwidths, heads.bandwidths, () => hertzAbout(measured, value)) };
    case 'centre':
      return { ...spec, bandwidths: change(spec.bandwidths, heads.centres, () => ({ centreToleranceHz: value })) };
    case 'peak':
      return { ...spec, peaks: change(spec.peaks, heads.peaks, () => ({ toleranceHz: value })) };
    case 'zero':
      return ofSCurve(spec, (s) => ({ zero: { ...s.zero, toleranceHz: value } }));
    case 'separation':
      return ofSCurve(spec, (s) => ({ separation: { ...s.separation, ...hertzAbout(measured, value) } }));
    case 'symmetry': {
      const uneven = 1 + value / 100;
      const [low, high] = [rounded(measured / uneven), rounded(measured * uneven)];
      return ofSCurve(spec, (s) => ({ symmetry: { ...s.symmetry, low, high } }));
    }
    case 'linearity':
      return ofSCurve(spec, (s) => ({ linearity: s.linearity && { ...s.linearity, max: value / 100 } }));
    case 'gain':
      return spec.gain === null ? spec : { ...spec, gain: { ...spec.gain, minDb: -Math.abs(value) } };
    default:
      return spec;
  }
}

/** Lines of a list in its order, as the sheet calls them; null: there is none. */
type Named = readonly (SpecItem | null)[];

function changed<T>(list: readonly T[], named: Named, id: string, change: (one: T) => Partial<T>): T[] {
  return list.map((one, i) => (named[i]?.id === id ? { ...one, ...change(one) } : one));
}

const hertzAbout = (measured: number, either: number): { readonly minHz: number; readonly maxHz: number } => ({
  minHz: Math.max(0, Math.round(measured - either)),
  maxHz: Math.round(measured + either),
});

function ofSCurve(spec: Specification, change: (asked: SpecSCurve) => Partial<SpecSCurve>): Specification {
  return spec.sCurve === null ? spec : { ...spec, sCurve: { ...spec.sCurve, ...change(spec.sCurve) } };
}

export function withoutLine(spec: Specification, id: string): Specification {
  const heads = headsOf(spec);
  const left = <T>(list: readonly T[], named: Named): T[] => list.filter((_, i) => named[i]?.id !== id);
  const traps = changed(spec.traps, heads.notches, id, () => ({ notchWithinHz: null }));
  const noCentre = { centreHz: null, centreToleranceHz: null };
  const bandwidths = changed(spec.bandwidths, heads.centres, id, () => noCentre);
  return {
    ...spec,
    points: left(spec.points, heads.points),
    windows: left(spec.windows, heads.windows),
    tilts: left(spec.tilts, heads.tilts),
    traps: left(traps, heads.traps),
    skirts: left(spec.skirts, heads.skirts),
    bandwidths: left(bandwidths, heads.bandwidths),
    peaks: left(spec.peaks, heads.peaks),
    sCurve:
      spec.sCurve !== null && id === `linearity:${spec.sCurve.centreHz}`
        ? { ...spec.sCurve, linearity: null }
        : spec.sCurve,
    gain: heads.gain?.id === id ? null : spec.gain,
  };
}
