/**
 * How a scenario may leave the bench's knobs and switches. The same ends and choices as the bench's own ranges (a test holds the two against each other);
 * any control may be left out and then stands at its resting value.
 */
import * as v from 'valibot';
import { number, oneOf, yesOrNo } from './schemaPieces.ts';

const frequency = () => v.exactOptional(number(0.1e6, 230e6));
const toggle = () => v.exactOptional(yesOrNo());
const range = (min: number, max: number) => v.exactOptional(number(min, max));
const choice = <const T extends readonly (string | number)[]>(...choices: T) => v.exactOptional(oneOf(...choices));

export const startControlsSchema = v.strictObject({
  sourceMode: choice('sweep', 'spot', 'tone', 'video'),
  centreHz: frequency(),
  spanHz: range(0, 30e6),
  levelDb: v.exactOptional(v.pipe(number(-80, 0), v.integer('a whole number of decibels'))),
  carrierHz: frequency(),
  slowSweep: toggle(),
  phasingDegrees: range(-90, 90),
  blanking: toggle(),
  mirror: toggle(),
  comb: toggle(),
  tunableOn: toggle(),
  tunableHz: frequency(),
  dialTrimHz: range(-1e6, 1e6),
  pipHeightDiv: range(0, 3),
  markerRoute: choice('added', 'through'),
  rfTerminated: toggle(),
  rfCapacitor: toggle(),
  yTip: choice('plain', 'resistor', 'probe'),
  biasAVolts: range(0, 15),
  biasAPolarity: choice('+', '-'),
  biasBVolts: range(0, 15),
  biasBPolarity: choice('+', '-'),
  meterRangeVolts: choice(0.3, 1, 3, 10, 30),
  meterMode: choice('dc', 'tone'),
  yVoltsPerDiv: choice(0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5),
  yPositionDiv: range(-8, 8),
  xGain: range(0.2, 5),
  xPositionDiv: range(-8, 8),
  yCoupling: choice('AC', 'DC'),
  yInvert: toggle(),
  ySmoothing: toggle(),
  focus: range(0, 1),
  brightness: range(0, 1),
  phosphor: choice('P1', 'P31', 'P7'),
  yInput: choice('detected', 'raw'),
});
