/**
 * How figures are written, said and read in one language: decimals, plurals and lists by the standard rules of its locale; a true minus; fractions for turns.
 * What a locale does not know (the words for turns, how a figure is read aloud) the language brings along.
 */

import { once } from '../base/once.ts';
import type { MeasuredUnit } from '../grading/report.ts';

const MINUS = '\u2212';
const KILO_BELOW_HZ = 1e6;

const PREFIXES: readonly (readonly [number, string])[] = [
  [1e9, 'G'],
  [1e6, 'M'],
  [1e3, 'k'],
  [1, ''],
  [1e-3, 'm'],
  [1e-6, '\u00b5'],
  [1e-9, 'n'],
  [1e-12, 'p'],
];

/** A word by the plural kind of its count; kinds that are left out take `other`. */
export type PluralForms = { readonly other: string } & Readonly<Partial<Record<Intl.LDMLPluralRule, string>>>;

/** What a language says of figures beyond its locale. */
export interface FigureWords {
  /** a written figure with its unit, as it is read aloud */
  readonly aloud: (text: string) => string;
  /** the word behind a number of turns; `part` behind less than one */
  readonly turns: PluralForms & { readonly part: string };
  /** what may be typed for degrees, besides the sign */
  readonly typedDegrees: readonly string[];
}

export type Format = ReturnType<typeof createFormat>;

