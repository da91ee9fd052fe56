/**
 * Who asks the card instead of the tube: each proof is made over and over, each time a little larger or smaller, until the card takes it, and then it is known how large it was.
 * What is asked at a place he knows because he has left no other: a picture so small that what may be asked of it is all of one height, or so narrow a sweep that nothing is left of the skirts.
 * Set mended and aligned, bench right, what was wrong said rightly.
 */
import { RULES_VERSION, type RulesVersion } from '../../src/base/engine.ts';
import type { ControlId } from '../../src/bench/benchEvent.ts';
import type { LeadId } from '../../src/bench/benchState.ts';
import { choicesOf, controlRange } from '../../src/bench/controlRange.ts';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { trueFinding, unreadable } from '../../src/bench/witness.ts';
import { type Hand, prove } from '../../src/certify/goodHand.ts';
import type { FindingAnswer } from '../../src/scenario/findingAnswer.ts';
import type { ProofId } from '../../src/scenario/proofId.ts';

/** `rules`: those that the card goes by. What is said is the middle of what it takes. */
export function proveBySieve(setup: BenchSetup, hand: Hand, proof: ProofId, rules: RulesVersion = RULES_VERSION): void {
  const small = rules < 7;
  const kept = hand.state.controls;
  const set = (control: ControlId, value: number): void => hand.take({ type: 'controlSet', control, value });
  const say = (answer: FindingAnswer, figure: number): void =>
    hand.take({ type: 'findingStated', proof, answer, figure });
  const again = (): void => {
    if (hand.state.proofs[proof].done) hand.take({ type: 'findingStated', proof, answer: 'again', figure: null });
  };
  const taken = (): boolean => hand.state.proofs[proof].done && unreadable(setup, hand.state, proof, rules) === null;
  const gains = choicesOf(setup, 'yVoltsPerDiv').map(Number);
  const level = controlRange(setup, 'levelDb');
  const span = controlRange(setup, 'spanHz');
  if (level.kind !== 'number' || span.kind !== 'number') throw new Error('the bench has other knobs');
  const leastOf = (range: typeof level): number => range.min;

  switch (proof) {
    case 'touchEarth': {
      // From the coarsest gain: the first that the card takes shows the least hum that it takes, or little more.
      const { earth } = hand.state.leads;
      for (const gain of gains.toReversed()) {
        set('yVoltsPerDiv', gain);
        again();
        hand.take(
          { type: 'leadRemoved', lead: 'earth' as LeadId },
          { type: 'leadConnected', lead: 'earth' as LeadId, to: earth! },
        );
        if (taken()) break;
      }
      say('humCame', small ? 0.55 : 3);
      break;
    }
    case 'halveLevel': {
      // Down until the card says that nothing is left to read, and a decibel less.
      let db = 6;
      for (; kept.levelDb - db >= leastOf(level); db++) {
        again();
        set('levelDb', kept.levelDb - db - 1);
        set('levelDb', kept.levelDb);
        if (!taken()) break;
      }
      again();
      set('levelDb', kept.levelDb - db);
      set('levelDb', kept.levelDb);
      say('shrankWhole', small ? 0.66 : 2);
      break;
    }
    case 'markersOffOn':
    case 'liftCrystal': {
      // As small a picture as the card takes: the pips that it may ask about all stand as tall.
      for (let down = 1; down < 20; down++) {
        set('levelDb', kept.levelDb - down);
        again();
        prove(proof, hand);
        if (taken()) continue;
        set('levelDb', kept.levelDb - down + 1);
        again();
        prove(proof, hand);
        break;
      }
      if (proof === 'markersOffOn') say('pipsOnly', small ? 1.2 : 2);
      else say('pipLeft', small ? 1.2 : 2.8);
      break;
    }
    case 'skirts':
    case 'pipDown': {
      // So narrow a sweep that the trace is all top: made larger it runs off the face.
      if (small) set('spanHz', Math.max(leastOf(span), kept.spanHz / 20));
      again();
      prove(proof, hand);
      if (small) say('offFace', 0);
      else if (proof === 'skirts') say('alike', 1.5);
      else say('onSlope', 6);
      break;
    }
    case 'swingPhase':
    case 'bias':
      prove(proof, hand);
      hand.take(trueFinding(setup, hand.state, proof));
  }
  for (const control of ['yVoltsPerDiv', 'levelDb', 'spanHz'] as const)
    if (hand.state.controls[control] !== kept[control]) set(control, kept[control]);
}
