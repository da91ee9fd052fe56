/**
 * Reading the tube as a person does: heights to a tenth of a division, places to a twentieth, nothing that is off the graticule. The frequency of a place
 * is that of the dials, with the sweep's own straight axis.
 */
import { type Hands, set } from './hands.ts';

const HEIGHT_STEP_DIV = 0.1;
const PLACE_STEP_DIV = 0.05;
const HALF_HEIGHT_DIV = 4;
const HALF_WIDTH_DIV = 5;

export interface Trace {
  /** places and heights in divisions as read; NaN where the spot is off the graticule */
  readonly xDiv: Float64Array;
  readonly yDiv: Float64Array;
}

export interface Sight {
  readonly forward: Trace;
  readonly back: Trace;
}

/** Sweeps that glass and eye run into one: what strays from sweep to sweep averages, pips and noise. */
export const SWEEPS = 6;
/** Points that are passed over at once while a place is looked for. */
const STRIDE = 16;

/** `later`: so many sweeps from now. */
export function see(hands: Pick<Hands, 'look'>, later = 0): Sight {
  let x = new Float64Array(0);
  let y = x;
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    const { data, count } = hands.look(later + sweep).beam;
    if (sweep === 0) {
      x = new Float64Array(count);
      y = new Float64Array(count);
    }
    for (let i = 0; i < count; i++) y[i] = y[i]! + data[3 * i + 1]! / SWEEPS;
    if (sweep === SWEEPS - 1) for (let i = 0; i < count; i++) x[i] = data[3 * i]!;
  }
  for (let i = 0; i < x.length; i++)
    if (Math.abs(y[i]!) > HALF_HEIGHT_DIV || Math.abs(x[i]!) > HALF_WIDTH_DIV) y[i] = Number.NaN;
  const half = x.length / 2;
  return {
    forward: { xDiv: x.subarray(0, half), yDiv: y.subarray(0, half) },
    back: { xDiv: x.subarray(half), yDiv: y.subarray(half) },
  };
}

/** Height of a trace at a place, read to a tenth; null off the graticule. */
export function heightAt({ xDiv, yDiv }: Trace, atDiv: number): number | null {
  for (let i = 1; i < xDiv.length; i++) {
    // The spot goes smoothly: a stride that stays on one side of the place has not passed it.
    while (i + STRIDE < xDiv.length && (xDiv[i - 1]! - atDiv) * (xDiv[i + STRIDE]! - atDiv) > 0) i += STRIDE;
    const a = xDiv[i - 1]!;
    const b = xDiv[i]!;
    if ((a - atDiv) * (b - atDiv) > 0) continue;
    const ya = yDiv[i - 1]!;
    const yb = yDiv[i]!;
    if (Number.isNaN(ya) || Number.isNaN(yb)) return null;
    const slope = a === b ? 0 : (yb - ya) / (b - a);
    return roundTo(ya + slope * (atDiv - a), HEIGHT_STEP_DIV);
  }
  return null;
}

/** Lowest and highest of a trace on the graticule. */
export function extent({ yDiv }: Trace): { readonly low: number; readonly high: number; readonly whole: boolean } {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let whole = true;
  for (const y of yDiv) {
    if (Number.isNaN(y)) whole = false;
    else {
      low = Math.min(low, y);
      high = Math.max(high, y);
    }
  }
  return { low: roundTo(low, HEIGHT_STEP_DIV), high: roundTo(high, HEIGHT_STEP_DIV), whole };
}

/** A part of the width over which an eye takes the middle of a line that is thick with noise. */
const BLOCKS = 32;

/** From the lowest to the highest place of the middle of a line. */
export function swing({ yDiv }: Trace): number {
  const size = Math.max(1, Math.floor(yDiv.length / BLOCKS));
  const middles: number[] = [];
  for (let from = 0; from + size <= yDiv.length; from += size) {
    const seen = yDiv.slice(from, from + size).filter((y) => !Number.isNaN(y));
    if (seen.length > 0) middles.push(seen.reduce((sum, y) => sum + y, 0) / seen.length);
  }
  return middles.length === 0 ? 0 : roundTo(Math.max(...middles) - Math.min(...middles), HEIGHT_STEP_DIV);
}

/** The base line: where a blanked retrace lies. */
export function baseLine({ back }: Sight): number | null {
  let seen = 0;
  let sum = 0;
  for (const y of back.yDiv) {
    if (Number.isNaN(y)) continue;
    seen++;
    sum += y;
  }
  return seen === 0 ? null : roundTo(sum / seen, HEIGHT_STEP_DIV);
}

/** How far the base line strays from its middle in one sweep, volts rms at the Y input: half of what one would call its thickness. */
export function grassOnLine(hands: Pick<Hands, 'look' | 'knobs'>): number {
  const { data, count } = hands.look().beam;
  const line: number[] = [];
  for (let i = count / 2; i < count; i++) {
    const y = data[3 * i + 1]!;
    if (Math.abs(y) <= HALF_HEIGHT_DIV) line.push(y);
  }
  if (line.length < 3) return 0;
  const middle = line.reduce((sum, y) => sum + y, 0) / line.length;
  return Math.sqrt(line.reduce((sum, y) => sum + (y - middle) ** 2, 0) / line.length) * hands.knobs().yVoltsPerDiv;
}

/** The tube's frequency axis: place = at0 + perHz * (hz - centreHz of the dial). */
export interface Axis {
  readonly at0Div: number;
  readonly perHzDiv: number;
}

/** As near as a person tells two places apart on the tube. */
const AGREES_DIV = 0.15;

