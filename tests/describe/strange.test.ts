/** Nothing that the describing rooms say is English of their own: with the words of the pseudo language every sentence of theirs is in that language. */

import { expect, it } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import type { Refusal } from '../../src/bench/benchEvent.ts';
import { initialState } from '../../src/bench/setup.ts';
import { adviceFor } from '../../src/describe/advice.ts';
import { findings } from '../../src/describe/findings.ts';
import { scoreLineSentence } from '../../src/describe/scoreLine.ts';
import { curveSentence, missingSentence, refusalSentence } from '../../src/describe/sentence.ts';
import { verdictWords } from '../../src/describe/verdict.ts';
import { LIES } from '../../src/grading/blindTurns.ts';
import { grade } from '../../src/grading/grade.ts';
import { lineIsMet } from '../../src/grading/report.ts';
import { en } from '../../src/words/en/index.ts';
import { pseudoWords } from '../../src/words/pseudo.ts';
import type { Words } from '../../src/words/words.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { setupOf } from '../technician/oneScenario.ts';
import { outsideBrackets } from '../words/strange.ts';

const strange: Words = pseudoWords<Words>(en);
const library = shippedLibrary();
/** One scenario of each receiver, and all that have a failed part. */
const setups = library.scenarios
  .filter(
    ({ receiver, faults }, i, all) => faults.length > 0 || all.findIndex((one) => one.receiver === receiver) === i,
  )
  .map((scenario) => ({ ...library.receivers.get(scenario.receiver)!, scenario }));

/** Sentences with English in them. */
const english = (said: readonly string[]): string[] => said.filter((text) => outsideBrackets(text) !== '');

it('says every line, finding and advice of reports on every receiver', () => {
  const said = setups.flatMap((setup) => {
    const { receiver } = setup;
    const report = grade(setup, [{ atMs: 1000, type: 'signedOff' }]);
    const blind = LIES.map((lie) => ({ lie, slug: receiver.adjusters[0]!.id, turns: 1.5, atSeconds: 61 }));
    return [
      ...report.lines.map((line) => scoreLineSentence(strange, line, receiver)),
      ...report.lines.map((line) =>
        scoreLineSentence(strange, { ...line, measured: line.low ?? line.high ?? 0 }, receiver),
      ),
      ...report.lines.filter((line) => !lineIsMet(line)).map((line) => adviceFor(strange, line)),
      ...blind.flatMap((one) => findings(strange, report, receiver, [one]).map(({ text }) => text)),
    ];
  });
  expect(said.length).toBeGreaterThan(1500);
  expect(english(said)).toEqual([]);
});

it('tells every curve as found', () => {
  // The sets as they stand on the bench, each its own.
  const found = setups.map(({ scenario }) => setupOf(scenario.id));
  const said = found.map((setup) => curveSentence(strange, createBench(setup).display(initialState(setup))));
  expect(new Set(said).size).toBeGreaterThan(20);
  expect(english(said)).toEqual([]);
});

it('says refusals, what is missing and verdicts', () => {
  const refusals = Object.keys(strange.refusals) as Refusal[];
  const said = [
    ...refusals.map((reason) => refusalSentence(strange, reason, { type: 'crystalPlugged', hz: 44e6 })),
    ...refusals.map((reason) =>
      refusalSentence(strange, reason, { type: 'slugTurned', slug: 'T1', turns: 1 }, setups[0]!.receiver),
    ),
    ...Object.keys(strange.missing).map((code) => missingSentence(strange, code)),
    ...Object.values(
      verdictWords(strange, { kind: 'impossibleEvent', index: 1, atMs: 1, type: 'slugTurned', reason: 'badTime' }),
    ),
    ...Object.values(verdictWords(strange, { kind: 'truncated', found: 3, recorded: 8 })),
  ].flat();
  expect(said.length).toBeGreaterThan(80);
  expect(english(said)).toEqual([]);
});
