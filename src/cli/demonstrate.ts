/** `demonstrate`: the technician does a scenario; the run is graded and, where asked, kept as a run file like any learner's. */
import { harmless } from '../base/harmless.ts';
import { claimOf, grade } from '../grading/grade.ts';
import { serialiseRunFile, toRunFile } from '../run/serialise.ts';
import { demonstrate as doAtBench } from '../technician/atBench.ts';
import { commandSetup, type ReceiverOption } from './commandSetup.ts';
import { readScenario } from './document.ts';
import { writeText } from './files.ts';
import { EXIT, type ExitCode, type Terminal, tellProblems } from './terminal.ts';

export interface DemonstrateOptions extends ReceiverOption {
  readonly out?: string;
}

/** All well only where the run passes. */
export function demonstrate(terminal: Terminal, name: string, options: DemonstrateOptions): ExitCode {
  const scenario = readScenario(terminal, name);
  if (!scenario.ok) return tellProblems(terminal, scenario.problems);
  const loaded = commandSetup(terminal, scenario.value, name, options);
  if (!loaded.ok) return tellProblems(terminal, loaded.problems);
  const setup = loaded.value;
  const run = doAtBench(setup);
  const report = grade(setup, run.events);
  if (options.out !== undefined) {
    const problems = writeText(terminal, options.out, serialiseRunFile(toRunFile(run, claimOf(report))));
    if (problems.length > 0) return tellProblems(terminal, problems);
  }
  const { score, notPassed } = terminal.words.cli.demonstrate;
  const line = score(scenario.value.id, report.total, report.word, run.events.length);
  terminal.out(`${harmless(report.passed ? line : `${line}, ${notPassed}`)}\n`);
  return report.passed ? EXIT.good : EXIT.bad;
}
