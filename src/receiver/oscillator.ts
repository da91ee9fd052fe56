/**
 * Where a local oscillator runs: at the peak of its tank, found on the tank's own network. A sustained oscillator settles where the loop's phase is zero,
 * which for a parallel tank driven by a current is the peak of its volts, f = 1 / (2 pi sqrt(L C)), C with the valve's and the fine tuning's capacitance
 * (Terman, Radio Engineers' Handbook 1943, section 6, small loss; from memory).
 */
import { type Deck, findElement } from '../physics/deck.ts';
import type { Solver } from '../physics/solver.ts';
import type { ElementValue } from './elementValues.ts';
import type { LocalOscillator, Receiver } from './receiver.ts';

export interface Oscillator {
  /** hertz; kept while none of the part's values has changed */
  hz(fresh: (hz: Float64Array) => Solver, values: ReadonlyMap<string, number>): number;
}

const POINTS = 65;
/** Each round narrows the search to two steps of the one before: 230 MHz down to some hundredths of a hertz. */
const ROUNDS = 6;

export type Tank = Pick<LocalOscillator, 'node' | 'drive' | 'fromHz' | 'toHz'>;

/** The oscillator's tank, whether or not it runs at the bench; null where the set has none. */
export function tankOf({ converter, oscillator }: Receiver): Tank | null {
  return converter?.oscillator ?? oscillator ?? null;
}

/** The tank's capacitor with the fine tuning at a share of its way from the middle (-1 to 1) and `missingFarads` of a cold valve's; none where it has come out. */
export function tankValues(
  { oscillator }: Receiver,
  deck: Deck,
  fineTuning: number,
  missingFarads: number,
): ElementValue[] {
  const own = oscillator === undefined ? undefined : findElement(deck, oscillator.capacitor);
  if (oscillator === undefined || own === undefined) return [];
  const farads = own.value + fineTuning * oscillator.fineTuningFarads - missingFarads;
  return [{ element: oscillator.capacitor, value: Math.max(LEAST_FARADS, farads) }];
}

/** Never below this, however small the capacitor. */
const LEAST_FARADS = 1e-15;

export function createOscillator({ node, drive, fromHz, toHz }: Tank): Oscillator {
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
