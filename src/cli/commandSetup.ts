/**
 * The bench of a scenario that a command was given: on the receiver of the project, or on one of one's own that is named for it. A receiver under the same name that lies beside the
 * scenario and is not the one on the bench is told of: whoever has edited it would take what comes out for its doing.
 */
import { existsSync, readdirSync, statSync } from 'node:fs';
import path from 'node:path';
import { harmless } from '../base/harmless.ts';
import { bad, type Result } from '../base/result.ts';
import type { BenchSetup } from '../bench/setup.ts';
import type { KnownSet } from '../certify/knownSet.ts';
import type { LoadedReceiver } from '../files/library.ts';
import { readReceiver } from '../files/receiverSchema.ts';
import { saysFormat } from '../files/saysFormat.ts';
import { receiverHash } from '../run/serialise.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { readDocument } from './document.ts';
import { placeOf, readText } from './files.ts';
import { fittingSetup, hasReceiver, newReceiverFromFile, receiverPlace, shelvedSet } from './shelf.ts';
import { type Terminal, worded } from './terminal.ts';

export interface ReceiverOption {
  /** file of a receiver of one's own; left out: the project's */
  readonly receiver?: string;
}

/** `file`: of the scenario. `known` as for `fittingSetup`. A receiver whose own sheet nobody could follow is refused, as by `check`. */
export function commandSetup(
  terminal: Terminal,
  scenario: Scenario,
  file: string,
  { receiver: named }: ReceiverOption,
  known: KnownSet | null = shelvedSet(scenario.id),
): Result<BenchSetup> {
  const place = named ?? (hasReceiver(scenario.receiver) ? receiverPlace(scenario.receiver) : null);
  // One that is nowhere is told of with those that there are.
  const receiver = place === null ? null : checkedReceiver(terminal, place);
  if (receiver !== null && !receiver.ok) return receiver;
  const id = receiver?.value.receiver.id;
  if (named !== undefined && id !== scenario.receiver) {
    const { noReceiver } = terminal.words.cli.files;
    const [found, wanted] = [noReceiver(id ?? ''), noReceiver(scenario.receiver)];
    return bad(worded({ file: named, place: '/id', found, wanted }));
  }
  if (named === undefined) tellOfOthers(terminal, scenario.receiver, file, receiver?.value ?? null);
  const beside = receiver === null ? undefined : new Map([[scenario.receiver, receiver.value]]);
  return fittingSetup(terminal, scenario, file, '', known, beside);
}

function checkedReceiver(terminal: Terminal, name: string): Result<LoadedReceiver> {
  const document = readDocument(terminal, name);
  if (!document.ok) return document;
  const { kind } = document.value;
  if (kind !== 'receiver') {
    const { noFormat, format } = terminal.words.cli.files;
    const found = kind === 'deck' ? noFormat : format(`haystack-${kind}`);
    return bad(worded({ file: name, place: '/format', found, wanted: format('haystack-receiver') }));
  }
  return newReceiverFromFile(terminal, name);
}

function tellOfOthers(terminal: Terminal, id: string, file: string, used: LoadedReceiver | null): void {
  for (const name of receiversBeside(terminal, id, file)) {
    const loaded = newReceiverFromFile(terminal, name);
    if (used !== null && loaded.ok && receiverHash(loaded.value) === receiverHash(used)) continue;
    terminal.err(`${harmless(terminal.words.cli.files.passedOver(name, id, used !== null))}\n`);
  }
}

const MOST_FILES = 200;

/** Files of a receiver of that name in the scenario's folder, or in a folder of its name there. */
function receiversBeside(terminal: Terminal, id: string, file: string): readonly string[] {
  const folder = path.dirname(file);
  const own = path.join(folder, id, 'receiver.json');
  const here = readdirSync(placeOf(folder))
    .filter((name) => name.endsWith('.json') && name !== path.basename(file))
    .slice(0, MOST_FILES)
    .map((name) => path.join(folder, name));
  return [...here, ...(existsSync(placeOf(own)) ? [own] : [])].filter((name) => {
    if (!statSync(placeOf(name)).isFile()) return false;
    const text = readText(terminal, name);
    if (!text.ok || !saysFormat(text.value, 'receiver')) return false;
    return idIn(text.value, name) === id;
  });
}

function idIn(text: string, name: string): string | null {
  try {
    return readReceiver(JSON.parse(text), name).value?.id ?? null;
  } catch {
    return null;
  }
}
