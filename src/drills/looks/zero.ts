/** An S-curve whose zero is off its pip: the slug of the secondary is turned until the line goes through the pip on the base line. */
import { nominalTurns } from '../../receiver/slugLaw.ts';
import { between, pick } from '../chance.ts';
import { zeroHzOf } from '../marking.ts';
import { fitted, sceneOf, withControls, withSlug } from '../scene.ts';
import type { DrillMaker } from './look.ts';

/** The slug of the zero, and the share of the sheet's sweep in which it can be read. */
const ZEROS: Readonly<Record<string, { readonly slug: string; readonly closer: number }>> = {
  'fm-10m7': { slug: 'T4T', closer: 0.6 },
  'sound-4m5': { slug: 'T3T', closer: 0.6 },
  'aft-45m75': { slug: 'T1T', closer: 0.6 },
};
/** The sheet's tolerance is widened as for the easiest runs. */
const TOLERANCE_FACTOR = 1.4;
/** How far off the zero is found, in such tolerances. */
const OFF = [3, 9] as const;
const STEP_TURNS = 1 / 32;

export const zero: DrillMaker = {
  receivers: Object.keys(ZEROS),
  make({ set, chance }) {
    const { slug, closer } = ZEROS[set.receiver.id]!;
    const { setUp, specification } = set.receiver.responses.find(({ id }) => id === 's')!;
    const { centreHz, zero: wantedZero } = specification.sCurve!;
    const withinHz = wantedZero.toleranceHz * TOLERANCE_FACTOR;
    const nominal = nominalTurns(set.receiver.adjusters.find((a) => a.id === slug)!);
    const bare = sceneOf(set, {
      response: 's',
      crystalsHz: [centreHz],
      controls: { centreHz, spanHz: setUp.spanHz * closer },
    });
    const wanted = fitted(bare, 0.9);
    const steps = Math.round(between(2, 48, chance)) * pick([-1, 1], chance);
    const scene = withControls(withSlug(wanted, slug, nominal + steps * STEP_TURNS), { pipHeightDiv: 0.4 });
    const at = zeroHzOf(scene);
    if (at === null) return null;
    const off = Math.abs(at - centreHz) / withinHz;
    if (off < OFF[0] || off > OFF[1]) return null;
    return {
      drill: 'zero',
      scene,
      wax: null,
      unnamedPips: false,
      ask: { kind: 'turn', turn: { kind: 'slug', slug, withinHz } },
      subject: { slug },
      told: { drill: 'zero', slug, centreHz },
      after: [
        ['was', scene],
        ['wanted', wanted],
      ],
    };
  },
};
