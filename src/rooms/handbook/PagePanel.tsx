/** One page: title, first lines, live figures, text, and the pages before and after. */
import type { RefObject } from 'preact';
import { handbookHash } from '../../present/handbook/address.ts';
import type { HandbookBlock, HandbookPage, HandbookWords } from '../../words/handbook.ts';
import { FigureCard } from './FigureCard.tsx';
import { Prose } from './Prose.tsx';

export interface PagePanelProps {
  readonly book: HandbookWords;
  readonly page: HandbookPage;
  readonly place: number;
  readonly title: RefObject<HTMLHeadingElement | null>;
}

export function PagePanel({ book, page, place, title }: PagePanelProps) {
  const before = book.pages[place - 1];
  const after = book.pages[place + 1];
  return (
    <>
      <header class="page-head">
        <p class="l eyebrow">
          {page.group} {place + 1}
        </p>
        <h1 ref={title} tabIndex={-1}>
          {page.title}
        </h1>
        <p class="lead">
          <Prose>{page.lead}</Prose>
        </p>
      </header>
      <div class={page.figures.length === 1 ? 'page-figures single' : 'page-figures'}>
        {page.figures.map((words, i) => (
          <FigureCard key={words.kind} no={i + 1} words={words} book={book} />
        ))}
      </div>
      <div class="page-text">
        {page.blocks.map((block, i) => (
          <Block key={i} block={block} />
        ))}
      </div>
      <nav class="page-turn" aria-label={book.page}>
        {before === undefined ? null : (
          <a rel="prev" href={handbookHash(before.id)}>
            <span class="l">{book.previous}</span>
            <span>{before.title}</span>
          </a>
        )}
        {after === undefined ? null : (
          <a rel="next" href={handbookHash(after.id)}>
            <span class="l">{book.next}</span>
            <span>{after.title}</span>
          </a>
        )}
      </nav>
    </>
  );
}

function Block({ block }: { readonly block: HandbookBlock }) {
  if ('h' in block) return <h2>{block.h}</h2>;
  if ('p' in block)
    return (
      <p>
        <Prose>{block.p}</Prose>
      </p>
    );
  if ('caution' in block)
    return (
      <aside class="caution">
        <p>
          <Prose>{block.caution}</Prose>
        </p>
      </aside>
    );
  const items = ('list' in block ? block.list : block.steps).map((item, i) => (
    <li key={i}>
      <Prose>{item}</Prose>
    </li>
  ));
  return 'list' in block ? <ul>{items}</ul> : <ol>{items}</ol>;
}
