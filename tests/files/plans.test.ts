/** The chassis plans: nothing lies on anything else, and every slug has a place of its own to touch. */
import { describe, expect, it } from 'vitest';
import type { PlanPart, Receiver } from '../../src/receiver/receiver.ts';
import { shippedLibrary } from './shipped.ts';

type Shape =
  | {
      readonly name: string;
      readonly group: string;
      readonly kind: 'round';
      readonly x: number;
      readonly y: number;
      readonly r: number;
    }
  | {
      readonly name: string;
      readonly group: string;
      readonly kind: 'box';
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
    };

const GAP = 6;
const round = (name: string, group: string, p: { x: number; y: number }, r: number): Shape => ({
  name,
  group,
  kind: 'round',
  x: p.x,
  y: p.y,
  r,
});
const box = (name: string, group: string, x: number, y: number, width: number, height: number): Shape => ({
  name,
  group,
  kind: 'box',
  x,
  y,
  width,
  height,
});

function partShape(part: PlanPart, i: number): Shape {
  const name = `part ${i} ${part.kind}`;
  switch (part.kind) {
    case 'valve':
      return round(name, name, part, 27);
    case 'electrolytic':
      return round(name, name, part, 22);
    case 'can':
      return box(name, name, part.x - 27, part.y - 27, 54, 54);
    case 'transformer':
      return box(name, name, part.x - 44, part.y - 38, 88, 76);
    case 'box':
      return box(name, name, part.x, part.y, part.width, part.height);
    case 'resistor':
      return part.upright
        ? box(name, name, part.x - 5, part.y - 19, 10, 38)
        : box(name, name, part.x - 19, part.y - 5, 38, 10);
  }
}

function shapes(receiver: Receiver): Shape[] {
  const cans = new Map<string, { x: number; y: number }[]>();
  for (const a of receiver.adjusters) {
    if (a.plan.shape === 'can') cans.set(a.plan.can, [...(cans.get(a.plan.can) ?? []), a.plan]);
  }
  return [
    ...[...cans].map(([id, holes]) => {
      const left = Math.min(...holes.map((h) => h.x)) - 27;
      const top = Math.min(...holes.map((h) => h.y)) - 27;
      const right = Math.max(...holes.map((h) => h.x)) + 27;
      const bottom = Math.max(...holes.map((h) => h.y)) + 27;
      return box(`can ${id}`, id, left, top, right - left, bottom - top);
    }),
    ...receiver.adjusters.filter((a) => a.plan.shape === 'trap').map((a) => round(`trap ${a.id}`, a.id, a.plan, 19)),
    ...receiver.adjusters.flatMap((a) =>
      a.plan.letter ? [round(`letter of ${a.id}`, `letter ${a.id}`, a.plan.letter, 10)] : [],
    ),
    ...receiver.testPoints.flatMap((p) => [
      round(`point ${p.id}`, p.id, p.plan, 7),
      // The name beside it: six units a letter is wide for condensed lettering of 12.
      box(`name of ${p.id}`, p.id, p.plan.x + 12, p.plan.y - 7, 6 * p.id.length, 14),
    ]),
    ...receiver.plan.parts.map(partShape),
  ];
}

function distance(a: Shape, b: Shape): number {
  if (a.kind === 'round' && b.kind === 'round') return Math.hypot(a.x - b.x, a.y - b.y) - a.r - b.r;
  if (a.kind === 'box' && b.kind === 'box') {
    const dx = Math.max(a.x - (b.x + b.width), b.x - (a.x + a.width), 0);
    const dy = Math.max(a.y - (b.y + b.height), b.y - (a.y + a.height), 0);
    return Math.hypot(dx, dy);
  }
  const [circle, square] = a.kind === 'round' ? [a, b] : [b, a];
  if (circle.kind !== 'round' || square.kind !== 'box') throw new Error('no such pair');
  const dx = Math.max(square.x - circle.x, circle.x - (square.x + square.width), 0);
  const dy = Math.max(square.y - circle.y, circle.y - (square.y + square.height), 0);
  return Math.hypot(dx, dy) - circle.r;
}

function bounds(s: Shape): { left: number; top: number; right: number; bottom: number } {
  return s.kind === 'round'
    ? { left: s.x - s.r, top: s.y - s.r, right: s.x + s.r, bottom: s.y + s.r }
    : { left: s.x, top: s.y, right: s.x + s.width, bottom: s.y + s.height };
}

describe.each([...shippedLibrary().receivers.values()].map((l) => [l.receiver.id, l.receiver] as const))(
  'plan of %s',
  (_, receiver) => {
    const all = shapes(receiver);

    it(`keeps ${GAP} units between all things`, () => {
      const near: string[] = [];
      all.forEach((a, i) => {
        for (const b of all.slice(i + 1)) {
          if (a.group !== b.group && distance(a, b) < GAP - 1e-9)
            near.push(`${a.name} / ${b.name}: ${distance(a, b).toFixed(1)}`);
        }
      });
      expect(near).toEqual([]);
    });

    it('keeps everything inside the pan’s inner edge', () => {
      for (const s of all) {
        const { left, top, right, bottom } = bounds(s);
        expect(Math.min(left, top), s.name).toBeGreaterThanOrEqual(7);
        expect(right, s.name).toBeLessThanOrEqual(receiver.plan.width - 7);
        expect(bottom, s.name).toBeLessThanOrEqual(receiver.plan.height - 7);
      }
    });

    it('keeps slugs, points and letters out of the live corner', () => {
      const { hot } = receiver.plan;
      if (hot === null) {
        expect(receiver.mains).toBeNull();
        return;
      }
      const cage = box('cage', 'cage', hot.x, hot.y, hot.width, hot.height);
      for (const s of all) {
        const inside = bounds(s).bottom <= hot.y + hot.height && s.name.startsWith('part');
        if (!inside) expect(distance(cage, s), s.name).toBeGreaterThanOrEqual(GAP);
      }
    });

    it('gives every hole 40 units to itself, and every letter a place near its slug', () => {
      receiver.adjusters.forEach((a, i) => {
        for (const b of receiver.adjusters.slice(i + 1)) {
          expect(Math.hypot(a.plan.x - b.plan.x, a.plan.y - b.plan.y), `${a.id} ${b.id}`).toBeGreaterThanOrEqual(40);
        }
        const letter = a.plan.letter!;
        const own = Math.hypot(letter.x - a.plan.x, letter.y - a.plan.y);
        expect(own, a.id).toBeLessThan(62);
        for (const b of receiver.adjusters) {
          if (b !== a)
            expect(Math.hypot(letter.x - b.plan.x, letter.y - b.plan.y), `${a.id} ${b.id}`).toBeGreaterThan(own);
        }
      });
    });
  },
);
