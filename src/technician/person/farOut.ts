/** Cores that stand where nobody aligns from: all at their stops, or through the middle of a coil. They are brought back before anything is looked at. */
import type { AtBench } from './atWork.ts';

const NEAR_STOP_TURNS = 1.5;

/** A core that stands beyond the middle of a coil that it can go through stands on the wrong one of two peaks. */
export function backThroughCoils({ hands, sheet, turner }: AtBench): void {
  for (const { id, goesThrough, travelTurns } of sheet.slugs) {
    const beyond = turner.depthOf(id) - travelTurns / 2;
    if (!goesThrough || beyond <= 0) continue;
    hands.note({ kind: 'throughCoil', slug: id });
    turner.turn(id, -2 * beyond);
  }
}

/** Where every core stands at the same stop, somebody has screwed them in or out: half way is where coils are wound for. */
export function backFromStops({ hands, sheet, turner }: AtBench): boolean {
  const atStop = sheet.slugs.every(({ id, travelTurns }) => {
    const depth = turner.depthOf(id);
    return depth < NEAR_STOP_TURNS || depth > travelTurns - NEAR_STOP_TURNS;
  });
  if (!atStop) return false;
  hands.note({ kind: 'fromStops' });
  for (const { id, travelTurns } of sheet.slugs) turner.turn(id, travelTurns / 2 - turner.depthOf(id));
  return true;
}
