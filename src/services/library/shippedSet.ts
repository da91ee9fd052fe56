/** The sets that the certificates of the shipped scenarios know, each in a piece of its own that is fetched when it is asked for. */
import { type KnownSet, knownSetIn } from '../../certify/knownSet.ts';

const CERTIFICATES = import.meta.glob<string>('../../../certificates/*.json', { query: '?raw', import: 'default' });

/** null: no certificate of that id, or one without a set. Rejects when it cannot be fetched. */
export async function shippedSet(scenarioId: string): Promise<KnownSet | null> {
  const text = await CERTIFICATES[`../../../certificates/${scenarioId}.json`]?.();
  return text === undefined ? null : knownSetIn(text);
}
