/**
 * One slug is named, and the wanted curve lies in wax: core in, core out, or is it another slug that is wrong?
 *
 * Fair only where the curve tells: a slug that is named rightly moves the middle of the curve's area to the side on which its circuit is tuned; and where another is
 * wrong, no turn of the named one brings the curve anywhere near the wax, and none of it alone gives anything like what is on the tube.
 */
import { responseById } from '../../receiver/responses.ts';
import { nominalTurns } from '../../receiver/slugLaw.ts';
import { between, pick, shuffled } from '../chance.ts';
import type { Scene, Way } from '../drill.ts';
import { type Heights, meanApartDiv, middleDiv, scenePicture } from '../picture.ts';
import { fitted, sceneOf, withControls, withSlug } from '../scene.ts';
import { CURVES, type DrillMaker } from './look.ts';

const WAYS: readonly Way[] = ['in', 'out', 'notThis'];
const EIGHTH = 1 / 8;
const LEAST_TURNS = 0.75;
const MOST_TURNS = 2.5;
/** The curve is plainly off the wax. */
const SEEN_DIV = 0.3;
/** Its middle has plainly moved. */
const MOVED_DIV = 0.12;
/** The share of the distance that another slug can take away at most, where it is not to blame. */
const LEFT_SHARE = 0.6;
/** What another slug can do by itself stays so far from the picture at least, as a share of its distance from the wax. */
const ALIKE_SHARE = 0.4;
const TALL_SHARE = 0.75;

export const whichWay: DrillMaker = {
  // Both slugs of a can by itself do much the same to it.
  receivers: ['video-valve-45m', 'video-early-25m', 'video-b-38m9', 'fm-10m7'],
  make({ set, chance, rightOf }) {
    const { response, slugs } = CURVES[set.receiver.id]!;
    const way = WAYS[rightOf(WAYS.length)]!;
    const crystalsHz = responseById(set.receiver, response).setUp.markersHz;
    const wanted = fitted(sceneOf(set, { response, crystalsHz, controls: { pipHeightDiv: 0 } }), TALL_SHARE);
    const sound = scenePicture(wanted);
    const nominal = (slug: string): number => nominalTurns(set.receiver.adjusters.find((a) => a.id === slug)!);
    const [named, other] = shuffled(slugs, chance) as [string, string];
    const culprit = way === 'notThis' ? other : named;
    const outwards = way === 'notThis' ? pick([true, false], chance) : way === 'in';
    const size = Math.round(between(LEAST_TURNS, MOST_TURNS, chance) / EIGHTH) * EIGHTH;
    const off = (share: number): Scene => {
      const turns = (outwards ? -size : size) * share;
      return withSlug(wanted, culprit, nominal(culprit) + turns);
    };
    const scene = off(1);
    const picture = scenePicture(scene);
    if (meanApartDiv(picture, sound) < SEEN_DIV) return null;
    const moved = middleDiv(picture) - middleDiv(sound);
    // A core too far out leaves its circuit too high.
    if ((outwards ? moved : -moved) < MOVED_DIV) return null;
    if (way === 'notThis') {
      if (canBeBlamed(scene, picture, sound, named, nominal(named))) return null;
      if (doesTheSame(wanted, picture, sound, named, nominal(named))) return null;
    }
    const pips = { pipHeightDiv: 0.4 };
    return {
      drill: 'which-way',
      scene: withControls(scene, pips),
      wax: wanted,
      unnamedPips: false,
      ask: { kind: 'choice', choices: WAYS.map((one) => ({ kind: 'way', way: one })), right: WAYS.indexOf(way) },
      subject: { slug: named },
      told: { drill: 'which-way', way, slug: named, other: way === 'notThis' ? culprit : null },
      after: [
        ['was', scene],
        ['half', off(0.5)],
        ['wanted', wanted],
      ],
    };
  },
};

const TRIED_TURNS = [-2.5, -1.5, -0.75, 0.75, 1.5, 2.5];

/** Some turn of the slug takes away a good part of the distance. */
function canBeBlamed(scene: Scene, picture: Heights, sound: Heights, slug: string, nominal: number): boolean {
  const distance = meanApartDiv(picture, sound);
  return TRIED_TURNS.some(
    (turns) => meanApartDiv(scenePicture(withSlug(scene, slug, nominal + turns)), sound) < LEFT_SHARE * distance,
  );
}

/** Some turn of the slug alone gives nearly what is on the tube: by its look it may be to blame. */
function doesTheSame(wanted: Scene, picture: Heights, sound: Heights, slug: string, nominal: number): boolean {
  const distance = meanApartDiv(picture, sound);
  return TRIED_TURNS.some(
    (turns) => meanApartDiv(scenePicture(withSlug(wanted, slug, nominal + turns)), picture) < ALIKE_SHARE * distance,
  );
}
