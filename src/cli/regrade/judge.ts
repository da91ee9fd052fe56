/** Judges run files one after another. Receivers and scenarios are kept from one to the next; no file has a say in what is said of another. */
import { existsSync } from 'node:fs';
import { good, type Result } from '../../base/result.ts';
import type { LoadedReceiver } from '../../files/library.ts';
import { heldAgainst } from '../../judge/heldAgainst.ts';
import { judgedOf } from '../../judge/judged.ts';
import { type FindBench, type FoundBench, judgeText } from '../../judge/judgeRun.ts';
import { type Row, rowOf } from '../../judge/row.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { placeOf, readText } from '../files.ts';
import { hasReceiver, scenarioIn, shelvedReceiver, shelvedScenario, shelvedSet } from '../shelf.ts';
import { type Terminal, UsageError } from '../terminal.ts';

export interface RunJudge {
  ofFile(name: string): Row;
  /** `label` is what the row calls it */
  ofText(text: string, label: string): Row;
}

/** `expected`: file or id of the scenario that was handed out; left out, each run is held against the one of its name in the project. */
export function createRunJudge(terminal: Terminal, expected: string | undefined): RunJudge {
  const receivers = new Map<string, LoadedReceiver>();
  const scenarios = new Map<string, Result<Scenario | null>>();
  const wanted = expected === undefined ? null : expectedScenario(terminal, expected);

  const ownFor = (id: string): Result<Scenario | null> => {
    const known = wanted ?? scenarios.get(id) ?? shelvedScenario(terminal, id);
    if (wanted === null) scenarios.set(id, known);
    return known;
  };
  const find =
    (file: string): FindBench =>
    (scenario: Scenario): Result<FoundBench> | null => {
      if (!hasReceiver(scenario.receiver)) return null;
      const kept = receivers.get(scenario.receiver);
      const loaded = kept ? good(kept) : shelvedReceiver(terminal, scenario.receiver, file, '/scenario/receiver');
      if (!loaded.ok) return loaded;
      receivers.set(scenario.receiver, loaded.value);
      const own = ownFor(scenario.id);
      if (!own.ok) return own;
      return good(heldAgainst(loaded.value, own.value, scenario, shelvedSet(scenario.id)));
    };
  const ofText = (text: string, label: string): Row =>
    rowOf(terminal.words, label, judgedOf(judgeText(text, label, find(label))));

  return {
    ofFile(name) {
      const text = readText(terminal, name);
      if (text.ok) return ofText(text.value, name);
      const verdict = { kind: 'unreadable', problems: text.problems } as const;
      return rowOf(terminal.words, name, judgedOf({ verdict, run: null, scenarioKnown: false }));
    },
    ofText,
  };
}

function expectedScenario(terminal: Terminal, expected: string): Result<Scenario> {
  if (existsSync(placeOf(expected))) return scenarioIn(terminal, expected);
  const shelved = shelvedScenario(terminal, expected);
  if (!shelved.ok) return shelved;
  if (shelved.value === null) throw new UsageError(terminal.words.cli.regrade.noScenario(expected));
  return good(shelved.value);
}
