/** Par of a scenario: found by the certifier, kept in the certificate, put in when a scenario is read. */
import { type Par, parIsKnown } from '../scenario/par.ts';
import type { Scenario } from '../scenario/scenario.ts';

/** What the text of one of the project's own certificates says. */
export function parIn(certificate: string): Par {
  return (JSON.parse(certificate) as { readonly par: Par }).par;
}

/** A file that says its par itself, such as that of a run, keeps it. `par`: null where there is no certificate. */
export function withPar(scenario: Scenario, par: Par | null): Scenario {
  return par === null || parIsKnown(scenario) ? scenario : { ...scenario, par };
}
