/** The scenario of an id: a shipped one at once, one of the endless track when it has been made and certified. */
import { useEffect, useState } from 'preact/hooks';
import type { Library } from '../files/library.ts';
import { readEndlessId } from '../scenario/endlessId.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { pageJobs } from '../services/jobs/pageJobs.ts';

export type FoundScenario =
  | { readonly kind: 'found'; readonly scenario: Scenario }
  | { readonly kind: 'making' | 'none' };

/** `known`: what lies open on the bench under this id, if anything does. */
export function useScenario(library: Library, id: string, known: Scenario | null): FoundScenario {
  const [found, setFound] = useState<FoundScenario>(() => {
    const scenario = library.scenarios.find((s) => s.id === id) ?? (readEndlessId(id) !== null ? known : null);
    if (scenario !== null) return { kind: 'found', scenario };
    return readEndlessId(id) === null ? { kind: 'none' } : { kind: 'making' };
  });
  useEffect(() => {
    if (found.kind !== 'making') return;
    const calledOff = new AbortController();
    pageJobs()
      .run('endless', { id }, { signal: calledOff.signal })
      .then(
        (scenario) => setFound(scenario === null ? { kind: 'none' } : { kind: 'found', scenario }),
        () => {
          if (!calledOff.signal.aborted) setFound({ kind: 'none' });
        },
      );
    return () => calledOff.abort();
  }, []);
  return found;
}
