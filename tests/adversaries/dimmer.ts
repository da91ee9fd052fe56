/**
 * Who needs no eyes for the proofs because he makes each on a picture of which everybody knows what it shows: the level turned down to nothing, the Y gain at its coarsest, hum at
 * the finest, pips without height. Set mended and aligned, bench right, what was wrong said rightly.
 */
import type { ControlId } from '../../src/bench/benchEvent.ts';
import { controlRange } from '../../src/bench/controlRange.ts';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { trueFinding } from '../../src/bench/witness.ts';
import { type Hand, prove } from '../../src/certify/goodHand.ts';
import type { FindingAnswer } from '../../src/scenario/findingAnswer.ts';
import type { ProofId } from '../../src/scenario/proofId.ts';

/** What is said without a look; of phasing and bias what arithmetic and the setting of the needle tell. */
const KNOWN: Readonly<Partial<Record<ProofId, readonly [FindingAnswer, number]>>> = {
  halveLevel: ['shrankWhole', 0],
  markersOffOn: ['pipsOnly', 0],
  touchEarth: ['humCame', 8],
  skirts: ['alike', 0],
  liftCrystal: ['noPipWent', 0],
  pipDown: ['offFace', 0],
};

export function proveInTheDark(setup: BenchSetup, hand: Hand, proof: ProofId): void {
  const { yVoltsPerDiv, levelDb, pipHeightDiv } = hand.state.controls;
  const set = (control: ControlId, value: number): void => hand.take({ type: 'controlSet', control, value });
  const level = controlRange(setup, 'levelDb');
  const gain = controlRange(setup, 'yVoltsPerDiv');
  if (level.kind !== 'number' || gain.kind !== 'choice') throw new Error('the bench has other knobs');
  const [finest, coarsest] = [Number(gain.choices[0]), Number(gain.choices.at(-1))];
  const known = KNOWN[proof];
  if (proof === 'halveLevel') {
    set('levelDb', level.min);
    set('levelDb', levelDb);
  } else {
    if (proof === 'touchEarth') set('yVoltsPerDiv', finest);
    else if (known !== undefined) {
      set('yVoltsPerDiv', coarsest);
      set('levelDb', level.min);
    }
    if (proof === 'liftCrystal') set('pipHeightDiv', 0.01);
    prove(proof, hand);
  }
  const { state } = hand;
  if (known === undefined) hand.take(trueFinding(setup, state, proof));
  else hand.take({ type: 'findingStated', proof, answer: known[0], figure: known[1] });
  set('yVoltsPerDiv', yVoltsPerDiv);
  set('levelDb', levelDb);
  set('pipHeightDiv', pipHeightDiv);
}
