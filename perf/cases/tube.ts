/** One frame of the tube's light: a moving curve, the same in the small tube of a report, and the long-tailed phosphor. */

import { seededRandom } from '../../src/base/random.ts';
import type { BeamPoints } from '../../src/bench/display.ts';
import { createFaceLight, FULL_PIXELS_PER_DIV, MINI_PIXELS_PER_DIV, paintFrame } from '../../src/kit/tube/faceLight.ts';
import type { PerfCase } from '../case.ts';
import { timed } from '../case.ts';

const POINTS = 2048;
const FRAME_SECONDS = 1 / 60;

/** A hump on a sine sweep with a little noise, and its blanked return. */
function humpOf(seed: number): BeamPoints {
  const random = seededRandom(seed);
  const data = new Float32Array(3 * POINTS);
  for (let i = 0; i < POINTS; i++) {
    const forward = i < POINTS / 2;
    const x = 5 * Math.sin(-Math.PI / 2 + (2 * Math.PI * i) / POINTS);
    data[3 * i] = x;
    data[3 * i + 1] = (forward ? 6 / (1 + x ** 4 / 20) : 0) - 3 + 0.02 * random();
    data[3 * i + 2] = 0.6 / POINTS;
  }
  return { data, count: POINTS };
}

function frameCase(id: string, title: string, kind: 'P31' | 'P7', pixelsPerDiv: number): PerfCase {
  return {
    id,
    title,
    measure(seed) {
      const face = createFaceLight(kind, { divAcross: 10.756, divDown: 8.666, pixelsPerDiv });
      const points = humpOf(seed);
      // Never settled: fade, deposit and paint each time.
      const run = () => void paintFrame(face, { points, brightness: 1, blur: 0 }, FRAME_SECONDS, 0);
      const checksum = () => face.layers.reduce((sum, { words }) => words.reduce((s, w) => s + (w >>> 24), sum), 0);
      return timed({ warmUp: 60, runs: 120, run, checksum });
    },
  };
}

export const cases: readonly PerfCase[] = [
  frameCase('tube-frame', 'tube, one frame, 2048 points', 'P31', FULL_PIXELS_PER_DIV),
  frameCase('tube-frame-p7', 'tube, one frame of two layers', 'P7', FULL_PIXELS_PER_DIV),
  frameCase('tube-frame-mini', 'small tube, one frame', 'P31', MINI_PIXELS_PER_DIV),
];
