/** The course: a paper sheet with what comes next, and the tracks with their cards. */
import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { usePageTitle } from '../../kit/hooks/usePageTitle.ts';
import { useTurns } from '../../kit/hooks/useTurns.ts';
import { useFirstWords } from '../../kit/hooks/useWords.ts';
import { Slip } from '../../kit/slips/Slip.tsx';
import { Header, type RoomLink, Rooms } from '../../kit/theme/art.tsx';
import { arrangeTracks, isWon, tracksOf } from '../../present/courseTracks.ts';
import type { CoursePort } from '../../present/ports.ts';
import { EndlessPlace } from './EndlessPlace.tsx';
import { NextPanel } from './NextPanel.tsx';
import { OwnPlace } from './OwnPlace.tsx';
import type { OwnPort } from './ownPort.ts';
import { TrackSection } from './TrackSection.tsx';
import { useColumns } from './useColumns.ts';
import { useLetters } from './useLetters.ts';
import './course.css';

export interface CoursePageProps {
  readonly port: CoursePort;
  readonly own: OwnPort;
  readonly links: readonly RoomLink[];
  /** to the guide through a first bench */
  readonly onGuide: () => void;
  /** what is told above the tracks */
  readonly notices?: ComponentChildren;
  /** what else stands at the right of the header */
  readonly right?: ComponentChildren;
}

export function CoursePage({ port, own, links, onGuide, notices, right }: CoursePageProps) {
  const [changes, setChanges] = useState(0);
  // Laid out at once and not after the paint: what the logbook tells in between would be lost.
  useLayoutEffect(() => port.subscribe(() => setChanges((n) => n + 1)), [port]);
  const { course: words, shell: shellWords } = useFirstWords();
  usePageTitle(shellWords.course);
  const columns = useColumns();
  const runsRead = port.runsRead();
  const { cards, tracks, codes } = useMemo(() => {
    const all = port.cards();
    return {
      cards: all,
      tracks: tracksOf(all),
      codes: new Map(all.map((card) => [card.scenario.id, card.scenario.code])),
    };
  }, [port, changes]);
  const rows = arrangeTracks(
    tracks.map((t) => t.cards.length),
    columns,
  );
  // The page is there with its first track, then come the others, one by one; what is drawn to measure comes last, when letters no longer change the layout.
  const shown = 1 + useTurns(tracks.length, true);
  const lettered = useLetters(shown > tracks.length);
  const drawn = useTurns(tracks.length + 1, lettered && runsRead);
  const leftOut = port.leftOut();
  const { ownFirst, stay } = useOwnFirst(own);
  const ownPlace = (
    <OwnPlace
      key="own"
      port={own}
      columns={columns}
      runsRead={runsRead}
      drawn={drawn > 0}
      open={port.open}
      approach={port.approach}
      onHand={stay}
    />
  );
  return (
    <div class="room-course">
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
        <NextPanel
          cards={cards}
          tracks={tracks}
          runsRead={runsRead}
          drawn={drawn > 0}
          open={port.open}
          approach={port.approach}
          onGuide={onGuide}
        />
        <div class="course-main">
          {notices}
          {leftOut.length === 0 ? null : (
            <Slip>
              <p>{words.leftOut(leftOut)}</p>
            </Slip>
          )}
          {ownFirst ? ownPlace : null}
          <div class="tracks" style={{ gridTemplateColumns: `repeat(${columns}, minmax(0, 1fr))` }}>
            {rows.flat().map(({ track: place, span }) => (
              <TrackSection
                key={tracks[place]!.id}
                track={tracks[place]!}
                place={place}
                span={span}
                codes={codes}
                runsRead={runsRead}
                shown={place < shown}
                drawn={place + 1 < drawn}
                open={port.open}
                approach={port.approach}
              />
            ))}
          </div>
          {shown > tracks.length ? <EndlessPlace newSeed={port.newSeed} open={port.openEndless} /> : null}
          {ownFirst ? null : ownPlace}
          <aside class="caution" aria-labelledby="course-cautions">
            <div>
              <h2 class="h" id="course-cautions">
                {words.cautionsTitle}
              </h2>
              <p>{words.cautions}</p>
            </div>
          </aside>
        </div>
      </main>
    </div>
  );
}

/** An empty shelf stands below the course; one that had something on it when the page was opened, above. It never moves under a hand that fills or empties it. */
function useOwnFirst(own: OwnPort): { readonly ownFirst: boolean; readonly stay: () => void } {
  const [ownFirst, setFirst] = useState(() => !own.isEmpty());
  const stays = useRef(false);
  useLayoutEffect(() => {
    const look = (): void => {
      if (!stays.current) setFirst(!own.isEmpty());
    };
    look();
    return own.subscribe(look);
  }, [own]);
  const stay = (): void => {
    stays.current = true;
  };
  return { ownFirst, stay };
}
