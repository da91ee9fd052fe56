/**
 * One part has failed, and the sound curve lies in wax: which of four was it? Fair only where no way in which one of the other three may fail looks anything like the
 * curve on the tube, and where each of the four might as well have been the one: else a guess by the kind of part is better than a look.
 */
import { cureOf } from '../../receiver/faults/cure.ts';
import type { Fault } from '../../receiver/faults/fault.ts';
import { plausibleFaults } from '../../receiver/faults/faultsThatFit.ts';
import { type Part, partsTray } from '../../receiver/faults/partsTray.ts';
import { pick, shuffled } from '../chance.ts';
import { type Scene, TOLD_FAULTS, type ToldFault } from '../drill.ts';
import { apartDiv, displayOf, type Heights, heightsOf, meanApartDiv, scenePicture } from '../picture.ts';
import { fitted, sceneOf, withControls } from '../scene.ts';
import { CURVES, type DrillMaker } from './look.ts';

const CHOICES = 4;
/** Of the sound curve and of other parts' failures. */
const SEEN_DIV = 1;
const OTHER_DIV = 0.9;
const OTHER_MEAN_DIV = 0.25;
/** A curve that is all but gone looks the same whichever part failed. */
const ALIVE_SHARE = 0.12;
const TALL_SHARE = 0.75;
/** Parts that are looked at before the dice are thrown again. */
const MOST_PARTS = 14;

type ToldOne = Extract<Fault, { readonly kind: ToldFault }>;

const isTold = (fault: Fault): fault is ToldOne => (TOLD_FAULTS as readonly string[]).includes(fault.kind);

interface Shown {
  readonly fault: ToldFault;
  readonly scene: Scene;
  readonly picture: Heights;
}

interface Failed {
  readonly part: Part;
  /** every way in which it may fail */
  readonly pictures: readonly Shown[];
  /** the one that is shown, should it be the part */
  readonly shown: Shown;
}

export const whichPart: DrillMaker = {
  receivers: ['video-valve-45m', 'video-early-25m', 'video-b-38m9'],
  make({ set, chance, rightOf }) {
    const { receiver, deck } = set;
    const { response } = CURVES[receiver.id]!;
    const right = rightOf(CHOICES);
    const wanted = fitted(sceneOf(set, { response, controls: { pipHeightDiv: 0 } }), TALL_SHARE);
    const sound = scenePicture(wanted);
    const tall = height(sound);
    const parts = new Map(partsTray(receiver, deck).map((part) => [part.name, part]));
    const groups = new Map<string, ToldOne[]>();
    for (const fault of plausibleFaults(receiver, deck)) {
      if (!isTold(fault)) continue;
      const cure = cureOf(fault, receiver, deck);
      if (cure.kind !== 'replace' || cure.parts.length > 1) continue;
      groups.set(cure.part, [...(groups.get(cure.part) ?? []), fault]);
    }
    // Any of the four might have been the one: what kind of part it is tells nothing.
    let four: readonly Failed[] | null = null;
    const failed: Failed[] = [];
    for (const [name, faults] of shuffled([...groups], chance).slice(0, MOST_PARTS)) {
      const pictures = faults.map((fault) => {
        const scene = {
          ...wanted,
          setup: { ...wanted.setup, scenario: { ...wanted.setup.scenario, faults: [fault] } },
        };
        return { fault: fault.kind, scene, picture: scenePicture(scene) };
      });
      const seen = pictures.filter(({ scene, picture }) => isSeen(scene, picture, sound, tall));
      if (seen.length === 0) continue;
      const next = { part: parts.get(name)!, pictures, shown: pick(seen, chance) };
      four = toldApart([next], failed, CHOICES);
      if (four !== null) break;
      failed.push(next);
    }
    if (four === null) return null;
    const one = pick(four, chance);
    const wrong = four.filter((other) => other !== one);
    const choices = [...wrong.slice(0, right), one, ...wrong.slice(right)].map(({ part }) => part);
    const scene = withControls(one.shown.scene, { pipHeightDiv: 0 });
    return {
      drill: 'which-part',
      scene,
      wax: wanted,
      unnamedPips: false,
      ask: {
        kind: 'choice',
        choices: choices.map((part) => ({ kind: 'part', part, slug: part.slug })),
        right,
      },
      subject: {},
      told: {
        drill: 'which-part',
        part: one.part,
        slug: one.part.slug,
        fault: one.shown.fault,
        peakDb: 20 * Math.log10(height(one.shown.picture) / tall),
      },
      after: [
        ['was', scene],
        ['wanted', wanted],
      ],
    };
  },
};

/** So many parts, `held` among them, of which each has failed in a way that looks like no failure of the others; null where there are none. */
function toldApart(held: readonly Failed[], failed: readonly Failed[], count: number): readonly Failed[] | null {
  if (held.length === count) return held;
  for (const [i, next] of failed.entries()) {
    if (!held.every((one) => differs(one, next.shown.picture) && differs(next, one.shown.picture))) continue;
    const whole = toldApart([...held, next], failed.slice(i + 1), count);
    if (whole !== null) return whole;
  }
  return null;
}

const height = (picture: Heights): number => {
  const { low, high } = heightsOf(picture);
  return high - low;
};

function isSeen(scene: Scene, picture: Heights, sound: Heights, tall: number): boolean {
  const alive = height(picture) >= ALIVE_SHARE * tall && height(picture) < 1.25 * tall;
  return alive && apartDiv(picture, sound) >= SEEN_DIV && displayOf(scene).note === 'none';
}

/** No failure of the part looks like this. */
function differs({ pictures }: Failed, picture: Heights): boolean {
  return pictures.every(
    (one) => apartDiv(one.picture, picture) >= OTHER_DIV && meanApartDiv(one.picture, picture) >= OTHER_MEAN_DIV,
  );
}
