/** What was wrong, said at signing (G65, G66): who knows why has the lines, who names things at random has not, and runs of before are graded as they were. */
import { describe, expect, test } from 'vitest';
import { certifiedSet } from '../../scripts/makeCourseIndex.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import { partsAsked } from '../../src/bench/diagnosis.ts';
import { type BenchSetup, initialState } from '../../src/bench/setup.ts';
import type { TimedEvent } from '../../src/files/runFile.ts';
import { sealRun } from '../../src/files/seal.ts';
import { setAsFound, trueDiagnosis } from '../../src/grading/diagnosis.ts';
import { claimOf, grade, gradeUnder } from '../../src/grading/grade.ts';
import type { Report, ScoreLine } from '../../src/grading/report.ts';
import { judgeText } from '../../src/judge/judgeRun.ts';
import { workResponses } from '../../src/receiver/responses.ts';
import { nominalTurns } from '../../src/receiver/slugLaw.ts';
import { evaluateSpecification, widenSpecification } from '../../src/receiver/specification.ts';
import { createStatedResponse } from '../../src/receiver/statedResponse.ts';
import { createRun } from '../../src/run/runLog.ts';
import { serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import type { Diagnosis } from '../../src/scenario/diagnosis.ts';
import { wholeJob } from '../session/acts.ts';
import { canSetup } from '../session/setups.ts';
import { setupOf } from '../technician/oneScenario.ts';

type Acts = readonly BenchEvent[];
const timed = (acts: Acts): TimedEvent[] => acts.map((act, i) => ({ atMs: i * 500, ...act }));
const line = ({ lines }: Report, rule: string): ScoreLine => lines.find((one) => one.rule === rule)!;
const share = (report: Report, rule: string): number => line(report, rule).points / line(report, rule).max;
const NOTHING: Diagnosis = { slugs: [], parts: [], setUp: [] };

/** The whole job, with this said at signing; null: nothing is said. */
function saying(setup: BenchSetup, said: Diagnosis | null): Report {
  const acts = wholeJob(setup).flatMap((act): Acts => {
    if (act.type !== 'diagnosisStated') return [act];
    return said === null ? [] : [{ type: 'diagnosisStated', ...said }];
  });
  return grade(setup, timed(acts));
}

function truth(setup: BenchSetup): Diagnosis {
  const said = trueDiagnosis(setup);
  if (said?.type !== 'diagnosisStated') throw new Error('nothing is asked');
  return { slugs: said.slugs, parts: said.parts, setUp: said.setUp };
}

/** Two slugs of the can: one far out, one right. */
const sealedCan = canSetup({ sealed: true, start: { ...canSetup().scenario.start, slugs: { T1B: 2 } } });
const goodCan = canSetup({ slugsRight: true, start: { ...canSetup().scenario.start, slugs: {}, randomTurns: 0 } });

describe('[G65] cause in the parts', () => {
  test.each(['one-hump-gone', 'not-a-word', 'a-good-clip', 'a-good-plug'])(
    '%s: what its file says has failed is what has to be named',
    (id) => {
      const setup = setupOf(id);
      const { faults } = setup.scenario;
      const parts = faults.flatMap((fault) => ('element' in fault ? [fault.element] : []));
      const contacts = faults.flatMap(({ kind }) =>
        kind === 'looseEarth' ? ['earth'] : kind === 'unmatchedLead' ? ['rf'] : [],
      );
      expect(parts.length + contacts.length).toBe(faults.length);
      const { failed, badContacts } = setAsFound(setup);
      expect([failed.map(([name]) => name), badContacts]).toEqual([parts, contacts]);
    },
  );

  const setup = setupOf('not-a-word');
  test('all that failed and nothing else stands; a part left out, a good one more, a clip left out, or nothing said does not', () => {
    const right = truth(setup);
    const good = partsAsked(setup).find(({ name }) => !right.parts.includes(name))!.name;
    const report = saying(setup, right);
    expect([share(report, 'G65'), report.verdicts.proved.stands]).toEqual([1, true]);
    for (const wrong of [
      { ...right, parts: [] },
      { ...right, parts: [...right.parts, good] },
      { ...right, setUp: [] },
      NOTHING,
      null,
    ]) {
      const fallen = saying(setup, wrong);
      expect([share(fallen, 'G65'), fallen.passed], JSON.stringify(wrong)).toEqual([0, false]);
      expect(fallen.verdicts.proved.lacks).toContain('G65');
    }
  });

  test('either of two parts that have changed places names both', () => {
    const swapped = setupOf('changed-places');
    const { failed } = setAsFound(swapped);
    expect(failed.some((names) => names.length === 2)).toBe(true);
    const others = saying(swapped, { ...truth(swapped), parts: failed.map((names) => names.at(-1)!) });
    expect(share(others, 'G65')).toBe(1);
  });

  test('a set that was good is known by who leaves it alone', () => {
    expect(setAsFound(goodCan).good).toBe(true);
    expect(saying(goodCan, NOTHING).verdicts.proved.stands).toBe(true);
    expect(saying(goodCan, { ...NOTHING, slugs: ['T1B'] }).verdicts.proved.lacks).toEqual(['G65']);
    expect(saying(goodCan, null).verdicts.proved.lacks).toEqual(['G65']);
  });

  test('nothing is asked of a practice run in which nothing can have failed', () => {
    expect(trueDiagnosis(canSetup())).toBe(null);
    const { lines, diagnosis } = grade(canSetup(), timed(wholeJob(canSetup())));
    expect(lines.filter(({ rule }) => rule === 'G65' || rule === 'G66')).toEqual([]);
    expect(diagnosis).toBe(undefined);
  });
});

describe('[G66] cause in the slugs', () => {
  test('the slug that was far out is named and the one that stood right is not; half the line for each mistake, and no verdict falls', () => {
    expect(truth(sealedCan).slugs).toEqual(['T1B']);
    const said = (slugs: readonly string[]): Report => saying(sealedCan, { ...NOTHING, slugs });
    expect(share(said(['T1B']), 'G66')).toBe(1);
    for (const slugs of [[], ['T1B', 'T1T']]) {
      const report = said(slugs);
      expect(share(report, 'G66'), slugs.join()).toBeCloseTo(0.5, 2);
      expect([report.verdicts.proved.stands, report.passed]).toEqual([true, true]);
    }
    expect(share(said(['T1T']), 'G66')).toBe(0);
    expect(share(saying(sealedCan, null), 'G66')).toBe(0);
  });

  // By the definition in docs/grading.md, with the sheet's own lines: one slug as found, the others at their places, a line a whole tolerance outside its limits.
  test.each(['radio-sealed', 'marram-sealed', 'screwed-in'])('%s: those that alone stood two tolerances off', (id) => {
    const setup = setupOf(id);
    const { receiver, deck, scenario } = setup;
    const start = initialState(setup).slugs;
    const responses = workResponses(receiver, scenario).map((one) => createStatedResponse(receiver, deck, one));
    const off = receiver.adjusters.filter((adjuster) => {
      const { coreTurns } = start[adjuster.id]!;
      if (Math.abs(coreTurns - nominalTurns(adjuster)) <= 0.1) return false;
      return responses.some((stated) => {
        const { hz, volts } = stated.solve({ [adjuster.id]: coreTurns });
        const sheet = widenSpecification(stated.response.specification, scenario.toleranceFactor);
        return evaluateSpecification(sheet, hz, volts, null).some(
          ({ measured, low, high, tolerance }) =>
            (low !== null && measured <= low - tolerance) || (high !== null && measured >= high + tolerance),
        );
      });
    });
    expect(off.length).toBeGreaterThan(0);
    expect(setAsFound(setup).astray.map(({ slug }) => slug)).toEqual(off.map(({ id: slug }) => slug));
  });

  test('a cracked core is named by its coil, and its slug may be named beside it', () => {
    const setup = setupOf('it-turns-freely');
    const { astray, failed } = setAsFound(setup);
    expect(astray.map(({ slug }) => slug)).toEqual(['T3T']);
    const parts = failed.map(([name]) => name!);
    for (const slugs of [[], ['T3T']]) {
      const report = saying(setup, { ...NOTHING, slugs, parts });
      expect([share(report, 'G65'), share(report, 'G66')]).toEqual([1, 1]);
    }
  });
});

describe('[G44] after the limit', () => {
  const late = canSetup({ sealed: true, timeLimitSeconds: 600 });
  const job = wholeJob(late).filter(({ type }) => type !== 'signedOff' && type !== 'diagnosisStated');
  const inTime = job.map((act, i): TimedEvent => ({ atMs: i * 500, ...act }));
  const signedLate = (...acts: Acts): Report =>
    grade(late, [...inTime, ...acts.map((act) => ({ atMs: 700_000, ...act }))]);

  test('what was wrong is said with the signature, and counts; a knob does not', () => {
    const said = trueDiagnosis(late)!;
    expect(share(signedLate(said, { type: 'signedOff' }), 'G65')).toBe(1);
    expect(share(signedLate({ type: 'signedOff' }), 'G65')).toBe(0);
    const turned = signedLate({ type: 'controlSet', control: 'blanking', value: false }, said, { type: 'signedOff' });
    expect(share(turned, 'G65')).toBe(0);
    expect(share(turned, 'G14')).toBe(1);
  });
});

describe('runs of before', () => {
  const setup = setupOf('one-hump-gone');
  const acts = wholeJob(setup).filter(({ type }) => type !== 'diagnosisStated');

  test.each([1, 2] as const)('are graded by rules %i, which ask nothing', (rules) => {
    const report = gradeUnder(rules)(setup, timed(acts));
    expect(report).toMatchObject({ rules, passed: true });
    expect(report.lines.some(({ rule }) => rule === 'G65' || rule === 'G66')).toBe(false);
    // What was not asked cannot be answered: it changes nothing.
    expect(gradeUnder(rules)(setup, timed(wholeJob(setup))).lines.map(({ points }) => points)).toEqual(
      report.lines.map(({ points }) => points),
    );
  });

  test('are graded by rules 3, under which a good part in a sound sealed set was no line of care', () => {
    const care = (rules: 3 | 4): readonly string[] =>
      gradeUnder(rules)(sealedCan, timed(wholeJob(sealedCan)))
        .lines.filter(({ block }) => block === 'care')
        .map(({ rule, max }) => `${rule} ${max}`);
    expect(care(3)).toEqual(['G28 2', 'G29 3', 'G30 2', 'G31 1', 'G32 2']);
    expect(care(4)).toEqual(['G28 1.67', 'G29 2.5', 'G30 1.67', 'G31 0.83', 'G32 1.67', 'G33 1.67']);
  });

  test.each([1, 2] as const)('are judged by rules %i when they are handed in', (rules) => {
    const events = timed(acts);
    const run = { ...createRun(setup, 'Ines'), events };
    const claimed = claimOf(gradeUnder(rules)(setup, events));
    const changed = { ...toRunFile(run, claimed), rules };
    const text = serialiseRunFile({ ...changed, seal: sealRun(changed, events) });
    const { verdict, underToday } = judgeText(text, 'run.json', () => ({
      ok: true,
      value: { ...(setup.design ?? setup), scenarioHash: null, known: certifiedSet('one-hump-gone') },
    }));
    expect(verdict).toMatchObject({ kind: 'verified', score: { total: claimed.total, passed: true } });
    expect(underToday?.passed).toBe(false);
  });
});
