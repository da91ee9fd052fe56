/** The handbook room: fetches its pages in the language of the page and knows the ways to the other rooms. */
import { useEffect, useState } from 'preact/hooks';
import { useWords } from '../kit/hooks/useWords.ts';
import { HandbookPage } from '../rooms/handbook/HandbookPage.tsx';
import type { HandbookWords } from '../words/handbook.ts';
import type { RoomProps } from './roomProps.ts';

export type HandbookRoomProps = Pick<RoomProps, 'logbook' | 'go'> & {
  readonly pageId: string | null;
  readonly pages: () => Promise<HandbookWords>;
};

export default function HandbookRoom({ logbook, go, pageId, pages }: HandbookRoomProps) {
  const { shell } = useWords();
  const [read, setRead] = useState<{ readonly book: HandbookWords } | { readonly error: unknown } | null>(null);
  useEffect(() => {
    let here = true;
    pages().then(
      (book) => {
        if (here) setRead({ book });
      },
      (error: unknown) => {
        if (here) setRead({ error });
      },
    );
    return () => {
      here = false;
    };
  }, [pages]);
  const [, setRuns] = useState(0);
  useEffect(() => logbook.subscribe(() => setRuns((n) => n + 1)), [logbook]);
  if (read === null) return <main aria-busy="true" />;
  // Thrown where the room's boundary hears it.
  if ('error' in read) throw read.error;
  const open = logbook.openRuns()[0];
  const last = logbook.keptRuns().at(-1);
  const links = [
    { name: shell.course, current: false, go: () => go({ page: 'course' }) },
    { name: shell.drills, current: false, go: () => go({ page: 'drills', drill: null, series: null }) },
    { name: shell.handbook, current: true, go: () => go({ page: 'handbook', pageId: null }) },
    ...(open === undefined
      ? []
      : [{ name: shell.bench, current: false, go: () => go({ page: 'bench', scenarioId: open.scenarioId }) }]),
    { name: shell.classroom, current: false, go: () => go({ page: 'class', fileNo: null }) },
    ...(last === undefined
      ? []
      : [{ name: shell.reports, current: false, go: () => go({ page: 'report', runId: last.runId }) }]),
  ];
  return <HandbookPage book={read.book} pageId={pageId} links={links} />;
}
