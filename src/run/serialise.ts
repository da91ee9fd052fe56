/** Makes the file that a learner keeps or hands in: plain JSON, one event a line. */
import { ENGINE, RULES_VERSION } from '../base/engine.ts';
import { type BenchSetup, designOf } from '../bench/setup.ts';
import { hashOf } from '../files/hash.ts';
import type { ClaimedScore, RunFile, RunHead } from '../files/runFile.ts';
import { scenarioHash, scenarioToFile } from '../files/scenarioFile.ts';
import { sealRun } from '../files/seal.ts';
import type { Run } from './runLog.ts';

/** When, and which: what only the page can say, which has a clock and chance. */
export type Signed = Pick<RunHead, 'day' | 'runId'>;
const NOT_SAID: Signed = { day: null, runId: null };

export function toRunFile(run: Run, claimed: ClaimedScore | null, { day, runId }: Signed = NOT_SAID): RunFile {
  const head: RunHead = {
    format: 'haystack-run',
    version: 2,
    engine: run.setup.engine ?? ENGINE,
    rules: RULES_VERSION,
    learner: run.learner,
    day,
    runId,
    scenarioHash: scenarioHash(run.setup.scenario),
    receiverHash: receiverHash(run.setup),
  };
  const seal = sealRun(head, run.events);
  return { ...head, scenario: run.setup.scenario, events: run.events, claimed, seal };
}

export function serialiseRunFile(file: RunFile): string {
  const { events, scenario, handed, claimed, seal, ...head } = file;
  const whole = { ...head, scenario: handed ?? scenarioToFile(scenario), claimed, seal, events: [] };
  const frame = JSON.stringify(whole, null, 1);
  const lines = events.map((event) => JSON.stringify(event)).join(',\n');
  // The list is the last key, so that its empty brackets end the frame.
  return `${frame.slice(0, frame.lastIndexOf('[]'))}[\n${lines}\n]\n}\n`;
}

/** One hash for everything that makes the receiver what it is: its file and its deck. */
export function receiverHash(setup: Pick<BenchSetup, 'receiver' | 'deck' | 'design'>): string {
  const { receiver, deck } = designOf(setup);
  return hashOf({ receiver, deck });
}
