/** `regrade`: does a run again on this machine and says whether it earns what it claims. */
import type { Problem, Result } from '../base/result.ts';
import { verdictWords } from '../describe/verdict.ts';
import type { RunFile } from '../files/runFile.ts';
import { parseRunFile } from '../files/runFileSchema.ts';
import { claimOf, grade } from '../grading/grade.ts';
import { type Verdict, verifyRun } from '../run/verify.ts';
import { readDocument } from './document.ts';
import { fittingReceiver, scenarioHashOf, shelvedScenarioHash } from './shelf.ts';
import { EXIT, type ExitCode, harmless, type Terminal, tellProblems } from './terminal.ts';
import { fileWords, regradeWords } from './words.ts';

export interface RegradeOptions {
  readonly json?: boolean;
  readonly scenario?: string;
}

interface Judged {
  readonly run: RunFile;
  readonly verdict: Verdict;
  /** whether the scenario was held against one that lies here */
  readonly scenarioKnown: boolean;
}

export function regrade(terminal: Terminal, name: string, options: RegradeOptions): ExitCode {
  const judged = judge(name, options.scenario);
  const verdict: Verdict = judged.ok ? judged.value.verdict : { kind: 'unreadable', problems: judged.problems };
  if (options.json === true) {
    const run = judged.ok
      ? {
          learner: judged.value.run.learner,
          scenario: judged.value.run.scenario.id,
          scenarioKnown: judged.value.scenarioKnown,
        }
      : {};
    const { kind, ...rest } = verdict;
    terminal.out(`${JSON.stringify({ file: name, verdict: kind, ...run, ...rest }, null, 2)}\n`);
  } else if (!judged.ok) tellProblems(terminal, judged.problems);
  else {
    const { title, sentence, details } = verdictWords(verdict);
    for (const line of [`${title}. ${sentence}`, ...details]) terminal.out(`${harmless(line)}\n`);
    if (!judged.value.scenarioKnown) terminal.out(`${regradeWords.unknownScenario}\n`);
  }
  return verdict.kind === 'verified' ? EXIT.good : EXIT.bad;
}

function judge(name: string, scenarioName: string | undefined): Result<Judged> {
  const run = readRun(name);
  if (!run.ok) return run;
  const { scenario } = run.value;
  const loaded = fittingReceiver(scenario, name, '/scenario');
  if (!loaded.ok) return loaded;
  const hash = scenarioName === undefined ? shelvedScenarioHash(scenario.id) : scenarioHashOf(scenarioName);
  if (!hash.ok) return hash;
  const bench = { ...loaded.value, scenarioHash: hash.value };
  const verdict = verifyRun(run.value, bench, (setup, events) => claimOf(grade(setup, events)));
  return { ok: true, value: { run: run.value, verdict, scenarioKnown: hash.value !== null } };
}

function readRun(name: string): Result<RunFile> {
  const document = readDocument(name);
  if (!document.ok) return document;
  if (document.value.kind === 'run') return parseRunFile(document.value.json, name);
  const found =
    document.value.kind === 'deck' ? fileWords.noFormat : fileWords.format(`haystack-${document.value.kind}`);
  const problem: Problem = { file: name, place: '/format', found, wanted: 'haystack-run' };
  return { ok: false, problems: [problem] };
}
