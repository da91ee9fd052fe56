/** What each knob and switch of the bench may be set to: views draw from it, the reducer refuses by it. */
import type { ControlId, Refusal } from './benchEvent.ts';
import { CONTROLS } from './controls/controls.ts';
import type { ControlRange } from './controls/range.ts';
import type { BenchSetup } from './setup.ts';

export function controlRange({ receiver }: Pick<BenchSetup, 'receiver'>, control: ControlId): ControlRange {
  return CONTROLS.range(receiver, control);
}

/** Why a control cannot be set so; null when it can. */
export function checkControl(
  { receiver }: Pick<BenchSetup, 'receiver'>,
  control: string,
  value: unknown,
): Refusal | null {
  return CONTROLS.check(receiver, control, value);
}

/** The values of a control that clicks or has positions, in the order of its scale; none of one that may stand anywhere. */
export function choicesOf(setup: Pick<BenchSetup, 'receiver'>, control: ControlId): readonly (string | number)[] {
  const range = controlRange(setup, control);
  return range.kind === 'choice' ? range.choices : [];
}
