/**
 * Reads a circuit deck: the published subset of the SPICE language.
 *
 * The first line is the title, whatever it says. `*` opens a comment line, `;` a comment to the end of a line, `+` continues
 * the line before. Elements: R L C (two nodes, value), K (two coils, coupling), G (two output nodes, two control nodes, siemens),
 * I (two nodes, optional [DC] amps, optional AC [amps [degrees]]). Lines `.ac`, `.print`, `.save` are read; `.end` closes
 * the deck and may be missing. Case does not matter. Node 0 is ground, also called gnd.
 * Everything else is a problem with its line and column; problems are listed up to a bound, and nothing is half loaded.
 */

import type { Problem, Result } from '../base/result.ts';
import { bad, good } from '../base/result.ts';
import { buildNetwork } from './buildNetwork.ts';
import type { AcLine, Deck, DeckElement } from './deck.ts';
import { findElement, MAX_ELEMENTS, nodeKey, placeName } from './deck.ts';
import { deckProblems } from './deckProblems.ts';
import type { Word } from './deckWords.ts';
import { deckLines, MAX_PROBLEMS, MAX_TEXT } from './deckWords.ts';
import { readElement } from './readElement.ts';
import { readSpiceNumber } from './spiceNumber.ts';

export function readDeck(text: unknown, file: string): Result<Deck> {
  if (typeof text !== 'string')
    return bad({ file, place: '', found: `a value of type ${typeof text}`, wanted: 'the text of a deck' });
  if (text.length > MAX_TEXT) {
    return bad({ file, place: '', found: `${text.length} characters`, wanted: `at most ${MAX_TEXT}` });
  }
  const reading = new Reading(file);
  const { title, lines, problems } = deckLines(text, file);
  for (const problem of problems) reading.problems.push(problem);
  for (const words of lines) {
    if (reading.full()) break;
    reading.line(words);
  }
  return reading.finish(title);
}

class Reading {
  readonly problems: Problem[] = [];
  private readonly elements: DeckElement[] = [];
  /** elements whose line could not be read: a K that names one is not blamed for it */
  private readonly unread = new Set<string>();
  private readonly outputs: Word[] = [];
  private ac: AcLine | null = null;
  private ended = false;
  private readonly file: string;

  constructor(file: string) {
    this.file = file;
  }

  /** so far beyond a bound that the rest of the text need not be read */
  full(): boolean {
    return this.problems.length > MAX_PROBLEMS || this.elements.length > 4 * MAX_ELEMENTS;
  }

  line(words: readonly Word[]): void {
    const first = words[0]!;
    if (this.ended) {
      this.problem(first, `\`${first.text}\` after .end`, 'nothing but comments after .end');
    } else if (first.text.startsWith('.')) this.dotLine(words);
    else this.element(words);
  }

  finish(title: string): Result<Deck> {
    const { file, problems } = this;
    const deck: Deck = { title, elements: this.elements, ac: this.ac, outputs: this.outputs.map((word) => word.text) };
    const cut = problems.length > MAX_PROBLEMS;
    if (cut) {
      problems.length = MAX_PROBLEMS;
      problems.push({
        file,
        place: '',
        found: 'more problems than are listed',
        wanted: 'a deck in the published subset',
      });
    } else if (problems.length === 0) {
      if (this.elements.length === 0)
        problems.push({ file, place: '', found: 'no elements', wanted: 'at least one element' });
      else {
        const network = buildNetwork(deck, file);
        if (!network.ok) problems.push(...network.problems);
      }
      this.checkOutputs(deck);
    } else {
      problems.push(...deckProblems(deck, file, this.unread));
    }
    return problems.length === 0 ? good(deck) : bad(...problems);
  }

  private element(words: readonly Word[]): void {
    const outcome = readElement(words, this.file);
    if (outcome.ok) this.elements.push(outcome.value);
    else {
      this.unread.add(words[0]!.text.toLowerCase());
      this.problems.push(...outcome.problems);
    }
  }

