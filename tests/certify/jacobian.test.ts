/** Slopes of every stated response by every slug, against central differences of the response itself (method: any numerical handbook). */
import { describe, expect, it } from 'vitest';
import { responseJacobian } from '../../src/receiver/responseJacobian.ts';
import { nominalTurns } from '../../src/receiver/slugLaw.ts';
import { createStatedResponse } from '../../src/receiver/statedResponse.ts';
import { shippedLibrary } from '../files/shipped.ts';

const CASES = [...shippedLibrary().receivers.values()].flatMap(({ receiver, deck }) =>
  receiver.responses.map((response) => [`${receiver.id} ${response.id}`, receiver, deck, response] as const),
);

describe('slopes of a response', () => {
  it.each(CASES)('%s: as central differences say', (_, receiver, deck, response) => {
    const stated = createStatedResponse(receiver, deck, response);
    const off = Object.fromEntries(receiver.adjusters.map((a, i) => [a.id, nominalTurns(a) + (i % 2 ? 0.7 : -0.6)]));
    const slopes = responseJacobian(receiver, deck, stated, off);
    // Short, for a limiter's law bends within a thousandth of a turn.
    const H = 1e-4;
    const height = stated.solve(off).volts.reduce((top, v) => Math.max(top, Math.abs(v)), 0);
    for (const { id } of receiver.adjusters) {
      // Of the fourth order (any numerical handbook).
      const at = (k: number) => Float64Array.from(stated.solve({ ...off, [id]: off[id]! + k * H }).volts);
      const [up, down, further, back] = [at(1), at(-1), at(2), at(-2)];
      const slope = slopes.get(id)!;
      const largest = Math.max(...[...slope].map(Math.abs), 1e-6 * height);
      for (let f = 0; f < slope.length; f += 7) {
        const difference = (8 * (up[f]! - down[f]!) - (further[f]! - back[f]!)) / (12 * H);
        expect(Math.abs(slope[f]! - difference) / largest, `${id} at ${stated.hz[f]}`).toBeLessThan(1e-4);
      }
    }
  });
});
