/** One track: its head, and its cards as many abreast as fit. */

import { useMemo } from 'preact/hooks';
import { useFirstWords } from '../../kit/hooks/useWords.ts';
import { Disc } from '../../kit/PlateTitle.tsx';
import { cardRows, cardsPerRow, type Track } from '../../present/courseTracks.ts';
import type { CoursePort } from '../../present/ports.ts';
import { JobCard } from './JobCard.tsx';
import './cards.css';

export interface TrackSectionProps {
  readonly track: Track;
  /** its place among the tracks, from 0 */
  readonly place: number;
  /** columns of the page that it takes */
  readonly span: number;
  /** card code by scenario id */
  readonly codes: ReadonlyMap<string, string>;
  /** false while the runs are being read: what has been won is not known */
  readonly runsRead: boolean;
  /** false: the cards have not had their turn, and only their room is kept */
  readonly shown: boolean;
  /** false: the cards have plain frames for now, and those out of sight are not laid out */
  readonly drawn: boolean;
  readonly open: (scenarioId: string) => void;
  readonly approach: CoursePort['approach'];
}

/** px; about what a row of cards takes, for those that nobody looks at yet */
const ROW_HEIGHT = 250;

export function TrackSection({ track, place, span, codes, runsRead, shown, drawn, open, approach }: TrackSectionProps) {
  const { course: words, track: wordsOf } = useFirstWords();
  const { id, cards, done } = track;
  const { letter, title, blurb } = wordsOf(id);
  const abreast = cardsPerRow(cards.length, span);
  const height = `${cardRows(cards.length, span) * ROW_HEIGHT}px`;
  // The same cards are the same elements: a turn of one track costs the others nothing.
  const list = useMemo(
    () =>
      cards.map((card) => (
        <JobCard
          key={card.scenario.id}
          card={card}
          codes={codes}
          runsRead={runsRead}
          drawn={drawn}
          open={() => open(card.scenario.id)}
          approach={approach(card.scenario.id)}
        />
      )),
    [cards, codes, runsRead, drawn, open, approach],
  );
  return (
    <section class="track" aria-labelledby={`track-${place}`} style={{ gridColumn: `span ${span}` }}>
      <div class="track-head">
        <Disc class="large">{letter}</Disc>
        <h2 id={`track-${place}`} tabIndex={-1}>
          {title}
        </h2>
        <span class="track-done">{words.done(done, cards.length)}</span>
        {blurb === '' ? null : <p>{blurb}</p>}
      </div>
      <ul
        class={`cards${abreast === 2 ? ' two' : ''}${drawn ? '' : ' waiting'}`}
        aria-label={words.cards(title)}
        style={{
          gridTemplateColumns: `repeat(${abreast}, minmax(0, 1fr))`,
          containIntrinsicHeight: height,
          minHeight: shown ? '' : height,
        }}
      >
        {shown ? list : null}
      </ul>
    </section>
  );
}
