/** One pip without a frequency on a vision curve: by where it stands on the shape, what is it? */
import { pick, shuffled } from '../chance.ts';
import { landmarksOf, VISION_SETS } from '../landmarks.ts';
import { fitted, sceneOf } from '../scene.ts';
import { CURVES, type DrillMaker } from './look.ts';

const CHOICES = 4;
/** Tall: on a steep flank or in a notch it must be found. */
const PIP_DIV = 0.9;

export const whatLiesHere: DrillMaker = {
  receivers: VISION_SETS,
  make({ set, chance, rightOf }) {
    const { response } = CURVES[set.receiver.id]!;
    const marks = landmarksOf(set.receiver.id);
    const [landmark, hz] = pick([...marks], chance);
    const others = shuffled(
      [...marks.keys()].filter((one) => one !== landmark),
      chance,
    ).slice(0, CHOICES - 1);
    const right = rightOf(CHOICES);
    const choices = [...others.slice(0, right), landmark, ...others.slice(right)];
    const scene = fitted(sceneOf(set, { response, crystalsHz: [hz], controls: { pipHeightDiv: PIP_DIV } }));
    return {
      drill: 'what-lies-here',
      scene,
      wax: null,
      unnamedPips: true,
      ask: { kind: 'choice', choices: choices.map((one) => ({ kind: 'landmark', landmark: one })), right },
      subject: { pip: 1, hz },
      told: { drill: 'what-lies-here', landmark, hz },
      after: [['was', scene]],
    };
  },
};
