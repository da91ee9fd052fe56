/** `check`: reads files of any kind, says of each whether it is sound, and lists every problem of every file. */

import { existsSync } from 'node:fs';
import { harmless } from '../base/harmless.ts';
import { once } from '../base/once.ts';
import { bad, good, type Problem, type Result } from '../base/result.ts';
import { readCertificate } from '../files/certificateSchema.ts';
import { byTravel, checkScenario } from '../files/checkScenario.ts';
import { checkTolerance } from '../files/checkTolerance.ts';
import { difficultyProblem } from '../files/difficultyBands.ts';
import { checkEvening, readEvening } from '../files/evening.ts';
import { asFarAsKnown, eachKnown } from '../files/known.ts';
import { courseProblems, type LoadedReceiver, readText, shelfProblems } from '../files/library.ts';
import { readReceiver } from '../files/receiverSchema.ts';
import { readRuns } from '../files/runsFile.ts';
import { readScenario } from '../files/scenarioSchema.ts';
import { readSealedEvening } from '../files/sealedEvening.ts';
import { withTextPlaces } from '../files/textPlaces.ts';
import { nodesOf } from '../physics/deckProblems.ts';
import { readDeck } from '../physics/readDeck.ts';
import type { Receiver } from '../receiver/receiver.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { type Document, readDocument } from './document.ts';
import { filesIn, isFolder } from './folders.ts';
import {
  certificateFile,
  fittingReceiver,
  hasReceiver,
  namedReceiver,
  newReceiverFromFile,
  shelvedCertificate,
  shelvedIds,
  shelvedReceiver,
  shelvedReceiverIds,
} from './shelf.ts';
import { EXIT, type ExitCode, type Terminal, tellProblems, worded } from './terminal.ts';

export function check(terminal: Terminal, names: readonly string[]): ExitCode {
  const files = readAll(
    terminal,
    names.filter((name) => !isFolder(name)),
  );
  const together = besideIn(receiversAmong(files));
  const codes = names.map((name) => {
    const file = files.get(name);
    return file === undefined ? checkFolder(terminal, name) : checkFile(terminal, file, together);
  });
  return codes.every((code) => code === EXIT.good) ? EXIT.good : EXIT.bad;
}

/** What lies in the same folder as a file being checked, or is named beside it. */
interface Beside {
  readonly receivers: ReadonlyMap<string, LoadedReceiver>;
  /** names of receivers there that are told of by themselves, so that no scenario tells of them again */
  readonly broken: ReadonlySet<string>;
}

/** A file as it was read, once, and what it is as a receiver with its deck, which is worked out when it is first asked for. A run, of which there may be many and large ones, is read anew. */
interface FileRead {
  readonly name: string;
  readonly document: () => Result<Document>;
  /** null: cannot be read, or a run */
  readonly texted: Extract<Document, { readonly text: string }> | null;
  readonly loaded: () => Result<LoadedReceiver>;
}

const readAll = (terminal: Terminal, names: readonly string[]): ReadonlyMap<string, FileRead> =>
  new Map(
    names.map((name) => {
      const loaded = once(() => newReceiverFromFile(terminal, name));
      const first = readDocument(terminal, name);
      const isRun = first.ok && first.value.kind === 'run';
      const document = isRun ? () => readDocument(terminal, name) : () => first;
      return [name, { name, document, texted: first.ok && 'text' in first.value ? first.value : null, loaded }];
    }),
  );

function checkFile(terminal: Terminal, file: FileRead, beside: Beside): ExitCode {
  const { name } = file;
  const document = file.document();
  const sound = document.ok ? soundness(terminal, document.value, file, beside) : document;
  if (!sound.ok) return tellProblems(terminal, sound.problems);
  terminal.out(`${harmless(terminal.words.cli.check.ok(name, sound.value))}\n`);
  return EXIT.good;
}

/** Every deck and file of ours in a folder and below, then what must hold between its receivers and between its scenarios, and which of those nobody has certified. */
function checkFolder(terminal: Terminal, folder: string): ExitCode {
  const say = terminal.words.cli.check;
  const files = filesIn(folder, /\.(json|cir)$/i).filter((name) => !/(^|[\\/])schema[\\/][^\\/]+$/.test(name));
  if (files.length === 0)
    return tellProblems(terminal, [worded({ file: folder, place: '', found: say.nothing, wanted: say.something })]);
  const read = readAll(terminal, files);
  const receivers = receiversAmong(read);
  const beside = besideIn(receivers);
  const codes = [...read.values()].map((file) => checkFile(terminal, file, beside));
  const documents = textsAmong(read);
  const scenarios = documents.flatMap((one) => {
    const scenario = one.kind === 'scenario' ? readScenario(one.json, one.file).value : null;
    return scenario === null ? [] : [{ file: one.file, scenario }];
  });
  const textOf = new Map(documents.map(({ file, text }) => [withSlashes(file), text]));
  const problems = [
    ...shelfProblems(receivers.map((one) => ({ ...one, file: withSlashes(one.file) }))),
    ...courseProblems(
      scenarios.map((one) => ({ ...one, file: withSlashes(one.file) })),
      shelvedIds(),
    ),
  ].flatMap((one) => withTextPlaces([one], one.file, textOf.get(one.file) ?? ''));
  codes.push(tellProblems(terminal, problems));
  for (const { file, scenario } of scenarios) {
    asFarAsKnown(() => {
      if (!existsSync(certificateFile(scenario.id))) terminal.out(`${harmless(say.uncertified(file))}\n`);
    });
  }
  return codes.every((code) => code === EXIT.good) ? EXIT.good : EXIT.bad;
}

