/** The scenario of an id: a shipped one at once, one of the endless track when it has been made and certified. */
import { useEffect, useState } from 'preact/hooks';
import type { Library } from '../files/library.ts';
import { readEndlessId } from '../scenario/endlessId.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { EndlessOrder } from '../services/jobs/endlessWorker.ts';

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
    const worker = new Worker(new URL('../services/jobs/endlessWorker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<Scenario | null>) => {
      setFound(data === null ? { kind: 'none' } : { kind: 'found', scenario: data });
    };
    worker.onerror = () => setFound({ kind: 'none' });
    const order: EndlessOrder = { id, receivers: library.receivers };
    worker.postMessage(order);
    return () => worker.terminate();
  }, []);
  return found;
}
