/** A part of a deck under a source that sweeps over evenly spaced frequencies at one rate (physics/chirp.ts). */
import type { Chirp } from '../physics/chirp.ts';
import type { Solver } from '../physics/solver.ts';

/** Carrier volts (peak) of a node at the instants at which the source passes the frequencies; null where it is not known. */
export type ChirpedNodes = (node: string) => Float64Array | null;

/** `along`: of the amps (peak) of the current source `drive`, at each frequency, nothing at either end; every other source is off. What it gives holds until the solver is asked for something else. */
export function solveChirped(
  solver: Solver,
  drive: string,
  amps: number,
  along: Float64Array,
  chirp: Chirp,
): (node: string) => Float64Array {
  const re = along.map((share) => amps * share);
  const im = new Float64Array(re.length);
  chirp.toLines(re, im);
  solver.setDriveSpectrum(drive, re, im);
  solver.setChirp(chirp);
  solver.solve();
  return (node) => {
    const [vr, vi] = [solver.real(node).slice(), solver.imag(node).slice()];
    chirp.toTime(vr, vi);
    return vr.map((r, f) => Math.hypot(r, vi[f]!));
  };
}
