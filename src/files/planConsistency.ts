/** What must hold of a chassis plan: everything on the drawing, nothing where a finger could not tell two slugs apart. */
import type { Receiver } from '../receiver/receiver.ts';
import type { Complain, Path } from './complaints.ts';
import { asFarAsKnown, eachKnown } from './known.ts';
import { planOverlaps } from './planOverlaps.ts';

/** Least distance of two holes in one can, plan units. */
const LEAST_HOLE_DISTANCE = 40;

export function planConsistency(receiver: Receiver, complain: Complain): void {
  const onPlan = (p: { readonly x: number; readonly y: number }, path: Path): void => {
    const { plan } = receiver;
    if (p.x > plan.width || p.y > plan.height) {
      complain(path, ['spot', p.x, p.y], ['onPlan', plan.width, plan.height]);
    }
  };
  eachKnown(
    () => receiver.adjusters,
    (a, i) => {
      asFarAsKnown(() => onPlan(a.plan, ['adjusters', i, 'plan']));
      asFarAsKnown(() => {
        if (a.plan.letter !== undefined) onPlan(a.plan.letter, ['adjusters', i, 'plan', 'letter']);
      });
      eachKnown(
        () => receiver.adjusters.slice(0, i),
        (b) => {
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
        },
      );
    },
  );
  eachKnown(
    () => receiver.testPoints,
    (p, i) => {
      onPlan(p.plan, ['testPoints', i, 'plan']);
    },
  );
  eachKnown(
    () => receiver.plan.parts,
    (part, i) => {
      onPlan(part.kind === 'box' ? { x: part.x + part.width, y: part.y + part.height } : part, ['plan', 'parts', i]);
    },
  );
  eachKnown(
    () => receiver.plan.path,
    (line, i) => {
      eachKnown(
        () => line,
        (p, k) => {
          onPlan(p, ['plan', 'path', i, k]);
        },
      );
    },
  );
  asFarAsKnown(() => {
    const { hot } = receiver.plan;
    if (hot !== null) onPlan({ x: hot.x + hot.width, y: hot.y + hot.height }, ['plan', 'hot']);
  });
  asFarAsKnown(() => {
    if (receiver.plan.hot !== null && receiver.mains === null) complain(['plan', 'hot'], ['liveCorner'], ['noMains']);
  });
  asFarAsKnown(() => planOverlaps(receiver, complain));
}
