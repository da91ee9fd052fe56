/** The signal path behind the solver: detector, low-pass, pips, and reading a deck. */

import { seededRandom } from '../../src/base/random.ts';
import { createDetector } from '../../src/physics/diode.ts';
import { periodicOnePole } from '../../src/physics/onePole.ts';
import { addPip, pipShape } from '../../src/physics/pip.ts';
import { readDeck } from '../../src/physics/readDeck.ts';
import { deckText } from '../../tests/physics/decks.ts';
import type { PerfCase } from '../case.ts';
import { timed } from '../case.ts';

const POINTS = 1024;
const SWEEP = { centreHz: 44e6, spanHz: 10e6, mainsHz: 60, points: POINTS };

function noise(seed: number, count: number): Float64Array {
  const random = seededRandom(seed);
  return Float64Array.from({ length: count }, random);
}

const total = (values: Float64Array) => values.reduce((sum, v) => sum + v, 0);

export const cases: readonly PerfCase[] = [
  {
    id: 'detector',
    title: 'detector table, 1024 levels',
    measure(seed) {
      const detect = createDetector({ saturationAmps: 1e-6, emissionVolts: 0.04, loadOhms: 4700 });
      const levels = noise(seed, POINTS);
      const out = new Float64Array(POINTS);
      const run = () => {
        for (let i = 0; i < POINTS; i++) out[i] = detect(levels[i]!);
      };
      return timed({ warmUp: 1000, runs: 1000, run, checksum: () => total(out) });
    },
  },
  {
    id: 'one-pole',
    title: 'periodic low-pass, 2048 samples',
    measure(seed) {
      const samples = noise(seed, 2 * POINTS);
      const out = new Float64Array(2 * POINTS);
      const run = () => periodicOnePole(samples, 1e-4, 1 / 60, out);
      return timed({ warmUp: 1000, runs: 1000, run, checksum: () => total(out) });
    },
  },
  {
    id: 'pip-shape',
    title: 'shape of one marker, 100 kHz half width, trace and retrace',
    measure() {
      let shape = pipShape(SWEEP, 45.75e6, 100e3);
      const run = (i: number) => {
        shape = pipShape(SWEEP, 45.75e6 + (i % 2), 100e3);
      };
      return timed({ warmUp: 200, runs: 200, run, checksum: () => total(shape[0]!.re) });
    },
  },
  {
    id: 'pip-add',
    title: 'six markers of known shape added with a new phase',
    measure() {
      const shapes = [39.75e6, 41.25e6, 42.17e6, 44e6, 45.75e6, 47.25e6].map((hz) => pipShape(SWEEP, hz, 100e3));
      const trace = new Float64Array(2 * POINTS);
      const run = (i: number) => {
        trace.fill(0);
        for (const shape of shapes) addPip(trace, shape, 1, i);
      };
      return timed({ warmUp: 1000, runs: 1000, run, checksum: () => total(trace) });
    },
  },
  {
    id: 'read-deck',
    title: 'reading the solid-state deck',
    measure() {
      const text = deckText('video-solid-45m');
      let elements = 0;
      const run = () => {
        const deck = readDeck(text, 'perf');
        elements = deck.ok ? deck.value.elements.length : -1;
      };
      return timed({ warmUp: 200, runs: 200, run, checksum: () => elements });
    },
  },
];