  private dotLine(words: readonly Word[]): void {
    const first = words[0]!;
    const command = first.text.toLowerCase();
    if (command === '.end') {
      this.ended = true;
      if (words.length > 1) this.problem(words[1]!, `\`${words[1]!.text}\``, 'nothing after .end');
    } else if (command === '.ac') this.acLine(words);
    else if (command === '.print' || command === '.save') this.outputLine(command, words);
    else this.problem(first, `\`${first.text}\``, 'one of .ac, .print, .save, .end');
  }

  private acLine(words: readonly Word[]): void {
    const first = words[0]!;
    if (this.ac !== null) this.problem(first, 'a second .ac line', 'one .ac line');
    const spacing = words[1]?.text.toLowerCase();
    const points = readSpiceNumber(words[2]?.text ?? '');
    const fromHz = readSpiceNumber(words[3]?.text ?? '');
    const toHz = readSpiceNumber(words[4]?.text ?? '');
    const wanted = '.ac lin|dec|oct points from-hertz to-hertz';
    if (words.length !== 5) this.problem(words[5] ?? first, `${words.length - 1} words after .ac`, wanted);
    else if (spacing !== 'lin' && spacing !== 'dec' && spacing !== 'oct')
      this.problem(words[1]!, `\`${words[1]!.text}\``, wanted);
    else if (points === null || !Number.isInteger(points) || points < 1 || points > 100_000) {
      this.problem(words[2]!, `\`${words[2]!.text}\``, 'a whole number of points, 1 to 100000');
    } else if (fromHz === null || fromHz <= 0)
      this.problem(words[3]!, `\`${words[3]!.text}\``, 'a frequency above zero');
    else if (toHz === null || toHz < fromHz)
      this.problem(words[4]!, `\`${words[4]!.text}\``, 'a frequency not below the first');
    else this.ac = { spacing, points, fromHz, toHz };
  }

  private outputLine(command: string, words: readonly Word[]): void {
    let from = 1;
    if (command === '.print') {
      from = 2;
      if (words[1]?.text.toLowerCase() !== 'ac') {
        this.problem(
          words[1] ?? words[0]!,
          words[1] === undefined ? 'nothing after .print' : `\`${words[1].text}\``,
          '.print ac outputs',
        );
        return;
      }
    }
    if (words.length <= from)
      this.problem(words[0]!, 'no outputs', `at least one output such as v(node) after ${command}`);
    for (const word of words.slice(from)) {
      if (OUTPUT.test(word.text) || (command === '.save' && word.text.toLowerCase() === 'all')) this.outputs.push(word);
      else
        this.problem(
          word,
          `\`${word.text}\``,
          'an output such as v(node), vm(node), vp(node), vdb(node) or i(element)',
        );
    }
  }

  private checkOutputs(deck: Deck): void {
    const nodes = new Set(['0']);
    for (const element of deck.elements) {
      if (element.kind === 'K') continue;
      for (const node of element.nodes) nodes.add(nodeKey(node));
      if (element.kind === 'G') for (const node of element.control) nodes.add(nodeKey(node));
    }
    for (const word of this.outputs) {
      const [, kind = '', inside = ''] = OUTPUT.exec(word.text) ?? [];
      if (kind.toLowerCase() === 'i') {
        if (findElement(deck, inside) === undefined)
          this.problem(word, `element \`${inside}\` in \`${word.text}\``, 'an element of this deck');
      } else if (kind !== '') {
        for (const node of inside.split(',')) {
          if (!nodes.has(nodeKey(node)))
            this.problem(word, `node \`${node}\` in \`${word.text}\``, 'a node of this deck');
        }
      }
    }
  }

  private problem(word: Word, found: string, wanted: string): void {
    this.problems.push({ file: this.file, place: placeName(word), found, wanted });
  }
}

/** a voltage of one node or between two, or a current; as such, or its magnitude, phase, decibels, real or imaginary part */
const OUTPUT = /^([vi])(?:m|p|db|r|i)?\(([^(),]+(?:,[^(),]+)?)\)$/i;
