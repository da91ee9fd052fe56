/** Marks an answer: a choice by its place, what was turned by what the receiver then does. Time is not marked. */
import { readSCurve } from '../receiver/sCurveReading.ts';
import type { Answer, Question, Scene } from './drill.ts';
import { benchOf } from './picture.ts';

export function isRight({ ask, scene }: Question, answer: Answer): boolean {
  if (ask.kind === 'choice') return answer.kind === 'choice' && answer.at === ask.right;
  if (answer.kind !== 'turned') return false;
  const turned = { setup: scene.setup, state: answer.state };
  const { turn } = ask;
  if (turn.kind === 'phasing') return Math.abs(residualDegrees(turned)) <= turn.withinDegrees;
  const zeroHz = zeroHzOf(turned);
  const centreHz = centreHzOf(turned);
  return zeroHz !== null && Math.abs(zeroHz - centreHz) <= turn.withinHz;
}

/** How far trace and retrace are apart still, degrees of the sweep. */
const residualDegrees = ({ setup, state }: Scene): number => benchOf(setup).facts(state).residualPhaseDegrees;

/** Where the S-curve really goes through nought; null where it does not. */
export function zeroHzOf({ setup, state }: Scene): number | null {
  const { fromHz, toHz, sCurve } = responseOf(setup.receiver).specification;
  const { hz, relative } = benchOf(setup).truth(state, 's');
  const read = readSCurve({ hz, volts: relative }, sCurve!.centreHz, fromHz, toHz);
  return read.zeroHz;
}

const centreHzOf = ({ setup }: Scene): number => responseOf(setup.receiver).specification.sCurve!.centreHz;

const responseOf = ({ responses }: Scene['setup']['receiver']): (typeof responses)[number] =>
  responses.find(({ id }) => id === 's')!;
