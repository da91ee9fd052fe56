/** Texts whose trade words can be pointed at, for pages that take their texts from elsewhere. */
import { useMemo } from 'preact/hooks';
import { type MarkedPiece, markAll } from '../../present/handbook/marking.ts';
import { langOf } from '../../present/langOf.ts';
import { useWords } from '../hooks/useWords.ts';
import { Frac } from '../theme/art.tsx';
import { Term } from './Term.tsx';

export function Marked({ children }: { readonly children: readonly MarkedPiece[] }) {
  return (
    <>
      {children.map((piece) =>
        piece.kind === 'text' ? <Frac>{piece.text}</Frac> : <Term id={piece.term}>{piece.text}</Term>,
      )}
    </>
  );
}

/** The texts of a page in their order. `of`: the file that they come from; in another language than the page's nothing is marked. */
export function useMarked(texts: readonly string[], of?: { readonly language?: string }): readonly MarkedPiece[][] {
  const words = useWords();
  const foreign = of !== undefined && langOf(words, of) !== undefined;
  return useMemo(
    () => (foreign ? texts.map((text) => [{ kind: 'text' as const, text }]) : markAll(words.glossary, texts)),
    [words, foreign, texts.join('\n')],
  );
}