/**
 * The axis by the dials, unless the crystals' pips stand elsewhere: then by the pips, through which the best straight line is laid.
 */
export function axisOf(hands: Hands): Axis {
  const { centreHz, spanHz, xGain, xPositionDiv } = hands.knobs();
  const pips = hands
    .look()
    .tags.filter((tag) => tag.kind === 'crystal' && tag.xDiv !== null)
    .map((tag) => ({ off: tag.hz - centreHz, x: roundTo(tag.xDiv!, PLACE_STEP_DIV) }));
  const turned = pips.length >= 2 && pips[pips.length - 1]!.x < pips[0]!.x;
  const dials = { at0Div: xPositionDiv, perHzDiv: ((turned ? -2 : 2) * HALF_WIDTH_DIV * xGain) / spanHz };
  const away = Math.max(0, ...pips.map((p) => Math.abs(p.x - dials.at0Div - dials.perHzDiv * p.off)));
  if (pips.length < 2 || away <= AGREES_DIV) return dials;
  const n = pips.length;
  const meanOff = pips.reduce((sum, p) => sum + p.off, 0) / n;
  const meanX = pips.reduce((sum, p) => sum + p.x, 0) / n;
  const across = pips.reduce((sum, p) => sum + (p.off - meanOff) * (p.x - meanX), 0);
  const perHzDiv = across / pips.reduce((sum, p) => sum + (p.off - meanOff) ** 2, 0);
  return { at0Div: meanX - perHzDiv * meanOff, perHzDiv };
}

function placeOf(hands: Hands, axis: Axis, hz: number): number {
  return axis.at0Div + axis.perHzDiv * (hz - hands.knobs().centreHz);
}

export const FLOOR_VOLTS = 1e-6;

/** A place on the trace, volts at the Y input from where the shift knob puts nothing, and how far the base line itself stands from there. */
export interface Height {
  readonly volts: number;
  readonly lift: number;
}

/** Heights at each of some frequencies: read at the gain that fills the graticule and at finer ones for what is low. Leaves the Y knobs as they were. */
export function readHeights(hands: Hands, hz: readonly number[], axis: Axis, fine = true): Height[] {
  return readEach(hands, hz, axis, fine, (height, lift, volts) => ({ volts: height * volts, lift: lift * volts })).map(
    (one) => one ?? { volts: 0, lift: 0 },
  );
}

/** Volts at each of some frequencies, read so: counted from the base line, or (`noiseOut`) less what the base line shows that the set's noise makes. */
export function readVolts(hands: Hands, hz: readonly number[], axis: Axis, fine = true, noiseOut = false): number[] {
  return readEach(
    hands,
    hz,
    axis,
    fine,
    (height, lift, volts) => (noiseOut ? withoutNoise(height, lift) : height - lift) * volts,
  ).map((v) => v ?? 0);
}

/** `found`: what a height comes to, from its divisions and those of the base line, and the volts of a division with their sign; the finest gain at which it can be read has the word. */
function readEach<T>(
  hands: Hands,
  hz: readonly number[],
  axis: Axis,
  fine: boolean,
  found: (height: number, lift: number, volts: number) => T,
): (T | null)[] {
  const { yVoltsPerDiv, yPositionDiv, yInvert } = hands.knobs();
  const all: (T | null)[] = hz.map(() => null);
  const coarsest = wholeGain(hands, yVoltsPerDiv);
  // From coarse to fine: with each the tall parts leave the tube and the low ones can be read.
  const gains = hands.scale('yVoltsPerDiv').clicks.toReversed();
  const steps = gains.filter((gain) => gain <= coarsest).slice(0, fine ? 5 : 1);
  for (const gain of steps) {
    set(hands, 'yVoltsPerDiv', gain);
    const sight = see(hands);
    const base = baseLine(sight);
    if (base === null) continue;
    hz.forEach((f, i) => {
      const y = heightAt(sight.forward, placeOf(hands, axis, f));
      if (y !== null) all[i] = found(y - yPositionDiv, base - yPositionDiv, gain * (yInvert ? -1 : 1));
    });
  }
  set(hands, 'yVoltsPerDiv', yVoltsPerDiv);
  set(hands, 'yPositionDiv', yPositionDiv);
  return all;
}

/**
 * A height without what noise adds to it. Alone it lifts the line by `lift`; on a carrier much larger than itself its power adds, of which 2/pi of the square of that
 * lift is seen (mean of the envelope of a sine in noise, Rice; from memory).
 */
export function withoutNoise(height: number, lift: number): number {
  if (Math.abs(lift) < HEIGHT_STEP_DIV) return height - lift;
  const times = height / lift;
  const carrier = (over: number): number => Math.sqrt(over ** 2 - 2 / Math.PI - (1 - 2 / Math.PI) / over ** 2);
  // Hardly above the noise a tenth of a division would count for too much: there the rise itself is taken.
  if (times < OUT_OF_NOISE) return (lift * (times - 1) * carrier(OUT_OF_NOISE)) / (OUT_OF_NOISE - 1);
  return lift * carrier(times);
}

/** A line this many times as high as noise alone stands out of it. */
const OUT_OF_NOISE = 1.5;

/** What has grown past the edge of the tube is brought back on it before it is read. */
function wholeGain(hands: Hands, gainNow: number): number {
  for (const gain of hands.scale('yVoltsPerDiv').clicks.filter((g) => g >= gainNow)) {
    set(hands, 'yVoltsPerDiv', gain);
    if (extent(see(hands).forward).whole) return gain;
  }
  return gainNow;
}

function roundTo(value: number, step: number): number {
  return Math.round(value / step) * step;
}
