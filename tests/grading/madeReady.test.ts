/** What a helper's set-up is worth to whoever had it made: nothing, and least of all to a hand that does not look. */
import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { trueFinding } from '../../src/bench/witness.ts';
import { createHand, fillTube, prove, setUpFor, turnAll } from '../../src/certify/goodHand.ts';
import { parOf } from '../../src/certify/par.ts';
import { findings } from '../../src/describe/findings.ts';
import { scoreLineSentence } from '../../src/describe/scoreLine.ts';
import { grade } from '../../src/grading/grade.ts';
import { HELPER_SECONDS } from '../../src/grading/limits.ts';
import { BLOCKS, type Report } from '../../src/grading/report.ts';
import { workResponses } from '../../src/receiver/responses.ts';
import { nominalTurns } from '../../src/receiver/slugLaw.ts';
import { ANSWERS } from '../../src/scenario/findingAnswer.ts';
import { en } from '../../src/words/en/index.ts';
import { bestDepth } from '../adversaries/oneDepth.ts';
import { setupOf } from '../technician/oneScenario.ts';

type Turns = Readonly<Record<string, number>>;
interface Way {
  readonly helped: boolean;
  readonly turns: Turns;
  /** what is said of each proof; null = nothing is proved */
  readonly says: 'truth' | 'guess' | null;
}

/** The same work at a bench that a helper has set up, or that the hand itself has set up just as rightly. */
function reportOf(setup: BenchSetup, { helped, turns, says }: Way): Report {
  const hand = createHand(setup);
  const chance = seededRandom(setup.scenario.seed);
  hand.take({ type: 'cautionsAcknowledged' });
  if (setup.receiver.mains !== null) hand.take({ type: 'isolationSwitched', on: true });
  if (helped) hand.take({ type: 'setUpByHelper' });
  else setUpFor(setup, hand, workResponses(setup.receiver, setup.scenario)[0]!);
  turnAll(setup, hand, turns);
  fillTube(setup, hand);
  for (const proof of says === null ? [] : setup.scenario.proofs) {
    prove(proof, hand);
    const guessed: BenchEvent = {
      ...{ type: 'findingStated', proof, figure: Math.round(80 * chance()) / 10 },
      answer: ANSWERS[proof][Math.floor(chance() * ANSWERS[proof].length)]!,
    };
    hand.take(says === 'truth' ? trueFinding(setup, hand.state, proof) : guessed);
  }
  hand.take({ type: 'signedOff' });
  return grade(setup, hand.events);
}

const nominal = ({ receiver }: BenchSetup): Turns =>
  Object.fromEntries(receiver.adjusters.map((a) => [a.id, nominalTurns(a)]));

describe('[G68] a run that a helper has set up', () => {
  const setup = setupOf('off-centre');
  const own = reportOf(setup, { helped: false, turns: nominal(setup), says: 'truth' });
  const helped = reportOf(setup, { helped: true, turns: nominal(setup), says: 'truth' });

  test('is passed by whoever aligns and proves, and says whose work it was', () => {
    expect(own.passed).toBe(true);
    expect(own.helped).toBeUndefined();
    expect([helped.passed, helped.helped]).toEqual([true, true]);
    const truth = helped.lines.filter(({ block }) => block === 'truth');
    expect(truth.every(({ held, points }) => held === 'helper' && points === 0)).toBe(true);
    expect(scoreLineSentence(en, truth[0]!, setup.receiver)).toContain('A helper set this up');
  });

  test('[G36] loses the points of the set-up and no others, and care is paid for what is left to do', () => {
    for (const block of BLOCKS) {
      const expected = block === 'truth' ? 0 : own.blocks[block].points;
      expect(Math.abs(helped.blocks[block].points - expected), block).toBeLessThan(block === 'economy' ? 5.01 : 0.01);
      expect(helped.blocks[block].max).toBe(own.blocks[block].max);
    }
  });

  test('is not told to set up better', () => {
    const next = findings(en, helped, setup.receiver).find(({ tone }) => tone === 'next');
    expect(next?.text).not.toBe(en.grading.findings.next.truth);
  });

  test('still falls where the picture does not stay true', () => {
    const hand = createHand(setup);
    hand.take({ type: 'setUpByHelper' }, { type: 'controlSet', control: 'blanking', value: false });
    turnAll(setup, hand, nominal(setup));
    hand.take({ type: 'signedOff' });
    expect(grade(setup, hand.events).verdicts.true).toMatchObject({ stands: false, lacks: ['G14'] });
  });

  test('[G35] counts the five minutes that par gives for connecting and setting up', () => {
    const seconds = (report: Report): number => report.lines.find(({ rule }) => rule === 'G35')!.measured;
    expect(seconds(helped) - helped.seconds).toBe(HELPER_SECONDS);
    expect(seconds(own)).toBe(own.seconds);
    const nothing = { asNamed: false, route: [], traps: 0, responses: 1, cures: 0, proofs: 0, warmsUp: false };
    const whole = parOf({ ...nothing, prepared: ['safe'] }).seconds;
    // Par is rounded up to a quarter of a minute, and has a turn in it.
    expect(whole - HELPER_SECONDS).toBeGreaterThanOrEqual(0);
    expect(whole - HELPER_SECONDS).toBeLessThan(30);
  });
});

/** Hands that have everything but eyes: none has more by a helper than by a bench that it found set up rightly, and none passes. */
describe.each(['off-centre', 'both-ways', 'hill-and-ditch', 'six-in-a-row'])('[G68] blind hands at %s', (id) => {
  const setup = setupOf(id);
  test.each<[string, Turns, Way['says']]>([
    ['no slug, findings at random', {}, 'guess'],
    ['no slug, nothing said', {}, null],
    ['one depth, findings at random', bestDepth(setup).turns, 'guess'],
    ['every core where it belongs, findings at random', nominal(setup), 'guess'],
    ['every core where it belongs, nothing said', nominal(setup), null],
  ])('%s', (_, turns, says) => {
    const helped = reportOf(setup, { helped: true, turns, says });
    const own = reportOf(setup, { helped: false, turns, says });
    expect(helped.total).toBeLessThan(own.total);
    expect(helped.passed).toBe(false);
  });
});
