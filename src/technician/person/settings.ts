/** Making safe, clipping leads, setting the source, phasing, blanking, level and Y: what comes before any slug is touched, and again for each curve. */
import type { SheetSetUp } from '../../receiver/receiver.ts';
import { baseLine, extent, heightAt, see } from './eyes.ts';
import { clip, type Hands, set } from './hands.ts';
import { beatsApart, oscillatorOf, shimmerExtent } from './oscillator.ts';
import type { PrintedCurve, PrintedResponse, PrintedSheet } from './sheet.ts';

export function makeSafe(hands: Hands, sheet: PrintedSheet): void {
  hands.note({ kind: 'safe', mains: sheet.mains });
  hands.act({ type: 'cautionsAcknowledged' });
  // What a helper has done already is refused as being so, and that is well.
  if (sheet.mains) hands.act({ type: 'isolationSwitched', on: true });
}

/** Leads for a curve, on a set that is off while it is touched. */
function clipLeads(
  hands: Hands,
  sheet: PrintedSheet,
  { leads: asPrinted, fittings }: PrintedResponse,
  injectAt: string,
) {
  const wanted = { ...asPrinted, rf: injectAt };
  const leads = hands.leads();
  const moves = (['rf', 'y', 'biasA', 'biasB'] as const).filter(
    (lead) => wanted[lead] !== null && leads[lead] !== wanted[lead],
  );
  if (moves.length > 0) hands.note({ kind: 'leads', at: injectAt });
  if (sheet.mains && moves.length > 0) hands.act({ type: 'powerSwitched', on: false });
  clip(hands, 'earth', wanted.earth);
  clip(hands, 'x', wanted.x);
  // A lead that is in the way of another comes off first.
  for (const lead of moves) if (leads[lead] !== null) clip(hands, lead, null);
  for (const lead of moves) clip(hands, lead, wanted[lead]);
  for (const [control, value] of fittings) set(hands, control, value);
  if (sheet.mains) hands.act({ type: 'powerSwitched', on: true });
}

/** Source, bias, markers and tube as the sheet says, whatever they were left at. */
function setSource(hands: Hands, { knobs, setUp }: PrintedResponse, crystalsHz: readonly number[]): void {
  for (const [control, value] of knobs) set(hands, control, value);
  for (const hz of crystalsHz) if (!setUp.markersHz.includes(hz)) hands.act({ type: 'crystalPulled', hz });
  for (const hz of setUp.markersHz) hands.act({ type: 'crystalPlugged', hz });
}

/** Degrees of the first, coarse look and of each closer one. */
const LOOKS = [6, 2, 0.5] as const;

/** Turns the phasing until trace and retrace lie on each other, blanking off; then blanking on and low frequency to its side. */
function phase(hands: Hands, setUp: SheetSetUp, apartNow: (hands: Hands) => number = split): void {
  set(hands, 'blanking', false);
  hands.note({ kind: 'phasing' });
  const ends = hands.scale('phasingDegrees');
  let best = 0;
  let { low, high } = ends;
  for (const step of LOOKS) {
    let least = Number.POSITIVE_INFINITY;
    const even: number[] = [];
    for (let degrees = low; degrees <= high + 1e-9; degrees += step) {
      set(hands, 'phasingDegrees', degrees);
      const apart = apartNow(hands);
      if (apart < least - 1e-9) {
        least = apart;
        even.length = 0;
      }
      if (Math.abs(apart - least) <= 1e-9) even.push(degrees);
    }
    // Where the eye sees no difference, the middle is the best guess.
    best = even.reduce((sum, d) => sum + d, 0) / even.length;
    low = Math.max(ends.low, best - step);
    high = Math.min(ends.high, best + step);
  }
  hands.note({ kind: 'phased' });
  set(hands, 'phasingDegrees', Math.round(best * 10) / 10);
  set(hands, 'blanking', true);
  turnRound(hands, setUp);
}

