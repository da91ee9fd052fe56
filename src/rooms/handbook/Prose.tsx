/** A text of the handbook with its figures written, its trade words to be pointed at and its ways to other pages. */
import { unreachable } from '../../base/never.ts';
import { useFirstWords } from '../../kit/hooks/useWords.ts';
import { Term } from '../../kit/terms/Term.tsx';
import { handbookHash } from '../../present/handbook/address.ts';
import { writtenNumber } from '../../present/handbook/numbers.ts';
import { readProse } from '../../present/handbook/prose.ts';

export function Prose({ children }: { readonly children: string }) {
  const { format } = useFirstWords();
  return (
    <>
      {readProse(children).map((piece) => {
        switch (piece.kind) {
          case 'text':
            return piece.text;
          case 'lean':
            return <em>{piece.text}</em>;
          case 'number':
            return <span class="figure">{writtenNumber(format, piece.name)}</span>;
          case 'term':
            return <Term id={piece.term}>{piece.text}</Term>;
          case 'page':
            return <a href={handbookHash(piece.page)}>{piece.text}</a>;
          default:
            return unreachable(piece);
        }
      })}
    </>
  );
}
