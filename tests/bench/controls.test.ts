/** The table of knobs and switches. */
import { expect, test } from 'vitest';
import type { Controls } from '../../src/bench/benchState.ts';
import { checkControl, controlRange } from '../../src/bench/controlRange.ts';
import { RESTING_CONTROLS } from '../../src/bench/setup.ts';
import { canSetup, sheetStart, stripSetup } from './fixture.ts';

const can = canSetup();
const all = Object.entries(RESTING_CONTROLS) as [keyof Controls, number | boolean | string][];

test('every control has a range, and rests inside it', () => {
  for (const [control, value] of all) expect([control, checkControl(can, control, value)]).toEqual([control, null]);
});

test('both ends of a knob may be set, and nothing beyond them', () => {
  for (const [control] of all) {
    const range = controlRange(can, control);
    if (range.kind !== 'number') continue;
    expect(checkControl(can, control, range.min)).toBe(null);
    expect(checkControl(can, control, range.max)).toBe(null);
    expect(checkControl(can, control, range.max + range.step)).toBe('valueOutOfRange');
    expect(checkControl(can, control, range.min - range.step)).toBe('valueOutOfRange');
    expect(range.fineStep).toBeLessThanOrEqual(range.step);
  }
});

test('ranges of the instruments', () => {
  expect(controlRange(can, 'centreHz')).toMatchObject({ min: 0.1e6, max: 230e6, unit: 'hz' });
  expect(controlRange(can, 'spanHz')).toMatchObject({ min: 0, max: 30e6 });
  expect(controlRange(can, 'levelDb')).toMatchObject({ min: -80, max: 0, step: 1, stepped: true });
  expect(controlRange(can, 'phasingDegrees')).toMatchObject({ min: -90, max: 90 });
  expect(controlRange(can, 'biasAVolts')).toMatchObject({ min: 0, max: 15 });
  expect(controlRange(can, 'meterRangeVolts')).toMatchObject({ choices: [0.3, 1, 3, 10, 30] });
  const gains = controlRange(can, 'yVoltsPerDiv');
  expect(gains.kind === 'choice' && gains.choices.length).toBe(12);
});

test('steps of frequency follow the receiver', () => {
  const step = (setup: typeof can) => {
    const range = controlRange(setup, 'centreHz');
    return range.kind === 'number' ? [range.step, range.fineStep] : [];
  };
  expect(step(can)).toEqual([10e3, 1e3]);
  expect(step(stripSetup())).toEqual([50e3, 5e3]);
});

test('the set-up that a sheet asks for can be set', () => {
  for (const setup of [can, stripSetup()]) {
    for (const [control, value] of Object.entries(sheetStart(setup).controls)) {
      expect([control, checkControl(setup, control, value)]).toEqual([control, null]);
    }
  }
});