/** Those that can be read at all; the others are told of where each is checked. */
function textsAmong(files: ReadonlyMap<string, FileRead>) {
  return [...files.values()].flatMap(({ name, texted, loaded }) =>
    texted === null ? [] : [{ file: name, loaded, ...texted }],
  );
}

interface NamedReceiver extends Pick<FileRead, 'loaded'> {
  readonly file: string;
  readonly receiver: Receiver;
}

function receiversAmong(files: ReadonlyMap<string, FileRead>): readonly NamedReceiver[] {
  return textsAmong(files).flatMap((one) => {
    const receiver = one.kind === 'receiver' ? readReceiver(one.json, one.file).value : null;
    return receiver === null ? [] : [{ file: one.file, loaded: one.loaded, receiver }];
  });
}

const withSlashes = (name: string): string => name.replaceAll('\\', '/');

function besideIn(all: readonly NamedReceiver[]): Beside {
  const receivers = new Map<string, LoadedReceiver>();
  const broken = new Set<string>();
  eachKnown(
    () => all,
    ({ loaded, receiver: { id } }) => {
      const sound = loaded();
      if (sound.ok) receivers.set(id, sound.value);
      else broken.add(id);
    },
  );
  return { receivers, broken };
}

/** What contradicts the scenario's certificate, where the project has one. */
function besideCertificate(scenario: Scenario, name: string): readonly Problem[] {
  const certificate = shelvedCertificate(scenario.id);
  const problem = certificate === null ? null : difficultyProblem(scenario, certificate, name);
  return problem === null ? [] : [problem];
}

/** What a sound file is, in a few words. */
function soundness(terminal: Terminal, document: Document, file: FileRead, beside: Beside): Result<string> {
  const { name } = file;
  const say = terminal.words.cli.check;
  switch (document.kind) {
    case 'deck': {
      const deck = readDeck(document.text, name);
      return deck.ok ? good(say.deck(deck.value.elements.length, nodesOf(deck.value).length)) : deck;
    }
    case 'receiver': {
      const loaded = file.loaded();
      return loaded.ok ? good(say.receiver(loaded.value.receiver.adjusters.length)) : loaded;
    }
    case 'scenario': {
      const { value, problems: own } = readText(document.text, name, readScenario);
      let problems = [...own];
      asFarAsKnown(() => {
        if (value === null || beside.broken.has(value.receiver)) return;
        const named = namedReceiver(terminal, value, name, '', beside.receivers);
        if (named.ok) problems = [...byTravel(own, named.value), ...checkScenario(value, named.value, name)];
        else problems.push(...named.problems);
        if (named.ok && problems.length === 0) problems.push(...checkTolerance(value, named.value, name));
      });
      if (value !== null && problems.length === 0) problems.push(...besideCertificate(value, name));
      if (value === null || problems.length > 0) return bad(...withTextPlaces(problems, name, document.text));
      return good(say.scenario(value.receiver));
    }
    case 'certificate': {
      const { value, problems } = readText(document.text, name, readCertificate);
      if (value === null || problems.length > 0) return bad(...withTextPlaces(problems, name, document.text));
      return good(say.certificate(value.scenario));
    }
    case 'evening': {
      const receiverOf = (id: string): LoadedReceiver | null => {
        const shelved = hasReceiver(id) ? shelvedReceiver(terminal, id, name, '/scenarios') : null;
        return shelved?.ok ? shelved.value : null;
      };
      const evening = readEvening(document.text, name, receiverOf);
      if (!evening.ok) return evening;
      const { scenarios, receivers } = evening.value;
      const fitting = checkEvening(evening.value, receiverOf, shelvedReceiverIds(), name);
      const missed = scenarios.flatMap((scenario, i): readonly Problem[] => {
        const own = receivers.find(({ receiver }) => receiver.id === scenario.receiver);
        const loaded = own ?? receiverOf(scenario.receiver);
        const problems = loaded === null ? [] : checkTolerance(scenario, loaded, name);
        return problems.map((problem) => ({ ...problem, place: `/scenarios/${i}${problem.place}` }));
      });
      const problems = fitting.length > 0 ? fitting : missed;
      if (problems.length > 0) return bad(...withTextPlaces(problems, name, document.text));
      return good(say.evening(scenarios.length));
    }
    case 'sealed-evening': {
      const sealed = readSealedEvening(document.text, name);
      return sealed.ok ? good(say.sealedEvening(sealed.value.count)) : sealed;
    }
    case 'runs': {
      const runs = readRuns(document.text, name);
      if (!runs.ok) return runs;
      const problems = runs.value.runs.flatMap((run) => (run.ok ? [] : run.problems));
      return problems.length === 0 ? good(say.runs(runs.value.runs.length)) : bad(...problems);
    }
    case 'run': {
      const { scenario, events } = document.run;
      const fitting = fittingReceiver(terminal, scenario, name, '/scenario');
      return fitting.ok ? good(say.run(events.length, scenario.id)) : fitting;
    }
  }
}
