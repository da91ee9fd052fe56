/** The command line has no English of its own: with the words of the pseudo language it speaks that. */
import { readFileSync } from 'node:fs';
import { afterAll, expect, it } from 'vitest';
import { terminal } from '../../src/words/en/terminal.ts';
import { pseudoWords } from '../../src/words/pseudo.ts';
import type { TerminalWords } from '../../src/words/words.ts';
import { outsideBrackets } from '../words/strange.ts';
import { insideSaying, scratch } from './commandLine.ts';

const strange = pseudoWords<TerminalWords>(terminal);
const files = scratch();
let made = 0;
afterAll(files.remove);

// biome-ignore lint/suspicious/noExplicitAny: tests break files on purpose, anywhere
function scenario(change: (json: any) => void): string {
  const json = JSON.parse(readFileSync('scenarios/first-sweep/first-curve.json', 'utf8'));
  change(json);
  return files.file(`s${made++}.json`, JSON.stringify(json));
}

it.each([
  ['a sound scenario', ['check', 'scenarios/first-sweep/first-curve.json'], 'out'],
  ['a sound receiver', ['check', 'scenarios/receivers/loose-can-10m7/receiver.json'], 'out'],
  ['a file that is not there', ['check', 'nowhere.json'], 'err'],
  ['a file of another kind', ['check', files.file('notes.txt', 'some notes')], 'err'],
  ['a scenario where a run belongs', ['regrade', 'scenarios/first-sweep/first-curve.json'], 'err'],
  [
    'a scenario wrong in its shape',
    ['check', scenario((s) => Object.assign(s, { order: 0.5, title: '', 'a b': 1, difficulty: 9 }))],
    'err',
  ],
  [
    'a scenario that does not fit',
    ['check', scenario((s) => Object.assign(s, { start: { slugs: { T1B: 40 } } }))],
    'err',
  ],
  ['a deck', ['check', files.file('x.cir', 'title\nR1 a 0 1A\nV1 a 0 5\nK1 a\n.ac')], 'err'],
  ['text that is no JSON', ['check', files.file('x.json', '{"format": "haystack-scenario", 7}')], 'err'],
  ['a node that the deck has not', ['response', 'tests/fixtures/decks/am-455k.cir', '--node', 'nowhere'], 'err'],
  ['an option that the command has not', ['certify', 'x.json', '--loud'], 'err'],
  ['an option without its value', ['regrade', 'x.json', '--jobs'], 'err'],
  ['a command that is none', ['sing'], 'err'],
  ['a command without its file', ['upgrade'], 'err'],
  ['a command without what it needs', ['deck', 'x.json'], 'err'],
  ['a file too many', ['deck', 'x.json', 'y.json', '--hz', '1meg'], 'err'],
  ['a number that is none', ['regrade', 'x.json', '--jobs', 'many'], 'err'],
  ['a frequency that is none', ['response', 'x.cir', '--node', 'out', '--from', 'high'], 'err'],
] as const)('%s', (_, words, stream) => {
  const said = insideSaying(strange, ...words)[stream].trim();
  expect(said).toContain('\u27e6');
  expect(outsideBrackets(said, [...words, 'T1B'])).toBe('');
});
