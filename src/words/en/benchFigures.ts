/** Figures at the bench: how quantities are written, spoken and read when typed. Minus is U+2212 to the eye and "minus" to the ear. */

const MINUS = '\u2212';

/** A number with fixed decimals and a proper minus; never "−0". */
export function written(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? MINUS + text : text;
}

export function said(value: number, decimals: number): string {
  return written(value, decimals).replace(MINUS, 'minus ');
}

/** With + in front of positive values. */
export function signed(value: number, decimals: number): string {
  const text = written(value, decimals);
  return value > 0 && Number(text) !== 0 ? `+${text}` : text;
}

/** Fixed decimals without trailing noughts beyond the least number of them. */
const trimmed = (value: number, least: number, most: number): string => {
  const text = written(value, most);
  const [whole, decimals = ''] = text.split('.');
  const kept = decimals.slice(0, least) + decimals.slice(least).replace(/0+$/, '');
  return kept === '' ? whole! : `${whole}.${kept}`;
};

const KILO_BELOW_HZ = 2e6;

/** `43.50 MHz`, `455.0 kHz`. */
export function frequency(hz: number): string {
  return Math.abs(hz) < KILO_BELOW_HZ ? `${trimmed(hz / 1e3, 1, 2)} kHz` : `${trimmed(hz / 1e6, 2, 3)} MHz`;
}

/** `10.0 MHz`, `300 kHz`. */
export function width(hz: number): string {
  return Math.abs(hz) < 1e6 ? `${trimmed(hz / 1e3, 0, 1)} kHz` : `${trimmed(hz / 1e6, 1, 3)} MHz`;
}

/** `+20 kHz`, `−1.5 kHz`. */
export function offset(hz: number): string {
  const text = width(hz);
  return hz > 0 ? `+${text}` : text;
}

export const aloud = (text: string): string =>
  text
    .replace(MINUS, 'minus ')
    .replace('MHz', 'megahertz')
    .replace('kHz', 'kilohertz')
    .replace(/dB$/, 'decibels')
    .replace('mV', 'millivolts')
    .replace(/\bV\b/, 'volts')
    .replace('/div', ' a division')
    .replace(/\bdiv$/, 'divisions')
    .replace('\u00b0', ' degrees')
    .replace('\u00d7', 'times')
    .replace(/%$/, 'per cent');

export const decibels = (db: number): string => `${written(db, 0)} dB`;
export const degrees = (value: number): string => `${signed(value, value % 1 === 0 ? 0 : 1)}\u00b0`;
export const divisions = (value: number): string => `${trimmed(value, 1, 2)} div`;
export const times = (value: number): string => `\u00d7 ${written(value, 2)}`;
export const share = (value: number): string => `${written(100 * value, 0)}%`;

/** `0.2 V`, `20 mV`. */
export function voltage(volts: number): string {
  return Math.abs(volts) < 0.1 && volts !== 0
    ? `${Number((1e3 * volts).toPrecision(6))} mV`
    : `${Number(volts.toPrecision(6))} V`;
}
export const voltsPerDiv = (volts: number): string => `${voltage(volts)}/div`;
/** `−4.0 V`; without a polarity no sign. */
export const biasVolts = (volts: number, polarity: '+' | '-' | null): string =>
  `${volts === 0 || polarity === null ? '' : polarity === '-' ? MINUS : '+'}${trimmed(volts, 1, 2)} V`;

/** Turns to the nearest eighth: `4 3/8`, `1/8`, `0`. */
export function eighths(turns: number): string {
  const whole = Math.round(Math.abs(turns) * 8);
  const sign = turns < 0 && whole > 0 ? MINUS : '';
  const ones = Math.floor(whole / 8);
  let top = whole % 8;
  let bottom = 8;
  if (top === 0) return `${sign}${ones}`;
  while (top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return `${sign}${ones === 0 ? '' : `${ones} `}${top}/${bottom}`;
}

/** `14:32`, `1:04:05`. */
export function clock(seconds: number): string {
  const whole = Math.max(0, Math.floor(seconds));
  const two = (n: number): string => String(n).padStart(2, '0');
  const hours = Math.floor(whole / 3600);
  const minutes = Math.floor(whole / 60) % 60;
  return hours > 0 ? `${hours}:${two(minutes)}:${two(whole % 60)}` : `${two(minutes)}:${two(whole % 60)}`;
}

/** Reads a number with an optional unit; a unit of another kind, or anything else beside, is not read. */
export function typedNumber(text: string, units: Readonly<Record<string, number>>, bareUnit: number): number | null {
  const match = /^([+\u2212-]?\d*[.,]?\d+)\s*([a-z\u00b0\u00d7%/]*)$/i.exec(
    text
      .trim()
      .replace(/^\u00d7\s*/, '')
      .replace(/\s+/g, ' '),
  );
  if (match === null) return null;
  const value = Number(match[1]!.replace('\u2212', '-').replace(',', '.'));
  const unit = match[2]!.toLowerCase();
  const factor = unit === '' ? bareUnit : units[unit];
  return Number.isFinite(value) && factor !== undefined ? Number((value * factor).toPrecision(12)) : null;
}

export const typedFrequency =
  (bareUnitHz: number) =>
  (text: string): number | null =>
    typedNumber(text, { mhz: 1e6, m: 1e6, khz: 1e3, k: 1e3, hz: 1 }, bareUnitHz);
export const typedDecibels = (text: string): number | null => typedNumber(text, { db: 1 }, 1);
export const typedDegrees = (text: string): number | null => typedNumber(text, { '\u00b0': 1, deg: 1, degrees: 1 }, 1);
export const typedDivisions = (text: string): number | null => typedNumber(text, { div: 1 }, 1);
export const typedTimes = (text: string): number | null => typedNumber(text, { x: 1 }, 1);
export const typedShare = (text: string): number | null => typedNumber(text, { '%': 0.01 }, 0.01);
export const typedVolts = (text: string): number | null =>
  typedNumber(text, { v: 1, 'v/div': 1, mv: 1e-3, 'mv/div': 1e-3 }, 1);
