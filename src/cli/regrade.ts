/** `regrade`: does a run again on this machine and says whether it earns what it claims. */
import type { Problem, Result } from '../base/result.ts';
import { verdictWords } from '../describe/verdict.ts';
import type { RunFile } from '../files/runFile.ts';
import { type Judgement, judgeRun } from '../judge/judgeRun.ts';
import { readDocument } from './document.ts';
import { fittingReceiver, scenarioHashOf, shelvedScenarioHash, shelvedSet } from './shelf.ts';
import { EXIT, type ExitCode, harmless, type Terminal, tellProblems } from './terminal.ts';

export interface RegradeOptions {
  readonly json?: boolean;
  readonly scenario?: string;
}

export function regrade(terminal: Terminal, name: string, options: RegradeOptions): ExitCode {
  const { verdict, run, scenarioKnown } = judged(terminal, name, options.scenario);
  if (options.json === true) {
    const of = run === null ? {} : { learner: run.learner, scenario: run.scenario.id, scenarioKnown };
    const { kind, ...rest } = verdict;
    terminal.out(`${JSON.stringify({ file: name, verdict: kind, ...of, ...rest }, null, 2)}\n`);
  } else if (run === null && verdict.kind === 'unreadable') tellProblems(terminal, verdict.problems);
  else {
    const { title, sentence, details } = verdictWords(terminal.words, verdict);
    for (const line of [`${title}. ${sentence}`, ...details]) terminal.out(`${harmless(line)}\n`);
    if (!scenarioKnown) terminal.out(`${terminal.words.cli.regrade.unknownScenario}\n`);
  }
  return verdict.kind === 'verified' ? EXIT.good : EXIT.bad;
}

/** The outcome for one file; a file that is no run has its problems. */
function judged(terminal: Terminal, name: string, scenarioName: string | undefined): Judgement {
  const run = readRun(terminal, name);
  if (!run.ok) return { verdict: { kind: 'unreadable', problems: run.problems }, run: null, scenarioKnown: false };
  return judgeRun(run.value, name, (scenario) => {
    const loaded = fittingReceiver(terminal, scenario, name, '/scenario');
    if (!loaded.ok) return loaded;
    const hash =
      scenarioName === undefined ? shelvedScenarioHash(terminal, scenario.id) : scenarioHashOf(terminal, scenarioName);
    return hash.ok
      ? { ok: true, value: { ...loaded.value, scenarioHash: hash.value, known: shelvedSet(scenario.id) } }
      : hash;
  });
}

function readRun(terminal: Terminal, name: string): Result<RunFile> {
  const document = readDocument(terminal, name);
  if (!document.ok) return document;
  if (document.value.kind === 'run') return { ok: true, value: document.value.run };
  const { files } = terminal.words.cli;
  const { kind } = document.value;
  const found = kind === 'deck' ? files.noFormat : files.format(`haystack-${kind}`);
  const problem: Problem = { file: name, place: '/format', found, wanted: 'haystack-run' };
  return { ok: false, problems: [problem] };
}
