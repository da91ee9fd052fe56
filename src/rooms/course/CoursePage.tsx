/** The course: a paper sheet with what comes next, and the tracks with their cards. */
import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { Header, Rooms } from '../../kit/theme/art.tsx';
import { arrangeTracks, cardRows, cardsPerRow, isWon, tracksOf } from '../../present/courseTracks.ts';
import type { CoursePort } from '../../present/ports.ts';
import { trackWords, courseWords as words } from '../../words/en/course.ts';
import { shellWords } from '../../words/en/shell.ts';
import { EndlessPlace } from './EndlessPlace.tsx';
import { JobCard } from './JobCard.tsx';
import { NextSheet } from './NextSheet.tsx';
import { useColumns } from './useColumns.ts';
import './course.css';

export interface CoursePageProps {
  readonly port: CoursePort;
  /** to the report of the last finished run; null where there is none */
  readonly onReport: (() => void) | null;
  /** what is told above the tracks */
  readonly notices?: ComponentChildren;
  /** what else stands at the right of the header */
  readonly right?: ComponentChildren;
}

export function CoursePage({ port, onReport, notices, right }: CoursePageProps) {
  const [, redraw] = useState(0);
  useEffect(() => port.subscribe(() => redraw((n) => n + 1)), [port]);
  const columns = useColumns();
  const cards = port.cards();
  const tracks = tracksOf(cards);
  const rows = arrangeTracks(
    tracks.map((t) => t.cards.length),
    columns,
  );
  // Rows of tracks share the height by the rows of cards that they hold.
  const heights = rows.map((row) =>
    Math.max(...row.map(({ track, span }) => cardRows(tracks[track]!.cards.length, span))),
  );
  const onBench = cards.find((c) => c.onBench !== null);
  const codes = new Map(cards.map((c) => [c.scenario.id, c.scenario.code]));
  const links = [
    { name: shellWords.course, current: true, go: () => {} },
    ...(onBench === undefined
      ? []
      : [{ name: shellWords.bench, current: false, go: () => port.open(onBench.scenario.id) }]),
    ...(onReport === null ? [] : [{ name: shellWords.reports, current: false, go: onReport }]),
  ];
  return (
    <div class="course-page">
      <Header
        product={shellWords.product}
        right={
          <>
            <span class="course-count">{words.scenariosDone(cards.filter(isWon).length, cards.length)}</span>
            {right}
          </>
        }
      >
        <Rooms name={shellWords.rooms} links={links} />
      </Header>
      <main class="course">
        <NextSheet cards={cards} tracks={tracks} open={(id) => port.open(id)} />
        <div class="course-main">
          {notices}
          <div
            class="tracks"
            style={{
              gridTemplateColumns: `repeat(${columns}, minmax(0, 1fr))`,
              gridTemplateRows: heights.map((n) => `auto minmax(min-content, ${n}fr)`).join(' '),
            }}
          >
            {rows.flat().map(({ track: i, span }) => {
              const track = tracks[i]!;
              const { letter, title, blurb } = trackWords(track.id);
              const abreast = cardsPerRow(track.cards.length, span);
              return (
                <section
                  class="track"
                  key={track.id}
                  aria-labelledby={`track-${i}`}
                  style={{ gridColumn: `span ${span}` }}
                >
                  <div class="track-head">
                    <span class="disc large" aria-hidden="true">
                      {letter}
                    </span>
                    <h2 id={`track-${i}`} tabIndex={-1}>
                      {title}
                    </h2>
                    <span class="track-done">{words.done(track.done, track.cards.length)}</span>
                    {blurb === '' ? null : <p>{blurb}</p>}
                  </div>
                  <ul
                    class={abreast === 2 ? 'cards two' : 'cards'}
                    aria-label={words.cards(title)}
                    style={{ gridTemplateColumns: `repeat(${abreast}, minmax(0, 1fr))` }}
                  >
                    {track.cards.map((card) => (
                      <JobCard
                        key={card.scenario.id}
                        card={card}
                        codes={codes}
                        open={() => port.open(card.scenario.id)}
                      />
                    ))}
                  </ul>
                </section>
              );
            })}
          </div>
          <EndlessPlace newSeed={port.newSeed} open={port.openEndless} />
          <aside class="course-cautions" aria-labelledby="course-cautions">
            <h2 id="course-cautions">{words.cautionsTitle}</h2>
            <p>{words.cautions}</p>
          </aside>
        </div>
      </main>
    </div>
  );
}
