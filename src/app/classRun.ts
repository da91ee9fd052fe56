/** A run of the class as its report needs it: read from its file once more and graded, beside the page. */

import type { BenchSetup } from '../bench/setup.ts';
import { problemSentence } from '../describe/problem.ts';
import type { RunFile } from '../files/runFile.ts';
import { readRunFile } from '../files/runFileSchema.ts';
import { unsignedReport } from '../grading/verdictOfRun.ts';
import { onBenchOf } from '../run/onBenchOf.ts';
import { neverSigned } from '../run/verify.ts';
import type { BroughtFile } from '../services/classroom/brought.ts';
import type { GradedRun } from '../services/jobs/jobTable.ts';
import { beside } from '../services/jobs/pageJobs.ts';
import { type Library, setupWith } from '../services/library/library.ts';
import type { Words } from '../words/words.ts';
import { textOf } from './classPaper.ts';

export interface ClassRun {
  readonly text: string;
  readonly run: RunFile;
  readonly setup: BenchSetup;
  readonly graded: GradedRun;
}

/** A sentence: why there is none. Rejects when it is called off. */
export async function readClassRun(
  words: Words,
  library: Library,
  file: BroughtFile,
  signal: AbortSignal,
): Promise<ClassRun | string> {
  const text = await textOf(words, file);
  const run = text.ok ? readRunFile(text.value, file.name) : text;
  if (!text.ok || !run.ok)
    return (run.ok ? [] : run.problems).map((problem) => problemSentence(words, problem)).join('\n');
  const { scenario, receiverHash, events, engine } = run.value;
  const found = await setupWith(library, scenario, receiverHash);
  if (found === null) return words.shell.noSuchReceiver;
  const setup = onBenchOf(engine, found);
  const graded = await beside('report', { setup, events }, { signal });
  const shown = neverSigned(run.value) ? { ...graded, report: unsignedReport(graded.report) } : graded;
  return { text: text.value, run: run.value, setup, graded: shown };
}
