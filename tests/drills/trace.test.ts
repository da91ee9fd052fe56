/**
 * The figures that a look gives to whoever does not see it, held against what the look is known to show. Whoever reads them can answer, and must still judge: they name no answer.
 * Limits are our own judgement (common practice, no source).
 */
import { describe, expect, it } from 'vitest';
import type { DrillId, Question, Scene } from '../../src/drills/drill.ts';
import { halfOf } from '../../src/drills/looks/overload.ts';
import { displayOf } from '../../src/drills/picture.ts';
import { lookSeed, question, receiverOf } from '../../src/drills/question.ts';
import { withControls } from '../../src/drills/scene.ts';
import { readTrace, type Trace } from '../../src/drills/trace.ts';
import { shippedLibrary } from '../files/shipped.ts';

const { receivers } = shippedLibrary();

function looksOf(drill: DrillId): Question[] {
  return Array.from({ length: 4 }, (_, look) => {
    const seed = lookSeed(drill, 'jetty', look);
    return question(drill, seed, receivers.get(receiverOf(drill, seed))!);
  });
}
const traceOf = (scene: Scene): Trace => readTrace(displayOf(scene), scene.state.controls.blanking);
const heights = ({ rows }: Trace): readonly number[] => rows.flatMap(({ out }) => (out === null ? [] : [out]));

describe('the figures of a look', () => {
  it('give the pip its share of the top', () => {
    for (const { scene, told } of looksOf('per-cent')) {
      if (told.drill !== 'per-cent') throw new Error(told.drill);
      const trace = traceOf(scene);
      const top = Math.max(...heights(trace));
      expect(Math.abs((100 * trace.pips[0]!.height!) / top - told.percent)).toBeLessThan(6);
    }
  });

  it('say how far trace and retrace stand apart, and that they meet where the phasing is right', () => {
    for (const { scene, told } of looksOf('phase-it')) {
      if (told.drill !== 'phase-it') throw new Error(told.drill);
      const found = traceOf(scene).apartDiv!;
      const met = traceOf(withControls(scene, { phasingDegrees: -told.lagDegrees })).apartDiv!;
      expect(found).toBeGreaterThan(0.4);
      // The detector takes its time on a flank.
      expect(met).toBeLessThan(0.3);
    }
  });

  it('have the S-curve on either side of its base line, and the pip on the line where the zero is right', () => {
    for (const { scene, after } of looksOf('zero')) {
      const off = traceOf(scene);
      expect(Math.max(...heights(off))).toBeGreaterThan(0.5);
      expect(Math.min(...heights(off))).toBeLessThan(-0.5);
      const right = after.find(([role]) => role === 'wanted')![1];
      expect(Math.abs(traceOf(right).pips[0]!.height!)).toBeLessThan(0.25);
      expect(Math.abs(off.pips[0]!.height!)).toBeGreaterThan(Math.abs(traceOf(right).pips[0]!.height!));
    }
  });

  it('tell a flattened picture from a true one by the two columns', () => {
    for (const { scene, told } of looksOf('overload')) {
      if (told.drill !== 'overload') throw new Error(told.drill);
      const full = traceOf(scene);
      const half = traceOf(halfOf(scene));
      const most = Math.max(...full.rows.map(({ out }, i) => Math.abs((out ?? 0) - (half.rows[i]!.out ?? 0))));
      if (told.overloaded) expect(most).toBeGreaterThan(0.25);
      else expect(most).toBeLessThan(0.25);
    }
  });

  it('have a column for the way back only where it is drawn', () => {
    for (const drill of ['which-way', 'find-the-trap', 'what-lies-here', 'which-part'] as const)
      for (const { scene } of looksOf(drill)) {
        const trace = traceOf(scene);
        expect(trace.apartDiv).toBeNull();
        expect(heights(trace).length).toBeGreaterThan(10);
      }
  });
});
