/** A deck as somebody brings it: read whole or not at all, and what may be done about a line that cannot be read. */
import type { Problem, Result } from '../base/result.ts';
import { bad } from '../base/result.ts';
import type { Deck } from '../physics/deck.ts';
import { MAX_TEXT } from '../physics/deckWords.ts';
import { readDeck } from '../physics/readDeck.ts';

/** As `readDeck`; a deck that does not say where it ends may have been cut off on its way, and is refused. */
export function readDeckFile(text: string, file: string): Result<Deck> {
  const deck = readDeck(text, file);
  if (text.length > MAX_TEXT || /^[ \t]*\.end[ \t]*(?:;.*)?$/im.test(text)) return deck;
  const cut: Problem = { file, place: '', found: ['deckCutOff'], wanted: ['deckEnd'] };
  return bad(...(deck.ok ? [] : deck.problems), cut);
}

export type Repair =
  | { readonly kind: 'put'; readonly name: string; readonly deckText: string }
  | { readonly kind: 'leaveOut'; readonly name: string; readonly deckText: string }
  | { readonly kind: 'end'; readonly deckText: string };

/** What is likely meant, best first; none where nobody can know. */
export function repairsOf(problem: Problem, text: string): readonly Repair[] {
  if (problem.found[0] === 'deckCutOff') return [{ kind: 'end', deckText: `${text.replace(/\s*$/, '')}\n.end\n` }];
  if (problem.at === undefined) return [];
  const lines = text.split(/\r\n|\n|\r/);
  const row = problem.at.line - 1;
  const line = lines[row] ?? '';
  const word = /^\S+/.exec(line.slice(problem.at.column - 1))?.[0] ?? '';
  const withLine = (instead: string | null): string =>
    lines.flatMap((one, i) => (i === row ? (instead === null ? [] : [instead]) : [one])).join('\n');
  const out: Repair = { kind: 'leaveOut', name: line.trim().split(/\s/)[0] ?? '', deckText: withLine(null) };
  if (problem.found[0] !== 'coilNamed') return [out];
  const coils = lines.flatMap((one) => /^\s*(L\S+)/i.exec(one)?.[1] ?? []);
  const other = line.trim().split(/\s+/)[problem.at.column - 1 > line.search(/\S/) + 1 ? 1 : 2];
  const near = coils
    .filter((name) => name.toLowerCase() !== other?.toLowerCase())
    .map((name) => ({ name, far: distance(name.toLowerCase(), word.toLowerCase()) }))
    .sort((a, b) => a.far - b.far)[0];
  if (near === undefined || near.far > 2) return [out];
  const at = problem.at.column - 1;
  return [
    { kind: 'put', name: near.name, deckText: withLine(line.slice(0, at) + near.name + line.slice(at + word.length)) },
    out,
  ];
}

/** Least number of letters put in, taken out or changed. */
function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++)
      next[j] = Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1));
    row = next;
  }
  return row[b.length]!;
}
