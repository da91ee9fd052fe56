/** A pip on a curve that is not quite right: at how much of the top does it stand? Read from the base line, on the face itself. */
import { between, pick, shuffled } from '../chance.ts';
import type { Scene } from '../drill.ts';
import { heightsOf, PLACES, placeDiv, scenePicture, slopeAt } from '../picture.ts';
import { fitted, hzAt, sceneOf, withControls } from '../scene.ts';
import { CURVES, type DrillMaker } from './look.ts';

const CHOICES = 4;
/** Between two choices: more than anybody misreads. */
const STEP_PERCENT = 15;
const LOWEST_PERCENT = 6;
const HIGHEST_PERCENT = 97;
/** Divisions upwards to a division across: steeper, and the pip is too broad to be read. */
const STEEPEST = 3.2;
/** Of the sheet's sweep: closer in, flanks are less steep. */
const CLOSER = 0.6;
const EDGE_DIV = 0.3;

export const perCent: DrillMaker = {
  receivers: ['loose-can-10m7', 'video-valve-45m', 'video-early-25m', 'video-b-38m9', 'fm-10m7'],
  make({ set, chance, rightOf }) {
    const { response, slugs } = CURVES[set.receiver.id]!;
    const right = rightOf(CHOICES);
    // The lowest choice says nothing of which is right.
    const lowest = Math.round(between(LOWEST_PERCENT, HIGHEST_PERCENT - (CHOICES - 1) * STEP_PERCENT, chance));
    const percent = lowest + right * STEP_PERCENT;
    const off = shuffled(slugs, chance).slice(0, 2);
    const plain = fitted(
      sceneOf(set, {
        response,
        slugs: Object.fromEntries(off.map((slug) => [slug, between(-0.75, 0.75, chance)])),
        controls: { pipHeightDiv: 0, spanHz: spanOf(set.receiver.responses, response) * CLOSER },
      }),
      between(0.7, 1, chance),
    );
    const places = placesAt(plain, percent / 100);
    if (places.length === 0) return null;
    const hz = hzAt(plain, pick(places, chance));
    const { low, high } = heightsOf(scenePicture(plain));
    const scene = withControls({ ...plain, state: { ...plain.state, crystals: [hz] } }, { pipHeightDiv: 0.6 });
    const choices = Array.from({ length: CHOICES }, (_, i) => lowest + i * STEP_PERCENT);
    return {
      drill: 'per-cent',
      scene,
      wax: null,
      unnamedPips: true,
      ask: { kind: 'choice', choices: choices.map((one) => ({ kind: 'percent', percent: one })), right },
      subject: { pip: 1, hz },
      told: { drill: 'per-cent', percent, heightDiv: ((high - low) * percent) / 100, peakDiv: high - low },
      after: [['was', scene]],
    };
  },
};

const spanOf = (
  responses: readonly { readonly id: string; readonly setUp: { readonly spanHz: number } }[],
  id: string,
): number => responses.find((one) => one.id === id)!.setUp.spanHz;

/** Places, divisions from the middle, at which the curve stands at a share of its top and can be read. */
function placesAt(scene: Scene, share: number): number[] {
  const picture = scenePicture(scene);
  const { low, high } = heightsOf(picture);
  const level = low + share * (high - low);
  const found: number[] = [];
  for (let i = 0; i + 1 < PLACES; i++) {
    const [a, b] = [picture[i]! - level, picture[i + 1]! - level];
    if (a * b > 0 || a === b) continue;
    const xDiv = placeDiv(i + a / (a - b));
    if (Math.abs(xDiv) < 5 - EDGE_DIV && Math.abs(slopeAt(picture, i)) < STEEPEST) found.push(xDiv);
  }
  return found;
}
