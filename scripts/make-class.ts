/**
 * Writes the run files of a made-up class, for measuring: `npx tsx scripts/make-class.ts FOLDER COUNT`. The technician does three jobs, each in twenty minutes;
 * every file is one of these runs with its acts at times of its own and each slug turned a hair less, graded and sealed anew, so that no two are alike and no
 * two benches either.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { BenchSetup } from '../src/bench/setup.ts';
import { benchSetup } from '../src/certify/benchSetup.ts';
import { loadScenarioFolder } from '../src/files/library.ts';
import { claimOf, grade } from '../src/grading/grade.ts';
import type { Run } from '../src/run/runLog.ts';
import { serialiseRunFile, toRunFile } from '../src/run/serialise.ts';
import { demonstrate } from '../src/technician/atBench.ts';
import { certified, certifiedSet, textsIn } from './makeCourseIndex.ts';

const SCENARIOS = ['slow-down', 'dots', 'third-pair'];
const LENGTH_MS = 20 * 60_000;

const [folder, count] = process.argv.slice(2);
if (folder === undefined || !/^[1-9]\d{0,4}$/.test(count ?? '')) {
  process.stderr.write('npx tsx scripts/make-class.ts FOLDER COUNT\n');
  process.exit(2);
}
const library = loadScenarioFolder(textsIn('scenarios'));
if (!library.ok) throw new Error(JSON.stringify(library.problems));
const { receivers, scenarios } = library.value;

/** In exactly that time, whatever it took. */
function twentyMinutes(run: Run): Run {
  const slower = LENGTH_MS / run.events.at(-1)!.atMs;
  return { ...run, events: run.events.map((event) => ({ ...event, atMs: Math.round(event.atMs * slower) })) };
}

const runs = SCENARIOS.map((id) => {
  const scenario = certified(scenarios.find((one) => one.id === id)!);
  const setup = benchSetup(receivers.get(scenario.receiver)!, scenario, certifiedSet(id));
  if (!setup.ok) throw new Error(JSON.stringify(setup.problems));
  return { setup: setup.value, run: twentyMinutes(demonstrate(setup.value)) };
});

/** Of what was turned, at most: less than any hand feels, and enough that no solved curve serves two runs. Never more than was turned: one act carries no more. */
const HAIR = 1 / 2048;

/** A second's pause more, at another act each time. */
function fileOf({ setup, run }: { readonly setup: BenchSetup; readonly run: Run }, no: number): string {
  const pause = 1 + ((no * 7) % (run.events.length - 1));
  const events = run.events.map((event, i) => {
    const later = i < pause ? event : { ...event, atMs: event.atMs + 1000 };
    if (later.type !== 'slugTurned') return later;
    return { ...later, turns: later.turns * (1 - HAIR * (0.5 + 0.5 * Math.sin(no * 7 + i))) };
  });
  const signed = { day: '2026-05-31', runId: `made-${no}` };
  return serialiseRunFile(
    toRunFile({ ...run, events, learner: `Learner ${no}` }, claimOf(grade(setup, events)), signed),
  );
}

mkdirSync(folder, { recursive: true });
let bytes = 0;
for (let no = 1; no <= Number(count); no++) {
  const name = path.join(folder, `run-${String(no).padStart(5, '0')}.json`);
  writeFileSync(name, fileOf(runs[no % runs.length]!, no));
  bytes += readFileSync(name).length;
}
const acts = runs.map(({ run }) => run.events.length).join(', ');
process.stdout.write(`${count} files, ${(bytes / 1e6).toFixed(1)} MB; acts a run: ${acts}\n`);
