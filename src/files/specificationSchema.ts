/** The shape of a receiver's specification: what the service sheet demands of the curve. */
import * as v from 'valibot';
import { hertz, hertzWide, list, number, object, yesOrNo } from './schemaPieces.ts';

const weight = () => number(0, 100);
/** Linear level relative to the reference; above 1 where the reference is not the peak, below 0 on an S-curve. */
const level = () => number(-10, 10);
/** A ripple or a slope, decibels. */
const decibels = () => number(0.01, 60, 'dB');

export const specificationSchema = object({
  referenceHz: v.exactOptional(hertz()),
  fromHz: hertz(),
  toHz: hertz(),
  points: list(object({ hz: hertz(), target: level(), low: level(), high: level(), weight: weight() }), 0, 32),
  windows: list(object({ fromHz: hertz(), toHz: hertz(), maxRippleDb: decibels(), weight: weight() }), 0, 8),
  tilts: list(object({ lowHz: hertz(), highHz: hertz(), maxDb: decibels(), weight: weight() }), 0, 8),
  traps: list(
    object({
      hz: hertz(),
      maxDb: number(-120, -1, 'dB'),
      notchWithinHz: v.nullable(hertzWide()),
      weight: weight(),
    }),
    0,
    8,
  ),
  skirts: list(object({ fromHz: hertz(), toHz: hertz(), max: number(0, 10), weight: weight() }), 0, 8),
  bandwidths: list(
    object({
      levelDb: number(-60, -0.1, 'dB'),
      minHz: hertzWide(),
      maxHz: hertzWide(),
      centreHz: v.nullable(hertz()),
      centreToleranceHz: v.nullable(hertzWide()),
      weight: weight(),
    }),
    0,
    8,
  ),
  peaks: list(
    object({
      hz: hertz(),
      toleranceHz: hertzWide(),
      oscillator: v.exactOptional(v.literal(true)),
      weight: weight(),
    }),
    0,
    4,
  ),
  sCurve: v.nullable(
    object({
      centreHz: hertz(),
      risesWithFrequency: yesOrNo(),
      zero: object({ toleranceHz: hertzWide(), weight: weight() }),
      separation: object({ minHz: hertzWide(), maxHz: hertzWide(), weight: weight() }),
      symmetry: object({ low: number(0.01, 1), high: number(1, 100), weight: weight() }),
      linearity: v.nullable(object({ withinHz: hertzWide(), max: number(1e-4, 1), weight: weight() })),
    }),
  ),
  gain: v.nullable(
    object({
      hz: hertz(),
      minDb: number(-60, -0.01, 'dB'),
      nominal: number(1e-6, 1e12),
      weight: weight(),
    }),
  ),
});
