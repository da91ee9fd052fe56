/** Moving things about on a chassis plan: each with all that belongs to it, never onto anything else and never off the pan. */
import type { DrawnThing } from '../base/phrases.ts';
import { overlap, type Thing, thingsOn } from '../files/planOverlaps.ts';
import type { Receiver } from '../receiver/receiver.ts';
import { put } from './edits.ts';
import type { Draft, Json } from './wholeReceiver.ts';

export type Hindrance =
  | { readonly kind: 'edge' }
  | { readonly kind: 'on'; readonly what: DrawnThing; readonly name: string; readonly both: Rectangle };

/** Plan units. */
export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export const keyOf = ({ path }: Thing): string => path.join('/');

/** What stands on the plan of a draft, as far as it has places. */
export function thingsOf(draft: Draft): readonly Thing[] {
  return thingsOn(draft as unknown as Receiver);
}

/** The draft with a thing elsewhere. */
export function moved(draft: Draft, thing: Thing, dx: number, dy: number): Draft {
  const shift = (at: unknown): Json => {
    const { x, y } = at as { readonly x: number; readonly y: number };
    return { ...(at as Json), x: x + dx, y: y + dy };
  };
  const withPath = thing.what === 'testPoint' || thing.what === 'letter' ? draft : pathAlong(draft, thing, dx, dy);
  if (thing.what === 'slugCan' || thing.what === 'trap') {
    const can = (draft.adjusters[thing.path[1] as number]!.plan as Json).can;
    const adjusters = draft.adjusters.map((a) => {
      const plan = a.plan as Json;
      if (plan.can !== can) return a;
      const letter = plan.letter === undefined ? {} : { letter: shift(plan.letter) };
      return { ...a, plan: { ...shift(plan), ...letter } };
    });
    return { ...withPath, adjusters };
  }
  const at = thing.path.reduce<unknown>((inside, step) => (inside as Json)[step], draft);
  return put(withPath, thing.path, shift(at));
}

/** The dotted signal path goes with what it runs through. */
function pathAlong(draft: Draft, thing: Thing, dx: number, dy: number): Draft {
  const plan = draft.plan as Json;
  const reach = typeof thing.half === 'number' ? thing.half : Math.max(...thing.half);
  const path = (plan.path as readonly (readonly { readonly x: number; readonly y: number }[])[]).map((line) =>
    line.map((p) => (Math.hypot(p.x - thing.x, p.y - thing.y) < reach ? { x: p.x + dx, y: p.y + dy } : p)),
  );
  return { ...draft, plan: { ...plan, path } };
}

/** What stands in the way of a thing and of all that moved with it; null: it may stand there. */
export function hindranceOf(draft: Draft, key: string): Hindrance | null {
  const things = thingsOf(draft);
  const thing = things.find((one) => keyOf(one) === key);
  if (thing === undefined) return null;
  const mates = things.filter((one) => one === thing || belongs(draft, one, thing));
  const { width, height } = draft.plan as { readonly width: number; readonly height: number };
  for (const one of mates) {
    const [w, h] = typeof one.half === 'number' ? [one.half, one.half] : one.half;
    if (one.x - w < 0 || one.y - h < 0 || one.x + w > width || one.y + h > height) return { kind: 'edge' };
  }
  for (const one of mates) {
    const under = things.find((other) => !mates.includes(other) && overlap(one, other));
    if (under !== undefined) return { kind: 'on', what: under.what, name: under.name, both: common(one, under) };
  }
  return null;
}

/** What two things both cover, each taken as the rectangle round it. */
function common(one: Thing, other: Thing): Rectangle {
  const along = (at: 'x' | 'y', i: 0 | 1): readonly [number, number] => {
    const reach = ({ half }: Thing): number => (typeof half === 'number' ? half : half[i]);
    return [
      Math.max(one[at] - reach(one), other[at] - reach(other)),
      Math.min(one[at] + reach(one), other[at] + reach(other)),
    ];
  };
  const [[left, right], [top, bottom]] = [along('x', 0), along('y', 1)];
  return { x: left, y: top, width: right - left, height: bottom - top };
}

/** A letter stands with the can of its slug. */
function belongs(draft: Draft, letter: Thing, can: Thing): boolean {
  if (letter.what !== 'letter' || (can.what !== 'slugCan' && can.what !== 'trap')) return false;
  const canAt = (thing: Thing): unknown => (draft.adjusters[thing.path[1] as number]!.plan as Json).can;
  return canAt(letter) === canAt(can);
}

const GRID = 6;

/** The first place from the upper left where such a thing lies on nothing; null: the plan is full. */
export function freePlace(
  draft: Draft,
  half: Thing['half'],
  fromX = 0,
): { readonly x: number; readonly y: number } | null {
  const things = thingsOf(draft);
  const { width, height } = draft.plan as { readonly width: number; readonly height: number };
  const [w, h] = typeof half === 'number' ? [half, half] : half;
  for (let y = GRID + h; y + h <= height - GRID; y += GRID)
    for (let x = Math.max(fromX, GRID + w); x + w <= width - GRID; x += GRID) {
      const one: Thing = { path: [], what: 'box', name: '', x, y, half };
      if (!things.some((other) => overlap(one, other))) return { x, y };
    }
  return null;
}
