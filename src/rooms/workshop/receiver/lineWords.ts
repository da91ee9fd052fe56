/** A line of the sheet in the making: what it is called, and what the design gives. */
import type { Specification } from '../../../receiver/receiver.ts';
import type { SpecItem } from '../../../receiver/specification.ts';
import type { Words } from '../../../words/words.ts';

export function lineName({ format, ownReceiver }: Words, { kind, hz, toHz, id }: SpecItem): string {
  const { response: say } = ownReceiver;
  const called = { ...say.kinds, ...say.others }[kind === 'window' ? 'window' : kind];
  if (kind === 'bandwidth') return say.line(called, say.decibels(Number(id.split(':')[1])));
  const at = toHz === null ? format.frequency(hz) : say.between(format.frequency(hz), format.frequency(toHz));
  return say.line(called, at);
}

export function givenOf(
  { format, ownReceiver }: Words,
  { kind, measured, unit }: SpecItem,
  { sCurve }: Pick<Specification, 'sCurve'>,
): string {
  const { sense, ofLower, bend, decibels } = ownReceiver.response;
  // No minus before a nought.
  if (unit === 'db') return decibels(Math.round(measured * 10) / 10 + 0);
  if (unit === 'hz') return format.width(measured);
  // 1 is as the sheet wants it.
  if (kind === 'polarity') return (measured === 1) === (sCurve?.risesWithFrequency ?? true) ? sense.rises : sense.falls;
  if (kind === 'symmetry') return ofLower(format.percent(measured));
  if (kind === 'linearity') return bend(format.percent(measured, 1));
  return format.percent(measured);
}
