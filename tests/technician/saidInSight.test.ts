/** What the technician says that the curve reads is said while the curve can be seen. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import { HALF_HEIGHT_DIV } from '../../src/bench/instruments.ts';
import { initialState } from '../../src/bench/setup.ts';
import { demonstration } from '../../src/technician/atBench.ts';
import { stateAfter } from '../session/acts.ts';
import { setupOf } from './oneScenario.ts';

describe.each(['first-curve', 'off-centre', 'both-ways'])('the demonstration of %s', (id) => {
  const setup = setupOf(id);
  const { run, said } = demonstration(setup);
  const bench = createBench(setup);
  const highest = (acts: number): number => {
    const { beam } = bench.display(stateAfter(setup, run.events.slice(0, acts), initialState(setup)));
    return beam.data
      .subarray(0, 3 * (beam.count / 2))
      .reduce((most, y, i) => (i % 3 === 1 ? Math.max(most, y) : most), 0);
  };

  it('tells a reading with the top of the curve on the face', () => {
    const readings = said.filter(({ remark }) => remark.kind === 'reads');
    // One before the first slug is turned, and one at the least after that.
    expect(readings.length).toBeGreaterThan(1);
    for (const { before } of readings) expect(highest(before)).toBeLessThan(HALF_HEIGHT_DIV);
    // A curve brought to its height leaves the face at the gain that it was turned at, so it does make a difference when it is told.
    expect(Math.max(...said.map(({ before }) => highest(before)))).toBeGreaterThan(HALF_HEIGHT_DIV);
  });

  it('tells everything in the order in which it was seen', () => {
    const places = said.map(({ before }) => before);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
  });
});
