/**
 * Reads a circuit deck: the published subset of the SPICE language.
 *
 * The first line is the title, whatever it says. `*` opens a comment line, `;` a comment to the end of a line, `+` continues
 * the line before. Elements: R L C (two nodes, value), K (two coils, coupling), G (two output nodes, two control nodes, siemens),
 * I (two nodes, optional [DC] amps, optional AC [amps [degrees]]). Lines `.ac`, `.print`, `.save` are read; `.end` closes
 * the deck and may be missing. Case does not matter. Node 0 is ground, also called gnd.
 * Everything else is a problem with its line and column; problems are listed up to a bound, and nothing is half loaded.
 */

import type { Phrase } from '../base/phrases.ts';
import type { Problem, Result } from '../base/result.ts';
import { bad, good } from '../base/result.ts';
import { buildNetwork } from './buildNetwork.ts';
import type { AcLine, Deck, DeckElement } from './deck.ts';
import { findElement, MAX_ELEMENTS, nodeKey, wordPlace } from './deck.ts';
import { deckProblems } from './deckProblems.ts';
import type { Word } from './deckWords.ts';
import { deckLines, MAX_PROBLEMS, MAX_TEXT } from './deckWords.ts';
import { readElement } from './readElement.ts';
import { readSpiceNumber } from './spiceNumber.ts';

export function readDeck(text: unknown, file: string): Result<Deck> {
  if (typeof text !== 'string')
    return bad({ file, place: '', found: ['valueOfType', typeof text], wanted: ['deckText'] });
  if (text.length > MAX_TEXT) {
    return bad({ file, place: '', found: ['characters', text.length], wanted: ['charactersAtMost', MAX_TEXT] });
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
      this.problem(first, ['afterEnd', first.text], ['commentsAfterEnd']);
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
        found: ['moreProblems'],
        wanted: ['publishedSubset'],
      });
    } else if (problems.length === 0) {
      if (this.elements.length === 0)
        problems.push({ file, place: '', found: ['noElements'], wanted: ['someElement'] });
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
      if (words.length > 1) this.problem(words[1]!, ['quoted', words[1]!.text], ['nothingAfterEnd']);
    } else if (command === '.ac') this.acLine(words);
    else if (command === '.print' || command === '.save') this.outputLine(command, words);
    else this.problem(first, ['quoted', first.text], ['dotLines']);
  }

  private acLine(words: readonly Word[]): void {
    const first = words[0]!;
    if (this.ac !== null) this.problem(first, ['secondAcLine'], ['oneAcLine']);
    const spacing = words[1]?.text.toLowerCase();
    const points = readSpiceNumber(words[2]?.text ?? '');
    const fromHz = readSpiceNumber(words[3]?.text ?? '');
    const toHz = readSpiceNumber(words[4]?.text ?? '');
    const wanted: Phrase = ['acShape'];
    if (words.length !== 5) this.problem(words[5] ?? first, ['acWords', words.length - 1], wanted);
    else if (spacing !== 'lin' && spacing !== 'dec' && spacing !== 'oct')
      this.problem(words[1]!, ['quoted', words[1]!.text], wanted);
    else if (points === null || !Number.isInteger(points) || points < 1 || points > 100_000) {
      this.problem(words[2]!, ['quoted', words[2]!.text], ['pointsFrom', 1, 100_000]);
    } else if (fromHz === null || fromHz <= 0) this.problem(words[3]!, ['quoted', words[3]!.text], ['hertzAboveZero']);
    else if (toHz === null || toHz < fromHz) this.problem(words[4]!, ['quoted', words[4]!.text], ['hertzNotBelow']);
    else this.ac = { spacing, points, fromHz, toHz };
  }

  private outputLine(command: string, words: readonly Word[]): void {
    let from = 1;
    if (command === '.print') {
      from = 2;
      if (words[1]?.text.toLowerCase() !== 'ac') {
        this.problem(
          words[1] ?? words[0]!,
          words[1] === undefined ? ['nothingAfterPrint'] : ['quoted', words[1].text],
          ['printShape'],
        );
        return;
      }
    }
    if (words.length <= from) this.problem(words[0]!, ['noOutputs'], ['outputAfter', command]);
    for (const word of words.slice(from)) {
      if (OUTPUT.test(word.text) || (command === '.save' && word.text.toLowerCase() === 'all')) this.outputs.push(word);
      else this.problem(word, ['quoted', word.text], ['outputShape']);
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
          this.problem(word, ['elementInOutput', inside, word.text], ['elementOfDeck']);
      } else if (kind !== '') {
        for (const node of inside.split(',')) {
          if (!nodes.has(nodeKey(node))) this.problem(word, ['nodeInOutput', node, word.text], ['nodeOfDeck']);
        }
      }
    }
  }

  private problem(word: Word, found: Phrase, wanted: Phrase): void {
    this.problems.push({ file: this.file, ...wordPlace(word), found, wanted });
  }
}

/** a voltage of one node or between two, or a current; as such, or its magnitude, phase, decibels, real or imaginary part */
const OUTPUT = /^([vi])(?:m|p|db|r|i)?\(([^(),]+(?:,[^(),]+)?)\)$/i;
