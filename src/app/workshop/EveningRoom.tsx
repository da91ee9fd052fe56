/** The workshop's place for the sheet of an evening: what its page may ask of the rest. */
import { useMemo } from 'preact/hooks';
import { eveningText, readEvening } from '../../files/evening.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { entryIn } from '../../present/scenarioEntry.ts';
import { EveningPage } from '../../rooms/workshop/evening/EveningPage.tsx';
import type { EveningDraft, EveningPort } from '../../rooms/workshop/evening/eveningPort.ts';
import { PAR_NOT_KNOWN } from '../../scenario/par.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { Library } from '../../services/library/library.ts';
import type { Words } from '../../words/words.ts';
import { download } from '../download.ts';
import type { RoomProps } from '../roomProps.ts';
import { reasonsOf } from '../takeFiles.ts';
import { useRoomLinks } from '../useRoomLinks.ts';
import { readDraft, writeDraft } from './eveningDraft.ts';

export default function EveningRoom({ library, logbook, go }: RoomProps) {
  const links = useRoomLinks('workshop', { logbook, go });
  const words = useWords();
  const port = useMemo(
    (): EveningPort => ({
      offered: () => library.entries().map((entry) => entryIn(words.language, entry)),
      draft: () => readDraft(() => localStorage),
      write: (draft) => writeDraft(() => localStorage, draft),
      async save(draft) {
        const text = await fileOf(words, library, draft);
        if (typeof text !== 'string') return text;
        download(`${fileName(draft.title)}.json`, text);
        return [];
      },
      subscribe: library.subscribe,
    }),
    [library, words],
  );
  return <EveningPage port={port} links={links} onPlace={(place) => go({ page: 'workshop', place })} />;
}

/** What is handed out is read once more as whoever opens it will: nobody is given a file that is refused. */
export async function fileOf(words: Words, library: Library, draft: EveningDraft): Promise<string | readonly string[]> {
  const scenarios: Scenario[] = [];
  for (const id of draft.scenarios) {
    const setup = await library.setup(id);
    if (setup === null) return [words.workshop.evening.gone(id)];
    if (!setup.ok) return reasonsOf(words, setup.problems);
    scenarios.push({ ...setup.value.scenario, par: PAR_NOT_KNOWN });
  }
  const { title, author, minutes, order } = draft;
  const text = eveningText({
    ...{ title: title.trim(), minutes, order, exam: null, scenarios },
    ...(author.trim() === '' ? {} : { author: author.trim() }),
  });
  const read = readEvening(text, `${fileName(title)}.json`);
  return read.ok ? text : reasonsOf(words, read.problems);
}

/** Letters and digits of the title, as far as a file system takes them anywhere. */
export function fileName(title: string): string {
  const plain = title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 40);
  return plain === '' ? 'evening' : `evening-${plain}`;
}
