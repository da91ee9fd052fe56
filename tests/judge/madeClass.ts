/** A small class of files as an instructor may get them: one of each kind. The technician stands in for whoever did the work. */
import { ENGINE } from '../../src/base/engine.ts';
import type { RunFile } from '../../src/files/runFile.ts';
import { scenarioHash } from '../../src/files/scenarioFile.ts';
import { sealRun } from '../../src/files/seal.ts';
import { claimOf, grade } from '../../src/grading/grade.ts';
import { serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import { demonstrate } from '../../src/technician/atBench.ts';
import { setupOf } from '../technician/oneScenario.ts';

/** Somebody whose name is markup, and a formula besides. */
export const MARKUP_NAME = '<img src=x onerror=alert(1)>';

export interface MadeClass {
  /** by the names of the files, in the order of a folder */
  readonly files: Readonly<Record<string, string>>;
  readonly total: number;
  readonly passed: boolean;
}

export function madeClass(): MadeClass {
  const setup = setupOf('first-curve');
  const worked = demonstrate(setup);
  const claim = claimOf(grade(setup, worked.events));
  const honest = toRunFile({ ...worked, learner: 'Anna' }, claim, { day: '2026-05-31', runId: 'one' });
  const sealed = (change: Partial<RunFile>): RunFile => {
    const changed = { ...honest, ...change };
    return { ...changed, seal: sealRun(changed, changed.events) };
  };
  const [first, ...others] = claim.lines;
  const easier = { ...setup.scenario, toleranceFactor: setup.scenario.toleranceFactor * 2 };
  const files = {
    'a-anna.json': serialiseRunFile(honest),
    // Copied, under another name and with a seal to it.
    'b-copied.json': serialiseRunFile(sealed({ learner: MARKUP_NAME, runId: 'two' })),
    // The name changed in an editor.
    'c-renamed.json': serialiseRunFile({ ...honest, learner: 'Carl' }),
    // More claimed than was earned.
    'd-claims.json': serialiseRunFile({
      ...sealed({ learner: 'Dora' }),
      claimed: { ...claim, total: claim.total + 1, lines: [{ ...first!, points: first!.points + 1 }, ...others] },
    }),
    'e-unfinished.json': serialiseRunFile(
      sealed({ learner: 'Emil', events: worked.events.slice(0, 20), claimed: null, day: null }),
    ),
    'f-easier.json': serialiseRunFile(
      sealed({ learner: 'Frida', scenario: easier, scenarioHash: scenarioHash(easier) }),
    ),
    'g-older.json': serialiseRunFile(sealed({ learner: 'Gustav', engine: `${ENGINE}9` })),
    'h-fast.json': serialiseRunFile(
      sealed({ learner: 'Hanna', events: worked.events.map((e) => ({ ...e, atMs: Math.round(e.atMs / 60) })) }),
    ),
    'i-rubbish.json': '{"format": "haystack-run", "version": 2, "oops": [1,',
    'j-list.json': '["no", "run", "at", "all"]',
    'k-empty.json': '',
  };
  return { files, total: claim.total, passed: claim.passed };
}
