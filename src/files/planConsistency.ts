/** What must hold of a chassis plan: everything on the drawing, nothing where a finger could not tell two slugs apart. */
import type { Receiver } from '../receiver/receiver.ts';
import type { Complain, Path } from './complaints.ts';
import { planOverlaps } from './planOverlaps.ts';

/** Least distance of two holes in one can, plan units. */
const LEAST_HOLE_DISTANCE = 40;

export function planConsistency(receiver: Receiver, complain: Complain): void {
  const { plan, adjusters, testPoints } = receiver;
  const onPlan = (p: { readonly x: number; readonly y: number }, path: Path): void => {
    if (p.x > plan.width || p.y > plan.height) {
      complain(path, ['spot', p.x, p.y], ['onPlan', plan.width, plan.height]);
    }
  };
  adjusters.forEach((a, i) => {
    onPlan(a.plan, ['adjusters', i, 'plan']);
    if (a.plan.letter !== undefined) onPlan(a.plan.letter, ['adjusters', i, 'plan', 'letter']);
    adjusters.slice(0, i).forEach((b) => {
      if (b.plan.can !== a.plan.can) return;
      if (a.plan.shape === 'trap' || b.plan.shape === 'trap') {
        complain(['adjusters', i, 'plan', 'shape'], ['trapSharesCan'], ['bothCans']);
      }
      if (a.plan.hole === b.plan.hole)
        complain(['adjusters', i, 'plan', 'hole'], ['secondHole', a.plan.hole], ['topAndBottom']);
      const apart = Math.hypot(a.plan.x - b.plan.x, a.plan.y - b.plan.y);
      if (apart < LEAST_HOLE_DISTANCE) {
        complain(['adjusters', i, 'plan'], ['holesApart', apart], ['holesAtLeast', LEAST_HOLE_DISTANCE]);
      }
    });
  });
  testPoints.forEach((p, i) => {
    onPlan(p.plan, ['testPoints', i, 'plan']);
  });
  plan.parts.forEach((part, i) => {
    onPlan(part.kind === 'box' ? { x: part.x + part.width, y: part.y + part.height } : part, ['plan', 'parts', i]);
  });
  plan.path.forEach((line, i) => {
    line.forEach((p, k) => {
      onPlan(p, ['plan', 'path', i, k]);
    });
  });
  if (plan.hot !== null) {
    onPlan({ x: plan.hot.x + plan.hot.width, y: plan.hot.y + plan.hot.height }, ['plan', 'hot']);
    if (receiver.mains === null) complain(['plan', 'hot'], ['liveCorner'], ['noMains']);
  }
  planOverlaps(receiver, complain);
}
