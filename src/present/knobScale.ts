/** Knob positions and the values they stand for. A position is a whole number from 0 to `last`; drags may pass between two. Pure. */
import { clamp } from '../base/rounding.ts';

export interface KnobScale {
  readonly last: number;
  valueAt(index: number): number;
  /** nearest place on the scale, may lie between two positions; outside values go to the ends */
  indexOf(value: number): number;
}

/** Equal steps. Values are cleaned to the step so that no rounding dust is sent. */
export function linearScale(min: number, max: number, step: number): KnobScale {
  const last = Math.max(1, Math.round((max - min) / step));
  return {
    last,
    valueAt: (index) => clean(min + clamp(index, 0, last) * step),
    indexOf: (value) => clamp((value - min) / step, 0, last),
  };
}

/** A switch of fixed values in rising order; between two of them the place is measured on a logarithmic scale where it can be. */
export function listScale(values: readonly number[]): KnobScale {
  if (values.length < 2) throw new Error('a knob needs two positions');
  const last = values.length - 1;
  return {
    last,
    valueAt: (index) => values[clamp(Math.round(index), 0, last)]!,
    indexOf(value) {
      if (value <= values[0]!) return 0;
      for (let i = 1; i <= last; i++) {
        const high = values[i]!;
        if (value > high) continue;
        const low = values[i - 1]!;
        const part = low > 0 ? Math.log(value / low) / Math.log(high / low) : (value - low) / (high - low);
        return i - 1 + part;
      }
      return last;
    },
  };
}

/** The same positions the other way round: where a smaller value is more of what the knob is for. */
export function reversedScale({ last, valueAt, indexOf }: KnobScale): KnobScale {
  return { last, valueAt: (index) => valueAt(last - index), indexOf: (value) => last - indexOf(value) };
}

/** `count` steps that each multiply by the same factor: for ranges of several decades. */
export function ratioScale(min: number, max: number, count: number, round: (value: number) => number): KnobScale {
  const factor = Math.log(max / min);
  return {
    last: count,
    valueAt: (index) => clamp(round(min * Math.exp((clamp(index, 0, count) / count) * factor)), min, max),
    indexOf: (value) => clamp((Math.log(clamp(value, min, max) / min) / factor) * count, 0, count),
  };
}

/** A notch of a knob that goes by round figures, in positions: how far, and where on the scale the value 0 lies (it may lie beyond the end). */
export interface Notch {
  readonly by: number;
  readonly zero: number;
}

/** The next position up or down that is a multiple of the notch, counted from the value 0. */
export function notched(from: number, way: 1 | -1, { by, zero }: Notch): number {
  const notches = (from - zero) / by;
  const next = way > 0 ? Math.floor(notches + DUST) + 1 : Math.ceil(notches - DUST) - 1;
  return zero + next * by;
}

/** The largest of 1, 2 and 5 times a power of ten that is not above `most` (above 0). */
export function roundFigure(most: number): number {
  const power = 10 ** Math.floor(Math.log10(most) + DUST);
  const times = [5, 2, 1].find((one) => one * power <= most * (1 + DUST)) ?? 1;
  return times * power;
}

const DUST = 1e-9;

function clean(value: number): number {
  return Number(value.toPrecision(12));
}
