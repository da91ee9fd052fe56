/** A curve, true or squashed: the level is halved and the picture made as tall again. The same shape, or another? */
import { between, pick, shuffled } from '../chance.ts';
import type { Scene } from '../drill.ts';
import { apartDiv, benchOf, scenePicture } from '../picture.ts';
import { fitted, sceneOf, withControls } from '../scene.ts';
import { CURVES, type DrillMaker } from './look.ts';

const HALF_DB = 6;
/** A healthy curve hardly changes; a squashed one plainly does. Decibels of compression, divisions of change. */
const HEALTHY = { mostDb: 0.7, mostDiv: 0.35 } as const;
const SQUASHED = { leastDb: 3, leastDiv: 0.75 } as const;
/** Over the sheet's level: far enough up for the diode to be linear, and where a stage saturates. */
const HEALTHY_UP_DB = [4, 11] as const;
const SQUASHED_UP_DB = [17, 27] as const;

export const overload: DrillMaker = {
  receivers: ['video-valve-45m', 'video-b-38m9'],
  make({ set, chance, rightOf }) {
    const { response, slugs } = CURVES[set.receiver.id]!;
    const answers = [true, false];
    const right = rightOf(answers.length);
    const overloaded = answers[right]!;
    // Neither is the sheet's own curve: a lean or a flat top proves nothing by itself.
    const off = shuffled(slugs, chance).slice(0, pick([1, 2], chance));
    const bare = sceneOf(set, {
      response,
      slugs: Object.fromEntries(off.map((slug) => [slug, between(-1, 1, chance)])),
      controls: { pipHeightDiv: 0 },
    });
    const [low, high] = overloaded ? SQUASHED_UP_DB : HEALTHY_UP_DB;
    const up = between(low, high, chance);
    const levelDb = Math.round(Math.min(0, bare.state.controls.levelDb + up));
    const scene = fitted(withControls(bare, { levelDb }));
    const halved = halfOf(scene);
    const { compressionDb } = benchOf(scene.setup).facts(scene.state);
    const change = apartDiv(scenePicture(scene), scenePicture(halved));
    const fair = overloaded
      ? compressionDb >= SQUASHED.leastDb && change >= SQUASHED.leastDiv
      : compressionDb <= HEALTHY.mostDb && change <= HEALTHY.mostDiv;
    if (!fair) return null;
    return {
      drill: 'overload',
      scene,
      wax: null,
      unnamedPips: false,
      ask: { kind: 'choice', choices: answers.map((one) => ({ kind: 'overloaded', overloaded: one })), right },
      subject: {},
      told: { drill: 'overload', overloaded, compressionDb },
      after: [
        ['was', scene],
        ['half', halved],
      ],
    };
  },
};

/** Half the level, and the Y gain turned up until the picture is as tall as before. */
export function halfOf(scene: Scene): Scene {
  return fitted(withControls(scene, { levelDb: scene.state.controls.levelDb - HALF_DB }));
}
