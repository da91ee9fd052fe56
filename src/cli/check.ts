/** `check`: reads files of any kind, says of each whether it is sound, and lists every problem of every file. */

import { existsSync } from 'node:fs';
import { harmless } from '../base/harmless.ts';
import { bad, good, type Result } from '../base/result.ts';
import { readCertificate } from '../files/certificateSchema.ts';
import { checkDesign } from '../files/checkDesign.ts';
import { asFarAsKnown } from '../files/known.ts';
import { courseProblems, readText } from '../files/library.ts';
import { readScenario } from '../files/scenarioSchema.ts';
import { withTextPlaces } from '../files/textPlaces.ts';
import { nodesOf } from '../physics/deckProblems.ts';
import { readDeck } from '../physics/readDeck.ts';
import { type Document, readDocument } from './document.ts';
import { filesIn, isFolder } from './folders.ts';
import { certificateFile, fittingReceiver, receiverFromFile, shelvedIds } from './shelf.ts';
import { EXIT, type ExitCode, type Terminal, tellProblems, worded } from './terminal.ts';

export function check(terminal: Terminal, names: readonly string[]): ExitCode {
  const codes = names.map((name) => (isFolder(name) ? checkFolder(terminal, name) : checkFile(terminal, name)));
  return codes.every((code) => code === EXIT.good) ? EXIT.good : EXIT.bad;
}

function checkFile(terminal: Terminal, name: string): ExitCode {
  const document = readDocument(terminal, name);
  const sound = document.ok ? soundness(terminal, document.value, name) : document;
  if (!sound.ok) return tellProblems(terminal, sound.problems);
  terminal.out(`${harmless(terminal.words.cli.check.ok(name, sound.value))}\n`);
  return EXIT.good;
}

/** Every deck and file of ours in a folder and below, then what must hold between its scenarios, and which of them nobody has certified. */
function checkFolder(terminal: Terminal, folder: string): ExitCode {
  const say = terminal.words.cli.check;
  const files = filesIn(folder, /\.(json|cir)$/i).filter((name) => !/(^|[\\/])schema[\\/][^\\/]+$/.test(name));
  if (files.length === 0)
    return tellProblems(terminal, [worded({ file: folder, place: '', found: say.nothing, wanted: say.something })]);
  const codes = files.map((name) => checkFile(terminal, name));
  const scenarios = files.flatMap((file) => {
    const document = readDocument(terminal, file);
    if (!document.ok || document.value.kind !== 'scenario') return [];
    const { text, json } = document.value;
    const scenario = readScenario(json, file).value;
    return scenario === null ? [] : [{ file, text, scenario }];
  });
  const problems = courseProblems(
    scenarios.map((one) => ({ ...one, file: one.file.replaceAll('\\', '/') })),
    shelvedIds(),
  );
  const textOf = new Map(scenarios.map(({ file, text }) => [file.replaceAll('\\', '/'), text]));
  const placed = problems.flatMap((one) => withTextPlaces([one], one.file, textOf.get(one.file) ?? ''));
  codes.push(tellProblems(terminal, placed));
  for (const { file, scenario } of scenarios) {
    asFarAsKnown(() => {
      if (!existsSync(certificateFile(scenario.id))) terminal.out(`${harmless(say.uncertified(file))}\n`);
    });
  }
  return codes.every((code) => code === EXIT.good) ? EXIT.good : EXIT.bad;
}

/** What a sound file is, in a few words. */
function soundness(terminal: Terminal, document: Document, name: string): Result<string> {
  const say = terminal.words.cli.check;
  switch (document.kind) {
    case 'deck': {
      const deck = readDeck(document.text, name);
      return deck.ok ? good(say.deck(deck.value.elements.length, nodesOf(deck.value).length)) : deck;
    }
    case 'receiver': {
      const loaded = receiverFromFile(terminal, name);
      if (!loaded.ok) return loaded;
      const { receiver, deck } = loaded.value;
      const problems = checkDesign(receiver, deck, name);
      if (problems.length > 0) return bad(...withTextPlaces(problems, name, document.text));
      return good(say.receiver(receiver.adjusters.length));
    }
    case 'scenario': {
      const { value, problems: own } = readText(document.text, name, readScenario);
      const problems = [...own];
      asFarAsKnown(() => {
        const fitting = value === null ? good(null) : fittingReceiver(terminal, value, name, '');
        if (!fitting.ok) problems.push(...fitting.problems);
      });
      if (value === null || problems.length > 0) return bad(...withTextPlaces(problems, name, document.text));
      return good(say.scenario(value.receiver));
    }
    case 'certificate': {
      const { value, problems } = readText(document.text, name, readCertificate);
      if (value === null || problems.length > 0) return bad(...withTextPlaces(problems, name, document.text));
      return good(say.certificate(value.scenario));
    }
    case 'run': {
      const { scenario, events } = document.run;
      const fitting = fittingReceiver(terminal, scenario, name, '/scenario');
      return fitting.ok ? good(say.run(events.length, scenario.id)) : fitting;
    }
  }
}
