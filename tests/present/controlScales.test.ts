/** Every control of the bench has a drawn part with words, and every position of a knob is one that the bench takes. */
import { describe, expect, it } from 'vitest';
import type { KnobId } from '../../src/bench/benchEvent.ts';
import { checkControl, controlRange } from '../../src/bench/controlRange.ts';
import { CONTROLS } from '../../src/bench/controls/controls.ts';
import type { ControlRow } from '../../src/bench/controls/row.ts';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { fitKnob } from '../../src/present/controlScales.ts';
import { notched } from '../../src/present/knobScale.ts';
import { positionsOf } from '../../src/present/panelRows.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import type { ControlWords } from '../../src/words/controlWords.ts';
import { controlWords } from '../../src/words/en/bench.ts';
import { en } from '../../src/words/en/index.ts';
import { SETUPS } from '../rooms/sceneSets.ts';

const ROWS: Readonly<Record<string, ControlRow>> = CONTROLS.rows;
const WORDS: ControlWords = controlWords;
const POSITIONS = CONTROLS.ids.flatMap((control) => {
  const row = ROWS[control]!;
  return row.kind === 'positions' ? [[control, row] as const] : [];
});
const KNOBS = CONTROLS.ids.filter((id) => ['range', 'clicks'].includes(ROWS[id]!.kind)) as KnobId[];

it('the Y gain says volts per division and is turned as on an oscilloscope: clockwise is more gain', () => {
  const { scale, shown } = fitKnob(en, SETUPS[0]!, 'yVoltsPerDiv');
  expect(scale.valueAt(0)).toBeGreaterThan(scale.valueAt(scale.last));
  expect(shown(scale.valueAt(0))).toMatch(/V\/div$/);
});

it('the catalogue has words for the controls, and for no others', () => {
  expect(Object.keys(WORDS).toSorted()).toEqual([...CONTROLS.ids].toSorted());
});

/** What the wheel does to a knob: `way` notches from a value, the span as it then is. */
function rolled(setup: BenchSetup, control: 'spanHz' | 'centreHz', from: number, spanHz: number, way: 1 | -1): number {
  const { scale, coarse, notchAt } = fitKnob(en, setup, control);
  const place = scale.indexOf(from);
  const notch = notchAt({ spanHz: control === 'spanHz' ? from : spanHz }, from);
  return scale.valueAt(notch === null ? Math.round(place) + way * coarse : notched(place, way, notch));
}

describe.each(SETUPS.map((setup) => [setup.receiver.id, setup] as const))('the wheel on %s', (_, setup) => {
  const { setUp } = mainResponse(setup.receiver);

  it('brings the span from 10 MHz to within a tenth of the sheet in a few turns, and the centre to within a notch', () => {
    let span = 10e6;
    let clicks = 0;
    while (Math.abs(span - setUp.spanHz) > setUp.spanHz / 10 && clicks < 200) {
      const next = rolled(setup, 'spanHz', span, span, span > setUp.spanHz ? -1 : 1);
      expect(Math.sign(next - span)).toBe(Math.sign(setUp.spanHz - span));
      expect(checkControl(setup, 'spanHz', next)).toBeNull();
      span = next;
      clicks++;
    }
    // Two or three flicks of a finger; 900 at the broadcast set went by its step alone.
    expect(clicks).toBeLessThanOrEqual(36);
    let centre = 20e6;
    let lands = false;
    for (clicks = 0; clicks < 200 && !lands; clicks++) {
      const next = rolled(setup, 'centreHz', centre, 10e6, centre > setUp.centreHz ? -1 : 1);
      lands = Math.sign(next - setUp.centreHz) !== Math.sign(centre - setUp.centreHz);
      centre = next;
    }
    expect(lands).toBe(true);
    expect(Math.abs(centre - setUp.centreHz)).toBeLessThanOrEqual(1e6);
  });
});

describe.each(SETUPS.map((setup) => [setup.receiver.id, setup] as const))('controls for %s', (_, setup) => {
  it.each(POSITIONS)('%s: a position with a word of its own for each choice that the bench takes', (control, row) => {
    const positions = positionsOf(setup.receiver, row, WORDS[control]!.positions!);
    const taken = row.choices.filter((choice) => checkControl(setup, control, choice) === null);
    expect(positions.map(({ value }) => value)).toEqual(taken);
    expect(taken.length).toBeGreaterThan(1);
    expect(new Set(positions.map(({ word }) => word)).size).toBe(taken.length);
    expect(new Set(positions.map(({ word, spoken = word }) => spoken)).size).toBe(taken.length);
  });

  it.each(KNOBS)('%s: the bench takes every position, from one end to the other', (control) => {
    const { scale, coarse, resting } = fitKnob(en, setup, control);
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
    const { scale, shown, parse, example, coarse } = fitKnob(en, setup, control);
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
