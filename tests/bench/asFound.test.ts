/** Readings as found: taken off the tube before anything in the set was touched, and as the tube shows them, not as the set is. */
import { describe, expect, it } from 'vitest';
import { applyEvent } from '../../src/bench/applyEvent.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import type { BenchState } from '../../src/bench/benchState.ts';
import { initialState } from '../../src/bench/setup.ts';
import { tubeReadings } from '../../src/bench/tubeReadings.ts';
import { sheetFigures } from '../../src/present/sheetFigures.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import { connectionActs, safetyActs, setUpActs, stateAfter, yActs } from '../session/acts.ts';
import { canSetup } from '../session/setups.ts';

const start = { ...canSetup().scenario.start, slugs: {}, randomTurns: 0 };
const right = canSetup({ start });
const astray = canSetup({ start: { ...start, slugs: { T1B: 2 } } });
const main = mainResponse(right.receiver);

function ready(setup: typeof right): BenchState {
  let state = stateAfter(setup, safetyActs(setup), initialState(setup));
  state = stateAfter(setup, connectionActs(setup, state), state);
  state = stateAfter(setup, setUpActs(setup), state);
  return stateAfter(setup, [...yActs(setup, state), { type: 'controlSet', control: 'pipHeightDiv', value: 0 }], state);
}

const record: BenchEvent = { type: 'asFoundRecorded', response: main.id };

describe('readings off the tube', () => {
  // The sheet's own column of what its levels look like on the tube, worked out from the detector's law.
  it('are those that the sheet prints, where the set is right', () => {
    const printed = sheetFigures(right, main).levels;
    const read = tubeReadings(right, ready(right), main.id);
    expect(printed.length).toBeGreaterThan(1);
    expect(read.map(({ hz }) => hz)).toEqual(printed.map(({ hz }) => hz));
    const top = Math.max(...printed.map(({ onTube }) => onTube));
    for (const [i, { percent }] of read.entries()) {
      expect(Math.abs(percent! - (100 * printed[i]!.onTube) / top), `${printed[i]!.hz}`).toBeLessThan(8);
    }
  });

  it('go by the dials: a picture that the centre has moved along reads the same, and no picture reads nothing', () => {
    const there = ready(right);
    const moved = stateAfter(
      right,
      [{ type: 'controlSet', control: 'centreHz', value: there.controls.centreHz + main.setUp.spanHz / 8 }],
      there,
    );
    const [a, b] = [there, moved].map((state) => tubeReadings(right, state, main.id));
    // The picture moves with the dial, so that what is read at a frequency stays: the axis is the dial's own.
    for (const [i, one] of a!.entries()) expect(Math.abs(one.percent! - b![i]!.percent!)).toBeLessThan(8);
    const dark = stateAfter(right, [{ type: 'leadRemoved', lead: 'y' }], there);
    expect(tubeReadings(right, dark, main.id).every(({ percent }) => percent === null)).toBe(true);
  });

  it('of a set that is astray are not those of one that is right', () => {
    const [good, bad] = [right, astray].map((setup) => tubeReadings(setup, ready(setup), main.id));
    const apart = good!.map(({ percent }, i) => Math.abs((percent ?? 0) - (bad![i]!.percent ?? 0)));
    expect(Math.max(...apart)).toBeGreaterThan(15);
  });
});

describe('recording them', () => {
  it('keeps what the tube showed at that moment, whatever is turned later', () => {
    const there = ready(astray);
    const kept = stateAfter(astray, [record], there);
    const before = tubeReadings(astray, kept.asFound[main.id]!, main.id);
    const turned = stateAfter(
      astray,
      [
        { type: 'toolTaken', tool: 'hex' },
        { type: 'slugTurned', slug: 'T1B', turns: -1 },
      ],
      kept,
    );
    expect(tubeReadings(astray, turned.asFound[main.id]!, main.id)).toEqual(before);
    expect(tubeReadings(astray, turned, main.id)).not.toEqual(before);
    expect(applyEvent(astray, turned, record, turned.seconds + 1)).toEqual({ ok: false, reason: 'notAsFound' });
  });

  it('knows only the curves of the job', () => {
    const there = ready(right);
    const other: BenchEvent = { type: 'asFoundRecorded', response: 'no such curve' };
    expect(applyEvent(right, there, other, there.seconds + 1)).toEqual({ ok: false, reason: 'valueOutOfRange' });
  });
});
