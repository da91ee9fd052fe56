/** The chassis plan of a receiver in the making, as a drawing. */
import {
  box,
  cage,
  canBody,
  electrolytic,
  liveSign,
  pan,
  plainCan,
  resistor,
  signalPath,
  testPoint,
  transformer,
  trapBody,
  valve,
} from '../../../kit/chassis/chassisParts.ts';
import { C, callout, r1, T } from '../../../kit/theme/ink.ts';
import { thingsOf } from '../../../making/moving.ts';
import type { Draft } from '../../../making/wholeReceiver.ts';
import { TRAP_RADIUS } from '../../../receiver/planSizes.ts';
import type { ChassisPlan, PlanPart, Receiver } from '../../../receiver/receiver.ts';
import { slugLetters } from '../../../receiver/slugLetters.ts';

/** `scale`: CSS pixels to a plan unit; lettering and discs never get smaller than they are written. */
export function planArt(draft: Draft, scale: number): string {
  const size = Math.max(1, 1 / scale);
  const words: Lettering = (text, x, y, anchor) =>
    placed(x, y, size, T(0, 5, text, 'ls', { anchor, size: 13, weight: 700 }));
  const plan = draft.plan as unknown as ChassisPlan;
  const { adjusters, testPoints } = draft as unknown as Pick<Receiver, 'adjusters' | 'testPoints'>;
  const letters = slugLetters({ adjusters });
  let svg = pan(plan.width, plan.height);
  if (plan.hot !== null)
    svg += cage(plan.hot.x, plan.hot.y, plan.hot.width, plan.hot.height) + liveSign(plan.hot.x + 28, plan.hot.y + 8);
  for (const line of plan.path) svg += signalPath(line);
  for (const part of plan.parts) svg += partArt(part, words);
  for (const thing of thingsOf(draft)) {
    if (thing.what !== 'slugCan' || typeof thing.half === 'number') continue;
    const [w, h] = thing.half;
    svg += canBody(thing.x - w, thing.y - h, 2 * w, 2 * h);
    svg += words(thing.name, thing.x - w + 8, thing.y + h - 13, 'start');
  }
  for (const { id, plan: at } of adjusters) {
    if (at.shape === 'trap') svg += trapBody(at.x, at.y, TRAP_RADIUS);
    const disc = at.letter ?? at;
    svg += `<circle cx="${r1(at.x)}" cy="${r1(at.y)}" r="7" fill="${C.ink}"/>`;
    if (at.letter !== undefined)
      svg += `<path d="M${r1(disc.x)} ${r1(disc.y)}L${r1(at.x)} ${r1(at.y)}" stroke="${C.ink}" stroke-width="1"/>`;
    svg += placed(disc.x, disc.y, size, callout(0, 0, letters.get(id) ?? '', { r: 10 }));
  }
  for (const { id, plan: at } of testPoints) svg += testPoint(at.x, at.y) + words(id, at.x + 11, at.y, 'start');
  return svg;
}

const placed = (x: number, y: number, size: number, svg: string): string =>
  `<g transform="translate(${r1(x)} ${r1(y)}) scale(${size.toFixed(3)})">${svg}</g>`;

type Lettering = (text: string, x: number, y: number, anchor: 'start' | 'middle') => string;

function partArt(part: PlanPart, words: Lettering): string {
  const { x, y } = part;
  switch (part.kind) {
    case 'valve':
      return valve(x, y) + words(part.label, x, y, 'middle');
    case 'electrolytic':
      return electrolytic(x, y) + words(part.label, x, y, 'middle');
    case 'transformer':
      return transformer(x, y) + words(part.label, x, y, 'middle');
    case 'can':
      return plainCan(x, y) + words(part.label, x, y, 'middle');
    case 'resistor':
      return resistor(x, y, part.upright);
    case 'box':
      return (
        box(x, y, part.width, part.height, 4, false) +
        words(part.label, x + part.width / 2, y + part.height / 2, 'middle')
      );
  }
}
