/**
 * What a sheet demands of an FM detector's curve, worked out from the design: the crossing, the distance of the peaks, their symmetry, how straight the curve is between
 * them, and its height. Limits are so wide that every slug may be out by 1/32 turn at once, and half as much again.
 */
import type { Deck } from '../physics/deck.ts';
import type { Receiver, SheetResponse, Specification, SpecSCurve } from '../receiver/receiver.ts';
import { readSCurve } from '../receiver/sCurveReading.ts';
import { evaluateSpecification, type SpecItem } from '../receiver/specification.ts';
import { createStatedResponse } from '../receiver/statedResponse.ts';
import { type Moved, smallMoves } from './smallMoves.ts';

/** Limits are never narrower than a tube and its markers can be read: shares of the distance of the peaks, of itself, of one. Round figures of our own, no source. */
const LEAST_ZERO = 0.025;
const LEAST_SEPARATION = 0.12;
const LEAST_SYMMETRY = 0.13;
const LEAST_BEND = 0.03;
const LEAST_GAIN_DB = 3;
/** The stretch round the middle that is asked to be straight, as a share of the distance of the peaks: what a full deviation sweeps in the sets of the course. */
const STRAIGHT = 0.2;

/** null: the curve has no crossing between two peaks inside the span. */
export function sCurveFrom(receiver: Receiver, deck: Deck, response: SheetResponse): Specification | null {
  const { centreHz, spanHz } = response.setUp;
  const [fromHz, toHz] = [Math.round(centreHz - spanHz / 2), Math.round(centreHz + spanHz / 2)];
  const first = gauge(fromHz, toHz, { centreHz, risesWithFrequency: true, withinHz: spanHz / 20 });
  const look = createStatedResponse(receiver, deck, { ...response, specification: first });
  const read = readSCurve(look.nominal, centreHz, fromHz, toHz);
  const apart = Math.abs(read.top.hz - read.bottom.hz);
  const inside = (hz: number): boolean => hz > fromHz + spanHz / 50 && hz < toHz - spanHz / 50;
  if (read.zeroHz === null || !(read.height > 0) || !inside(read.top.hz) || !inside(read.bottom.hz)) return null;
  const risesWithFrequency = read.top.hz > read.bottom.hz;
  const withinHz = twoDigits(STRAIGHT * apart);
  const asked = gauge(fromHz, toHz, { centreHz, risesWithFrequency, withinHz });
  const stated = createStatedResponse(receiver, deck, { ...response, specification: asked });
  const measure = (turns: Readonly<Record<string, number>>): SpecItem[] =>
    evaluateSpecification(asked, stated.hz, stated.solve(turns).volts, stated.nominal);
  const moved = [...smallMoves(receiver, measure).values()];
  const of = (kind: SpecItem['kind']): Pick<Moved, 'measured' | 'room'> =>
    moved.find((item) => item.kind === kind) ?? { measured: 0, room: 0 };
  const zero = of('zero');
  const separation = of('separation');
  const symmetry = of('symmetry');
  const bend = of('linearity');
  const gain = of('gain');
  const either = Math.max(separation.room, LEAST_SEPARATION * separation.measured);
  const uneven = 1 + Math.max(symmetry.room / symmetry.measured, LEAST_SYMMETRY);
  return {
    ...asked,
    sCurve: {
      ...{ centreHz, risesWithFrequency },
      zero: { toleranceHz: Math.round(Math.max(zero.room, LEAST_ZERO * apart)), weight: 4 },
      separation: {
        minHz: Math.round(separation.measured - either),
        maxHz: Math.round(separation.measured + either),
        weight: 1.5,
      },
      symmetry: { low: rounded(symmetry.measured / uneven), high: rounded(symmetry.measured * uneven), weight: 2.5 },
      linearity: {
        withinHz,
        max: rounded(Math.max(LEAST_BEND, 1.2 * bend.measured, bend.measured + bend.room)),
        weight: 1.5,
      },
    },
    gain: {
      hz: centreHz,
      minDb: -rounded(Math.max(LEAST_GAIN_DB, gain.room)),
      nominal: Number(readSCurve(stated.nominal, centreHz, fromHz, toHz).height.toPrecision(6)),
      weight: 1,
    },
  };
}

const rounded = (value: number): number => Number(value.toFixed(3));
const twoDigits = (hz: number): number => Number(hz.toPrecision(2));

/** A specification that measures everything an S-curve can be asked for, and demands nothing. */
function gauge(
  fromHz: number,
  toHz: number,
  {
    centreHz,
    risesWithFrequency,
    withinHz,
  }: Pick<SpecSCurve, 'centreHz' | 'risesWithFrequency'> & { readonly withinHz: number },
): Specification {
  const width = toHz - fromHz;
  return {
    ...{ fromHz, toHz, points: [], windows: [], tilts: [], traps: [], skirts: [], bandwidths: [], peaks: [] },
    sCurve: {
      ...{ centreHz, risesWithFrequency },
      zero: { toleranceHz: width, weight: 1 },
      separation: { minHz: 0, maxHz: width, weight: 1 },
      symmetry: { low: 0.01, high: 100, weight: 1 },
      linearity: { withinHz, max: 1, weight: 1 },
    },
    gain: { hz: centreHz, minDb: -60, nominal: 1, weight: 1 },
  };
}
