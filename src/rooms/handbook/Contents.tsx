/** The list of pages by groups, at the side, or folded up where there is no side; and the first sheet, which says of each page what is in it. */
import type { RefObject } from 'preact';
import { useFirstWords } from '../../kit/hooks/useWords.ts';
import { Frame } from '../../kit/theme/art.tsx';
import { handbookHash } from '../../present/handbook/address.ts';
import { plainProse } from '../../present/handbook/numbers.ts';
import type { HandbookPage, HandbookWords } from '../../words/handbook.ts';

interface Group {
  readonly name: string;
  readonly pages: readonly (readonly [no: number, page: HandbookPage])[];
}

function groupsOf({ pages }: HandbookWords): Group[] {
  const names = [...new Set(pages.map(({ group }) => group))];
  return names.map((name) => ({
    name,
    pages: pages.flatMap((page, i) => (page.group === name ? [[i + 1, page] as const] : [])),
  }));
}

export function Contents({ book, pageId }: { readonly book: HandbookWords; readonly pageId: string | null }) {
  const list = (
    <>
      {groupsOf(book).map(({ name, pages }) => (
        <div class="contents-group" key={name}>
          <h2 class="l">{name}</h2>
          <ol>
            {pages.map(([no, { id, title }]) => (
              <li key={id}>
                <a href={handbookHash(id)} {...(id === pageId ? { 'aria-current': 'page' as const } : {})}>
                  <span class="m">{no}</span>
                  <span>{title}</span>
                </a>
              </li>
            ))}
          </ol>
        </div>
      ))}
    </>
  );
  return (
    <>
      <nav class="paper contents" aria-label={book.contents}>
        <Frame kind="sheet" />
        <a
          class="contents-title"
          href={handbookHash()}
          {...(pageId === null ? { 'aria-current': 'page' as const } : {})}
        >
          {book.title}
        </a>
        {list}
      </nav>
      <details class="contents-folded" key={pageId ?? ''}>
        <summary class="H">{book.contents}</summary>
        {list}
      </details>
    </>
  );
}

export interface ContentsPanelProps {
  readonly book: HandbookWords;
  /** the address named a page that is not there */
  readonly lost: boolean;
  readonly title: RefObject<HTMLHeadingElement | null>;
}

export function ContentsPanel({ book, lost, title }: ContentsPanelProps) {
  const { format } = useFirstWords();
  return (
    <div class="first-sheet">
      <h1 ref={title} tabIndex={-1}>
        {book.title}
      </h1>
      <p class="lead">{lost ? book.noSuchPage : book.intro}</p>
      {groupsOf(book).map(({ name, pages }) => (
        <section key={name}>
          <h2 class="h">{name}</h2>
          <ul>
            {pages.map(([, { id, title: pageTitle, lead }]) => (
              <li key={id}>
                <a href={handbookHash(id)}>{pageTitle}</a>
                <p>{plainProse(format, lead)}</p>
              </li>
            ))}
          </ul>
        </section>
      ))}
    </div>
  );
}
