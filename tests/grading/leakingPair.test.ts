/**
 * One leaking diode of an FM pair: the curve that is graded is the one that is shown. The volts shown are held against ngspice at rest in
 * `tests/receiver/faults/ngspiceBench.test.ts`; that both have one shape and one zero is common practice, no source.
 */
import { afterAll, describe, expect, it } from 'vitest';
import { setCurves } from '../../src/grading/setCurves.ts';
import type { Fault } from '../../src/receiver/faults/fault.ts';
import { faultEffects } from '../../src/receiver/faults/faultEffects.ts';
import { workResponses } from '../../src/receiver/responses.ts';
import { createStatedResponse } from '../../src/receiver/statedResponse.ts';
import { inside, scratch } from '../cli/commandLine.ts';
import { shippedJson } from '../files/shipped.ts';
import { setupOf } from '../technician/oneScenario.ts';

const files = scratch();
afterAll(files.remove);

const leak: Fault = { kind: 'leakyDiode', detector: 'ratio', ohms: 23_500 };
const zero = setupOf('zero');
// The design itself with every slug where it belongs, so that nothing but the diode is wrong.
const { set: _, ...scenario } = zero.scenario;
const plain = { ...scenario, start: { ...scenario.start, slugs: {}, randomTurns: 0 } };
const setup = { receiver: zero.design!.receiver, deck: zero.design!.deck, scenario: { ...plain, faults: [leak] } };
const [response] = workResponses(setup.receiver, setup.scenario);
const HZ = Float64Array.of(10.6e6, 10.65e6, 10.68e6, 10.7e6, 10.72e6, 10.75e6, 10.8e6);

/** As the beam has it at the Y lead, volts. */
function shown(): readonly number[] {
  const { set: _set, ...job } = shippedJson('sound-fm/zero.json') as Record<string, unknown>;
  const start = { ...(job.start as object), slugs: {}, randomTurns: 0 };
  const file = { ...job, start, faults: [{ kind: 'leakyDiode', part: 'ratio', ohms: 23_500 }] };
  const place = files.file('zero.json', JSON.stringify(file));
  const { out, err } = inside('curve', place, '--volts', '--hz', HZ.join(','), '--standing', 'found');
  expect(err).toBe('');
  return out
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => Number(line.split(',')[1]));
}

function crossing(volts: ArrayLike<number>): number {
  const at = HZ.findIndex((_hz, i) => i > 0 && volts[i - 1]! < 0 && volts[i]! >= 0);
  const [from, to] = [volts[at - 1]!, volts[at]!];
  return HZ[at - 1]! + ((HZ[at]! - HZ[at - 1]!) * from) / (from - to);
}

describe('a pair of which one diode leaks', () => {
  const graded = (receiver = setup.receiver, faults: readonly Fault[] = [leak]): Float64Array => {
    const failed = faultEffects(receiver, setup.deck, faults, []);
    return createStatedResponse(failed.receiver, failed.deck, response!, HZ).nominal.volts;
  };

  it('is graded as it is shown, within two hundredths of its highest, with its zero at the same place', () => {
    const [seen, judged] = [shown(), [...graded()]];
    const most = (volts: readonly number[]): number => Math.max(...volts.map(Math.abs));
    const ratio = seen.reduce((sum, v, i) => sum + v * judged[i]!, 0) / judged.reduce((sum, v) => sum + v * v, 0);
    const off = seen.map((v, i) => Math.abs(v - ratio * judged[i]!));
    expect(most(off) / most(seen)).toBeLessThan(0.02);
    expect(Math.abs(crossing(seen) - crossing(judged))).toBeLessThan(2000);
    // A sound pair has its zero far from there, and is as tall on both sides.
    expect(Math.abs(crossing(graded(setup.receiver, [])) - crossing(judged))).toBeGreaterThan(40_000);
  });

  it('is graded on benches of before as they had it, both leaking', () => {
    const alike = faultEffects(setup.receiver, setup.deck, [leak], []);
    const detectors = alike.receiver.detectors.map((detector) => {
      if (detector.kind === 'envelope') return detector;
      const { minusLoadOhms, ...both } = detector;
      expect(minusLoadOhms).toBe(23_500);
      return both;
    });
    const before = createStatedResponse({ ...alike.receiver, detectors }, alike.deck, response!).nominal.volts;
    const [today] = setCurves(setup).asFound;
    for (const engine of ['0.3.0', '0.4.0'] as const) {
      const [then] = setCurves({ ...setup, engine }).asFound;
      expect(then!.nominal.volts, engine).toEqual(before);
      expect(then!.nominal.volts).not.toEqual(today!.nominal.volts);
      // What has not failed is the same on all of them.
      expect(setCurves({ ...setup, engine }).sound[0]!.nominal.volts).toEqual(setCurves(setup).sound[0]!.nominal.volts);
    }
  });
});
