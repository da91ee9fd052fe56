/**
 * One way to whatever can be put on the bench: the scenarios that come with the page, those made from a seed, and those of somebody's own. Lists are told at once, from
 * entries that say enough for a card; a scenario and its receiver are read when they are asked for.
 */
import type { Result } from '../../base/result.ts';
import type { BenchSetup } from '../../bench/setup.ts';
import type { KnownSet } from '../../certify/knownSet.ts';
import type { LoadedReceiver } from '../../files/library.ts';
import type { ScenarioEntry } from '../../present/scenarioEntry.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { Order, Outcome } from '../jobs/jobTable.ts';
import { onBench } from './onBench.ts';

/** Deals an attempt at a sealed scenario. */
export type Deal = (
  order: Order<'attempt'>,
  options?: { readonly signal?: AbortSignal },
) => Promise<Outcome<'attempt'>>;

export interface FetchOptions {
  readonly signal?: AbortSignal;
  /** hears the share that is done, 0 to 1, where making takes long */
  readonly onShare?: (share: number) => void;
  /** the number of an attempt, for a scenario that is dealt afresh for each; left out: as it lies in the course */
  readonly attempt?: number;
  /** what deals such an attempt; left out: workers beside the page */
  readonly deal?: Deal;
}

export interface Library {
  /** in the order of the course */
  entries(): readonly ScenarioEntry[];
  /** names of the entries that could not be read and are left out of the lists */
  leftOut(): readonly string[];
  /** The bench as the scenario of an id sets it up, or what is wrong with it; null: this library has none of that id. Rejects when it is called off or cannot be fetched. */
  setup(scenarioId: string, options?: FetchOptions): Promise<Result<BenchSetup> | null>;
  /** as `setup`, for a receiver by itself; `hash`: of the very one that is meant, where several of somebody's own have had that id */
  receiver(receiverId: string, hash?: string): Promise<Result<LoadedReceiver> | null>;
  /** what is known of the set that a scenario of an id puts on the bench; null: nothing */
  knownSet(scenarioId: string): Promise<KnownSet | null>;
  /** told when the entries change; returns what stops it */
  subscribe(listener: () => void): () => void;
}

/** Several as one. Where two know the same id, the earlier one is asked. */
export function joinLibraries(...libraries: readonly Library[]): Library {
  return {
    entries: () => libraries.flatMap((library) => library.entries()),
    leftOut: () => libraries.flatMap((library) => library.leftOut()),
    setup: (id, options) => firstOf(libraries, (library) => library.setup(id, options)),
    receiver: (id, hash) => firstOf(libraries, (library) => library.receiver(id, hash)),
    knownSet: (id) => firstOf(libraries, (library) => library.knownSet(id)),
    subscribe(listener) {
      const stops = libraries.map((library) => library.subscribe(listener));
      return () => {
        for (const stop of stops) stop();
      };
    },
  };
}

/** The bench with a scenario that somebody has already, such as that of a run with its receiver's hash; null: its receiver is not here, or cannot be read. */
export async function setupWith(
  library: Pick<Library, 'receiver' | 'knownSet'>,
  scenario: Scenario,
  hash?: string,
): Promise<BenchSetup | null> {
  const [loaded, known] = await Promise.all([library.receiver(scenario.receiver, hash), library.knownSet(scenario.id)]);
  if (!loaded?.ok) return null;
  const setup = await onBench(loaded.value, scenario, known);
  return setup.ok ? setup.value : null;
}

/** The bench with the scenario of a run that lies open: on the receiver that the scenario's sheet brought, where one did. */
export const setupOfOpen = (
  library: Pick<Library, 'receiver' | 'knownSet' | 'entries'>,
  scenario: Scenario,
): Promise<BenchSetup | null> =>
  setupWith(library, scenario, library.entries().find(({ id }) => id === scenario.id)?.receiverHash);

async function firstOf<T>(
  libraries: readonly Library[],
  ask: (library: Library) => Promise<T | null>,
): Promise<T | null> {
  for (const library of libraries) {
    const answer = await ask(library);
    if (answer !== null) return answer;
  }
  return null;
}
