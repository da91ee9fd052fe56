/** Runs of a class share the bench of their scenario, and what is said of one does not depend on those before it. Source: docs/class.md. */
import { describe, expect, it } from 'vitest';
import { benchSetup } from '../../src/certify/benchSetup.ts';
import { knownOf } from '../../src/certify/knownSet.ts';
import { judgedOf } from '../../src/judge/judged.ts';
import { judgedSetup } from '../../src/judge/judgedSetup.ts';
import { type FindBench, judgeRun } from '../../src/judge/judgeRun.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { finishedFile } from '../run/runs.ts';

const { receivers, scenarios } = shippedLibrary();
const scenario = scenarios.find(({ id }) => id === 'first-curve')!;
const parts = receivers.get(scenario.receiver)!;
const easier = { ...scenario, toleranceFactor: 2 };

describe('the bench of a class', () => {
  it('is the same for the very same scenario, and another for any other', () => {
    const one = judgedSetup(parts, scenario, null, 'a.json');
    expect(one.ok).toBe(true);
    expect(judgedSetup(parts, structuredClone(scenario), null, 'b.json')).toBe(one);
    expect(judgedSetup(parts, easier, null, 'c.json')).not.toBe(one);
    // What a run says of its receiver counts for nothing: another object is another receiver.
    expect(judgedSetup({ ...parts, receiver: { ...parts.receiver } }, scenario, null, 'd.json')).not.toBe(one);
  });

  it('is not that of another set of the same scenario', () => {
    const dealt = scenarios.find(({ set }) => set !== undefined)!;
    const design = receivers.get(dealt.receiver)!;
    const setup = benchSetup(design, dealt);
    if (!setup.ok) throw new Error('no set');
    const known = knownOf(setup.value);
    const one = judgedSetup(design, dealt, known, 'a.json');
    expect(judgedSetup(design, dealt, known, 'b.json')).toBe(one);
    expect(judgedSetup(design, dealt, null, 'b.json')).not.toBe(one);
  });

  it('gives the same judgement whichever runs came before', () => {
    const find: FindBench = () => ({ ok: true, value: { ...parts, scenarioHash: null } });
    const files = [scenario, easier].map((one) => {
      const setup = benchSetup(parts, one);
      if (!setup.ok) throw new Error('no bench');
      return finishedFile(setup.value);
    });
    const judged = (order: readonly number[]) =>
      order.map((i) => [i, judgedOf(judgeRun(files[i]!, 'run.json', find))] as const).sort(([a], [b]) => a - b);
    const there = judged([0, 1, 0]);
    expect(judged([1, 0, 0])).toEqual(there);
    expect(there.map(([, { finding }]) => finding.kind)).toEqual(['verified', 'verified', 'verified']);
  });
});
