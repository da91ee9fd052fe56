/**
 * Setting an oscillator that runs: on the tube it is no curve but a beat, which shimmers from sweep to sweep where the sweep crosses it. It is brought on to the
 * crystal's pip at the sheet's span, and then, with the span narrowed, to zero beat.
 */
import { axisOf } from './eyes.ts';
import { type Hands, set } from './hands.ts';
import type { PrintedResponse } from './sheet.ts';
import type { Turner } from './turner.ts';

/** Sweeps that are watched for what shimmers. */
const SWEEPS = 8;
/** As many as a beat needs to have been everywhere that it goes. */
const WHOLE_SLIDE = 27;
const EDGE_Y_DIV = 4;
const PLACE_STEP_DIV = 0.05;
/** Less than this of a shimmer is the tube's own. */
const SEEN_DIV = 0.05;
const EDGE_DIV = 5;
/** A core moves an oscillator by about a hundredth of its frequency a turn. */
const SHARE_A_TURN = 0.01;
const MOST_MOVES = 8;
/** The span narrowed to this share for the last of it; and how much of the tolerance is left alone. */
const NARROW = 1 / 8;
const LEFT_ALONE = 0.25;

/** Where the sheet wants the oscillator, and how near; null for a response that is about none. */
export function oscillatorOf({
  specification,
}: PrintedResponse): { readonly hz: number; readonly toleranceHz: number } | null {
  return specification.peaks.find((peak) => peak.oscillator === true) ?? null;
}

interface Shimmer {
  readonly x: readonly number[];
  /** lowest and highest that each place has been seen at */
  readonly low: readonly number[];
  readonly high: readonly number[];
}

function watch(hands: Pick<Hands, 'look'>, sweeps: number): Shimmer {
  const x: number[] = [];
  const low: number[] = [];
  const high: number[] = [];
  for (let sweep = 0; sweep < sweeps; sweep++) {
    const { beam } = hands.look(sweep);
    for (let i = 0; i < beam.count; i++) {
      const y = beam.data[3 * i + 1]!;
      x[i] = beam.data[3 * i]!;
      low[i] = Math.min(low[i] ?? y, y);
      high[i] = Math.max(high[i] ?? y, y);
    }
  }
  return { x, low, high };
}

/** Lowest and highest of a line that shimmers, as read; what runs off the face is read at its edge. */
export function shimmerExtent(hands: Pick<Hands, 'look'>): { readonly low: number; readonly high: number } {
  const { low, high } = watch(hands, WHOLE_SLIDE);
  const read = (y: number): number => Math.round(Math.max(-EDGE_Y_DIV, Math.min(EDGE_Y_DIV, y)) * 10) / 10;
  return { low: read(Math.min(...low)), high: read(Math.max(...high)) };
}

/** Where trace and retrace shimmer most, divisions; null where they do not. */
function beatPlaces(hands: Pick<Hands, 'look'>): {
  readonly forward: number | null;
  readonly back: number | null;
} {
  const { x, low, high } = watch(hands, SWEEPS);
  const half = x.length / 2;
  const place = (from: number): number | null => {
    const shimmer = (i: number): number => high[i]! - low[i]!;
    let best = from;
    for (let i = from; i < from + half; i++) if (shimmer(i) > shimmer(best)) best = i;
    if (shimmer(best) < SEEN_DIV || Math.abs(x[best]!) > EDGE_DIV) return null;
    // The beat is as wide as what shimmers at least half as much.
    let sum = 0;
    let count = 0;
    for (let i = from; i < from + half; i++) {
      if (shimmer(i) < shimmer(best) / 2) continue;
      sum += x[i]!;
      count++;
    }
    return Math.round(sum / count / PLACE_STEP_DIV) * PLACE_STEP_DIV;
  };
  return { forward: place(0), back: place(half) };
}

/** How far the beats of trace and retrace stand apart; a place that only one of them has is as bad as any. */
export function beatsApart(hands: Pick<Hands, 'look'>): number {
  const { forward, back } = beatPlaces(hands);
  return forward === null || back === null ? 2 * EDGE_DIV : Math.abs(forward - back);
}

/** How far the oscillator stands above the crystal, by the pip of that crystal; null where no beat is seen. */
export function offBy(hands: Hands, hz: number): number | null {
  const { forward } = beatPlaces(hands);
  if (forward === null) return null;
  const { at0Div, perHzDiv } = axisOf(hands);
  const pip = hands.look().tags.find((tag) => tag.kind === 'crystal' && tag.hz === hz)?.xDiv;
  const wanted = pip ?? at0Div + perHzDiv * (hz - hands.knobs().centreHz);
  return (forward - wanted) / perHzDiv;
}

export function setOscillator(hands: Hands, turner: Turner, slug: string, response: PrintedResponse): void {
  const wanted = oscillatorOf(response);
  if (wanted === null) return;
  const { spanHz } = hands.knobs();
  const tolerance = LEFT_ALONE * wanted.toleranceHz;
  // Further in is more inductance, and lower.
  let hzATurn = SHARE_A_TURN * wanted.hz;
  for (const span of [spanHz, NARROW * spanHz]) {
    set(hands, 'spanHz', span);
    let off = offBy(hands, wanted.hz);
    for (let move = 0; move < MOST_MOVES && off !== null && Math.abs(off) > tolerance; move++) {
      hands.note({ kind: 'beat', slug, offHz: off });
      const made = turner.turn(slug, off / hzATurn);
      const then = offBy(hands, wanted.hz);
      if (made === 0 || then === null) break;
      const seen = (off - then) / made;
      if (seen > 0) hzATurn = seen;
      off = then;
    }
  }
  set(hands, 'spanHz', spanHz);
}
