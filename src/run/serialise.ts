/** Makes the file that a learner keeps or hands in: plain JSON, one event a line. */
import { ENGINE } from '../base/engine.ts';
import { type BenchSetup, designOf } from '../bench/setup.ts';
import { hashOf } from '../files/hash.ts';
import type { ClaimedScore, RunFile } from '../files/runFile.ts';
import { sealEvents } from '../files/seal.ts';
import type { Run } from './runLog.ts';

export function toRunFile(run: Run, claimed: ClaimedScore | null): RunFile {
  return {
    format: 'haystack-run',
    version: 1,
    engine: ENGINE,
    scenario: run.setup.scenario,
    scenarioHash: hashOf(run.setup.scenario),
    receiverHash: receiverHash(run.setup),
    learner: run.learner,
    events: run.events,
    eventsHash: sealEvents(run.events),
    claimed,
  };
}

export function serialiseRunFile(file: RunFile): string {
  const { events, ...head } = file;
  const frame = JSON.stringify({ ...head, events: [] }, null, 1);
  const lines = events.map((event) => JSON.stringify(event)).join(',\n');
  // The list is the last key, so that its empty brackets end the frame.
  return `${frame.slice(0, frame.lastIndexOf('[]'))}[\n${lines}\n]\n}\n`;
}

/** One hash for everything that makes the receiver what it is: its file and its deck. */
export function receiverHash(setup: Pick<BenchSetup, 'receiver' | 'deck' | 'design'>): string {
  const { receiver, deck } = designOf(setup);
  return hashOf({ receiver, deck });
}
