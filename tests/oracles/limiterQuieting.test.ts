/**
 * Noise behind a limiter. Sources: W. B. Davenport, J. Appl. Phys. 24, 1953: behind a hard limiter the ratio of a strong carrier to its noise is twice what it was, in power
 * (from memory); and draws of many, each put through tanh wave by wave.
 */
import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import { initialState } from '../../src/bench/setup.ts';
import { fundamentalGain, fundamentalGainSlope } from '../../src/physics/describingFunction.ts';
import { nodesBehind, quietingOf } from '../../src/physics/limiterQuieting.ts';
import { NO_LIFE } from '../../src/scenario/life.ts';
import { heights, mean, trace } from '../bench/look.ts';
import { onBench } from '../bench/shippedSheet.ts';

const spread = (list: readonly number[]): number => {
  const middle = mean(list);
  return Math.sqrt(mean(list.map((v) => (v - middle) ** 2)));
};

const quieting = (a: number): number =>
  quietingOf(fundamentalGain(a), fundamentalGain(a) + a * fundamentalGainSlope(a));

describe('what a limiter leaves of the noise', () => {
  test('all of it while it is empty, less the more it is filled', () => {
    expect(quieting(0)).toBeCloseTo(1, 9);
    const steps = [0.1, 0.5, 1, 2, 5, 20, 100].map(quieting);
    for (let i = 1; i < steps.length; i++) expect(steps[i]!).toBeLessThan(steps[i - 1]!);
  });

  test('of a hard limiter 4 / (pi a sqrt 2) = 0.0090032 at a hundred times its limit, so that carrier over noise is doubled in power', () => {
    expect(Math.abs(quieting(100) / 0.0090032 - 1)).toBeLessThan(1e-3);
    expect(Math.abs((fundamentalGain(100) / quieting(100)) ** 2 - 2)).toBeLessThan(2e-3);
  });

  test.each([0.3, 1, 3, 10])('carrier %d times the limit, with noise drawn: the same within 3 of a hundred', (a) => {
    const chance = seededRandom(11);
    const normal = (): number => Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());
    const sigma = 0.02;
    const points = 128;
    const [inPhase, across]: number[][] = [[], []];
    for (let draw = 0; draw < 3000; draw++) {
      const [x, y] = [a + sigma * normal(), sigma * normal()];
      // The fundamental of tanh(x sin t + y cos t): what stands in the tank, both parts of it.
      let [re, im] = [0, 0];
      for (let i = 0; i < points; i++) {
        const t = (2 * Math.PI * (i + 0.5)) / points;
        const out = Math.tanh(x * Math.sin(t) + y * Math.cos(t));
        re += (2 * out * Math.sin(t)) / points;
        im += (2 * out * Math.cos(t)) / points;
      }
      inPhase!.push(re);
      across!.push(im);
    }
    const left = Math.sqrt((spread(inPhase!) ** 2 + spread(across!) ** 2) / 2) / sigma;
    expect(Math.abs(left / quieting(a) - 1)).toBeLessThan(0.03);
  });
});

describe('on the bench', () => {
  const { setup, after } = onBench('fm-10m7', 's');
  const noisy = createBench({ ...setup, scenario: { ...setup.scenario, life: { ...NO_LIFE, noise: 30 } } });
  const clean = createBench({ ...setup, scenario: { ...setup.scenario, life: NO_LIFE } });
  const sheetDb = initialState(setup).controls.levelDb;
  const at = (byDb: number, ...acts: BenchEvent[]) =>
    after({ type: 'controlSet', control: 'levelDb', value: sheetDb + byDb }, ...acts);
  /** Deviation of the middle of the trace from sweep to sweep, divisions. */
  const grass = (byDb: number): number => {
    const state = at(byDb);
    const middles = Array.from({ length: 40 }, (_, k) => {
      const y = heights(trace(noisy.display({ ...state, seconds: state.seconds + k / 60 })));
      return mean(y.slice(500, 524));
    });
    return spread(middles);
  };

  test('only what stands behind the limiter is quieted', () => {
    const behind = nodesBehind(setup.deck, 'G3');
    const control = setup.deck.elements.find(({ name }) => name === 'G3');
    if (control?.kind !== 'G') throw new Error('no limiter');
    expect(behind.has(control.control[0].toLowerCase())).toBe(false);
    for (const detector of setup.receiver.detectors) {
      if (detector.kind !== 'envelope') expect(behind.has(detector.plus.toLowerCase())).toBe(true);
    }
  });

  test('with the limiter full the curve hardly grows while the source goes up, and its noise goes down by as much', () => {
    const [full, more] = [-6, 6].map((db) => clean.facts(at(db)).detectedPeakVolts);
    expect(Math.abs(more! / full! - 1)).toBeLessThan(0.15);
    // 12 dB, of which the stages before the limiter keep a little.
    const ratio = grass(-6) / grass(6);
    expect(ratio).toBeGreaterThan(3.5);
    expect(ratio).toBeLessThan(4.1);
  });

  test('with the limiter empty the noise is what it was', () => {
    const bare = grass(-44);
    expect(grass(-38) / bare).toBeGreaterThan(0.8);
    expect(grass(-6) / bare).toBeLessThan(0.6);
  });

  test('the needle has it too, while the source stands: on the reservoir the noise adds less the fuller the limiter is', () => {
    const sum = setup.receiver.testPoints.find((p) => p.role === 'detector' && p.tap === 'sum')!.id;
    const STILL: BenchEvent = { type: 'controlSet', control: 'sourceMode', value: 'spot' };
    const risen = (byDb: number): number => {
      const state = at(byDb, { type: 'leadConnected', lead: 'meter', to: sum }, STILL);
      return Math.abs(noisy.display(state).meterVolts - clean.display(state).meterVolts);
    };
    expect(risen(6)).toBeLessThan(risen(-40) / 10);
  });
});
