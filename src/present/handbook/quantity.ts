/** A figure with its unit, kept as a value until the words of a language write it. */
import type { Format } from '../../words/format.ts';

export type Unit =
  | 'MHz'
  | 'kHz'
  | 'Hz'
  | 'dB'
  | 'share'
  | 'times'
  | 'turns'
  | 'V'
  | 'mV'
  | 'degrees'
  | 'pF'
  | 'uF'
  | 's'
  | 'ms'
  | 'm'
  | 'ohms'
  | 'bare';

export interface Quantity {
  /** SI: hertz, volts, farads, seconds; a share of one */
  readonly value: number;
  readonly unit: Unit;
  readonly places: number;
}

export const SCALE: Readonly<Record<Unit, number>> = {
  MHz: 1e6,
  kHz: 1e3,
  Hz: 1,
  dB: 1,
  share: 1,
  times: 1,
  turns: 1,
  V: 1,
  mV: 1e-3,
  degrees: 1,
  pF: 1e-12,
  uF: 1e-6,
  s: 1,
  ms: 1e-3,
  m: 1,
  ohms: 1,
  bare: 1,
};

export function writtenQuantity(format: Format, { value, unit, places }: Quantity): string {
  const figure = format.written(value / SCALE[unit], places);
  switch (unit) {
    case 'share':
      return format.percent(value, places);
    case 'degrees':
      return `${figure}\u00b0`;
    case 'times':
      return `\u00d7 ${figure}`;
    case 'ohms':
      return format.quantity(value, '\u03a9', 3);
    case 'turns':
      return `${value < 0 ? '\u2212' : ''}${format.turnsLong(value)}`;
    case 'uF':
      return format.quantity(value, 'F', 3);
    case 'bare':
      return figure;
    default:
      return `${figure}\u00a0${unit}`;
  }
}
