/** The drills room: a card for each drill at the side, and the drill that is open on its sheet. */
import { useLayoutEffect, useReducer, useRef } from 'preact/hooks';
import { DRILL_PAGES, DRILLS, type DrillId } from '../../drills/drill.ts';
import { usePageTitle } from '../../kit/hooks/usePageTitle.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Header, type RoomLink, Rooms } from '../../kit/theme/art.tsx';
import { DrillCards } from './DrillCards.tsx';
import type { PlayCurves } from './LookTube.tsx';
import { OpenDrill } from './OpenDrill.tsx';
import { isSure } from './sure.ts';
import type { FetchQuestion } from './useLook.ts';
import './drills.css';
import './look.css';

export interface DrillsPageProps {
  /** null, or no drill's name: the first that is not mastered yet */
  readonly drill: string | null;
  /** the seed of the looks */
  readonly series: string;
  readonly fetch: FetchQuestion;
  readonly tallies: {
    read(drill: DrillId): readonly boolean[];
    add(drill: DrillId, right: boolean): void;
  };
  /** of a page of the handbook; its id while the handbook is on its way */
  readonly pageTitle: (pageId: string) => string;
  /** plays curves one after the other, by pitch */
  readonly play: PlayCurves;
  /** the rooms that can be entered from here, in their order */
  readonly links: readonly RoomLink[];
}

export function DrillsPage({ drill, series, fetch, tallies, pageTitle, play, links }: DrillsPageProps) {
  const { drills: words, shell } = useWords();
  const [, redraw] = useReducer<number, void>((n) => n + 1, 0);
  const read = (one: DrillId): readonly boolean[] => tallies.read(one);
  const sure = DRILLS.filter((one) => isSure(read(one))).length;
  const first = useRef(DRILLS.find((one) => !isSure(read(one))) ?? DRILLS[0]!);
  const open = DRILLS.find((one) => one === drill) ?? first.current;
  usePageTitle(words.names[open], shell.drills);
  const before = useRef(open);
  useLayoutEffect(() => {
    if (before.current === open) return;
    before.current = open;
    document.querySelector<HTMLElement>('.drill-head h2')?.focus({ preventScroll: true });
  }, [open]);
  return (
    <div class="room-drills">
      <Header
        product={shell.product}
        right={
          <p class="drills-sure">
            <span>{words.oneSkill}</span> <b>{words.sure(sure, DRILLS.length)}</b>
          </p>
        }
      >
        <Rooms name={shell.rooms} links={links} />
      </Header>
      <main class="drills">
        <div class="drills-side">
          <h1>{shell.drills}</h1>
          <p class="drills-intro">{words.intro}</p>
          <p class="drills-intro">{words.kept}</p>
          <DrillCards open={open} tallyOf={read} />
        </div>
        <OpenDrill
          key={open}
          drill={open}
          series={series}
          looks={read(open)}
          fetch={fetch}
          play={play}
          pageTitle={pageTitle(DRILL_PAGES[open])}
          onMarked={(right) => {
            tallies.add(open, right);
            redraw();
          }}
        />
      </main>
    </div>
  );
}
