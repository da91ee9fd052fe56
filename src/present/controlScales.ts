/** How each numeric control is drawn and said: its scale, its figures and where it rests. All of it from the control's row and the receiver's sheet. */
import { roundTo } from '../base/rounding.ts';
import { type ControlRange, rangeOf } from '../bench/controls/range.ts';
import type { ClicksRow, ControlUnit, IdsOfKind, RangeRow } from '../bench/controls/row.ts';
import { CONTROL_ROWS } from '../bench/controls/rows.ts';
import type { Receiver } from '../receiver/receiver.ts';
import { mainResponse } from '../receiver/responses.ts';
import { controlWords } from '../words/en/bench.ts';
import * as figures from '../words/en/benchFigures.ts';
import { type KnobScale, linearScale, listScale, ratioScale } from './knobScale.ts';
import type { BenchPort } from './ports.ts';

/** The controls that turn. */
export type KnobControl = IdsOfKind<typeof CONTROL_ROWS, 'clicks' | 'range'>;

export interface KnobFitting {
  readonly label: string;
  readonly shown: (value: number) => string;
  readonly parse: (typed: string) => number | null;
  readonly example: string;
  readonly signed: boolean;
  readonly scale: KnobScale;
  readonly coarse: number;
  readonly resting: number;
}

/** Everything that a knob needs to know of its control, for this receiver. */
export function fitKnob({ receiver }: Pick<BenchPort['setup'], 'receiver'>, control: KnobControl): KnobFitting {
  return fitRow(receiver, CONTROL_ROWS[control], controlWords[control].label);
}

export function fitRow(receiver: Receiver, row: ClicksRow | RangeRow, label: string): KnobFitting {
  const range = rangeOf(row, receiver);
  const { scale, coarse } = scaleFor(row, range);
  const { setUp } = mainResponse(receiver);
  const { shown, typed } = figuresFor(row.unit, setUp.centreHz < 2e6 ? 1e3 : 1e6);
  const inside = (value: number): boolean => value >= scale.valueAt(0) && value <= scale.valueAt(scale.last);
  const parse = (text: string): number | null => {
    const value = typed(text);
    if (value === null || !inside(value)) return null;
    if (range.kind === 'choice') return scale.valueAt(scale.indexOf(value));
    return range.kind === 'number' && range.stepped ? Math.round(value / range.step) * range.step : value;
  };
  const ofSheet: Partial<Record<ControlUnit, number>> = { hz: setUp.centreHz, hzWide: setUp.spanHz };
  const example = shown(row.example ?? ofSheet[row.unit] ?? row.resting);
  const bothSigns = range.kind === 'number' && range.min < 0 && range.max > 0;
  return { label, shown, parse, example, signed: row.fromTop ?? bothSigns, scale, coarse, resting: row.resting };
}

function scaleFor(row: ClicksRow | RangeRow, range: ControlRange): { scale: KnobScale; coarse: number } {
  if (row.kind === 'clicks') return { scale: listScale(row.choices), coarse: 1 };
  if (range.kind !== 'number') throw new Error('a range without ends');
  const { min, max, step, fineStep } = range;
  // Gain is a ratio: equal turns, equal factors, and 1 at the top of the scale.
  if (row.positions !== undefined)
    return { scale: ratioScale(min, max, row.positions, (value) => roundTo(value, fineStep)), coarse: 2 };
  return { scale: linearScale(min, max, fineStep), coarse: Math.max(1, Math.round(step / fineStep)) };
}

interface Figures {
  readonly shown: (value: number) => string;
  readonly typed: (text: string) => number | null;
}

/** `bareUnitHz`: what a frequency typed without a unit is counted in. */
function figuresFor(unit: ControlUnit, bareUnitHz: number): Figures {
  const typedHz = figures.typedFrequency(bareUnitHz);
  const all: Readonly<Record<ControlUnit, Figures>> = {
    hz: { shown: figures.frequency, typed: typedHz },
    hzWide: { shown: figures.width, typed: typedHz },
    hzOff: { shown: figures.offset, typed: typedHz },
    db: { shown: figures.decibels, typed: figures.typedDecibels },
    degrees: { shown: figures.degrees, typed: figures.typedDegrees },
    divisions: { shown: figures.divisions, typed: figures.typedDivisions },
    volts: { shown: figures.voltage, typed: figures.typedVolts },
    // A typed sign is left to the switch.
    unsignedVolts: { shown: (volts) => figures.biasVolts(volts, null), typed: unsigned(figures.typedVolts) },
    voltsPerDiv: { shown: figures.voltsPerDiv, typed: figures.typedVolts },
    times: { shown: figures.times, typed: figures.typedTimes },
    share: { shown: figures.share, typed: figures.typedShare },
  };
  return all[unit];
}

const unsigned =
  (typed: Figures['typed']): Figures['typed'] =>
  (text) => {
    const value = typed(text);
    return value === null ? null : Math.abs(value);
  };
