/** The handbook: contents at the side, a page of text with its live figures, the list of trade words. */
import { useLayoutEffect, useRef } from 'preact/hooks';
import { usePageTitle } from '../../kit/hooks/usePageTitle.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Frame, Header, type RoomLink, Rooms } from '../../kit/theme/art.tsx';
import { handbookHash, WORDS_PAGE } from '../../present/handbook/address.ts';
import type { HandbookWords } from '../../words/handbook.ts';
import { Contents, ContentsPanel } from './Contents.tsx';
import { PagePanel } from './PagePanel.tsx';
import { WordsPanel } from './WordsPanel.tsx';
import '../../kit/links/link.css';
import './handbook.css';
import './figure.css';
import './print.css';

export interface HandbookPageProps {
  readonly book: HandbookWords;
  /** null: the contents */
  readonly pageId: string | null;
  /** the rooms that can be entered from here, in their order */
  readonly links: readonly RoomLink[];
}

export function HandbookPage({ book, pageId, links }: HandbookPageProps) {
  const { shell } = useWords();
  const place = book.pages.findIndex(({ id }) => id === pageId);
  const page = book.pages[place];
  const open = page?.title ?? (pageId === WORDS_PAGE ? book.allWords : null);
  usePageTitle(...(open === null ? [] : [open]), shell.handbook);
  const title = useRef<HTMLHeadingElement>(null);
  const before = useRef(pageId);
  // A page that is turned begins at its top; the first one is left where the browser puts it.
  useLayoutEffect(() => {
    if (before.current === pageId) return;
    before.current = pageId;
    scrollTo(0, 0);
    title.current?.focus({ preventScroll: true });
  }, [pageId]);
  return (
    <div class="room-handbook">
      <Header
        product={shell.product}
        right={
          <>
            <button type="button" class="link header-link" onClick={() => print()}>
              {book.print}
            </button>
            <a class="header-link" href={handbookHash(WORDS_PAGE)}>
              {book.allWords}
            </a>
          </>
        }
      >
        <Rooms name={shell.rooms} links={links} />
      </Header>
      <main class="handbook">
        <Contents book={book} pageId={pageId} />
        <article class="paper page" key={pageId ?? ''}>
          <Frame kind="sheet" />
          {page !== undefined ? (
            <PagePanel book={book} page={page} place={place} title={title} />
          ) : pageId === WORDS_PAGE ? (
            <WordsPanel book={book} title={title} />
          ) : (
            <ContentsPanel book={book} lost={pageId !== null} title={title} />
          )}
        </article>
      </main>
    </div>
  );
}
