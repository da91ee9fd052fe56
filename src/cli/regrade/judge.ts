/** Judges run files one after another. Receivers and scenarios are kept from one to the next; no file has a say in what is said of another. */
import { closeSync, existsSync, openSync, readSync } from 'node:fs';
import { good, type Problem, type Result } from '../../base/result.ts';
import type { LoadedReceiver } from '../../files/library.ts';
import { isRunsText, readRuns } from '../../files/runsFile.ts';
import { heldAgainst } from '../../judge/heldAgainst.ts';
import { judgedOf } from '../../judge/judged.ts';
import { type FindBench, type FoundBench, judgeText } from '../../judge/judgeRun.ts';
import { type Row, rowOf } from '../../judge/row.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { placeOf, readText } from '../files.ts';
import { hasReceiver, scenarioIn, shelvedReceiver, shelvedScenario, shelvedSet } from '../shelf.ts';
import { type Terminal, UsageError } from '../terminal.ts';
import type { Beside } from './beside.ts';

export interface RunJudge {
  ofFile(name: string): Row;
  /** of an exam's file a row for each run in it; null: it is none */
  ofRuns(name: string): readonly Row[] | null;
  /** `label` is what the row calls it */
  ofText(text: string, label: string): Row;
}

/** `expected`: file or id of the scenario that was handed out; left out, each run is held against the one of its name in the project, and where there is none, against what lies beside. */
export function createRunJudge(terminal: Terminal, expected: string | undefined, beside: Beside): RunJudge {
  const receivers = new Map<string, LoadedReceiver>();
  const scenarios = new Map<string, Result<Scenario | null>>();
  const wanted = expected === undefined ? null : expectedScenario(terminal, expected);

  const ownFor = (id: string): Result<Scenario | null> => {
    const known = wanted ?? scenarios.get(id) ?? shelvedScenario(terminal, id);
    if (wanted === null) scenarios.set(id, known);
    return known;
  };
  const onShelf = (id: string, file: string): Result<LoadedReceiver> | null => {
    if (!hasReceiver(id)) return null;
    const kept = receivers.get(id);
    const loaded = kept ? good(kept) : shelvedReceiver(terminal, id, file, '/scenario/receiver');
    if (loaded.ok) receivers.set(id, loaded.value);
    return loaded;
  };
  const find =
    (file: string): FindBench =>
    (scenario: Scenario): Result<FoundBench> | null => {
      const own = ownFor(scenario.id);
      if (!own.ok) return own;
      const shelved = onShelf(scenario.receiver, file);
      if (own.value === null) {
        const held = beside.held(scenario, () => (shelved?.ok ? shelved.value : null));
        if (held !== null) return good(held);
      }
      const brought = beside.receiver(scenario.receiver);
      const loaded = shelved ?? (brought === null ? null : good(brought));
      if (loaded === null || !loaded.ok) return loaded;
      return good(heldAgainst(loaded.value, own.value, scenario, shelvedSet(scenario.id)));
    };
  const ofText = (text: string, label: string): Row =>
    rowOf(terminal.words, label, judgedOf(judgeText(text, label, find(label))));

  const refused = (label: string, problems: readonly Problem[]): Row =>
    rowOf(
      terminal.words,
      label,
      judgedOf({ verdict: { kind: 'unreadable', problems }, run: null, scenarioKnown: false }),
    );

  return {
    ofRuns(name) {
      if (!isRunsText(headOf(name))) return null;
      const text = readText(terminal, name);
      if (!text.ok) return null;
      const runs = readRuns(text.value, name);
      if (!runs.ok) return [refused(name, runs.problems)];
      return runs.value.runs.map((run, i) => {
        const label = `${name} ${i + 1}`;
        return run.ok ? ofText(run.value, label) : refused(label, run.problems);
      });
    },
    ofFile(name) {
      const text = readText(terminal, name);
      if (text.ok) return ofText(text.value, name);
      return refused(name, text.problems);
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

const HEAD_BYTES = 400;

/** The beginning of a file, which tells its kind; '' where it cannot be read. */
function headOf(name: string): string {
  try {
    const file = openSync(placeOf(name), 'r');
    try {
      const head = Buffer.alloc(HEAD_BYTES);
      return head.toString('utf8', 0, readSync(file, head, 0, HEAD_BYTES, 0));
    } finally {
      closeSync(file);
    }
  } catch {
    return '';
  }
}
