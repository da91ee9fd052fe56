/** How each numeric control is drawn and said: its scale, its figures and where it rests. All of it from the control's row and the receiver's sheet. */
import { roundTo } from '../base/rounding.ts';
import type { KnobId } from '../bench/benchEvent.ts';
import { type ControlRange, rangeOf } from '../bench/controls/range.ts';
import type { ClicksRow, ControlUnit, RangeRow } from '../bench/controls/row.ts';
import { CONTROL_ROWS } from '../bench/controls/rows.ts';
import type { Receiver } from '../receiver/receiver.ts';
import { mainResponse } from '../receiver/responses.ts';
import type { Format } from '../words/format.ts';
import type { Words } from '../words/words.ts';
import {
  type KnobScale,
  linearScale,
  listScale,
  type Notch,
  ratioScale,
  reversedScale,
  roundFigure,
} from './knobScale.ts';
import type { BenchPort } from './ports.ts';

export interface KnobFitting {
  readonly label: string;
  readonly shown: (value: number) => string;
  readonly parse: (typed: string) => number | null;
  readonly example: string;
  readonly signed: boolean;
  readonly scale: KnobScale;
  readonly coarse: number;
  readonly resting: number;
  /** positions to a notch of the wheel where it goes by more than one ordinary step; null: by one */
  readonly notchAt: (controls: Readonly<Record<'spanHz', number>>, value: number) => Notch | null;
}

/** Everything that a knob needs to know of its control, for this receiver. */
export function fitKnob(
  { format, controls }: Words,
  { receiver }: Pick<BenchPort['setup'], 'receiver'>,
  control: KnobId,
): KnobFitting {
  return fitRow(format, receiver, CONTROL_ROWS[control], controls[control].label);
}

export function fitRow(format: Format, receiver: Receiver, row: ClicksRow | RangeRow, label: string): KnobFitting {
  const range = rangeOf(row, receiver);
  const { scale, coarse } = scaleFor(row, range);
  const { setUp } = mainResponse(receiver);
  const { shown, typed } = writtenFor(format, row.unit, setUp.centreHz < 2e6 ? 1e3 : 1e6);
  const ends = [scale.valueAt(0), scale.valueAt(scale.last)];
  const inside = (value: number): boolean => value >= Math.min(...ends) && value <= Math.max(...ends);
  const parse = (text: string): number | null => {
    const value = typed(text);
    if (value === null || !inside(value)) return null;
    if (range.kind === 'choice') return scale.valueAt(scale.indexOf(value));
    return range.kind === 'number' && range.stepped ? Math.round(value / range.step) * range.step : value;
  };
  const ofSheet: Partial<Record<ControlUnit, number>> = { hz: setUp.centreHz, hzWide: setUp.spanHz };
  const example = shown(row.example ?? ofSheet[row.unit] ?? row.resting);
  const bothSigns = range.kind === 'number' && range.min < 0 && range.max > 0;
  return {
    label,
    shown,
    parse,
    example,
    signed: row.fromTop ?? bothSigns,
    scale,
    coarse,
    resting: row.resting,
    notchAt: notchFor(row, range),
  };
}

function notchFor(row: ClicksRow | RangeRow, range: ControlRange): KnobFitting['notchAt'] {
  if (row.kind !== 'range' || row.notch === undefined || range.kind !== 'number') return () => null;
  const { of, part } = row.notch;
  const { min, step, fineStep } = range;
  return ({ spanHz }, value) => {
    const by = roundFigure(Math.max(step, part * (of === 'span' ? spanHz : value)));
    return by <= step ? null : { by: Math.round(by / fineStep), zero: -min / fineStep };
  };
}

function scaleFor(row: ClicksRow | RangeRow, range: ControlRange): { scale: KnobScale; coarse: number } {
  if (row.kind === 'clicks') {
    const scale = listScale(row.choices);
    // As on any oscilloscope: clockwise is more gain, which is fewer volts to a division.
    return { scale: row.unit === 'voltsPerDiv' ? reversedScale(scale) : scale, coarse: 1 };
  }
  if (range.kind !== 'number') throw new Error('a range without ends');
  const { min, max, step, fineStep } = range;
  // Gain is a ratio: equal turns, equal factors, and 1 at the top of the scale.
  if (row.positions !== undefined)
    return { scale: ratioScale(min, max, row.positions, (value) => roundTo(value, fineStep)), coarse: 2 };
  return { scale: linearScale(min, max, fineStep), coarse: Math.max(1, Math.round(step / fineStep)) };
}

interface Written {
  readonly shown: (value: number) => string;
  readonly typed: (text: string) => number | null;
}

/** `bareUnitHz`: what a frequency typed without a unit is counted in. */
function writtenFor({ knob, typed, frequency, width }: Format, unit: ControlUnit, bareUnitHz: number): Written {
  const typedHz = typed.frequency(bareUnitHz);
  const all: Readonly<Record<ControlUnit, Written>> = {
    hz: { shown: frequency, typed: typedHz },
    hzWide: { shown: width, typed: typedHz },
    hzOff: { shown: knob.offset, typed: typedHz },
    db: { shown: knob.decibels, typed: typed.decibels },
    degrees: { shown: knob.degrees, typed: typed.degrees },
    divisions: { shown: knob.divisions, typed: typed.divisions },
    volts: { shown: knob.voltage, typed: typed.volts },
    // A typed sign is left to the switch.
    unsignedVolts: { shown: (volts) => knob.biasVolts(volts, null), typed: unsigned(typed.volts) },
    voltsPerDiv: { shown: knob.voltsPerDiv, typed: typed.volts },
    times: { shown: knob.times, typed: typed.times },
    share: { shown: knob.share, typed: typed.share },
  };
  return all[unit];
}

const unsigned =
  (typed: Written['typed']): Written['typed'] =>
  (text) => {
    const value = typed(text);
    return value === null ? null : Math.abs(value);
  };
