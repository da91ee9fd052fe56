/** The handbook room: fetches its pages in the language of the page and knows the ways to the other rooms. */
import { useEffect, useState } from 'preact/hooks';
import { HandbookPage } from '../rooms/handbook/HandbookPage.tsx';
import type { HandbookWords } from '../words/handbook.ts';
import type { RoomProps } from './roomProps.ts';
import { useRoomLinks } from './useRoomLinks.ts';

export type HandbookRoomProps = Pick<RoomProps, 'logbook' | 'go'> & {
  readonly pageId: string | null;
  readonly pages: () => Promise<HandbookWords>;
};

export default function HandbookRoom({ logbook, go, pageId, pages }: HandbookRoomProps) {
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
  const links = useRoomLinks('handbook', { logbook, go });
  if (read === null) return <main aria-busy="true" />;
  // Thrown where the room's boundary hears it.
  if ('error' in read) throw read.error;
  return <HandbookPage book={read.book} pageId={pageId} links={links} />;
}
