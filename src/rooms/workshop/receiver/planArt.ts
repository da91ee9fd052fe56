/** The chassis plan of a receiver in the making, drawn as the bench draws it: letters that have no place of their own are put where nothing is. */
import { chassisArt, lettered } from '../../../kit/chassis/chassisArt.ts';
import { holeHead, holeRim } from '../../../kit/chassis/slugHole.ts';
import { callout, G } from '../../../kit/theme/ink.ts';
import type { Draft } from '../../../making/wholeReceiver.ts';
import { chassisPlaces } from '../../../present/chassisPlaces.ts';
import type { Receiver } from '../../../receiver/receiver.ts';
import type { Words } from '../../../words/words.ts';

/** `scale`: CSS pixels to a plan unit. */
export function planArt(say: Words['scene'], draft: Draft, scale: number): string {
  // What is drawn of a receiver is its plan, its slugs and its points, and those a draft has.
  const receiver = draft as unknown as Receiver;
  const { svg, lettering } = chassisArt(say, receiver, scale);
  const { slugs, discRadius } = chassisPlaces(receiver, scale);
  const holes = slugs.map(({ adjuster, hole, holeRadius, letter, disc }) => {
    const lower = adjuster.plan.hole === 'bottom';
    return (
      G(hole.x, hole.y, holeRim(holeRadius, lower) + holeHead(holeRadius, adjuster.head ?? 'hex')) +
      G(disc.x, disc.y, callout(0, 0, letter, { r: discRadius }))
    );
  });
  return svg + lettering.map(lettered).join('') + holes.join('');
}
