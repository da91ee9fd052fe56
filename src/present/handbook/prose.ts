/** Takes a text of the handbook apart: plain words, words leant on, figures, words of the glossary, other pages. Its signs are told in words/handbook.ts. */

export type Piece =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'lean'; readonly text: string }
  | { readonly kind: 'number'; readonly name: string }
  | { readonly kind: 'term'; readonly text: string; readonly term: string }
  | { readonly kind: 'page'; readonly text: string; readonly page: string };

const SIGNS = /\*([^*]+)\*|\{(\w+)\}|\[([^\]]+)\]\((#?)([\w-]+)\)/g;

export function readProse(prose: string): Piece[] {
  const found: Piece[] = [];
  let at = 0;
  for (const match of prose.matchAll(SIGNS)) {
    if (match.index > at) found.push({ kind: 'text', text: prose.slice(at, match.index) });
    const [whole, lean, number, text, hash, target] = match;
    if (lean !== undefined) found.push({ kind: 'lean', text: lean });
    else if (number !== undefined) found.push({ kind: 'number', name: number });
    else if (hash === '#') found.push({ kind: 'page', text: text!, page: target! });
    else found.push({ kind: 'term', text: text!, term: target! });
    at = match.index + whole.length;
  }
  if (at < prose.length) found.push({ kind: 'text', text: prose.slice(at) });
  return found;
}
