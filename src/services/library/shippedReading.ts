/** Reads shipped receivers and scenarios from their texts, like any other file. This is what a bench needs; the lists do without it. */
import type { Result } from '../../base/result.ts';
import type { BenchSetup } from '../../bench/setup.ts';
import { withPar } from '../../certify/certifiedPar.ts';
import { deckNameIn, type LoadedReceiver, loadReceiver, loadScenario } from '../../files/library.ts';
import { isDealtAfresh } from '../../scenario/attempt.ts';
import { dealBeside } from './dealBeside.ts';
import type { FetchOptions } from './library.ts';
import { onBench } from './onBench.ts';
import { shippedPar, shippedSet } from './shippedSet.ts';
import { shippedFolderTexts, shippedText } from './shippedTexts.ts';

/** null: no receiver of that id. */
export async function readShippedReceiver(id: string): Promise<Result<LoadedReceiver> | null> {
  const folder = `/receivers/${id}`;
  const texts = await shippedFolderTexts(folder);
  const text = (file: string) => texts.find((one) => one.file.endsWith(file)) ?? null;
  const receiver = text(`${folder}/receiver.json`);
  if (receiver === null) return null;
  const deckFile = `${folder}/${deckNameIn(receiver.text)}`;
  const deck = text(deckFile);
  if (deck === null) throw new Error(`${deckFile} is not there`);
  return loadReceiver(receiver, deck);
}

/** null: no scenario of that id. `receiverId`, where it is known beforehand, spares a second wait. */
export async function readShippedSetup(
  id: string,
  receiverId: string,
  { attempt, signal, deal = dealBeside }: FetchOptions = {},
): Promise<Result<BenchSetup> | null> {
  const [text, loaded, known, par] = await Promise.all([
    shippedText(`/${id}.json`),
    readShippedReceiver(receiverId),
    shippedSet(id),
    shippedPar(id),
  ]);
  if (text === null || loaded === null) return null;
  if (!loaded.ok) return loaded;
  const scenario = loadScenario(text, new Map([[receiverId, loaded.value]]));
  if (!scenario.ok) return scenario;
  if (attempt === undefined || !isDealtAfresh(scenario.value))
    return onBench(loaded.value, withPar(scenario.value, par), known);
  return deal({ design: loaded.value, scenario: scenario.value, attempt }, signal === undefined ? {} : { signal });
}
