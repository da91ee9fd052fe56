/** The set that a draft puts on the bench: its receiver's design, or the set of a number, dealt beside the page. */

import { useEffect, useState } from 'preact/hooks';
import type { BenchSetup } from '../../bench/setup.ts';
import type { LoadedReceiver } from '../../files/library.ts';
import { useFailure } from '../../kit/hooks/useFailure.ts';
import type { StandingSet } from '../../rooms/workshop/scenario/workshopPort.ts';
import type { Library } from '../../services/library/library.ts';
import { onBench } from '../../services/library/onBench.ts';
import { type Draft, newDraft } from '../../workshop/draft.ts';

export interface Standing {
  readonly standing: StandingSet;
  /** null: not read yet, or not to be had */
  readonly design: LoadedReceiver | null;
}

const FETCHING: Standing = { standing: { kind: 'fetching' }, design: null };

export function useStanding(library: Library, { receiver, set }: Pick<Draft, 'receiver' | 'set'>): Standing {
  const of = `${receiver} ${set ?? ''}`;
  const [found, setFound] = useState<{ readonly of: string; readonly standing: Standing } | null>(null);
  const fail = useFailure();
  useEffect(() => {
    let here = true;
    read(library, receiver, set).then(
      // In a task of its own: reading the set was one already, and the whole desk is drawn for it.
      (standing) =>
        setTimeout(() => {
          if (here) setFound({ of, standing });
        }),
      (error: unknown) => {
        if (here) fail(error);
      },
    );
    return () => {
      here = false;
    };
  }, [library, of]);
  return found?.of === of ? found.standing : FETCHING;
}

async function read(library: Library, receiver: string, set: number | undefined): Promise<Standing> {
  const loaded = await library.receiver(receiver);
  if (loaded === null) return { standing: { kind: 'cannot', problems: [] }, design: null };
  if (!loaded.ok) return { standing: { kind: 'cannot', problems: loaded.problems }, design: null };
  const design = loaded.value;
  if (set === undefined) return { standing: { kind: 'stands', set: design }, design };
  // Nothing of the draft but its set: what is wrong with the rest is told elsewhere.
  const laid = await onBench(design, { ...newDraft(receiver, 1), set }, null);
  if (!laid.ok) return { standing: { kind: 'cannot', problems: laid.problems }, design };
  const { scenario: _, ...dealt }: BenchSetup = laid.value;
  return { standing: { kind: 'stands', set: dealt }, design };
}
