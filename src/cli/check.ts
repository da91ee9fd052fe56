/** `check`: reads files of any kind, says of each whether it is sound, and lists every problem of every file. */
import { good, type Result } from '../base/result.ts';
import { parseScenario } from '../files/scenarioSchema.ts';
import { nodesOf } from '../physics/deckProblems.ts';
import { readDeck } from '../physics/readDeck.ts';
import { type Document, readDocument } from './document.ts';
import { fittingReceiver, receiverFromFile } from './shelf.ts';
import { EXIT, type ExitCode, harmless, type Terminal, tellProblems } from './terminal.ts';

export function check(terminal: Terminal, names: readonly string[]): ExitCode {
  let code: ExitCode = EXIT.good;
  for (const name of names) {
    const document = readDocument(terminal, name);
    const sound = document.ok ? soundness(terminal, document.value, name) : document;
    if (sound.ok) terminal.out(`${harmless(terminal.words.cli.check.ok(name, sound.value))}\n`);
    else code = tellProblems(terminal, sound.problems);
  }
  return code;
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
      return loaded.ok ? good(say.receiver(loaded.value.receiver.adjusters.length)) : loaded;
    }
    case 'scenario': {
      const scenario = parseScenario(document.json, name);
      if (!scenario.ok) return scenario;
      const fitting = fittingReceiver(terminal, scenario.value, name, '');
      return fitting.ok ? good(say.scenario(scenario.value.receiver)) : fitting;
    }
    case 'run': {
      const { scenario, events } = document.run;
      const fitting = fittingReceiver(terminal, scenario, name, '/scenario');
      return fitting.ok ? good(say.run(events.length, scenario.id)) : fitting;
    }
  }
}
