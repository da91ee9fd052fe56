/** The room of papers: fetches the job that the address names, or the first of the course. */

import { useEffect, useMemo, useState } from 'preact/hooks';
import type { BenchSetup } from '../bench/setup.ts';
import { useFailure } from '../kit/hooks/useFailure.ts';
import { useWords } from '../kit/hooks/useWords.ts';
import { SlipPage } from '../kit/slips/Slip.tsx';
import { Button } from '../kit/theme/art.tsx';
import type { PaperId } from '../present/papersAddress.ts';
import { toldReceiver, toldScenario } from '../present/told.ts';
import { PapersPage } from '../rooms/papers/PapersPage.tsx';
import type { RoomProps } from './roomProps.ts';
import { useRoomLinks } from './useRoomLinks.ts';

export type PapersRoomProps = RoomProps & {
  /** null: the first of the course */
  readonly scenarioId: string | null;
  readonly paper: PaperId;
};

export default function PapersRoom({ scenarioId, paper, ...room }: PapersRoomProps) {
  const { library, go } = room;
  const words = useWords();
  const { shell, papers: say, store } = words;
  const links = useRoomLinks('papers', room);
  const entries = library.entries();
  const id = scenarioId ?? entries[0]?.id ?? null;
  const [found, setFound] = useState<{ readonly id: string; readonly setup: BenchSetup } | 'none' | null>(null);
  const fail = useFailure();
  useEffect(() => {
    if (id === null) return setFound('none');
    const calledOff = new AbortController();
    const { signal } = calledOff;
    library.setup(id, { signal }).then(
      (setup) => {
        if (!signal.aborted) setFound(setup?.ok ? { id, setup: setup.value } : 'none');
      },
      (error: unknown) => {
        if (!signal.aborted) fail(error);
      },
    );
    return () => calledOff.abort();
  }, [library, id]);
  const setup = useMemo(() => {
    if (found === null || found === 'none') return null;
    const receiver = toldReceiver(words, found.setup.receiver);
    return { ...found.setup, receiver, scenario: toldScenario(words, found.setup.scenario, receiver) };
  }, [words, found]);
  if (found === 'none')
    return (
      <SlipPage
        product={shell.product}
        title={say.noSuch}
        buttons={<Button onClick={() => go({ page: 'course' })}>{store.toCourse}</Button>}
      />
    );
  if (setup === null) return <main aria-busy="true" />;
  return (
    <PapersPage
      setup={setup}
      entries={entries}
      paper={paper}
      links={links}
      show={(scenarioId, one) => go({ page: 'papers', scenarioId, paper: one })}
    />
  );
}
