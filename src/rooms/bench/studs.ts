/** Studs that several panels share. */
import type { Controls, Phosphor, YTip } from '../../bench/benchState.ts';
import type { Stud } from '../../kit/widgets/Switch.tsx';
import { biasWords, leadWords, rackWords, switchWords, tubeControlWords } from '../../words/en/bench.ts';

export const OFF_ON: readonly Stud<boolean>[] = [
  { value: false, word: switchWords.off },
  { value: true, word: switchWords.on },
];

export const POLARITIES: readonly Stud<'+' | '-'>[] = [
  { value: '-', word: '\u2212', spoken: biasWords.polarities['-'] },
  { value: '+', word: '+', spoken: biasWords.polarities['+'] },
];

export const COUPLINGS: readonly Stud<'AC' | 'DC'>[] = [
  { value: 'AC', word: 'AC', spoken: tubeControlWords.couplings.AC },
  { value: 'DC', word: 'DC', spoken: tubeControlWords.couplings.DC },
];

export const Y_INPUTS: readonly Stud<'detected' | 'raw'>[] = [
  { value: 'detected', word: tubeControlWords.inputs.detected, spoken: tubeControlWords.inputsSpoken.detected },
  { value: 'raw', word: tubeControlWords.inputs.raw, spoken: tubeControlWords.inputsSpoken.raw },
];

export const PHOSPHORS: readonly Stud<Phosphor>[] = (['P1', 'P31', 'P7'] as const).map((value) => ({
  value,
  word: value,
  spoken: tubeControlWords.phosphors[value],
}));

export const ROUTES: readonly Stud<'added' | 'through'>[] = [
  { value: 'added', word: rackWords.routes.added, spoken: rackWords.routesSpoken.added },
  { value: 'through', word: rackWords.routes.through, spoken: rackWords.routesSpoken.through },
];

export const TIPS: readonly Stud<YTip>[] = (['plain', 'resistor', 'probe'] as const).map((value) => ({
  value,
  word: leadWords.tips[value],
  spoken: leadWords.tipsSpoken[value],
}));

export const METER_MODES: readonly Stud<Controls['meterMode']>[] = (['dc', 'tone'] as const).map((value) => ({
  value,
  word: biasWords.modes[value],
  spoken: biasWords.modesSpoken[value],
}));
