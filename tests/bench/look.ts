/** Reading a beam as a person would: where the trace stands at a frequency, on the way there and on the way back. */
import type { BenchDisplay } from '../../src/bench/display.ts';

export const HALF = 1024;

export interface Spot {
  readonly x: number;
  readonly y: number;
}

export function spots(display: BenchDisplay): Spot[] {
  const { data, count } = display.beam;
  return Array.from({ length: count }, (_, i) => ({ x: data[3 * i]!, y: data[3 * i + 1]! }));
}

export const trace = (display: BenchDisplay): Spot[] => spots(display).slice(0, HALF);
export const retrace = (display: BenchDisplay): Spot[] => spots(display).slice(HALF);

/** Height of a half where its x passes a place, straight between the neighbours. */
export function heightAt(half: readonly Spot[], x: number): number {
  for (let i = 1; i < half.length; i++) {
    const [a, b] = [half[i - 1]!, half[i]!];
    if ((a.x - x) * (b.x - x) <= 0 && a.x !== b.x) return a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
  }
  throw new Error(`the trace does not pass ${x}`);
}

export const heights = (points: readonly Spot[]): number[] => points.map((p) => p.y);
export const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
export const spread = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);

/** x of the highest point, by a parabola through it and its neighbours. */
export function peakX(half: readonly Spot[]): number {
  let best = 1;
  for (let i = 1; i < half.length - 1; i++) if (half[i]!.y > half[best]!.y) best = i;
  const [a, b, c] = [half[best - 1]!, half[best]!, half[best + 1]!];
  const t = (a.y - c.y) / (2 * (a.y - 2 * b.y + c.y));
  return b.x + (t * (c.x - a.x)) / 2;
}
