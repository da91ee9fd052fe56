/** Sets and pars that the certificates of the shipped scenarios know, each in a piece of its own that is fetched when it is asked for. */
import { parIn } from '../../certify/certifiedPar.ts';
import { type KnownSet, knownSetIn } from '../../certify/knownSet.ts';
import type { Par } from '../../scenario/par.ts';

const CERTIFICATES = import.meta.glob<string>('../../../certificates/*.json', { query: '?raw', import: 'default' });

/** null: no certificate of that id, or one without a set. Rejects when it cannot be fetched. */
export async function shippedSet(scenarioId: string): Promise<KnownSet | null> {
  const text = await certificateText(scenarioId);
  return text === undefined ? null : knownSetIn(text);
}

/** null: no certificate of that id. Rejects when it cannot be fetched. */
export async function shippedPar(scenarioId: string): Promise<Par | null> {
  const text = await certificateText(scenarioId);
  return text === undefined ? null : parIn(text);
}

function certificateText(scenarioId: string): Promise<string | undefined> {
  return CERTIFICATES[`../../../certificates/${scenarioId}.json`]?.() ?? Promise.resolve(undefined);
}
