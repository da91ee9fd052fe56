/** The shipped job in which leaving the slugs alone is the answer: the bench is at fault, the set is good, and whoever turns a slug or blames one loses by it. */
import { describe, expect, it } from 'vitest';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import { initialState } from '../../src/bench/setup.ts';
import { setAsFound } from '../../src/grading/diagnosis.ts';
import { grade } from '../../src/grading/grade.ts';
import type { Report } from '../../src/grading/report.ts';
import { demonstrate } from '../../src/technician/atBench.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { wholeJob } from '../session/acts.ts';
import { setupOf } from '../technician/oneScenario.ts';

const setup = setupOf('hands-off');

/** The whole job as it should be done, with these acts before anything is proved, and these slugs named at signing. */
function doneWith(more: readonly BenchEvent[], named: readonly string[] = []): Report {
  const acts = wholeJob(setup).flatMap((act): readonly BenchEvent[] =>
    act.type === 'diagnosisStated' ? [...more, { ...act, slugs: named }] : [act],
  );
  return grade(
    setup,
    acts.map((act, i) => ({ atMs: i * 500, ...act })),
  );
}

function turned(slug: string, ...turns: readonly number[]): readonly BenchEvent[] {
  const { head } = setup.receiver.adjusters.find(({ id }) => id === slug)!;
  return [
    { type: 'toolTaken', tool: head },
    ...turns.map((by): BenchEvent => ({ type: 'slugTurned', slug, turns: by })),
    { type: 'toolPlaced', slug: null },
  ];
}

describe('hands off', () => {
  it('is the job of the course whose slugs are right, and nothing else is wrong with its set', () => {
    const ids = shippedLibrary().scenarios.flatMap(({ id, slugsRight }) => (slugsRight === true ? [id] : []));
    expect(ids).toEqual(['hands-off']);
    expect(setAsFound(setup).good).toBe(true);
  });

  it('the bench as it is found overloads the set and lags', () => {
    const { scenario, receiver } = setup;
    const [response] = receiver.responses;
    expect(scenario.start.controls.levelDb!).toBeGreaterThan(response!.setUp.levelDb + 6);
    const { phasingDegrees } = initialState(setup).controls;
    expect(Math.abs(phasingDegrees + scenario.bench.phaseLagDegrees)).toBeGreaterThan(10);
  });

  it('who leaves the slugs alone and says that nothing was wrong passes; the technician does', () => {
    expect(doneWith([]).passed).toBe(true);
    const run = demonstrate(setup);
    const report = grade(setup, run.events);
    expect(report.passed).toBe(true);
    expect(report.total).toBeGreaterThanOrEqual(90);
  });

  it.each(setup.receiver.adjusters.map(({ id }) => id))(
    'who turns %s does not pass, and out and back it costs',
    (slug) => {
      expect(doneWith(turned(slug, 1, 1)).passed).toBe(false);
      expect(doneWith(turned(slug, 1, 1, -1, -1)).total).toBeLessThan(doneWith([]).total);
    },
  );

  it('who blames a slug that stood right does not pass', () => {
    for (const { id } of setup.receiver.adjusters) expect(doneWith([], [id]).passed, id).toBe(false);
  });
});
