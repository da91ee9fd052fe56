/** Lines put on a sheet in the making. What the design gives stands in the middle of what is asked. */
import { clamp } from '../base/rounding.ts';
import type { Deck } from '../physics/deck.ts';
import type { Receiver, SheetResponse, Specification } from '../receiver/receiver.ts';
import { headsOf } from '../receiver/specHeads.ts';
import { evaluateSpecification } from '../receiver/specification.ts';
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

/** Of what may be put on. */
function idsOf(spec: Specification): ReadonlySet<string> {
  const { points, windows, tilts, traps, skirts, bandwidths, peaks } = headsOf(spec);
  return new Set([points, windows, tilts, traps, skirts, bandwidths, peaks].flat().map(({ id }) => id));
}

/** a share as sheets have it, to a thousandth */
export const rounded = (value: number): number => Number(clamp(value, -9, 9).toFixed(3));
const tenth = (value: number): number => Math.ceil(value * 10) / 10;
