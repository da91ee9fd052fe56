/**
 * The frequencies at which a curve is solved to be held against a sheet: an even grid from end to end, four times denser about each trap, and every frequency
 * that the sheet names exactly, so that points and traps are solved and not interpolated.
 */
import type { Specification } from './receiver.ts';

const EVEN_POINTS = 561;
const DENSER = 4;
/** about one bandwidth of a trap with Q 150 on either side, as a share of its frequency */
const TRAP_REACH = 0.008;

/** `evenPoints`: a search that looks often may do with fewer. */
export function specificationFrequencies(spec: Specification, evenPoints = EVEN_POINTS): Float64Array {
  const step = (spec.toHz - spec.fromHz) / (evenPoints - 1);
  const named = new Set<number>([spec.fromHz, spec.toHz]);
  for (const p of spec.points) named.add(p.hz);
  for (const w of [...spec.windows, ...spec.skirts]) named.add(w.fromHz).add(w.toHz);
  for (const t of spec.tilts) named.add(t.lowHz).add(t.highHz);
  for (const t of spec.traps) named.add(t.hz);
  for (const p of spec.peaks) named.add(p.hz);
  if (spec.sCurve !== null) {
    const { centreHz, linearity } = spec.sCurve;
    named.add(centreHz);
    if (linearity !== null) named.add(centreHz - linearity.withinHz).add(centreHz + linearity.withinHz);
  }
  if (spec.gain !== null) named.add(spec.gain.hz);
  if (spec.referenceHz !== undefined) named.add(spec.referenceHz);
  const exact = [...named].sort((a, b) => a - b);

  const grid: number[] = [];
  for (let i = 0; i < evenPoints; i++) {
    const hz = spec.fromHz + i * step;
    const dense = spec.traps.some((t) => Math.abs(hz - t.hz) < TRAP_REACH * t.hz);
    for (let k = 0; k < (dense ? DENSER : 1); k++) grid.push(hz + (k * step) / DENSER);
  }
  // A grid point that crowds a named one would make the differences between samples meaningless.
  const crowd = step / (2 * DENSER);
  const kept = grid.filter((hz) => hz < spec.toHz && distanceToNearest(exact, hz) > crowd);
  return Float64Array.from([...kept, ...exact].sort((a, b) => a - b));
}

function distanceToNearest(sorted: readonly number[], hz: number): number {
  let best = Number.POSITIVE_INFINITY;
  for (const named of sorted) best = Math.min(best, Math.abs(named - hz));
  return best;
}
