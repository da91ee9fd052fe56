/** A trap has been turned into the band and bites a notch out of the curve. Four pips stand on it: which one stands in the notch? */
import { nominalTurns } from '../../receiver/slugLaw.ts';
import { between, pick } from '../chance.ts';
import { type Heights, heightsOf, PLACES, placeDiv, scenePicture } from '../picture.ts';
import { fitted, hzAt, sceneOf, withControls, withSlug } from '../scene.ts';
import { CURVES, type DrillMaker } from './look.ts';

const PIPS = 4;
const LEAST_TURNS = 2;
const MOST_TURNS = 5;
/** Between two pips: none of the others comes near the notch. */
const APART_DIV = [1.0, 1.35] as const;
/** A notch goes down at least this far below the lower of its two sides, as a share of the whole. */
const DEEP_SHARE = 0.25;

export const findTheTrap: DrillMaker = {
  receivers: ['video-valve-45m', 'video-b-38m9', 'video-solid-45m'],
  make({ set, chance, rightOf }) {
    const { response } = CURVES[set.receiver.id]!;
    const traps = set.receiver.adjusters.filter((a) => a.kind === 'trap');
    const trap = pick(traps, chance);
    const { setUp } = set.receiver.responses.find((one) => one.id === response)!;
    // Into the band: a trap that belongs above it goes down, which is core in.
    const inwards = trap.trapHz! > setUp.centreHz;
    const turns = nominalTurns(trap) + (inwards ? 1 : -1) * between(LEAST_TURNS, MOST_TURNS, chance);
    if (turns < 0 || turns > trap.travelTurns) return null;
    const right = rightOf(PIPS);
    const apart = between(...APART_DIV, chance);
    const bare = sceneOf(set, { response, controls: { pipHeightDiv: 0 } });
    const plain = fitted(withSlug(bare, trap.id, turns));
    const notch = notchIn(scenePicture(plain));
    if (notch === null) return null;
    const places = Array.from({ length: PIPS }, (_, i) => notch + (i - right) * apart);
    if (places.some((xDiv) => Math.abs(xDiv) > 4.8)) return null;
    const crystals = places.map((xDiv) => hzAt(plain, xDiv));
    const scene = withControls({ ...plain, state: { ...plain.state, crystals } }, { pipHeightDiv: 0.35 });
    const choices = places.map((_, i) => ({ kind: 'pip', number: i + 1 }) as const);
    return {
      drill: 'find-the-trap',
      scene,
      wax: null,
      unnamedPips: true,
      ask: { kind: 'choice', choices, right },
      subject: {},
      told: { drill: 'find-the-trap', slug: trap.id, pip: right + 1, meantHz: trap.trapHz! },
      after: [
        ['was', plain],
        ['wanted', withSlug(plain, trap.id, nominalTurns(trap))],
      ],
    };
  },
};

/** The place of the only deep notch, divisions from the middle; null where there is none, or more than one. */
function notchIn(picture: Heights): number | null {
  const { low, high } = heightsOf(picture);
  const found: number[] = [];
  for (let i = 1; i + 1 < PLACES; i++) {
    if (picture[i]! > picture[i - 1]! || picture[i]! >= picture[i + 1]!) continue;
    const left = Math.max(...picture.subarray(0, i));
    const rightSide = Math.max(...picture.subarray(i + 1));
    const rim = Math.min(left, rightSide);
    if (rim - picture[i]! >= DEEP_SHARE * (high - low)) found.push(i);
  }
  // Grass makes more than one lowest place in one notch.
  const lowest = found.reduce<number | null>(
    (best, i) => (best === null || picture[i]! < picture[best]! ? i : best),
    null,
  );
  if (lowest === null || found.some((i) => Math.abs(i - lowest) > 6)) return null;
  return placeDiv(lowest);
}
