/** `sheet`: makes the service sheet of a receiver from its deck and what its file says already, and prints the file to be kept. */
import { existsSync } from 'node:fs';
import path from 'node:path';
import type { Problem } from '../base/result.ts';
import { checkDesign } from '../files/checkDesign.ts';
import { checkSweep } from '../files/checkSweep.ts';
import { readJson } from '../files/parseJson.ts';
import { withTextPlaces } from '../files/textPlaces.ts';
import { beginWithDeck } from '../making/begin.ts';
import { layOut } from '../making/layOut.ts';
import { makeReceiver } from '../making/makeReceiver.ts';
import { problemsLeft, savedFiles, standingOf } from '../making/standing.ts';
import { readDeck } from '../physics/readDeck.ts';
import { placeOf, readText } from './files.ts';
import { EXIT, type ExitCode, type Terminal, tellProblems } from './terminal.ts';

export interface SheetOptions {
  readonly receiver?: string;
}

export function sheet(terminal: Terminal, deckName: string, options: SheetOptions): ExitCode {
  const deckText = readText(terminal, deckName);
  const deck = deckText.ok ? readDeck(deckText.value, deckName) : deckText;
  if (!deck.ok) return tellProblems(terminal, deck.problems);
  const file = options.receiver ?? path.join(path.dirname(deckName), 'receiver.json');
  if (options.receiver === undefined && !existsSync(placeOf(file)) && deckText.ok)
    return fromDeckAlone(terminal, deckName, deckText.value);
  const text = readText(terminal, file);
  if (!text.ok) return tellProblems(terminal, text.problems);
  const tell = (problems: readonly Problem[]): ExitCode =>
    tellProblems(terminal, withTextPlaces(problems, file, text.value));
  const json = readJson(text.value, file);
  if (json.problems.length > 0) return tell(json.problems);
  const names = { id: path.basename(path.dirname(placeOf(deckName))), deck: path.basename(deckName) };
  const made = makeReceiver(json.value, deck.value, file, names, terminal.words.maker);
  if (!made.ok) return tell(made.problems);
  const { receiver } = made.value;
  const misses = [...checkDesign(receiver, deck.value, file), ...checkSweep(receiver, deck.value, file)];
  if (misses.length > 0) return tell(misses);
  terminal.out(layOut(made.value.json));
  return EXIT.good;
}

/** What the workshop's page makes of a deck that is brought to it: what can be guessed, under the name of the deck's file. */
function fromDeckAlone(terminal: Terminal, deckName: string, deckText: string): ExitCode {
  const { maker } = terminal.words;
  const making = beginWithDeck({ file: deckName, text: deckText }, maker);
  const standing = standingOf(making, maker);
  const problems = problemsLeft(making, standing, maker);
  if (problems.length > 0 || !standing.made?.ok) return tellProblems(terminal, problems);
  terminal.out(savedFiles(making, standing.made.value).receiver.text);
  return EXIT.good;
}