/** Low frequency to the side that the sheet says, by the pips. */
function turnRound(hands: Hands, setUp: SheetSetUp): void {
  const pips = hands.look().tags.filter((tag) => tag.kind === 'crystal' && tag.xDiv !== null);
  const [first, last] = [pips[0], pips.at(-1)];
  if (first === undefined || last === undefined || first === last) return;
  const lowAtLeft = first.xDiv! < last.xDiv!;
  if (lowAtLeft === setUp.lowFrequencyAtLeft) return;
  hands.note({ kind: 'mirror' });
  set(hands, 'mirror', !hands.knobs().mirror);
}

/** How far trace and retrace stand apart, divisions of height added up over the width. */
function split(hands: Hands): number {
  const { forward, back } = see(hands);
  let sum = 0;
  for (let x = -4.5; x <= 4.5; x += 0.25) {
    const a = heightAt(forward, x);
    const b = heightAt(back, x);
    // A place that only one of the two reaches is as bad as any.
    sum += a !== null && b !== null ? Math.abs(a - b) : 4;
  }
  return Math.round(sum * 10) / 10;
}

/** A curve that changes by more than this while nobody touches anything is a set that warms up. */
const CREEPS_DIV = 0.15;
const WATCHED_SECONDS = 20;
const WARM_UP_SECONDS = 600;

/** Watches the curve with hands off; where it creeps, ten minutes are given to the set. True where they were. */
export function letWarm(hands: Hands): boolean {
  const places = Array.from({ length: 19 }, (_, i) => -4.5 + i / 2);
  const heights = (): (number | null)[] => {
    const { forward } = see(hands);
    return places.map((x) => heightAt(forward, x));
  };
  hands.note({ kind: 'watches' });
  const before = heights();
  hands.wait(WATCHED_SECONDS);
  const after = heights();
  const creeps = before.some((y, i) => {
    const then = after[i]!;
    return y === null || then === null ? y !== then : Math.abs(then - y) > CREEPS_DIV;
  });
  if (creeps) {
    hands.note({ kind: 'creeps' });
    hands.wait(WARM_UP_SECONDS);
  }
  return creeps;
}

const BIAS_KNOBS = { biasA: 'biasAVolts', biasB: 'biasBVolts' } as const;
const NEEDLE_ROUNDS = 2;

/** Each bias line is brought to its volts by the needle the first time it is needed; after that the place of the knob is known. */
export function setByNeedle(hands: Hands, sheet: PrintedSheet, setUp: SheetSetUp, dials: Map<string, number>): void {
  for (const { at, volts } of setUp.biases) {
    const lead = (['biasA', 'biasB'] as const).find((one) => hands.leads()[one] === at);
    if (lead === undefined || volts === 0) continue;
    const known = dials.get(`${at} ${volts}`);
    if (known !== undefined) {
      set(hands, BIAS_KNOBS[lead], known);
      continue;
    }
    hands.note({ kind: 'bias', at, volts });
    clipMeter(hands, sheet, at);
    set(hands, 'meterMode', 'dc');
    const { clicks } = hands.scale('meterRangeVolts');
    set(hands, 'meterRangeVolts', clicks.find((range) => range > 1.2 * Math.abs(volts)) ?? clicks.at(-1)!);
    for (let round = 0; round < NEEDLE_ROUNDS; round++) {
      const { meterVolts } = hands.look();
      if (meterVolts / volts <= 0.1) break;
      set(hands, BIAS_KNOBS[lead], Math.round((100 * hands.knobs()[BIAS_KNOBS[lead]] * volts) / meterVolts) / 100);
    }
    clipMeter(hands, sheet, null);
    dials.set(`${at} ${volts}`, hands.knobs()[BIAS_KNOBS[lead]]);
  }
}

function clipMeter(hands: Hands, sheet: PrintedSheet, to: string | null): void {
  if (hands.leads().meter === to) return;
  if (sheet.mains) hands.act({ type: 'powerSwitched', on: false });
  clip(hands, 'meter', to);
  if (sheet.mains) hands.act({ type: 'powerSwitched', on: true });
}

const MARGIN_DIV = 0.5;