export function createFormat(locale: string, words: FigureWords) {
  const decimals = numberFormats(locale);
  const rules = new Map<number, Intl.PluralRules>();
  const lists = new Intl.ListFormat(locale, { type: 'conjunction' });
  const percents = new Intl.NumberFormat(locale, { style: 'percent', maximumFractionDigits: 0, useGrouping: false });
  const ofNought = once(() => percents.formatToParts(0));

  /** From `least` to `most` decimals, with a true minus; nothing is never less than nothing. `plus` goes before what is more than nothing. */
  function trimmed(value: number, least: number, most: number, plus = ''): string {
    const format = decimals(least, most);
    const text = format.format(Math.abs(value));
    if (value === 0 || text === format.format(0)) return text;
    return value < 0 ? MINUS + text : plus + text;
  }
  const written = (value: number, places: number): string => trimmed(value, places, places);
  const atMost = (value: number, places: number): string => trimmed(value, 0, places);
  /** With at most so many decimals, or with two figures where none would be left: what is little is not nothing. */
  const notNought = (value: number, places: number): string =>
    Math.abs(value) < 10 ** -places ? atMost(Number(value.toPrecision(2)), 15) : atMost(value, places);
  /** The locale says where its sign of per cent stands; the figure is ours. */
  const percent = (value: number, places: number): string =>
    ofNought()
      .map((part) => (part.type === 'integer' ? atMost(value, places) : part.value))
      .join('');

  /** The form for so many; `places`: decimals with which the count is written (one point nought is not one). */
  function plural(count: number, forms: PluralForms, places = 0): string {
    let rule = rules.get(places);
    if (rule === undefined) {
      rule = new Intl.PluralRules(locale, places === 0 ? {} : { minimumFractionDigits: places });
      rules.set(places, rule);
    }
    return forms[rule.select(Math.abs(count))] ?? forms.other;
  }
  /** `1 slug`, `4 slugs` */
  const counted = (count: number, forms: PluralForms): string => `${atMost(count, 2)} ${plural(count, forms)}`;

  /** `43.50 MHz`, `455.0 kHz` */
  const frequency = (hz: number): string =>
    Math.abs(hz) < KILO_BELOW_HZ ? `${trimmed(hz / 1e3, 1, 2)} kHz` : `${trimmed(hz / 1e6, 2, 3)} MHz`;
  /** `10.0 MHz`, `300 kHz` */
  const width = (hz: number, plus = ''): string =>
    Math.abs(hz) < 1e6 ? `${trimmed(hz / 1e3, 0, 1, plus)} kHz` : `${trimmed(hz / 1e6, 1, 3, plus)} MHz`;

  /** `0.2 V`, `20 mV` */
  const voltage = (volts: number): string =>
    Math.abs(volts) < 0.1 && volts !== 0
      ? `${atMost(Number((1e3 * volts).toPrecision(6)), 6)} mV`
      : `${atMost(Number(volts.toPrecision(6)), 6)} V`;

  /** `45.75 MHz`, `110 pF`, `1.122 mH`, `9.1 k\u03a9`; `digits`: the usual number is enough to tell two crystals of one box apart */
  function quantity(value: number, unit: string, digits = 8): string {
    const known = PREFIXES.filter(([scale]) => scale >= 1 || unit !== 'Hz');
    const size = Number(Math.abs(value).toPrecision(digits));
    const [scale, prefix] = known.find(([least]) => size >= least) ?? (size === 0 ? [1, ''] : known.at(-1)!);
    return `${atMost(Number((value / scale).toPrecision(digits)), 12)} ${prefix}${unit}`;
  }

  /** `1 3/8`, `7/32`, `0`: to the nearest eighth, or to a thirty-second below half a turn. Without a sign. */
  const turns = (value: number): string => fraction(value, partsOfTurn(value));
  /** `1 3/8 turns`, `1 turn`, `3/8 turn` */
  function turnsLong(value: number): string {
    const parts = partsOfTurn(value);
    const size = Math.round(Math.abs(value) * parts) / parts;
    return `${fraction(value, parts)} ${turnWord(size)}`;
  }
  const turnWord = (size: number): string => (size > 0 && size < 1 ? words.turns.part : plural(size, words.turns));

  /** Figures of a report: one unit, few digits. */
  const score = {
    /** `9.4 dB`, `−40 dB` */
    decibels: (db: number): string => `${atMost(db, 1)} dB`,
    /** `61%`, `4.9%`: a decimal under ten */
    percent: (value: number): string => percent(value, Math.abs(value) < 9.95 ? 1 : 0),
    /** `1.2 MHz`, `292 kHz`, `12.5 kHz`, `400 Hz`: how far something lies off, without a sign */
    offset(hz: number): string {
      const size = Math.abs(hz);
      if (size >= 1e6) return `${atMost(size / 1e6, 2)} MHz`;
      return size >= 1e3 ? `${atMost(size / 1e3, size < 100e3 ? 1 : 0)} kHz` : `${atMost(size, 0)} Hz`;
    },
    volts: (value: number): string => `${atMost(value, 2)} V`,
    degrees: (value: number): string => `${atMost(value, 1)}\u00b0`,
    /** a figure of a score line with its unit */
    figure(value: number, unit: MeasuredUnit): string {
      switch (unit) {
        case 'percent':
          return score.percent(value);
        case 'db':
          return score.decibels(value);
        case 'hz':
          return `${value < 0 ? MINUS : ''}${score.offset(value)}`;
        case 'degrees':
          return score.degrees(value);
        case 'volts':
          return score.volts(value);
        case 'turns':
          return turnsLong(value);
        case 'seconds':
          return clock(value);
        case 'count':
        case 'ratio':
        case 'yes':
          return atMost(value, 2);
      }
    },
  } as const;

  return {
    written,
    atMost,
    notNought,
    trimmed: (value: number, least: number, most: number): string => trimmed(value, least, most),
    said: (value: number, places: number): string => words.aloud(written(value, places)),
    aloud: words.aloud,
    plural,
    counted,
    list: (items: readonly string[]): string => lists.format(items),
    frequency,
    width: (hz: number): string => width(hz),
    quantity,
    /** `14:32`, `1:04:05` */
    clock,
    turns,
    turnsLong,
    /** turns to the nearest 1/32, without a sign: `1 3/8`, `5/32` */
    turnsFine: (value: number): string => fraction(value, 32),
    turnsFineLong: (value: number): string =>
      `${fraction(value, 32)} ${turnWord(Math.round(Math.abs(value) * 32) / 32)}`,
    /** turns to the nearest eighth: `4 3/8` */
    eighths: (value: number): string => `${value < 0 && Math.round(value * 8) !== 0 ? MINUS : ''}${fraction(value, 8)}`,
    /** `share` of one */
    percent: (share: number, places = 0): string => percent(100 * share, places),

    /** figures of the bench's controls */
    knob: {
      /** `+20 kHz`, `−1.5 kHz` */
      offset: (hz: number): string => width(hz, '+'),
      decibels: (db: number): string => `${written(db, 0)} dB`,
      degrees: (value: number): string => {
        const places = value % 1 === 0 ? 0 : 1;
        return `${trimmed(value, places, places, '+')}\u00b0`;
      },
      divisions: (value: number): string => `${trimmed(value, 1, 2)} div`,
      times: (value: number): string => `\u00d7 ${written(value, 2)}`,
      share: (value: number): string => percent(100 * value, 0),
      voltage,
      voltsPerDiv: (volts: number): string => `${voltage(volts)}/div`,
      /** `−4.0 V`; without a polarity no sign */
      biasVolts: (volts: number, polarity: '+' | '-' | null): string =>
        `${volts === 0 || polarity === null ? '' : polarity === '-' ? MINUS : '+'}${trimmed(volts, 1, 2)} V`,
    },

    score,

    typed: typedFigures(words.typedDegrees),
  } as const;
}

