/** The receivers and scenarios that come with the page, bundled as texts and read like any other file. */
import { problemLine } from '../../base/result.ts';
import type { BenchSetup } from '../../bench/setup.ts';
import { type Library, loadLibrary } from '../../files/library.ts';
import type { Scenario } from '../../scenario/scenario.ts';

const TEXTS = import.meta.glob<string>(
  ['../../../scenarios/*/*.json', '../../../scenarios/receivers/*/*', '!../../../scenarios/schema/*'],
  { query: '?raw', import: 'default', eager: true },
);

/** Throws with every problem: a page built with a broken file is a programmer's error. */
export function readShippedLibrary(): Library {
  const library = loadLibrary(TEXTS);
  if (!library.ok) throw new Error(library.problems.map(problemLine).join('\n'));
  return library.value;
}

export function setupFor(library: Library, scenario: Scenario): BenchSetup | null {
  const loaded = library.receivers.get(scenario.receiver);
  return loaded === undefined ? null : { receiver: loaded.receiver, deck: loaded.deck, scenario };
}
