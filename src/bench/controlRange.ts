/** Every knob and switch as data: what it may be set to, in which unit, by which step. Views draw from it, the reducer refuses by it. */

import { mainResponse } from '../receiver/responses.ts';
import type { Refusal } from './benchEvent.ts';
import type { Controls } from './benchState.ts';
import type { BenchSetup } from './setup.ts';

export type ControlUnit = 'hz' | 'db' | 'degrees' | 'volts' | 'divisions' | 'ratio';

export type ControlRange =
  | {
      readonly kind: 'number';
      readonly unit: ControlUnit;
      readonly min: number;
      readonly max: number;
      readonly step: number;
      readonly fineStep: number;
      /** only whole steps exist (an attenuator); the others may stand anywhere between the ends */
      readonly stepped: boolean;
    }
  | { readonly kind: 'choice'; readonly unit: ControlUnit | null; readonly choices: readonly (string | number)[] }
  | { readonly kind: 'switch' };

export function controlRange(setup: Pick<BenchSetup, 'receiver'>, control: keyof Controls): ControlRange {
  const fixed = FIXED[control];
  if (fixed !== undefined) return fixed;
  const step = frequencyStepHz(mainResponse(setup.receiver).setUp.centreHz);
  const span = control === 'spanHz';
  return {
    kind: 'number',
    unit: 'hz',
    min: span ? 0 : 0.1e6,
    max: span ? 30e6 : 230e6,
    step,
    fineStep: step / 10,
    stepped: false,
  };
}

/** Why a control cannot be set so; null when it can. */
export function checkControl(setup: BenchSetup, control: string, value: unknown): Refusal | null {
  if (!isControl(control)) return 'noSuchControl';
  if (control === 'sourceMode' && value === 'video' && setup.receiver.videoFeed === null) return 'notInThisScenario';
  const range = controlRange(setup, control);
  switch (range.kind) {
    case 'switch':
      return typeof value === 'boolean' ? null : 'valueOutOfRange';
    case 'choice':
      return range.choices.some((choice) => choice === value) ? null : 'valueOutOfRange';
    case 'number': {
      if (typeof value !== 'number' || !Number.isFinite(value)) return 'valueOutOfRange';
      if (value < range.min || value > range.max) return 'valueOutOfRange';
      return range.stepped && !Number.isInteger(value / range.step) ? 'valueOutOfRange' : null;
    }
  }
}

export function isControl(name: string): name is keyof Controls {
  return Object.hasOwn(FIXED, name) || FREQUENCIES.some((control) => control === name);
}

const FREQUENCIES = ['centreHz', 'spanHz', 'tunableHz', 'carrierHz'] as const;

/** A knob's click is about a hundredth of what that part of the spectrum is swept over. */
function frequencyStepHz(centreHz: number): number {
  if (centreHz < 2e6) return 1e3;
  if (centreHz < 20e6) return 10e3;
  return centreHz < 100e6 ? 50e3 : 100e3;
}

const SWITCH: ControlRange = { kind: 'switch' };
const POLARITY: ControlRange = { kind: 'choice', unit: null, choices: ['+', '-'] };
const BIAS: ControlRange = number('volts', 0, 15, 0.5);

const FIXED: Readonly<Partial<Record<keyof Controls, ControlRange>>> = {
  sourceMode: { kind: 'choice', unit: null, choices: ['sweep', 'spot', 'tone', 'video'] },
  levelDb: { ...number('db', -80, 0, 1), fineStep: 1, stepped: true },
  slowSweep: SWITCH,
  phasingDegrees: number('degrees', -90, 90, 1),
  blanking: SWITCH,
  mirror: SWITCH,
  comb: SWITCH,
  tunableOn: SWITCH,
  dialTrimHz: { ...number('hz', -1e6, 1e6, 5e3), fineStep: 500 },
  pipHeightDiv: { ...number('divisions', 0, 3, 0.1), fineStep: 0.05 },
  markerRoute: { kind: 'choice', unit: null, choices: ['added', 'through'] },
  rfTerminated: SWITCH,
  rfCapacitor: SWITCH,
  yTip: { kind: 'choice', unit: null, choices: ['plain', 'resistor', 'probe'] },
  biasAVolts: BIAS,
  biasAPolarity: POLARITY,
  biasBVolts: BIAS,
  biasBPolarity: POLARITY,
  meterRangeVolts: { kind: 'choice', unit: 'volts', choices: [0.3, 1, 3, 10, 30] },
  meterMode: { kind: 'choice', unit: null, choices: ['dc', 'tone'] },
  yVoltsPerDiv: {
    kind: 'choice',
    unit: 'volts',
    choices: [0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5],
  },
  yPositionDiv: number('divisions', -8, 8, 0.2),
  xGain: number('ratio', 0.2, 5, 0.05),
  xPositionDiv: number('divisions', -8, 8, 0.2),
  yCoupling: { kind: 'choice', unit: null, choices: ['AC', 'DC'] },
  yInvert: SWITCH,
  ySmoothing: SWITCH,
  focus: number('ratio', 0, 1, 0.05),
  brightness: number('ratio', 0, 1, 0.05),
  phosphor: { kind: 'choice', unit: null, choices: ['P1', 'P31', 'P7'] },
  yInput: { kind: 'choice', unit: null, choices: ['detected', 'raw'] },
};

function number(unit: ControlUnit, min: number, max: number, step: number): ControlRange & { kind: 'number' } {
  return { kind: 'number', unit, min, max, step, fineStep: step / 10, stepped: false };
}
