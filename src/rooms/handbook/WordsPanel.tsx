/** Every trade word with what it means and where more is said of it. */
import type { RefObject } from 'preact';
import { useWords } from '../../kit/hooks/useWords.ts';
import { handbookHash } from '../../present/handbook/address.ts';
import { TERMS, type TermId } from '../../present/handbook/terms.ts';
import type { HandbookWords } from '../../words/handbook.ts';

export interface WordsPanelProps {
  readonly book: HandbookWords;
  readonly title: RefObject<HTMLHeadingElement | null>;
}

export function WordsPanel({ book, title }: WordsPanelProps) {
  const { glossary, language } = useWords();
  const rows = (Object.keys(TERMS) as TermId[])
    .map((id) => ({ id, ...glossary.terms[id], page: book.pages.find(({ id: page }) => page === TERMS[id].page) }))
    .sort((a, b) => a.term.localeCompare(b.term, language));
  return (
    <div class="first-sheet">
      <h1 ref={title} tabIndex={-1}>
        {book.allWords}
      </h1>
      <p class="lead">{book.wordsIntro}</p>
      <dl class="all-words">
        {rows.map(({ id, term, means, page }) => (
          <div key={id}>
            <dt>{term}</dt>
            <dd>
              {means} {page === undefined ? null : <a href={handbookHash(page.id)}>{page.title}</a>}
            </dd>
          </div>
        ))}
      </dl>
    </div>
  );
}
