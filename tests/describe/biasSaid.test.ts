/** What is said of a bias that is off: a knob that does not stand at the sheet's volts is to be set, and one that does is not to be believed. The knob's error is the scenario's own. */
import { expect, it } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import { firstResponse, initialState } from '../../src/bench/setup.ts';
import { lackStages } from '../../src/describe/lack.ts';
import { en } from '../../src/words/en/index.ts';
import { connectionActs, safetyActs, setUpActs, stateAfter } from '../session/acts.ts';
import { setupOf } from '../technician/oneScenario.ts';

it('sends to the knob, and once that stands right to the needle', () => {
  const setup = setupOf('fifty-cycles');
  const [bias] = firstResponse(setup).setUp.biases;
  const wanted = en.format.written(bias!.volts, 1);
  const said = (biasAVolts: number): string => {
    const acts = [...safetyActs(setup), ...connectionActs(setup), ...setUpActs(setup)];
    const knob = { type: 'controlSet', control: 'biasAVolts', value: biasAVolts } as const;
    const state = stateAfter(setup, [...acts, knob], initialState(setup));
    const [line] = createBench(setup).facts(state).biases;
    expect(Math.abs(line!.errorVolts)).toBeGreaterThan(bias!.toleranceVolts);
    return lackStages(en, setup, createBench(setup).facts(state), state, { code: 'biasOff' })[0]!;
  };
  expect(said(1)).toBe(`Set bias A to ${wanted} V, and check it with the meter.`);
  const there = said(Math.abs(bias!.volts));
  expect(there).toContain('Put the meter on the line');
  expect(there).toContain(`until the needle shows ${wanted} V on ${bias!.at}`);
});
