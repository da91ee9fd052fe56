/** The lines of a sheet before anything is measured. */
import type { Specification } from './receiver.ts';
import type { SpecItem } from './specItem.ts';

/** Every item of a sheet but what is measured: a search measures thousands of curves against one sheet, and writing the names takes longer than measuring. */
export interface SpecHeads {
  readonly points: readonly SpecItem[];
  readonly windows: readonly SpecItem[];
  readonly tilts: readonly SpecItem[];
  readonly traps: readonly SpecItem[];
  /** of each trap; null: it has none */
  readonly notches: readonly (SpecItem | null)[];
  readonly skirts: readonly SpecItem[];
  readonly bandwidths: readonly SpecItem[];
  /** of each bandwidth; null: it has none */
  readonly centres: readonly (SpecItem | null)[];
  readonly gain: SpecItem | null;
  readonly peaks: readonly SpecItem[];
}

const known = new WeakMap<Specification, SpecHeads>();

export function headsOf(spec: Specification): SpecHeads {
  const before = known.get(spec);
  if (before !== undefined) return before;
  const heads = makeHeads(spec);
  known.set(spec, heads);
  return heads;
}

type ItemHead = Pick<SpecItem, 'kind' | 'hz' | 'toHz' | 'unit'>;
type Limits = Pick<SpecItem, 'low' | 'high' | 'tolerance' | 'weight'>;

function makeHeads(spec: Specification): SpecHeads {
  const head = (name: string | number, { kind, hz, toHz, unit }: ItemHead, limits: Limits): SpecItem => ({
    ...{ id: `${kind}:${name}`, kind, hz, toHz, unit, measured: Number.NaN },
    ...limits,
  });
  const around = (within: number, weight: number): Limits => ({
    low: -within,
    high: within,
    tolerance: within,
    weight,
  });
  const { gain } = spec;
  return {
    points: spec.points.map(({ hz, low, high, weight }) =>
      head(hz, { kind: 'point', hz, toHz: null, unit: 'ratio' }, { low, high, tolerance: (high - low) / 2, weight }),
    ),
    windows: spec.windows.map(({ fromHz, toHz, maxRippleDb: high, weight }) =>
      head(
        `${fromHz}-${toHz}`,
        { kind: 'window', hz: fromHz, toHz, unit: 'db' },
        { low: null, high, tolerance: high, weight },
      ),
    ),
    tilts: spec.tilts.map(({ lowHz, highHz, maxDb, weight }) =>
      head(`${lowHz}-${highHz}`, { kind: 'tilt', hz: lowHz, toHz: highHz, unit: 'db' }, around(maxDb, weight)),
    ),
    traps: spec.traps.map(({ hz, maxDb, weight }) =>
      head(hz, { kind: 'trap', hz, toHz: null, unit: 'db' }, { low: null, high: maxDb, tolerance: 6, weight }),
    ),
    notches: spec.traps.map(({ hz, notchWithinHz, weight }) =>
      notchWithinHz === null
        ? null
        : head(hz, { kind: 'notch', hz, toHz: null, unit: 'hz' }, around(notchWithinHz, weight)),
    ),
    skirts: spec.skirts.map(({ fromHz, toHz, max, weight }) =>
      head(
        `${fromHz}-${toHz}`,
        { kind: 'skirt', hz: fromHz, toHz, unit: 'ratio' },
        { low: null, high: max, tolerance: max, weight },
      ),
    ),
    bandwidths: spec.bandwidths.map(({ levelDb, minHz, maxHz, weight }) =>
      head(
        levelDb,
        { kind: 'bandwidth', hz: spec.fromHz, toHz: spec.fromHz, unit: 'hz' },
        { low: minHz, high: maxHz, tolerance: (maxHz - minHz) / 2, weight },
      ),
    ),
    centres: spec.bandwidths.map(({ levelDb, centreHz, centreToleranceHz, weight }) =>
      centreHz === null || centreToleranceHz === null
        ? null
        : head(levelDb, { kind: 'centre', hz: centreHz, toHz: null, unit: 'hz' }, around(centreToleranceHz, weight)),
    ),
    gain:
      gain === null
        ? null
        : head(
            gain.hz,
            { kind: 'gain', hz: gain.hz, toHz: null, unit: 'db' },
            { low: gain.minDb, high: null, tolerance: Math.abs(gain.minDb), weight: gain.weight },
          ),
    peaks: spec.peaks.map(({ hz, toleranceHz, weight }) =>
      head(hz, { kind: 'peak', hz, toHz: null, unit: 'hz' }, around(toleranceHz, weight)),
    ),
  };
}
