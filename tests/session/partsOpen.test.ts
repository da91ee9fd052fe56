/** A failed part that neither bench nor curve shows: every phase is done, so the question before signing has to say that parts are another matter. */
import { describe, expect, it } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import { initialState } from '../../src/bench/setup.ts';
import { findingsOf } from '../../src/bench/witness.ts';
import { grade } from '../../src/grading/grade.ts';
import { lineIsMet } from '../../src/grading/report.ts';
import { PHASES } from '../../src/session/phase.ts';
import { partsAreOpen, sessionViewAt } from '../../src/session/session.ts';
import { setupOf } from '../technician/oneScenario.ts';
import { stateAfter, wholeJob } from './acts.ts';

describe('a bias line that leaks, left in a set that is right otherwise', () => {
  const setup = setupOf('sagging-line');
  const acts = wholeJob(setup).filter((act) => act.type !== 'partReplaced');
  const report = grade(
    setup,
    acts.map((act, i) => ({ atMs: 500 * i, ...act })),
  );

  it('has every phase done and every line of the curve met', () => {
    const unsigned = stateAfter(
      setup,
      acts.filter((act) => act.type !== 'signedOff'),
      initialState(setup),
    );
    const rested = { ...unsigned, seconds: unsigned.seconds + 10 };
    const view = sessionViewAt(
      setup,
      createBench(setup).facts(rested),
      rested.seconds,
      true,
      findingsOf(setup, rested),
    );
    expect(PHASES.filter((phase) => view.missing[phase].length > 0)).toEqual([]);
    const curve = report.lines.filter(({ block, rule }) => block === 'response' && rule !== 'G62');
    expect(curve.length).toBeGreaterThan(0);
    expect(curve.every(lineIsMet)).toBe(true);
  });

  it('is not aligned for the part alone, and the question says that parts are not looked at', () => {
    expect(report.verdicts.aligned.lacks.map((id) => id.split(':')[0])).toEqual(['G62']);
    expect(partsAreOpen(setup.scenario)).toBe(true);
  });
});

it('says it neither of a set in which nothing can have failed, nor before a sealed signature', () => {
  expect(partsAreOpen(setupOf('first-curve').scenario)).toBe(false);
  expect(partsAreOpen({ ...setupOf('sagging-line').scenario, sealed: true })).toBe(false);
});
