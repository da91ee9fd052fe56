/** Figures of cards: the places of a rule from least to most, and what somebody types, with its unit or without. */
import type { Bounds } from '../files/numberBounds.ts';

export interface AmountScale {
  /** places are 0 to here */
  readonly last: number;
  placeOf(value: number): number;
  valueAt(place: number): number;
}

/** Wider than this many times its least, a range goes by ratios. */
const RATIO_FROM = 300;
const PLACES = 200;
/** The preferred values of parts, E24 of IEC 60063 (from memory). */
const PREFERRED = [
  1, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2, 2.2, 2.4, 2.7, 3, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8, 7.5, 8.2, 9.1,
] as const;
const A_DECADE = PREFERRED.length;

export function amountScale({ least, most }: Bounds): AmountScale {
  if (least > 0 && most / least >= RATIO_FROM) {
    const decade = Math.floor(Math.log10(least) + 1e-9);
    const last = Math.ceil(A_DECADE * (Math.log10(most) - decade) - 1e-9);
    const valueAt = (place: number): number => {
      const value = PREFERRED[place % A_DECADE]! * 10 ** (decade + Math.floor(place / A_DECADE));
      return inside(Number(value.toPrecision(3)));
    };
    return {
      last,
      valueAt,
      placeOf(value) {
        const about = clamped(Math.round(A_DECADE * (Math.log10(Math.max(value, least)) - decade)), last);
        const near = [about - 1, about, about + 1].filter((place) => place >= 0 && place <= last);
        const away = (place: number): number => Math.abs(Math.log(valueAt(place) / Math.max(value, least)));
        return near.reduce((best, place) => (away(place) < away(best) ? place : best), about);
      },
    };
  }
  const step = roundStep((most - least) / PLACES);
  const first = Math.ceil(least / step - 1e-9);
  const last = Math.floor(most / step + 1e-9) - first;
  return {
    last,
    placeOf: (value) => clamped(Math.round(value / step) - first, last),
    valueAt: (place) => inside(Number(((first + place) * step).toPrecision(12))),
  };
  function inside(value: number): number {
    return Math.min(Math.max(value, least), most);
  }
}

const clamped = (place: number, last: number): number => Math.min(Math.max(place, 0), last);

/** 1, 2 or 5 and noughts. */
function roundStep(step: number): number {
  const decade = 10 ** Math.floor(Math.log10(step));
  const over = step / decade;
  return decade * (over > 5 ? 10 : over > 2 ? 5 : over > 1 ? 2 : 1);
}

const PREFIXES: Readonly<Record<string, number>> = {
  p: 1e-12,
  n: 1e-9,
  µ: 1e-6,
  μ: 1e-6,
  u: 1e-6,
  m: 1e-3,
  k: 1e3,
  K: 1e3,
  M: 1e6,
  G: 1e9,
};
/** As they may be typed, and what a figure of theirs is multiplied by. */
const UNITS: Readonly<Record<string, number>> = {
  Ω: 1,
  '\u2126': 1,
  ohm: 1,
  ohms: 1,
  Hz: 1,
  F: 1,
  V: 1,
  A: 1,
  s: 1,
  dB: 1,
  '°': 1,
  div: 1,
  '×': 1,
  '%': 0.01,
  '': 1,
};

/** `47k`, `−60 kHz`, `4,5 V`, `× 0.5`, `8 %`; null: no figure. */
export function typedAmount(text: string): number | null {
  const match = /^×?\s*([+\u2212-]?(?:\d+[.,]?\d*|[.,]\d+)(?:e[+-]?\d+)?)\s*(.*)$/iu.exec(text.trim());
  if (match === null) return null;
  const figure = Number(match[1]!.replace('\u2212', '-').replace(',', '.'));
  const unit = match[2]!.trim();
  const factor = factorOf(unit);
  return factor === null || !Number.isFinite(figure) ? null : Number((figure * factor).toPrecision(12));
}

function factorOf(unit: string): number | null {
  if (Object.hasOwn(UNITS, unit)) return UNITS[unit]!;
  const prefix = PREFIXES[unit.charAt(0)];
  const bare = unit.slice(1).trim();
  return prefix !== undefined && bare !== '%' && Object.hasOwn(UNITS, bare) ? prefix * UNITS[bare]! : null;
}
