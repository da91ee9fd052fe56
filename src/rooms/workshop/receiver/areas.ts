/** Which part of the desk a problem belongs to, and which parts are done. */
import type { Problem } from '../../../base/result.ts';
import { deckName } from '../../../making/standing.ts';
import type { ReceiverPort } from './receiverPort.ts';

export const AREAS = ['deck', 'network', 'sheet', 'plan'] as const;
export type Area = (typeof AREAS)[number];
type Step = Area | 'keep';

const PLAN_KINDS: ReadonlySet<string> = new Set(['drawnOver', 'spot', 'holesApart', 'secondHole', 'trapSharesCan']);

export function areaOf({ file, place, found }: Problem, deckFile: string): Area {
  if (file === deckFile) return 'deck';
  if (PLAN_KINDS.has(found[0]) || place.startsWith('/plan')) return 'plan';
  return /^\/(responses\/\d+(\/specification|$)|procedure)/.test(place) ? 'sheet' : 'network';
}

/** Areas with something left to do; all of them while nothing is known. */
export function areasLeft({ left, making }: Pick<ReceiverPort, 'left' | 'making'>): ReadonlySet<Area> {
  if (left === null || making === null) return new Set(AREAS);
  return new Set(left.map((problem) => areaOf(problem, deckName(making))));
}

/** Areas of which nothing can be said yet: a deck that cannot be read has no network, and one that makes no receiver has no sheet to measure and no plan. */
export function areasUnknown({ standing }: Pick<ReceiverPort, 'standing'>): ReadonlySet<Area> {
  if (standing === null || !standing.deck.ok) return new Set<Area>(['network', 'sheet', 'plan']);
  return new Set<Area>(standing.made?.ok === true ? [] : ['sheet']);
}

export function stepsDone(port: ReceiverPort): readonly (readonly [Step, boolean])[] {
  const { standing, left } = port;
  const open = areasLeft(port);
  const deck = standing?.deck.ok === true && !open.has('deck');
  const network = deck && standing?.made?.ok === true && !open.has('network');
  const id = String(port.making?.draft.id ?? '');
  return [
    ['deck', deck],
    ['network', network],
    ['sheet', network && !open.has('sheet')],
    ['plan', network && !open.has('plan')],
    ['keep', left?.length === 0 && port.kept.some((one) => one.id === id)],
  ];
}
