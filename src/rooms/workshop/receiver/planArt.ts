/** The chassis plan of a receiver in the making, drawn as the bench draws it: letters that have no place of their own are put where nothing is. */
import { chassisArt, lettered } from '../../../kit/chassis/chassisArt.ts';
import { holeHead, holeRim } from '../../../kit/chassis/slugHole.ts';
import { C, G, r1 } from '../../../kit/theme/ink.ts';
import type { Draft } from '../../../making/wholeReceiver.ts';
import { chassisPlaces } from '../../../present/chassisPlaces.ts';
import type { Receiver } from '../../../receiver/receiver.ts';
import type { Words } from '../../../words/words.ts';

/** `scale`: CSS pixels to a plan unit. */
export function planArt(say: Words['scene'], draft: Draft, scale: number): string {
  // What is drawn of a receiver is its plan, its slugs and its points, and those a draft has.
  const receiver = draft as unknown as Receiver;
  const { svg, lettering } = chassisArt(say, receiver, scale);
  const { slugs, discRadius, textSize } = chassisPlaces(receiver, scale);
  // However small the plan is drawn, a letter is as large as the rest of its lettering.
  const size = (13 / 12) * textSize;
  const holes = slugs.map(({ adjuster, hole, holeRadius, letter, disc }) => {
    const lower = adjuster.plan.hole === 'bottom';
    return (
      G(hole.x, hole.y, holeRim(holeRadius, lower) + holeHead(holeRadius, adjuster.head ?? 'hex')) +
      `<circle cx="${r1(disc.x)}" cy="${r1(disc.y)}" r="${discRadius}" fill="${C.sheet}" stroke="${C.ink}" stroke-width="1.2"/>` +
      lettered({
        ...{ words: letter, x: disc.x, y: disc.y + 0.35 * size, size },
        ...{ weight: 700, anchor: 'middle', fill: C.ink, spacing: 0 },
      })
    );
  });
  return svg + lettering.map(lettered).join('') + holes.join('');
}
