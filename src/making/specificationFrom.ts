/**
 * What a sheet demands of a response, worked out from the design: the levels of the nominal curve as targets, with limits so wide that every slug may be out by 1/32 turn
 * at once, the widths at 3 and 6 dB, the depth of traps, the gain.
 */
import type { Deck } from '../physics/deck.ts';
import { voltsAt } from '../receiver/curveReading.ts';
import type { Receiver, SheetResponse, Specification } from '../receiver/receiver.ts';
import { evaluateSpecification, type SpecItem } from '../receiver/specification.ts';
import { createStatedResponse } from '../receiver/statedResponse.ts';
import { type Moved, smallMoves } from './smallMoves.ts';

/** Limits are never narrower than this: what a tube can be read to. */
const LEAST_LEVEL = 0.03;
const LEAST_WIDTH_SHARE = 0.06;
const LEAST_DB = 1;
const POINTS = 9;
/** Levels below this are not asked for: a diode hardly shows them. */
const LEAST_TARGET = 0.1;
const FLAT_DB = 0.1;
/** Of what the sheet looks at: nearer to its end a top is none. */
const END_SHARE = 0.01;

/** Why no sheet can be made of a curve: it has no top, or is highest where the sheet ends. */
export type NoSheet = 'flat' | 'atEnd';

export function specificationFrom(receiver: Receiver, deck: Deck, response: SheetResponse): Specification | NoSheet {
  const { centreHz, spanHz, markersHz } = response.setUp;
  const [fromHz, toHz] = [Math.round(centreHz - 0.45 * spanHz), Math.round(centreHz + 0.45 * spanHz)];
  const even = Array.from({ length: POINTS }, (_, i) => Math.round(fromHz + ((toHz - fromHz) * (i + 0.5)) / POINTS));
  const asked = [...new Set([...markersHz, ...even])].filter((hz) => hz > fromHz && hz < toHz).sort((a, b) => a - b);
  const traps = receiver.adjusters.flatMap((a) =>
    a.kind === 'trap' && a.trapHz !== null && a.trapHz > fromHz && a.trapHz < toHz ? [a.trapHz] : [],
  );
  const gauge = wanted(fromHz, toHz, asked, traps, centreHz);
  const stated = createStatedResponse(receiver, deck, { ...response, specification: gauge });
  const measure = (turns: Readonly<Record<string, number>>): SpecItem[] =>
    evaluateSpecification(gauge, stated.hz, stated.solve(turns).volts, stated.nominal);
  const moved = smallMoves(receiver, measure);
  const of = (id: string): Moved => moved.get(id)!;
  if (of(`window:${fromHz}-${toHz}`).measured < FLAT_DB) return 'flat';
  if (isHighestAtEnd(stated.hz, stated.nominal.volts, fromHz, toHz)) return 'atEnd';

  const points = asked.flatMap((hz) => {
    const { measured, room } = of(`point:${hz}`);
    if (measured < LEAST_TARGET) return [];
    const target = Number(measured.toFixed(3));
    const either = Math.max(room, LEAST_LEVEL);
    return [{ hz, target, low: Math.max(0, rounded(target - either)), high: rounded(target + either), weight: 1 }];
  });
  const bandwidths = gauge.bandwidths.flatMap((demand) => {
    const { measured, room } = of(`bandwidth:${demand.levelDb}`);
    // A curve that runs out of the sheet has no width there.
    if (measured <= 0 || measured > 0.98 * (toHz - fromHz)) return [];
    const either = Math.max(room, LEAST_WIDTH_SHARE * measured);
    return [{ ...demand, minHz: Math.round(measured - either), maxHz: Math.round(measured + either), weight: 1.5 }];
  });
  const gain = of(`gain:${centreHz}`);
  return {
    ...gauge,
    points,
    windows: [],
    bandwidths,
    traps: traps.map((hz) => {
      const { measured, room } = of(`trap:${hz}`);
      return { hz, maxDb: Math.min(-1, Math.ceil(measured + Math.max(room, 3))), notchWithinHz: null, weight: 2 };
    }),
    gain: {
      hz: centreHz,
      minDb: -rounded(Math.max(LEAST_DB, gain.room)),
      nominal: Number(voltsAt(stated.nominal, centreHz).toPrecision(6)),
      weight: 2,
    },
  };
}

/** A curve that still rises where the sheet ends is tuned elsewhere. */
function isHighestAtEnd(hz: ArrayLike<number>, volts: ArrayLike<number>, fromHz: number, toHz: number): boolean {
  let best = -1;
  for (let i = 0; i < hz.length; i++)
    if (hz[i]! >= fromHz && hz[i]! <= toHz && (best < 0 || Math.abs(volts[i]!) > Math.abs(volts[best]!))) best = i;
  const edge = END_SHARE * (toHz - fromHz);
  return best >= 0 && (hz[best]! < fromHz + edge || hz[best]! > toHz - edge);
}

const rounded = (value: number): number => Number(value.toFixed(3));

/** A sheet that measures all that may be asked for, and asks nothing. */
function wanted(
  fromHz: number,
  toHz: number,
  asked: readonly number[],
  traps: readonly number[],
  gainHz: number,
): Specification {
  return {
    fromHz,
    toHz,
    points: asked.map((hz) => ({ hz, target: 0, low: -10, high: 10, weight: 1 })),
    windows: [{ fromHz, toHz, maxRippleDb: 60, weight: 1 }],
    tilts: [],
    traps: traps.map((hz) => ({ hz, maxDb: -1, notchWithinHz: null, weight: 1 })),
    skirts: [],
    bandwidths: [-3, -6].map((levelDb) => ({
      ...{ levelDb, minHz: 0, maxHz: 1e9, centreHz: null, centreToleranceHz: null, weight: 1 },
    })),
    peaks: [],
    sCurve: null,
    gain: { hz: gainHz, minDb: -60, nominal: 1, weight: 1 },
  };
}
