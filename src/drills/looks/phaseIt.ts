/** Trace and retrace lie apart; the phasing is turned until they are one. The knob's own figure says nothing, for the bench's lag is another each time. */
import { between, pick } from '../chance.ts';
import { fitted, sceneOf, withControls } from '../scene.ts';
import { CURVES, type DrillMaker } from './look.ts';

/** As near as a signed run wants it (rule G13). */
const WITHIN_DEGREES = 2;
const LEAST_APART_DEGREES = 8;
const MOST_APART_DEGREES = 45;
const KNOB_DEGREES = 30;

export const phaseIt: DrillMaker = {
  receivers: ['loose-can-10m7', 'video-valve-45m', 'video-early-25m', 'video-b-38m9', 'fm-10m7'],
  make({ set, chance }) {
    const { response } = CURVES[set.receiver.id]!;
    const apart = between(LEAST_APART_DEGREES, MOST_APART_DEGREES, chance) * pick([-1, 1], chance);
    const stands = Math.round(between(-KNOB_DEGREES, KNOB_DEGREES, chance));
    const lagDegrees = Math.round(apart) - stands;
    const phased = fitted(
      sceneOf(set, { response, lagDegrees, controls: { phasingDegrees: -lagDegrees, pipHeightDiv: 0 } }),
    );
    const scene = withControls(phased, { phasingDegrees: stands, blanking: false });
    return {
      drill: 'phase-it',
      scene,
      wax: null,
      unnamedPips: false,
      ask: { kind: 'turn', turn: { kind: 'phasing', withinDegrees: WITHIN_DEGREES } },
      subject: {},
      told: { drill: 'phase-it', lagDegrees },
      after: [
        ['was', scene],
        ['wanted', withControls(scene, { phasingDegrees: -lagDegrees })],
      ],
    };
  },
};
