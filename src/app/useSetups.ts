/** What may be put on the bench under an id: the scenario as the library has it today, and the one that the open run began with. */
import { useEffect, useState } from 'preact/hooks';
import { problemLine } from '../base/result.ts';
import type { BenchSetup } from '../bench/setup.ts';
import { scenarioHash } from '../files/scenarioFile.ts';
import { readEndlessId } from '../scenario/endlessId.ts';
import type { DealsAhead } from '../services/library/dealsAhead.ts';
import { type FetchOptions, type Library, setupOfOpen } from '../services/library/library.ts';
import type { OpenRun } from '../services/store/keptRuns.ts';

export interface BenchSetups {
  /** A run goes on with the scenario it began with, even where the library's has changed since. null: no run is open, or its receiver is not here. */
  readonly recorded: BenchSetup | null;
  readonly shipped: BenchSetup;
}

export type FoundSetups =
  | { readonly kind: 'found'; readonly setups: BenchSetups }
  | { readonly kind: 'fetching' | 'none' };

/** Of an open run: its scenario, or the hash by which a sealed one names it. */
type Begun = Pick<OpenRun, 'scenario' | 'scenarioHash' | 'attempt'>;

/** Of an exam: the number that it deals this scenario from; null: as it lies in the sheet. */
interface Dealt {
  readonly attempt: number | null;
}

/** `begun`: of the run that lies open under this id, if there is one. What cannot be fetched or read is thrown where the room's boundary hears it. */
export function useSetups(
  library: Library,
  ahead: Pick<DealsAhead, 'take'>,
  id: string,
  begun: Begun | null,
  exam: Dealt | null = null,
): FoundSetups {
  const [found, setFound] = useState<FoundSetups>({ kind: 'fetching' });
  const [failure, setFailure] = useState<{ readonly error: unknown } | null>(null);
  useEffect(() => {
    const calledOff = new AbortController();
    const { signal } = calledOff;
    const fresh = (): FetchOptions => dealOf(exam) ?? ahead.take(id, signal);
    setupsOf(library, id, begun, fresh, signal).then(
      (setups) => {
        if (!signal.aborted) setFound(setups === null ? { kind: 'none' } : { kind: 'found', setups });
      },
      (error: unknown) => {
        if (!signal.aborted) setFailure({ error });
      },
    );
    return () => calledOff.abort();
  }, []);
  if (failure !== null) throw failure.error;
  return found;
}

async function setupsOf(
  library: Library,
  id: string,
  begun: Begun | null,
  fresh: () => FetchOptions,
  signal: AbortSignal,
): Promise<BenchSetups | null> {
  const recorded = begun === null || begun.scenario === null ? null : await setupOfOpen(library, begun.scenario);
  const endless = readEndlessId(id) !== null;
  // A scenario of the endless track is the same whenever it is made; what the run has of it is quicker to be had.
  if (endless && recorded !== null) return { recorded, shipped: recorded };
  const sealedAs = begun?.scenario === null ? begun.scenarioHash : null;
  if (sealedAs !== null) {
    // A sealed run goes on only with the very scenario that it began with: its attempt made again, or, of the days before attempts, the course's own.
    const again = await library.setup(id, begun!.attempt === null ? { signal } : { signal, attempt: begun!.attempt });
    if (again?.ok) {
      const setup = again.value;
      if (scenarioHash(setup.scenario) === sealedAs) return { recorded: setup, shipped: setup };
    }
  }
  const today = await library.setup(id, { signal, ...fresh() }).catch((error: unknown) => {
    if (endless) return null;
    throw error;
  });
  if (today !== null && !today.ok && !endless) throw new Error(today.problems.map(problemLine).join('\n'));
  const shipped = today?.ok ? today.value : recorded;
  return shipped === null ? null : { recorded, shipped };
}

/** What an exam says of it; null: there is none. */
const dealOf = (exam: Dealt | null): FetchOptions | null => {
  if (exam === null) return null;
  return exam.attempt === null ? {} : { attempt: exam.attempt };
};
