/** Figures of cards: the places of a rule from least to most, and what somebody types, with its unit or without. */
import type { Bounds } from '../files/figureBounds.ts';

export interface FigureScale {
  /** places are 0 to here */
  readonly last: number;
  placeOf(value: number): number;
  valueAt(place: number): number;
}

/** Wider than this many times its least, a range goes by ratios. */
const RATIO_FROM = 300;
const PLACES_A_DECADE = 24;
const PLACES = 200;
const DIGITS = 2;

export function figureScale({ least, most }: Bounds): FigureScale {
  if (least > 0 && most / least >= RATIO_FROM) {
    const last = Math.ceil(PLACES_A_DECADE * Math.log10(most / least));
    return {
      last,
      placeOf: (value) => clamped(Math.round(PLACES_A_DECADE * Math.log10(Math.max(value, least) / least)), last),
      valueAt: (place) => inside(Number((least * 10 ** (place / PLACES_A_DECADE)).toPrecision(DIGITS))),
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
  '×': 1,
  '%': 0.01,
  '': 1,
};

/** `47k`, `−60 kHz`, `4,5 V`, `× 0.5`, `8 %`; null: no figure. */
export function typedFigure(text: string): number | null {
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
