/** What lies on what on a chassis plan: cans, traps, letters, test points and drawn parts each want a place of their own. */
import type { DrawnThing } from '../base/phrases.ts';
import {
  CAN,
  DISC_RADIUS,
  ELECTROLYTIC_RADIUS,
  TRANSFORMER,
  TRAP_RADIUS,
  VALVE_RADIUS,
} from '../receiver/planSizes.ts';
import type { PlanPart, PlanPoint, Receiver } from '../receiver/receiver.ts';
import type { Complain, Path } from './complaints.ts';

export interface Thing {
  readonly path: Path;
  readonly what: DrawnThing;
  /** its id, what is written on it, or '' */
  readonly name: string;
  readonly x: number;
  readonly y: number;
  /** half of its width and of its height, plan units; a round thing has a radius instead */
  readonly half: readonly [number, number] | number;
}

const CAN_HALF = CAN / 2;
const POINT_RADIUS = 7;

export function planOverlaps(receiver: Receiver, complain: Complain): void {
  const things = thingsOn(receiver);
  things.forEach((one, i) => {
    const under = things.slice(0, i).find((other) => overlap(one, other));
    if (under === undefined) return;
    complain(one.path, ['drawnOver', one.what, one.name, under.what, under.name], ['freePlace']);
  });
}

/** What stands on a plan, with the room that each thing takes. */
export function thingsOn({
  adjusters,
  testPoints,
  plan,
}: Pick<Receiver, 'adjusters' | 'testPoints' | 'plan'>): Thing[] {
  const cans = new Map<string, number[]>();
  adjusters.forEach((a, i) => {
    if (a.plan.shape === 'can') cans.set(a.plan.can, [...(cans.get(a.plan.can) ?? []), i]);
  });
  return [
    ...plan.parts.map((part, i) => ({
      path: ['plan', 'parts', i],
      what: part.kind,
      name: writtenOn(part),
      ...outline(part),
    })),
    ...[...cans].map(([id, slugs]) => {
      const [xs, ys] = [slugs.map((i) => adjusters[i]!.plan.x), slugs.map((i) => adjusters[i]!.plan.y)];
      const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
      const half = [CAN_HALF + (right - left) / 2, CAN_HALF + (bottom - top) / 2] as const;
      const path = ['adjusters', slugs[0]!, 'plan'];
      return { path, what: 'slugCan' as const, name: id, x: (left + right) / 2, y: (top + bottom) / 2, half };
    }),
    ...adjusters.flatMap(({ id, plan: own }, i) => {
      const path = ['adjusters', i, 'plan'];
      const round = (what: DrawnThing, { x, y }: PlanPoint, half: number, more: Path): Thing[] => [
        { path: [...path, ...more], what, name: id, x, y, half },
      ];
      return [
        ...(own.shape === 'trap' ? round('trap', own, TRAP_RADIUS, []) : []),
        ...(own.letter === undefined ? [] : round('letter', own.letter, DISC_RADIUS, ['letter'])),
      ];
    }),
    ...testPoints.map(({ id, plan: { x, y } }, i) => {
      return { path: ['testPoints', i, 'plan'], what: 'testPoint' as const, name: id, x, y, half: POINT_RADIUS };
    }),
  ];
}

const writtenOn = (part: PlanPart): string => (part.kind === 'resistor' ? '' : part.label);

export function outline(part: PlanPart): Pick<Thing, 'x' | 'y' | 'half'> {
  const { x, y } = part;
  switch (part.kind) {
    case 'valve':
      return { x, y, half: VALVE_RADIUS };
    case 'electrolytic':
      return { x, y, half: ELECTROLYTIC_RADIUS };
    case 'can':
      return { x, y, half: [CAN_HALF, CAN_HALF] };
    case 'transformer':
      return { x, y, half: [TRANSFORMER.width / 2, TRANSFORMER.height / 2] };
    case 'box':
      return { x: x + part.width / 2, y: y + part.height / 2, half: [part.width / 2, part.height / 2] };
    case 'resistor':
      return { x, y, half: part.upright ? [5, 19] : [19, 5] };
  }
}

export function overlap(a: Thing, b: Thing): boolean {
  const [width, height] = [Math.abs(a.x - b.x), Math.abs(a.y - b.y)];
  const corner = ({ half }: Thing): readonly [number, number] => (typeof half === 'number' ? [0, 0] : half);
  const radius = ({ half }: Thing): number => (typeof half === 'number' ? half : 0);
  const apart = [
    Math.max(width - corner(a)[0] - corner(b)[0], 0),
    Math.max(height - corner(a)[1] - corner(b)[1], 0),
  ] as const;
  const room = radius(a) + radius(b);
  // Two boxes that touch along an edge do not lie on each other.
  return room > 0
    ? Math.hypot(...apart) < room - 1e-9
    : width < corner(a)[0] + corner(b)[0] && height < corner(a)[1] + corner(b)[1];
}
