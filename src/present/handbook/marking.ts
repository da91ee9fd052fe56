/** Finds the trade words in a text that does not mark them itself: each at its first use, for a page that may have told some of them already. */
import type { Words } from '../../words/words.ts';
import type { Piece } from './prose.ts';
import { TERMS, type TermId } from './terms.ts';

type Glossary = Words['glossary'];

interface Finder {
  readonly pattern: RegExp;
  readonly termOf: ReadonlyMap<string, TermId>;
}

const finders = new WeakMap<Glossary, Finder>();

/** A form with a capital stands only so (IF is not if); any other may begin a sentence. */
function finderOf(glossary: Glossary): Finder {
  const known = finders.get(glossary);
  if (known !== undefined) return known;
  const termOf = new Map<string, TermId>();
  for (const id of Object.keys(TERMS) as TermId[]) {
    for (const form of glossary.terms[id].forms) {
      termOf.set(form, id);
      if (form === form.toLowerCase()) termOf.set(form.slice(0, 1).toUpperCase() + form.slice(1), id);
    }
  }
  const forms = [...termOf.keys()].sort((a, b) => b.length - a.length).map(escaped);
  const finder = { pattern: new RegExp(`(?<![\\p{L}\\p{N}-])(?:${forms.join('|')})(?![\\p{L}\\p{N}-])`, 'gu'), termOf };
  finders.set(glossary, finder);
  return finder;
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

export type MarkedPiece = Extract<Piece, { kind: 'text' | 'term' }>;

/** `told`: the terms that the page has marked already. */
export function markTerms(glossary: Glossary, text: string, told: ReadonlySet<string> = new Set()): MarkedPiece[] {
  const { pattern, termOf } = finderOf(glossary);
  const here = new Set(told);
  const found: MarkedPiece[] = [];
  let at = 0;
  for (const match of text.matchAll(pattern)) {
    const term = termOf.get(match[0])!;
    if (here.has(term)) continue;
    here.add(term);
    if (match.index > at) found.push({ kind: 'text', text: text.slice(at, match.index) });
    found.push({ kind: 'term', text: match[0], term });
    at = match.index + match[0].length;
  }
  if (at < text.length) found.push({ kind: 'text', text: text.slice(at) });
  return found;
}

/** Texts of one page in the order in which they are read: each word is marked in the first of them that has it. */
export function markAll(glossary: Glossary, texts: readonly string[]): MarkedPiece[][] {
  const told = new Set<string>();
  return texts.map((text) => {
    const pieces = markTerms(glossary, text, told);
    for (const piece of pieces) if (piece.kind === 'term') told.add(piece.term);
    return pieces;
  });
}
