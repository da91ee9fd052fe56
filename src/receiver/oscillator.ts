/**
 * Where a local oscillator runs: at the peak of its tank, found on the tank's own network. A sustained oscillator settles where the loop's phase is zero,
 * which for a parallel tank driven by a current is the peak of its volts (small loss; from memory, any oscillator text).
 */
import type { Solver } from '../physics/solver.ts';
import type { Converter } from './receiver.ts';

export interface Oscillator {
  /** hertz; kept while none of the part's values has changed */
  hz(fresh: (hz: Float64Array) => Solver, values: ReadonlyMap<string, number>): number;
}

const POINTS = 65;
/** Each round narrows the search to two steps of the one before: 230 MHz down to some hundredths of a hertz. */
const ROUNDS = 6;

export function createOscillator({ oscillator: { node, drive, fromHz, toHz } }: Converter): Oscillator {
  let solver: Solver | null = null;
  const grid = new Float64Array(POINTS);
  const level = new Float64Array(POINTS);
  const seen = new Map<string, number>();
  let found = Number.NaN;

  const changed = (values: ReadonlyMap<string, number>): boolean => {
    let any = false;
    for (const [element, value] of values) {
      if (seen.get(element) === value) continue;
      seen.set(element, value);
      solver?.setValue(element, value);
      any = true;
    }
    return any;
  };

  return {
    hz(fresh, values) {
      const moved = changed(values);
      if (!moved && !Number.isNaN(found)) return found;
      let low = fromHz;
      let high = toHz;
      let best = fromHz;
      for (let round = 0; round < ROUNDS; round++) {
        for (let i = 0; i < POINTS; i++) grid[i] = low + ((high - low) * i) / (POINTS - 1);
        if (solver === null) {
          solver = fresh(grid);
          for (const [element, value] of values) solver.setValue(element, value);
          for (const e of solver.network.elements) {
            if (e.kind === 'I') solver.setDrive(e.name, e.name.toLowerCase() === drive.toLowerCase() ? 1 : 0);
          }
        } else solver.setFrequencies(grid);
        solver.solve();
        solver.magnitude(node, level);
        let top = 0;
        for (let i = 1; i < POINTS; i++) if (level[i]! > level[top]!) top = i;
        best = grid[top]!;
        const step = (high - low) / (POINTS - 1);
        low = Math.max(fromHz, best - step);
        high = Math.min(toHz, best + step);
      }
      found = best;
      return found;
    },
  };
}