/** Formats are costly to make and cheap to use. */
function numberFormats(locale: string): (least: number, most: number) => Intl.NumberFormat {
  const made = new Map<number, Intl.NumberFormat>();
  return (least, most) => {
    const key = 100 * least + most;
    let format = made.get(key);
    if (format === undefined) {
      format = new Intl.NumberFormat(locale, {
        minimumFractionDigits: least,
        maximumFractionDigits: most,
        useGrouping: false,
      });
      made.set(key, format);
    }
    return format;
  };
}

function partsOfTurn(value: number): 8 | 32 {
  return Math.abs(value) < 0.5 ? 32 : 8;
}

/** Without a sign. */
function fraction(value: number, parts: number): string {
  const count = Math.round(Math.abs(value) * parts);
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

function clock(seconds: number): string {
  const whole = Math.max(0, Math.floor(seconds));
  const two = (n: number): string => String(n).padStart(2, '0');
  const hours = Math.floor(whole / 3600);
  const minutes = Math.floor(whole / 60) % 60;
  return hours > 0 ? `${hours}:${two(minutes)}:${two(whole % 60)}` : `${two(minutes)}:${two(whole % 60)}`;
}

type Typed = (text: string) => number | null;

/** Reads a number with an optional unit; a unit of another kind, or anything else beside, is not read. A decimal comma is as good as a point. */
function typedNumber(text: string, units: Readonly<Record<string, number>>, bareUnit: number): number | null {
  const match = /^([+\u2212-]?\d*[.,]?\d+)\s*([\p{L}\u00b0\u00d7%/]*)$/iu.exec(
    text
      .trim()
      .replace(/^\u00d7\s*/, '')
      .replace(/\s+/g, ' '),
  );
  if (match === null) return null;
  const value = Number(match[1]!.replace(MINUS, '-').replace(',', '.'));
  const unit = match[2]!.toLowerCase();
  const factor = unit === '' ? bareUnit : Object.hasOwn(units, unit) ? units[unit] : undefined;
  return Number.isFinite(value) && factor !== undefined ? Number((value * factor).toPrecision(12)) : null;
}

function typedFigures(degrees: readonly string[]) {
  const reads =
    (units: Readonly<Record<string, number>>, bareUnit = 1): Typed =>
    (text) =>
      typedNumber(text, units, bareUnit);
  return {
    /** a bare number is taken in `bareUnitHz` */
    frequency: (bareUnitHz: number): Typed => reads({ mhz: 1e6, m: 1e6, khz: 1e3, k: 1e3, hz: 1 }, bareUnitHz),
    decibels: reads({ db: 1 }),
    degrees: reads({ '\u00b0': 1, ...Object.fromEntries(degrees.map((word) => [word, 1])) }),
    divisions: reads({ div: 1 }),
    times: reads({ x: 1, '\u00d7': 1 }),
    share: reads({ '%': 0.01 }, 0.01),
    volts: reads({ v: 1, 'v/div': 1, mv: 1e-3, 'mv/div': 1e-3 }),
  } as const;
}
