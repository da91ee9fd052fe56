/**
 * The corridor of tolerance along the nominal curve: at the frequencies that the sheet speaks of, exactly its limits;
 * between them the room above and below the nominal curve runs straight from one to the next. Pure.
 */
import type { Specification } from '../receiver/receiver.ts';
import { type Curve, levelAt, within } from './curves.ts';

export interface CorridorPoint {
  readonly hz: number;
  readonly low: number;
  readonly high: number;
}

interface Anchor {
  readonly hz: number;
  /** room above and below the nominal level */
  readonly up: number;
  readonly down: number;
}

/** `spec` with its tolerances already widened for the scenario. */
export function toleranceCorridor(spec: Specification, nominal: Curve): readonly CorridorPoint[] {
  const anchors = anchorsOf(spec, nominal);
  if (anchors.length === 0) return [];
  const floors = spec.windows.map(({ fromHz, toHz, maxRippleDb }) => {
    const top = within(nominal, fromHz, toHz, 40).reduce((most, [, level]) => Math.max(most, level), 0);
    return { fromHz, toHz, low: top * 10 ** (-maxRippleDb / 20) };
  });
  const spots = new Set(within(nominal, spec.fromHz, spec.toHz, 400).map(([hz]) => hz));
  for (const hz of [...anchors.map((a) => a.hz), ...floors.flatMap((f) => [f.fromHz, f.toHz])])
    if (hz >= spec.fromHz && hz <= spec.toHz) spots.add(hz);
  return [...spots]
    .sort((a, b) => a - b)
    .map((hz) => {
      const level = levelAt(nominal, hz);
      const { up, down } = roomAt(anchors, hz);
      // A window of ripple holds over its whole stretch, not only where the sheet names a point.
      const floor = floors.reduce(
        (most, f) => (hz >= f.fromHz && hz <= f.toHz ? Math.max(most, Math.min(f.low, level)) : most),
        0,
      );
      return { hz, low: spec.sCurve === null ? Math.max(floor, level - down) : level - down, high: level + up };
    });
}

function anchorsOf(spec: Specification, nominal: Curve): Anchor[] {
  const anchors: Anchor[] = [];
  const add = (hz: number, low: number, high: number): void => {
    const level = levelAt(nominal, hz);
    anchors.push({ hz, up: Math.max(0, high - level), down: Math.max(0, level - low) });
  };
  for (const { hz, low, high } of spec.points) add(hz, low, high);
  for (const { hz, maxDb } of spec.traps) add(hz, 0, 10 ** (maxDb / 20));
  for (const { fromHz, toHz, max } of spec.skirts)
    for (const hz of [fromHz, (fromHz + toHz) / 2, toHz]) add(hz, 0, max);
  // Widths say less than points do: they serve where the sheet names no points.
  if (spec.points.length === 0)
    for (const { levelDb, minHz, maxHz, centreToleranceHz } of spec.bandwidths) {
      const sideways = (maxHz - minHz) / 4 + (centreToleranceHz ?? 0) / 2;
      for (const hz of edgesAt(nominal, 10 ** (levelDb / 20), spec)) {
        const a = levelAt(nominal, hz - sideways);
        const b = levelAt(nominal, hz + sideways);
        add(hz, Math.min(a, b), Math.max(a, b));
      }
    }
  return strictestFirst(anchors);
}

/** Where the nominal curve first rises through a level and last falls through it. */
function edgesAt(nominal: Curve, level: number, spec: Specification): number[] {
  const samples = within(nominal, spec.fromHz, spec.toHz, 4000);
  const above = samples.filter(([, l]) => l >= level);
  const first = above[0];
  const last = above[above.length - 1];
  return first === undefined || last === undefined ? [] : [first[0], last[0]];
}

/** In order of frequency; where two demands meet, the stricter room on each side. */
function strictestFirst(anchors: readonly Anchor[]): Anchor[] {
  const merged: Anchor[] = [];
  for (const next of [...anchors].sort((a, b) => a.hz - b.hz)) {
    const held = merged[merged.length - 1];
    if (held !== undefined && held.hz === next.hz)
      merged[merged.length - 1] = { hz: held.hz, up: Math.min(held.up, next.up), down: Math.min(held.down, next.down) };
    else merged.push(next);
  }
  return merged;
}

function roomAt(anchors: readonly Anchor[], hz: number): { up: number; down: number } {
  const after = anchors.findIndex((a) => a.hz >= hz);
  const last = anchors[anchors.length - 1]!;
  if (after === -1) return last;
  const b = anchors[after]!;
  if (after === 0 || b.hz === hz) return b;
  const a = anchors[after - 1]!;
  const t = (hz - a.hz) / (b.hz - a.hz);
  return { up: a.up + (b.up - a.up) * t, down: a.down + (b.down - a.down) * t };
}
