/** For every rule by which points can be lost there is a sentence with its cause, and one that says what to try. */
import { expect, test } from 'vitest';
import { adviceFor } from '../../src/describe/advice.ts';
import { findings } from '../../src/describe/findings.ts';
import { scoreLineSentence } from '../../src/describe/scoreLine.ts';
import { grade } from '../../src/grading/grade.ts';
import { lineIsMet, type ScoreLine } from '../../src/grading/report.ts';
import { LINE_RULES } from '../../src/grading/rules/rules.ts';
import { en } from '../../src/words/en/index.ts';
import { shippedLibrary } from '../files/shipped.ts';

const ADVICE: readonly (readonly [rule: string, advice: string])[] = LINE_RULES.map(
  ({ number }) => [number, en.rules[number].advice] as const,
);

const library = shippedLibrary();
const found = library.scenarios.map((scenario) => {
  const loaded = library.receivers.get(scenario.receiver)!;
  return { receiver: loaded.receiver, report: grade({ ...loaded, scenario }, [{ atMs: 1000, type: 'signedOff' }]) };
});
const lost: { readonly line: ScoreLine; readonly said: string }[] = found.flatMap(({ receiver, report }) =>
  report.lines
    .filter((line) => line.points < line.max && !lineIsMet(line))
    .map((line) => ({ line, said: scoreLineSentence(en, line, receiver) })),
);

test('every rule that makes a line has advice of its own, and no other has', () => {
  expect(ADVICE.length).toBeGreaterThan(40);
  for (const [rule] of ADVICE) expect(adviceFor(en, { rule })).toMatch(/^[A-Z].*[.]$/);
  expect(new Set(ADVICE.map(([, advice]) => advice)).size).toBe(ADVICE.length);
  expect(() => adviceFor(en, { rule: 'G1' })).toThrow('no words');
  expect(() => adviceFor(en, { rule: 'G38' })).toThrow('no lines');
  expect(adviceFor(en, { rule: 'G3', part: 'Rp1' })).toBe(adviceFor(en, { rule: 'G62' }));
});

test('every line that was lost as found, over the whole course, names what was off; a response line where it could be seen and what is to blame', () => {
  expect(lost.length).toBeGreaterThan(300);
  for (const { line, said } of lost) {
    expect(said, line.id).toMatch(/^[A-Z0-9\u2212].*\.$/);
    if (line.block !== 'response' || line.rule === 'G62') continue;
    expect(said, line.id).toContain('on the tube');
    // A sound set with every slug in its place meets its sheet: what is off is a slug or a part.
    expect(line.part !== undefined || line.cause !== null, `${line.id}: ${said}`).toBe(true);
    if (line.part !== undefined) expect(said).toContain(en.parts.called(line.part, false));
    else expect(said).toMatch(/(turns?|a hair) too far (in|out)/);
  }
});

const tries: readonly string[] = [...ADVICE.map(([, advice]) => advice), ...Object.values(en.grading.faults.tries)];

test('what the report says to look at again ends with what to try', () => {
  for (const { receiver, report } of found) {
    const looks = findings(en, report, receiver).filter((finding) => finding.tone === 'lookAgain');
    expect(looks.length).toBeGreaterThan(0);
    for (const { text } of looks)
      expect(
        tries.some((advice) => text.endsWith(advice)),
        text,
      ).toBe(true);
  }
});

test('a failed part that the curve cannot show is looked for otherwise', () => {
  const curve = {
    kind: 'curve',
    response: 'if',
    peakDb: 0,
    peakShiftHz: 0,
    widthRatio: 1,
    worstDb: 0,
    worstHz: 1,
  } as const;
  expect(adviceFor(en, { rule: 'G62', symptom: curve })).toBe(en.rules.G62.advice);
  expect(adviceFor(en, { rule: 'G62', symptom: { kind: 'core' } })).toContain('screw turns');
  expect(adviceFor(en, { rule: 'G62', symptom: { kind: 'line', volts: -1, soundVolts: -2 } })).toContain('meter');
  expect(new Set(tries).size).toBe(tries.length);
});
