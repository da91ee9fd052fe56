/**
 * What a screen that is left off lets through between two places of the chassis, by how far they stand apart.
 *
 * What hangs on a node (coil, socket, wiring) is taken as a ball as large as a can. Two balls of radius a, their middles d apart, have between them
 *   C = 4 pi e0 a^2 / d,
 * the first term of the series that their images in each other make; from nine radii on it is right within 3 %, at three 14 % low. So 0.20 pF at 140 mm, and less the farther.
 * A node stands where the coil on it does, else where the nearest coil by way of a capacitor does. Validity: no chassis, lid or other part between; that such balls
 * stand for wiring is common practice, no source.
 * Source: Maxwell, Treatise on Electricity and Magnetism, 1873, art. 173 (from memory).
 */
import { nodeKey } from '../../physics/deck.ts';
import { coilOn } from '../coilOn.ts';
import { CAN } from '../planSizes.ts';
import type { Adjuster } from '../receiver.ts';
import type { FaultySet } from './faultPlaces.ts';

const VACUUM_FARADS_PER_METRE = 8.8541878e-12;
/** A can is an inch and a quarter wide. */
const METRES_PER_UNIT = 0.03175 / CAN;
export const BALL_METRES = (CAN / 2) * METRES_PER_UNIT;
/** Two cans side by side; nearer than that the plan is no measure. */
const NEAREST_METRES = 3 * BALL_METRES;
/** Where the plan shows no coil of a node: the middle of what strays come to. */
const UNKNOWN_FARADS = 0.2e-12;

/** Farads between two nodes without a screen, to two figures. */
export function strayFarads(set: FaultySet, from: string, to: string): number {
  const [one, other] = [coilAt(set, from), coilAt(set, to)];
  if (one === null || other === null) return UNKNOWN_FARADS;
  const units = Math.hypot(one.plan.x - other.plan.x, one.plan.y - other.plan.y);
  return Number(betweenBalls(units * METRES_PER_UNIT).toPrecision(2));
}

export function betweenBalls(metres: number): number {
  return (4 * Math.PI * VACUUM_FARADS_PER_METRE * BALL_METRES ** 2) / Math.max(metres, NEAREST_METRES);
}

function coilAt({ receiver, deck }: FaultySet, node: string): Adjuster | null {
  const key = nodeKey(node);
  const beyond = deck.elements.flatMap((element) => {
    if (element.kind !== 'C') return [];
    const ends = element.nodes.map(nodeKey);
    return ends.includes(key) ? ends.filter((end) => end !== key && end !== '0') : [];
  });
  for (const at of [key, ...beyond]) {
    const coil = coilOn(receiver.adjusters, deck, [at]);
    if (coil !== null) return coil;
  }
  return null;
}
