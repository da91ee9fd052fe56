/** Places everything of a receiver on its chassis plan: cans and valves in the order of the deck, in rows, test points at the left edge. Nothing lies on anything else. */
import type { Deck } from '../physics/deck.ts';
import { coilGroups } from '../physics/deckProblems.ts';
import type { Draft, Json } from './wholeReceiver.ts';

const WIDTH = 420;
const LEAST_HEIGHT = 384;
const POINT = { x: 24, top: 40, step: 36 } as const;
/** Middle of the first place, and the distances to the next: a can of two holes is 54 by 96, and its letters stand beside it. */
const FIRST = { x: 128, y: 90 } as const;
const STEP = { x: 84, y: 128 } as const;
const ACROSS = 4;
/** Half the distance of two holes of a can. */
const HALF = 21;

export function setOut(draft: Draft, deck: Deck): Draft {
  const places = orderOf(draft, deck);
  const at = (i: number) => ({ x: FIRST.x + STEP.x * (i % ACROSS), y: FIRST.y + STEP.y * Math.floor(i / ACROSS) });
  const cans = new Map(places.flatMap((p, i) => ('can' in p ? [[p.can, at(i)] as const] : [])));
  const count = (can: unknown): number => draft.adjusters.filter((a) => canOf(a) === can).length;
  const adjusters = draft.adjusters.map((a) => {
    const middle = cans.get(canOf(a))!;
    const own = (a.plan ?? {}) as Json;
    const { letter: _, ...rest } = own;
    const dy = count(canOf(a)) < 2 ? 0 : own.hole === 'bottom' ? HALF : -HALF;
    return { ...a, plan: { can: canOf(a), shape: shapeOf(a), hole: 'top', ...rest, x: middle.x, y: middle.y + dy } };
  });
  const testPoints = draft.testPoints.map((p, i) => ({ ...p, plan: { x: POINT.x, y: POINT.top + POINT.step * i } }));
  const parts = places.flatMap((p, i) => ('valve' in p ? [{ kind: 'valve', ...at(i), label: p.valve }] : []));
  const rows = Math.ceil(places.length / ACROSS);
  const height = Math.min(
    1000,
    Math.max(LEAST_HEIGHT, FIRST.y + STEP.y * (rows - 1) + 80, POINT.top + POINT.step * draft.testPoints.length),
  );
  const path = places.length < 2 ? [] : [places.map((_, i) => at(i))];
  return { ...draft, adjusters, testPoints, plan: { width: WIDTH, height, hot: null, parts, path } };
}

const canOf = (a: Json): string => String(((a.plan ?? {}) as Json).can ?? a.id);
const shapeOf = (a: Json): 'trap' | 'can' => (typeof a.trapHz === 'number' ? 'trap' : 'can');

type CanOrValve = { readonly can: string } | { readonly valve: string };

/** Cans by their first coil, valves by their line of the deck. */
function orderOf(draft: Draft, deck: Deck): CanOrValve[] {
  const canOfCoil = new Map(draft.adjusters.map((a) => [String(a.element).toLowerCase(), canOf(a)]));
  const seen = new Set<string>();
  const places: CanOrValve[] = [];
  const add = (can: string | undefined): void => {
    if (can === undefined || seen.has(can)) return;
    seen.add(can);
    places.push({ can });
  };
  let valves = 0;
  for (const element of deck.elements) {
    if (element.kind === 'L') add(canOfCoil.get(element.name.toLowerCase()));
    if (element.kind === 'G') places.push({ valve: `V${++valves}` });
  }
  for (const group of coilGroups(deck))
    for (const i of group.coils) add(canOfCoil.get(deck.elements[i]!.name.toLowerCase()));
  // A slug whose coil is not in the deck is told of elsewhere, and still has its place.
  for (const a of draft.adjusters) add(canOf(a));
  return places;
}
