/** The bench from an act to new beam points, on the nine-slug strip and the trainer can of the bench's own tests. */

import { applyEvent } from '../../src/bench/applyEvent.ts';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import type { BenchState } from '../../src/bench/benchState.ts';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import { canSetup, play, readySetup, stripSetup } from '../../tests/bench/fixture.ts';
import type { PerfCase } from '../case.ts';
import { timed } from '../case.ts';

const hex: BenchEvent = { type: 'toolTaken', tool: 'hex' };

function markedStrip(): { readonly setup: BenchSetup; readonly state: BenchState } {
  const setup = readySetup(stripSetup);
  const plugs = mainResponse(setup.receiver).setUp.markersHz.map((hz): BenchEvent => ({ type: 'crystalPlugged', hz }));
  return { setup, state: play(setup, [hex, ...plugs]) };
}

/** Does the events one after the other, over and over, and draws after each; the time is that of both. */
function actCase(
  id: string,
  title: string,
  start: () => { readonly setup: BenchSetup; readonly state: BenchState },
  act: (i: number) => BenchEvent,
): PerfCase {
  return {
    id,
    title,
    measure() {
      const { setup, state: first } = start();
      const bench = createBench(setup);
      let state = first;
      let sum = 0;
      const run = (i: number) => {
        const applied = applyEvent(setup, state, act(i), state.seconds + 1 / 30);
        if (!applied.ok) throw new Error(applied.reason);
        state = applied.state;
        sum += bench.display(state).beam.data[3 * 512 + 1]!;
      };
      return timed({ warmUp: 200, runs: 400, run, checksum: () => sum });
    },
  };
}

const turn =
  (slug: string) =>
  (i: number): BenchEvent => ({
    type: 'slugTurned',
    slug,
    turns: i % 2 === 0 ? 1 / 16 : -1 / 16,
  });
const swing =
  (control: 'centreHz' | 'levelDb' | 'yPositionDiv', a: number, b: number) =>
  (i: number): BenchEvent => ({
    type: 'controlSet',
    control,
    value: i % 2 === 0 ? a : b,
  });

export const cases: readonly PerfCase[] = [
  actCase('bench-turn-first', 'strip, first slug turned, to new beam points', markedStrip, turn('T1')),
  actCase('bench-turn-last', 'strip, last slug turned, to new beam points', markedStrip, turn('T5P')),
  actCase(
    'bench-turn-unclamped',
    'strip, first slug turned with the AGC line left to itself',
    () => {
      const { setup, state } = markedStrip();
      return { setup, state: play(setup, [{ type: 'leadRemoved', lead: 'biasA' }], state) };
    },
    turn('T1'),
  ),
  actCase(
    'bench-turn-can',
    'trainer can, a slug turned, to new beam points',
    () => {
      const setup = readySetup(canSetup);
      return { setup, state: play(setup, [hex]) };
    },
    turn('T1B'),
  ),
  actCase('bench-level', 'strip, level knob, to new beam points', markedStrip, swing('levelDb', -46, -47)),
  actCase('bench-centre', 'strip, centre knob, to new beam points', markedStrip, swing('centreHz', 44e6, 44.05e6)),
  actCase('bench-position', 'strip, Y position, to new beam points', markedStrip, swing('yPositionDiv', 0, 1)),
  {
    id: 'bench-shimmer',
    title: 'strip, time alone passes',
    measure() {
      const { setup, state } = markedStrip();
      const bench = createBench(setup);
      let sum = 0;
      const run = (i: number) => {
        sum += bench.display({ ...state, seconds: state.seconds + i / 60 }).beam.data[3 * 512 + 1]!;
      };
      return timed({ warmUp: 500, runs: 500, run, checksum: () => sum });
    },
  },
  {
    id: 'bench-facts',
    title: 'strip, a slug turned, to new facts',
    measure() {
      const { setup, state: first } = markedStrip();
      const bench = createBench(setup);
      let state = first;
      let sum = 0;
      const run = (i: number) => {
        const applied = applyEvent(setup, state, turn('T3')(i), state.seconds + 1 / 30);
        if (!applied.ok) throw new Error(applied.reason);
        state = applied.state;
        sum += bench.facts(state).detectedPeakVolts;
      };
      return timed({ warmUp: 200, runs: 400, run, checksum: () => sum });
    },
  },
];