/** The largest Y gain at which the whole trace is on the tube, the base line a little inside its edge (an S-curve: in the middle). */
function fillGraticule(hands: Hands, bothWays: boolean, beats = false): void {
  for (const gain of hands.scale('yVoltsPerDiv').clicks) {
    set(hands, 'yVoltsPerDiv', gain);
    for (const position of bothWays ? [0] : [-3.5, 3.5]) {
      set(hands, 'yPositionDiv', position);
      if (!isInside(hands, beats)) continue;
      if (position > 0) {
        // The detector gives volts downwards: turn the picture over.
        set(hands, 'yInvert', !hands.knobs().yInvert);
        set(hands, 'yPositionDiv', -3.5);
      }
      return;
    }
  }
}

/** What a bias that has been brought to its volts has pushed over the edge is brought back. */
export function keepInside(hands: Hands, response: PrintedResponse, bothWays: boolean): void {
  const beats = oscillatorOf(response) !== null;
  if (!isInside(hands, beats)) fillGraticule(hands, bothWays, beats);
}

function isInside(hands: Hands, beats: boolean): boolean {
  const edge = 4 - MARGIN_DIV / 5;
  const { forward, back } = see(hands);
  const f = extent(forward);
  const b = extent(back);
  if (!f.whole || !b.whole || Math.max(f.high, b.high) > edge || Math.min(f.low, b.low) < -edge) return false;
  if (!beats) return true;
  const { low, high } = shimmerExtent(hands);
  return low >= -edge && high <= edge;
}

/** Pips that can be seen and do not bend the line: a tenth of the trace. */
export function smallPips(hands: Hands, beats: boolean): void {
  const sight = see(hands);
  const { low, high } = beats ? shimmerExtent(hands) : extent(sight.forward);
  const base = beats ? low : (baseLine(sight) ?? low);
  const height = Math.max(high - Math.min(low, base), 0.5);
  hands.note({ kind: 'pips' });
  set(hands, 'pipHeightDiv', Math.max(0.05, Math.round(0.07 * height * 20) / 20));
}

/** How phasing and mirror were found to be right for a curve. */
export interface Phased {
  readonly degrees: number;
  readonly mirror: boolean;
}

/** The whole set-up for one printed curve. */
export function setUpFor(
  hands: Hands,
  sheet: PrintedSheet,
  response: PrintedResponse,
  curve: PrintedCurve,
  crystalsHz: readonly number[],
  isSCurve: boolean,
  phased?: Phased,
): void {
  clipLeads(hands, sheet, response, curve.injectAt);
  if (phased === undefined) hands.note({ kind: 'source' });
  setSource(hands, response, crystalsHz);
  set(hands, 'levelDb', curve.levelDb);
  set(hands, 'blanking', phased !== undefined);
  if (phased !== undefined) {
    set(hands, 'phasingDegrees', phased.degrees);
    set(hands, 'mirror', phased.mirror);
  }
  const beats = oscillatorOf(response) !== null;
  if (phased === undefined) hands.note({ kind: 'fills' });
  fillGraticule(hands, isSCurve, beats);
  if (phased !== undefined) return;
  const raised = !beats && outOfTheNoise(hands, curve, isSCurve);
  phase(hands, response.setUp, beats ? beatsApart : split);
  if (raised) set(hands, 'levelDb', curve.levelDb);
  fillGraticule(hands, isSCurve, beats);
}

const HARDLY_THERE = 0.15;
const RAISES = [10, 10, 10] as const;

/** A curve that hardly rises out of the noise cannot be phased: the source is turned up until it does. True where it was. */
function outOfTheNoise(hands: Hands, { volts }: PrintedCurve, isSCurve: boolean): boolean {
  const printed = volts.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
  let raised = false;
  for (const more of RAISES) {
    const { low, high } = extent(see(hands).forward);
    if ((high - low) * hands.knobs().yVoltsPerDiv > HARDLY_THERE * printed) break;
    hands.note({ kind: 'faint' });
    set(hands, 'levelDb', Math.min(hands.knobs().levelDb + more, hands.scale('levelDb').high));
    fillGraticule(hands, isSCurve, false);
    raised = true;
  }
  return raised;
}
