/** The shape of a receiver's specification: what the service sheet demands of the curve. */
import * as v from 'valibot';
import { hertz, hertzWide, list, nodeName, number } from './schemaPieces.ts';

const weight = () => number(0, 100);
/** Linear level relative to the reference; a little above 1 where the reference is not the peak. */
const level = () => number(0, 10);
/** A ripple or a slope, decibels. */
const decibels = () => number(0.01, 60);

export const specificationSchema = v.strictObject({
  node: nodeName(),
  referenceHz: v.exactOptional(hertz()),
  fromHz: hertz(),
  toHz: hertz(),
  points: list(v.strictObject({ hz: hertz(), target: level(), low: level(), high: level(), weight: weight() }), 1, 32),
  windows: list(v.strictObject({ fromHz: hertz(), toHz: hertz(), maxRippleDb: decibels(), weight: weight() }), 0, 8),
  tilts: list(v.strictObject({ lowHz: hertz(), highHz: hertz(), maxDb: decibels(), weight: weight() }), 0, 8),
  traps: list(
    v.strictObject({
      hz: hertz(),
      maxDb: number(-120, -1),
      notchWithinHz: v.nullable(hertzWide()),
      weight: weight(),
    }),
    0,
    8,
  ),
  skirts: list(v.strictObject({ fromHz: hertz(), toHz: hertz(), max: level(), weight: weight() }), 0, 8),
  bandwidths: list(
    v.strictObject({
      levelDb: number(-60, -0.1),
      minHz: hertzWide(),
      maxHz: hertzWide(),
      centreHz: v.nullable(hertz()),
      centreToleranceHz: v.nullable(hertzWide()),
      weight: weight(),
    }),
    0,
    8,
  ),
  gain: v.nullable(
    v.strictObject({
      hz: hertz(),
      minDb: number(-60, -0.01),
      nominalVoltsPerAmp: number(1e-6, 1e12),
      weight: weight(),
    }),
  ),
});
