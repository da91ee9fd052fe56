/** The scenarios of the endless track: none is listed, each is made from its own id when it is asked for. */
import { bad } from '../../base/result.ts';
import { isDealtAfresh } from '../../scenario/attempt.ts';
import { readEndlessId } from '../../scenario/endlessId.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { Deal, FetchOptions, Library } from './library.ts';
import { onBench } from './onBench.ts';

/** `make` gives null where nothing can be made of an id; `receivers` has the receivers that the scenarios are about; `dealHere` makes an attempt at a sealed one where nothing else is said. */
export function createEndlessLibrary(
  make: (id: string, options: FetchOptions) => Promise<Scenario | null>,
  receivers: Pick<Library, 'receiver'>,
  dealHere: Deal,
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
      if (!loaded.ok) return loaded;
      const { attempt, signal, deal = dealHere } = options;
      if (attempt === undefined || !isDealtAfresh(scenario)) return onBench(loaded.value, scenario, null);
      const dealt = await deal({ design: loaded.value, scenario, attempt }, signal === undefined ? {} : { signal });
      // A name that can be handed out has a bench, whatever the number.
      return dealt.ok ? dealt : onBench(loaded.value, scenario, null);
    },
    receiver: async () => null,
    knownSet: async () => null,
    subscribe: () => () => {},
  };
}
