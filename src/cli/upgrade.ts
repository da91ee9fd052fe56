/** `upgrade`: writes scenario files of an older version anew, as ones of today: the same job, in today's words, without what is taken for granted. */
import { harmless } from '../base/harmless.ts';
import { bad, good, type Problem, type Result } from '../base/result.ts';
import { parseJson } from '../files/parseJson.ts';
import { scenarioToFile } from '../files/scenarioFile.ts';
import { parseScenario } from '../files/scenarioSchema.ts';
import { layOut } from '../making/layOut.ts';
import { PAR_NOT_KNOWN, type Par } from '../scenario/par.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { readText, writeText } from './files.ts';
import { shelvedPar } from './shelf.ts';
import { EXIT, type ExitCode, type Terminal, tellProblems } from './terminal.ts';

export function upgrade(terminal: Terminal, names: readonly string[]): ExitCode {
  let code: ExitCode = EXIT.good;
  const say = terminal.words.cli.upgrade;
  for (const name of names) {
    const upgraded = upgradedText(terminal, name);
    const problems: readonly Problem[] = !upgraded.ok
      ? upgraded.problems
      : upgraded.value === null
        ? []
        : writeText(terminal, name, upgraded.value);
    if (problems.length > 0) code = tellProblems(terminal, problems);
    else terminal.out(`${harmless(upgraded.ok && upgraded.value !== null ? say.done(name) : say.already(name))}\n`);
  }
  return code;
}

/** null: it is of today's version. */
function upgradedText(terminal: Terminal, name: string): Result<string | null> {
  const text = readText(terminal, name);
  if (!text.ok) return text;
  const json = parseJson(text.value, name);
  const scenario = json.ok ? parseScenario(json.value, name) : json;
  if (!json.ok || !scenario.ok) return scenario.ok ? bad() : scenario;
  if ((json.value as { readonly version: unknown }).version === scenario.value.version) return good(null);
  return good(layOut(scenarioToFile(withoutKnownPar(scenario.value))));
}

/** Par that the certificate has need not be said twice. */
function withoutKnownPar(scenario: Scenario): Scenario {
  const known: Par | null = shelvedPar(scenario.id);
  return known === null ? scenario : { ...scenario, par: PAR_NOT_KNOWN };
}
