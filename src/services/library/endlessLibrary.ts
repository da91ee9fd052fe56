/** The scenarios of the endless track: none is listed, each is made from its own id when it is asked for. */
import { bad } from '../../base/result.ts';
import { readEndlessId } from '../../scenario/endlessId.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { FetchOptions, Library } from './library.ts';
import { onBench } from './onBench.ts';

/** `make` gives null where nothing can be made of an id; `receivers` has the receivers that the scenarios are about. */
export function createEndlessLibrary(
  make: (id: string, options: FetchOptions) => Promise<Scenario | null>,
  receivers: Pick<Library, 'receiver'>,
): Library {
  return {
    entries: () => [],
    leftOut: () => [],
    async setup(id, options = {}) {
      if (readEndlessId(id) === null) return null;
      const scenario = await make(id, options);
      if (scenario === null) return bad({ file: id, place: '', found: ['nothing'], wanted: ['certifiable'] });
      const loaded = await receivers.receiver(scenario.receiver);
      if (loaded === null) return null;
      return loaded.ok ? onBench(loaded.value, scenario, null) : loaded;
    },
    receiver: async () => null,
    knownSet: async () => null,
    subscribe: () => () => {},
  };
}
