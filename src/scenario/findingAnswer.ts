/** What a learner may say to have seen while a proof was made. */
import type { ProofId } from './proofId.ts';

/** What may have been seen, proof by proof. */
export const ANSWERS = {
  halveLevel: ['shrankWhole', 'topFlat', 'hardly', 'movedAlong'],
  swingPhase: ['parted', 'slid', 'together', 'shrank'],
  markersOffOn: ['pipsOnly', 'curveBent', 'noPips', 'curveShrank'],
  touchEarth: ['humCame', 'nothing', 'curveMoved', 'curveShrank'],
  skirts: ['leftHigher', 'rightHigher', 'alike', 'offFace'],
  bias: ['asSheet', 'under', 'over', 'otherSide'],
  liftCrystal: ['pipLeft', 'pipRight', 'noPipWent', 'curveBent'],
  pipDown: ['onTop', 'onSlope', 'atFoot', 'offFace'],
} as const satisfies Readonly<Record<ProofId, readonly string[]>>;
export type SeenAnswer = (typeof ANSWERS)[ProofId][number];

/** `notLooked` proves nothing; `again`: the act is to be made once more. */
export const FINDING_ANSWERS = [
  ...new Set<SeenAnswer>(Object.values(ANSWERS).flat()),
  'notLooked',
  'again',
] as readonly FindingAnswer[];
export type FindingAnswer = SeenAnswer | 'notLooked' | 'again';
