/** How figures of a report are written: one unit, few digits, a true minus, turns as fractions. The bench's own formats are shared. */
import type { FigureUnit } from '../../grading/report.ts';
import { clock, frequency, signed, width, written } from './benchFigures.ts';

export { clock, frequency, signed, width, written };

/** `9.4 dB`, `−40 dB`: one decimal, none where it would be a nought. */
export function decibels(db: number): string {
  const text = written(db, 1);
  return `${text.endsWith('.0') ? text.slice(0, -2) : text} dB`;
}

/** `61%`, `4.9%`: a decimal under ten. */
export function percent(value: number): string {
  return `${number(value, Math.abs(value) < 9.95 ? 1 : 0)}%`;
}

/** `1.2 MHz`, `292 kHz`, `12.5 kHz`, `400 Hz`: how far something lies off, without a sign. */
export function offset(hz: number): string {
  const size = Math.abs(hz);
  if (size >= 1e6) return `${number(size / 1e6, 2)} MHz`;
  return size >= 1e3 ? `${number(size / 1e3, size < 100e3 ? 1 : 0)} kHz` : `${number(size, 0)} Hz`;
}

export function volts(value: number): string {
  return `${number(value, 2)} V`;
}

export function degrees(value: number): string {
  return `${number(value, 1)}\u00b0`;
}

/** `1 3/8`, `7/32`, `0`: to the nearest eighth, or to a thirty-second below half a turn. Without a sign. */
export function turns(value: number): string {
  const size = Math.abs(value);
  return fraction(size, size < 0.5 ? 32 : 8);
}

/** `1 3/8 turns`, `1 turn`, `3/8 turn`. */
export function turnsLong(value: number): string {
  const text = turns(value);
  return `${text} ${text.includes(' ') || /^([2-9]|\d\d+)$/.test(text) || text === '0' ? 'turns' : 'turn'}`;
}

/** A figure of a score line with its unit. */
export function figure(value: number, unit: FigureUnit): string {
  switch (unit) {
    case 'percent':
      return percent(value);
    case 'db':
      return decibels(value);
    case 'hz':
      return value < 0 ? `\u2212${offset(value)}` : offset(value);
    case 'degrees':
      return degrees(value);
    case 'volts':
      return volts(value);
    case 'turns':
      return turnsLong(value);
    case 'seconds':
      return clock(value);
    case 'count':
    case 'ratio':
    case 'yes':
      return number(value, 2);
  }
}

/** At most `decimals` places, no trailing noughts. */
function number(value: number, decimals: number): string {
  const text = written(value, decimals);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

function fraction(size: number, parts: number): string {
  const count = Math.round(size * parts);
  const whole = Math.floor(count / parts);
  let top = count % parts;
  let bottom = parts;
  if (top === 0) return String(whole);
  while (top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
}
