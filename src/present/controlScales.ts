/** How each numeric control is drawn and said: its scale, its figures and where it rests. The limits come from the bench. */

import { roundTo } from '../base/rounding.ts';
import { type ControlRange, controlRange } from '../bench/controlRange.ts';
import { RESTING_CONTROLS } from '../bench/setup.ts';
import { mainResponse } from '../receiver/responses.ts';
import { biasWords, rackWords, sweepWords, tubeControlWords } from '../words/en/bench.ts';
import * as figures from '../words/en/benchFigures.ts';
import { type KnobScale, linearScale, listScale, ratioScale } from './knobScale.ts';
import type { BenchPort } from './ports.ts';

/** The controls that turn. */
export type KnobControl =
  | 'centreHz'
  | 'spanHz'
  | 'carrierHz'
  | 'levelDb'
  | 'phasingDegrees'
  | 'tunableHz'
  | 'dialTrimHz'
  | 'pipHeightDiv'
  | 'yVoltsPerDiv'
  | 'yPositionDiv'
  | 'xGain'
  | 'xPositionDiv'
  | 'focus'
  | 'brightness'
  | 'biasAVolts'
  | 'biasBVolts'
  | 'meterRangeVolts';

export interface KnobDress {
  readonly label: string;
  readonly shown: (value: number) => string;
  readonly parse: (typed: string) => number | null;
  readonly example: string;
  readonly signed: boolean;
}

export interface KnobFitting extends KnobDress {
  readonly scale: KnobScale;
  readonly coarse: number;
  readonly resting: number;
}

/** Everything that a knob needs to know of its control, for this receiver. */
export function fitKnob(setup: BenchPort['setup'], control: KnobControl): KnobFitting {
  const range = controlRange(setup, control);
  const { scale, coarse } = scaleFor(control, range);
  const dress = dressFor(setup, control);
  const inside = (value: number): boolean => value >= scale.valueAt(0) && value <= scale.valueAt(scale.last);
  const parse = (typed: string): number | null => {
    const value = dress.parse(typed);
    if (value === null || !inside(value)) return null;
    if (range.kind === 'choice') return scale.valueAt(scale.indexOf(value));
    return range.kind === 'number' && range.stepped ? Math.round(value / range.step) * range.step : value;
  };
  return { ...dress, parse, scale, coarse, resting: RESTING_CONTROLS[control] };
}

function scaleFor(control: KnobControl, range: ControlRange): { scale: KnobScale; coarse: number } {
  if (range.kind === 'choice') return { scale: listScale(range.choices.map(Number)), coarse: 1 };
  if (range.kind === 'switch') throw new Error(`${control} is a switch`);
  // Gain is a ratio: equal turns, equal factors, and 1 at the top of the scale.
  if (control === 'xGain') return { scale: ratioScale(range.min, range.max, 64, (v) => roundTo(v, 0.01)), coarse: 2 };
  const coarse = Math.max(1, Math.round(range.step / range.fineStep));
  return { scale: linearScale(range.min, range.max, range.fineStep), coarse };
}

function dressFor({ receiver }: BenchPort['setup'], control: KnobControl): KnobDress {
  const { setUp } = mainResponse(receiver);
  const bareUnitHz = setUp.centreHz < 2e6 ? 1e3 : 1e6;
  const typedHz = figures.typedFrequency(bareUnitHz);
  const likeCentre = figures.frequency(setUp.centreHz);
  switch (control) {
    case 'centreHz':
      return { label: sweepWords.centre, shown: figures.frequency, parse: typedHz, example: likeCentre, signed: false };
    case 'carrierHz':
      return {
        label: sweepWords.carrier,
        shown: figures.frequency,
        parse: typedHz,
        example: likeCentre,
        signed: false,
      };
    case 'dialTrimHz':
      return {
        label: rackWords.trim,
        shown: figures.offset,
        parse: typedHz,
        example: figures.offset(-20e3),
        signed: true,
      };
    case 'tunableHz':
      return { label: rackWords.tune, shown: figures.frequency, parse: typedHz, example: likeCentre, signed: true };
    case 'spanHz':
      return {
        label: sweepWords.span,
        shown: figures.width,
        parse: typedHz,
        example: figures.width(setUp.spanHz),
        signed: false,
      };
    case 'levelDb':
      return {
        label: sweepWords.level,
        shown: figures.decibels,
        parse: figures.typedDecibels,
        example: figures.decibels(-46),
        signed: false,
      };
    case 'phasingDegrees':
      return {
        label: sweepWords.phasing,
        shown: figures.degrees,
        parse: figures.typedDegrees,
        example: figures.degrees(12),
        signed: true,
      };
    case 'pipHeightDiv':
      return {
        label: rackWords.pipHeight,
        shown: figures.divisions,
        parse: figures.typedDivisions,
        example: figures.divisions(0.4),
        signed: false,
      };
    case 'yVoltsPerDiv':
      return {
        label: tubeControlWords.yGain,
        shown: figures.voltsPerDiv,
        parse: figures.typedVolts,
        example: figures.voltsPerDiv(0.2),
        signed: false,
      };
    case 'yPositionDiv':
      return {
        label: tubeControlWords.yPosition,
        shown: figures.divisions,
        parse: figures.typedDivisions,
        example: figures.divisions(-0.5),
        signed: true,
      };
    case 'xGain':
      return {
        label: tubeControlWords.xGain,
        shown: figures.times,
        parse: figures.typedTimes,
        example: figures.times(1.2),
        signed: true,
      };
    case 'xPositionDiv':
      return {
        label: tubeControlWords.xPosition,
        shown: figures.divisions,
        parse: figures.typedDivisions,
        example: figures.divisions(0.5),
        signed: true,
      };
    case 'focus':
      return {
        label: tubeControlWords.focus,
        shown: figures.share,
        parse: figures.typedShare,
        example: figures.share(0.7),
        signed: false,
      };
    case 'brightness':
      return {
        label: tubeControlWords.brightness,
        shown: figures.share,
        parse: figures.typedShare,
        example: figures.share(0.6),
        signed: false,
      };
    case 'biasAVolts':
    case 'biasBVolts':
      return {
        label: biasWords.output[control === 'biasAVolts' ? 'A' : 'B'],
        shown: (volts) => figures.biasVolts(volts, null),
        // A typed sign is left to the polarity switch.
        parse: (typed) => {
          const volts = figures.typedVolts(typed);
          return volts === null ? null : Math.abs(volts);
        },
        example: figures.voltage(4),
        signed: false,
      };
    case 'meterRangeVolts':
      return {
        label: biasWords.range,
        shown: figures.voltage,
        parse: figures.typedVolts,
        example: figures.voltage(10),
        signed: false,
      };
  }
}
