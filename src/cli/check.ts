/** `check`: reads files of any kind, says of each whether it is sound, and lists every problem of every file. */
import { good, type Result } from '../base/result.ts';
import { parseRunFile } from '../files/runFileSchema.ts';
import { parseScenario } from '../files/scenarioSchema.ts';
import { nodesOf } from '../physics/deckProblems.ts';
import { readDeck } from '../physics/readDeck.ts';
import { type Document, readDocument } from './document.ts';
import { fittingReceiver, receiverFromFile } from './shelf.ts';
import { EXIT, type ExitCode, harmless, type Terminal, tellProblems } from './terminal.ts';
import { checkWords } from './words.ts';

export function check(terminal: Terminal, names: readonly string[]): ExitCode {
  let code: ExitCode = EXIT.good;
  for (const name of names) {
    const document = readDocument(name);
    const sound = document.ok ? soundness(document.value, name) : document;
    if (sound.ok) terminal.out(`${harmless(checkWords.ok(name, sound.value))}\n`);
    else code = tellProblems(terminal, sound.problems);
  }
  return code;
}

/** What a sound file is, in a few words. */
function soundness(document: Document, name: string): Result<string> {
  switch (document.kind) {
    case 'deck': {
      const deck = readDeck(document.text, name);
      return deck.ok ? good(checkWords.deck(deck.value.elements.length, nodesOf(deck.value).length)) : deck;
    }
    case 'receiver': {
      const loaded = receiverFromFile(name);
      return loaded.ok ? good(checkWords.receiver(loaded.value.receiver.adjusters.length)) : loaded;
    }
    case 'scenario': {
      const scenario = parseScenario(document.json, name);
      if (!scenario.ok) return scenario;
      const fitting = fittingReceiver(scenario.value, name, '');
      return fitting.ok ? good(checkWords.scenario(scenario.value.receiver)) : fitting;
    }
    case 'run': {
      const run = parseRunFile(document.json, name);
      if (!run.ok) return run;
      const { scenario, events } = run.value;
      const fitting = fittingReceiver(scenario, name, '/scenario');
      return fitting.ok ? good(checkWords.run(events.length, scenario.id)) : fitting;
    }
  }
}
