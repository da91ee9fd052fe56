/** The drills room: fetches the set that a look is shown on, has the look made beside the page, and keeps the tallies. */
import { useEffect, useMemo, useState } from 'preact/hooks';
import { problemLine } from '../base/result.ts';
import type { DrillId, Question } from '../drills/drill.ts';
import { receiverOf } from '../drills/question.ts';
import { DrillsPage } from '../rooms/drills/DrillsPage.tsx';
import { beside } from '../services/jobs/pageJobs.ts';
import { createCurvePlayer } from '../services/sound/curvePlayer.ts';
import { createDrillTallies } from '../services/store/drillTallies.ts';
import { freshId } from '../services/store/freshId.ts';
import type { HandbookWords } from '../words/handbook.ts';
import type { RoomProps } from './roomProps.ts';
import { useRoomLinks } from './useRoomLinks.ts';

export type DrillsRoomProps = RoomProps & {
  readonly drill: string | null;
  readonly series: string | null;
  readonly pages: () => Promise<HandbookWords>;
};

export default function DrillsRoom({ library, logbook, go, drill, series, pages }: DrillsRoomProps) {
  const tallies = useMemo(() => createDrillTallies(() => localStorage), []);
  const [ownSeries] = useState(() => freshId().slice(0, 8));
  const [book, setBook] = useState<HandbookWords | null>(null);
  useEffect(() => {
    let here = true;
    // Only the titles of its pages are wanted: without them the links have their ids.
    pages().then(
      (read) => {
        if (here) setBook(read);
      },
      () => {},
    );
    return () => {
      here = false;
    };
  }, [pages]);
  const fetch = useMemo(
    () =>
      async (id: DrillId, seed: string): Promise<Question> => {
        const receiver = receiverOf(id, seed);
        const loaded = await library.receiver(receiver);
        if (loaded === null) throw new Error(`no receiver ${receiver}`);
        if (!loaded.ok) throw new Error(loaded.problems.map(problemLine).join('\n'));
        return beside('drill', { drill: id, seed, design: loaded.value });
      },
    [library],
  );
  const player = useMemo(() => createCurvePlayer(), []);
  useEffect(() => () => player.close(), [player]);
  const links = useRoomLinks('drills', { logbook, go });
  return (
    <DrillsPage
      drill={drill}
      series={series ?? ownSeries}
      fetch={fetch}
      tallies={tallies}
      play={(curves) => player.play(curves)}
      pageTitle={(pageId) => book?.pages.find(({ id }) => id === pageId)?.title ?? pageId}
      links={links}
    />
  );
}
