/** `certify`: says of each scenario whether it can be solved through the bench, and writes par and certificate where asked. */

import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { harmless } from '../base/harmless.ts';
import type { Problem, Result } from '../base/result.ts';
import type { Certificate, CertifiedLine, CertifyProblem } from '../certify/certificate.ts';
import { certifyScenario } from '../certify/certifyScenario.ts';
import { saidProblem } from '../describe/problem.ts';
import { scenarioFrom } from '../files/library.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { commandSetup, type ReceiverOption } from './commandSetup.ts';
import { readDocument } from './document.ts';
import { readText, writeText } from './files.ts';
import { certificateFile } from './shelf.ts';
import { EXIT, type ExitCode, type Terminal, tellProblems, worded } from './terminal.ts';

export interface CertifyOptions extends ReceiverOption {
  readonly json?: boolean;
  readonly write?: boolean;
}

export function certify(terminal: Terminal, names: readonly string[], options: CertifyOptions): ExitCode {
  let code: ExitCode = EXIT.good;
  const told: unknown[] = [];
  for (const name of names) {
    const scenario = readScenario(terminal, name);
    const certified = scenario.ok ? certificateFor(terminal, scenario.value, name, options) : scenario;
    const written = certified.ok && options.write === true ? write(terminal, name, certified.value) : [];
    const problems = certified.ok ? written : certified.problems;
    if (problems.length > 0) code = tellProblems(terminal, problems);
    const said = problems.map((problem) => saidProblem(terminal.words, problem));
    if (options.json === true)
      told.push(certified.ok ? { file: name, ...certified.value } : { file: name, problems: said });
    else if (certified.ok) terminal.out(`${harmless(okLine(terminal, name, certified.value))}\n`);
  }
  if (options.json === true) terminal.out(`${JSON.stringify(told, null, 2)}\n`);
  return code;
}

function readScenario(terminal: Terminal, name: string): Result<Scenario> {
  const document = readDocument(terminal, name);
  if (!document.ok) return document;
  if (document.value.kind === 'scenario') return scenarioFrom(document.value.text, name);
  const { kind } = document.value;
  const { files, certify } = terminal.words.cli;
  const found = kind === 'deck' ? files.noFormat : files.format(`haystack-${kind}`);
  return { ok: false, problems: [worded({ file: name, place: '/format', found, wanted: certify.scenarioOnly })] };
}

function certificateFor(
  terminal: Terminal,
  scenario: Scenario,
  name: string,
  options: ReceiverOption,
): Result<Certificate> {
  const loaded = commandSetup(terminal, scenario, name, options, null);
  if (!loaded.ok) return loaded;
  const outcome = certifyScenario(loaded.value);
  if (outcome.ok) return { ok: true, value: outcome.certificate };
  return { ok: false, problems: outcome.problems.map((problem) => problemOf(terminal, problem, name)) };
}

function problemOf(terminal: Terminal, problem: CertifyProblem, file: string): Problem {
  const certifyWords = terminal.words.cli.certify;
  const say = (found: string, wanted: string): Problem => worded({ file, place: '', found, wanted });
  const at = ({ response, line, measured, unit }: CertifiedLine): string =>
    certifyWords.lineAt(response, line, measured, unit);
  const limits = ({ low, high, excess, unit }: CertifiedLine): string => certifyWords.between(low, high, excess, unit);
  switch (problem.code) {
    case 'nominalOutside':
      return say(certifyWords.nominal(at(problem.line)), limits(problem.line));
    case 'outOfReach':
      return say(certifyWords.reach(at(problem.line)), limits(problem.line));
    case 'nothingToSee':
      return say(certifyWords.noSymptom(problem.part), certifyWords.symptom);
    case 'nothingToDo':
      return say(certifyWords.nothingToDo, certifyWords.somethingToDo);
    case 'refused':
      return say(certifyWords.refusal(problem.act, problem.reason), certifyWords.possible);
    case 'lineLost':
      return say(certifyWords.lost(problem.line, problem.share), certifyWords.whole);
  }
}

function okLine(terminal: Terminal, name: string, { par, difficulty, reached }: Certificate): string {
  const { response, line, excess } = reached;
  const certifyWords = terminal.words.cli.certify;
  return certifyWords.ok(name, par.turns, par.seconds, difficulty, certifyWords.narrowest(response, line, -excess));
}

/** Only the figures of par change in the scenario's text; its layout stays. */
function write(terminal: Terminal, name: string, certificate: Certificate): readonly Problem[] {
  const text = readText(terminal, name);
  if (!text.ok) return text.problems;
  const { turns, seconds } = certificate.par;
  const par = /("par"\s*:\s*\{\s*"turns"\s*:\s*)[-+.\deE]+(\s*,\s*"seconds"\s*:\s*)[-+.\deE]+/;
  const changed = text.value.replace(par, `$1${turns}$2${seconds}`);
  const problems = changed === text.value ? [] : writeText(terminal, name, changed);
  const place = certificateFile(certificate.scenario);
  mkdirSync(path.dirname(place), { recursive: true });
  return [...problems, ...writeText(terminal, place, `${JSON.stringify(certificate, null, 2)}\n`)];
}
