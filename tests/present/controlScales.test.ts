/** Every control of the bench has a drawn part, and every position of a knob is one that the bench takes. */
import { describe, expect, it } from 'vitest';
import type { Controls } from '../../src/bench/benchState.ts';
import { checkControl, controlRange } from '../../src/bench/controlRange.ts';
import { RESTING_CONTROLS } from '../../src/bench/setup.ts';
import { fitKnob, type KnobControl } from '../../src/present/controlScales.ts';
import {
  COUPLINGS,
  METER_MODES,
  OFF_ON,
  PHOSPHORS,
  POLARITIES,
  ROUTES,
  TIPS,
  Y_INPUTS,
} from '../../src/rooms/bench/studs.ts';
import { SETUPS } from '../rooms/sceneSets.ts';

/** The drawn part of each control: a new control of the bench fails to compile here until it has one. */
const DRAWN: { readonly [K in keyof Controls]: 'knob' | readonly Controls[K][] } = {
  sourceMode: ['sweep', 'spot', 'tone', 'video'],
  centreHz: 'knob',
  spanHz: 'knob',
  levelDb: 'knob',
  carrierHz: 'knob',
  slowSweep: OFF_ON.map((s) => s.value),
  phasingDegrees: 'knob',
  blanking: OFF_ON.map((s) => s.value),
  mirror: OFF_ON.map((s) => s.value),
  comb: OFF_ON.map((s) => s.value),
  tunableOn: OFF_ON.map((s) => s.value),
  tunableHz: 'knob',
  dialTrimHz: 'knob',
  pipHeightDiv: 'knob',
  markerRoute: ROUTES.map((s) => s.value),
  rfTerminated: OFF_ON.map((s) => s.value),
  rfCapacitor: OFF_ON.map((s) => s.value),
  yTip: TIPS.map((s) => s.value),
  biasAVolts: 'knob',
  biasAPolarity: POLARITIES.map((s) => s.value),
  biasBVolts: 'knob',
  biasBPolarity: POLARITIES.map((s) => s.value),
  meterRangeVolts: 'knob',
  meterMode: METER_MODES.map((s) => s.value),
  yVoltsPerDiv: 'knob',
  yPositionDiv: 'knob',
  xGain: 'knob',
  xPositionDiv: 'knob',
  yCoupling: COUPLINGS.map((s) => s.value),
  yInvert: OFF_ON.map((s) => s.value),
  ySmoothing: OFF_ON.map((s) => s.value),
  focus: 'knob',
  brightness: 'knob',
  phosphor: PHOSPHORS.map((s) => s.value),
  yInput: Y_INPUTS.map((s) => s.value),
};

const CONTROLS = Object.keys(DRAWN) as (keyof Controls)[];
const KNOBS = CONTROLS.filter((control) => DRAWN[control] === 'knob') as KnobControl[];

describe.each(SETUPS.map((setup) => [setup.receiver.id, setup] as const))('controls for %s', (_, setup) => {
  it('cover what the bench has', () => {
    expect(CONTROLS.toSorted()).toEqual(Object.keys(RESTING_CONTROLS).toSorted());
  });

  it('have a stud for each choice and no other', () => {
    for (const control of CONTROLS) {
      const studs = DRAWN[control];
      if (studs === 'knob') continue;
      const range = controlRange(setup, control);
      expect(range.kind, control).not.toBe('number');
      const choices = range.kind === 'choice' ? range.choices : [false, true];
      expect([...studs].map(String).toSorted(), control).toEqual(choices.map(String).toSorted());
    }
  });

  it.each(KNOBS)('%s: the bench takes every position, from one end to the other', (control) => {
    const { scale, coarse, resting } = fitKnob(setup, control);
    const range = controlRange(setup, control);
    const stride = Math.max(1, Math.floor(scale.last / 700));
    for (let i = 0; i <= scale.last; i += stride) expect(checkControl(setup, control, scale.valueAt(i))).toBeNull();
    if (range.kind === 'number') {
      expect(scale.valueAt(0)).toBeCloseTo(range.min, 9);
      expect(scale.valueAt(scale.last)).toBeCloseTo(range.max, 9);
    }
    expect(coarse).toBeGreaterThanOrEqual(1);
    expect(checkControl(setup, control, resting)).toBeNull();
  });

  it.each(KNOBS)('%s: reads back what it shows, and refuses what lies beyond', (control) => {
    const { scale, shown, parse, example, coarse } = fitKnob(setup, control);
    for (const index of [0, coarse, Math.round(scale.last / 2), scale.last]) {
      const value = scale.valueAt(index);
      const read = parse(shown(value));
      expect(read, shown(value)).not.toBeNull();
      expect(shown(read!)).toBe(shown(value));
      expect(checkControl(setup, control, read)).toBeNull();
    }
    expect(parse(example), example).not.toBeNull();
    expect(parse('99999999')).toBeNull();
    expect(parse('nonsense')).toBeNull();
  });
});
