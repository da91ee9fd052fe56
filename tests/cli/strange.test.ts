/** The command line has no English of its own: with the words of the pseudo language it speaks that. */
import { afterAll, expect, it } from 'vitest';
import { terminal } from '../../src/words/en/terminal.ts';
import { pseudoWords } from '../../src/words/pseudo.ts';
import type { TerminalWords } from '../../src/words/words.ts';
import { outsideBrackets } from '../words/strange.ts';
import { insideSaying, scratch } from './commandLine.ts';

const strange = pseudoWords<TerminalWords>(terminal);
const files = scratch();
afterAll(files.remove);

it.each([
  ['a sound scenario', ['check', 'scenarios/first-sweep/first-curve.json'], 'out'],
  ['a sound receiver', ['check', 'scenarios/receivers/loose-can-10m7/receiver.json'], 'out'],
  ['a file that is not there', ['check', 'nowhere.json'], 'err'],
  ['a file of another kind', ['check', files.file('notes.txt', 'some notes')], 'err'],
  ['a scenario where a run belongs', ['regrade', 'scenarios/first-sweep/first-curve.json'], 'err'],
  ['a node that the deck has not', ['response', 'tests/fixtures/decks/am-455k.cir', '--node', 'nowhere'], 'err'],
  ['a frequency that is none', ['response', 'x.cir', '--node', 'out', '--from', 'high'], 'err'],
] as const)('%s', (_, words, stream) => {
  const said = insideSaying(strange, ...words)[stream].trim();
  expect(said).toContain('\u27e6');
  expect(outsideBrackets(said)).toBe('');
});
