/** Judges run files one after another. Receivers and scenarios are kept from one to the next; no file has a say in what is said of another. */
import { existsSync } from 'node:fs';
import { bad, good, type Problem, type Result } from '../../base/result.ts';
import type { LoadedReceiver } from '../../files/library.ts';
import type { RunFile } from '../../files/runFile.ts';
import { heldAgainst } from '../../judge/heldAgainst.ts';
import { type FoundBench, type Judgement, judgeRun, readToJudge } from '../../judge/judgeRun.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { readDocument } from '../document.ts';
import { placeOf } from '../files.ts';
import { scenarioIn, shelvedReceiver, shelvedScenario, shelvedSet } from '../shelf.ts';
import { type Terminal, UsageError, worded } from '../terminal.ts';
import { type Row, rowOf } from './row.ts';

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
    (file: string) =>
    (scenario: Scenario): Result<FoundBench> => {
      const kept = receivers.get(scenario.receiver);
      const loaded = kept ? good(kept) : shelvedReceiver(terminal, scenario.receiver, file, '/scenario/receiver');
      if (!loaded.ok) return loaded;
      receivers.set(scenario.receiver, loaded.value);
      const own = ownFor(scenario.id);
      if (!own.ok) return own;
      return good(heldAgainst(loaded.value, own.value, scenario, shelvedSet(scenario.id)));
    };
  const judged = (run: RunFile, file: string): Judgement => judgeRun(run, file, find(file));

  return {
    ofFile(name) {
      const run = readRun(terminal, name);
      if (run.ok) return rowOf(terminal, name, judged(run.value, name));
      const verdict = { kind: 'unreadable', problems: run.problems } as const;
      return rowOf(terminal, name, { verdict, run: null, scenarioKnown: false });
    },
    ofText(text, label) {
      const read = readToJudge(text, label);
      return rowOf(terminal, label, read.ok ? judged(read.value, label) : read.judgement);
    },
  };
}

function expectedScenario(terminal: Terminal, expected: string): Result<Scenario> {
  if (existsSync(placeOf(expected))) return scenarioIn(terminal, expected);
  const shelved = shelvedScenario(terminal, expected);
  if (!shelved.ok) return shelved;
  if (shelved.value === null) throw new UsageError(terminal.words.cli.regrade.noScenario(expected));
  return good(shelved.value);
}

function readRun(terminal: Terminal, name: string): Result<RunFile> {
  const document = readDocument(terminal, name);
  if (!document.ok) return document;
  if (document.value.kind === 'run') return good(document.value.run);
  const { files } = terminal.words.cli;
  const { kind } = document.value;
  const found = kind === 'deck' ? files.noFormat : files.format(`haystack-${kind}`);
  const problem: Problem = worded({ file: name, place: '/format', found, wanted: 'haystack-run' });
  return bad(problem);
}
