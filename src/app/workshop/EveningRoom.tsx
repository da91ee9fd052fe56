/** The workshop's place for the sheet of an evening: what its page may ask of the rest. */
import { useMemo } from 'preact/hooks';
import { useWords } from '../../kit/hooks/useWords.ts';
import { entryIn } from '../../present/scenarioEntry.ts';
import { EveningPage } from '../../rooms/workshop/evening/EveningPage.tsx';
import type { EveningDraft, EveningPort } from '../../rooms/workshop/evening/eveningPort.ts';
import { download } from '../download.ts';
import type { RoomProps } from '../roomProps.ts';
import { useRoomLinks } from '../useRoomLinks.ts';
import { readDraft, writeDraft } from './eveningDraft.ts';
import { dealsOf, fileName, fileOf, sealedFileOf } from './eveningFile.ts';

/** From another machine: neither a file nor a server that talks to this machine alone. */
const reachable = ({ protocol, hostname }: Location): boolean =>
  protocol !== 'file:' && !/^(localhost|127\..*|\[::1\])$/.test(hostname);

const nameOf = ({ title, exam }: EveningDraft): string => `${fileName(title)}${exam === null ? '' : '-sealed'}.json`;

export default function EveningRoom({ library, logbook, go }: RoomProps) {
  const links = useRoomLinks('workshop', { logbook, go });
  const words = useWords();
  const port = useMemo(
    (): EveningPort => ({
      offered: () => library.entries().map((entry) => entryIn(words.language, entry)),
      draft: () => readDraft(() => localStorage),
      write: (draft) => writeDraft(() => localStorage, draft),
      async save(draft, exam) {
        const text =
          exam === null
            ? await fileOf(words, library, draft)
            : await sealedFileOf(words, library, draft, exam.terms, exam.phrase);
        if (typeof text !== 'string') return text;
        download(nameOf(draft), text);
        return [];
      },
      deals: (draft, terms, candidates) => dealsOf(words, library, draft, terms, candidates),
      fileName: nameOf,
      address: reachable(location) ? location.href.split('#')[0]! : null,
      subscribe: library.subscribe,
    }),
    [library, words],
  );
  return <EveningPage port={port} links={links} onPlace={(place) => go({ page: 'workshop', place })} />;
}
