/** What a frame costs the main thread while a slug turns: the act, the facts for guards, the new beam and the tube's picture. */

import { applyEvent } from '../../src/bench/applyEvent.ts';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { createFaceLight, FULL_PIXELS_PER_DIV, paintFrame } from '../../src/kit/tube/faceLight.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import { play, readySetup, sheetStart, stripSetup } from '../../tests/bench/fixture.ts';
import { setupOf } from '../../tests/technician/oneScenario.ts';
import type { PerfCase } from '../case.ts';
import { timed } from '../case.ts';

const FRAME_SECONDS = 1 / 60;

/** `setup`: with the sheet's own settings and leads; its first slug turns to and fro. */
function turning(id: string, title: string, make: () => BenchSetup): PerfCase {
  return {
    id,
    title,
    measure() {
      const setup = make();
      const { id: slug, head } = setup.receiver.adjusters[0]!;
      const plugs = mainResponse(setup.receiver).setUp.markersHz.map(
        (hz): BenchEvent => ({ type: 'crystalPlugged', hz }),
      );
      let state = play(setup, [{ type: 'toolTaken', tool: head }, ...plugs]);
      const bench = createBench(setup);
      const face = createFaceLight('P31', { divAcross: 10.756, divDown: 8.666, pixelsPerDiv: FULL_PIXELS_PER_DIV });
      let sum = 0;
      const run = (i: number) => {
        const turns = i % 2 === 0 ? 1 / 16 : -1 / 16;
        const applied = applyEvent(setup, state, { type: 'slugTurned', slug, turns }, state.seconds + 1 / 30);
        if (!applied.ok) throw new Error(applied.reason);
        state = applied.state;
        sum += bench.facts(state).traceHeightDiv;
        const { beam } = bench.display(state);
        sum += beam.data[3 * 512 + 1]!;
        paintFrame(face, { points: beam, brightness: 1, blur: 0 }, FRAME_SECONDS, 0);
      };
      return timed({ warmUp: 100, runs: 200, run, checksum: () => sum });
    },
  };
}

export const cases: readonly PerfCase[] = [
  turning('turning-frame', 'strip, a frame in which the first slug turns: act, facts, beam and picture', () =>
    readySetup(stripSetup),
  ),
  turning('turning-frame-fm', 'the same on an FM tuner with two loads on its detector', () => {
    const setup = setupOf('zero');
    return { ...setup, scenario: { ...setup.scenario, start: sheetStart(setup) } };
  }),
];
