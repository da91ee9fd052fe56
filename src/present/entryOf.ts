/** Makes the entry of a scenario. This solves a circuit: whoever shows entries has them made beforehand. */
import { createFaultBook } from '../bench/faultsNow.ts';
import { type BenchSetup, designOf, firstResponse, initialState } from '../bench/setup.ts';
import { createTruth, relativeTo } from '../bench/truth.ts';
import { createStatedResponse } from '../receiver/statedResponse.ts';
import { openPar, parIsKnown } from '../scenario/par.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { type CardCurve, drawCardCurve } from './cardCurve.ts';
import type { EntryText, ScenarioEntry } from './scenarioEntry.ts';

export function entryOf(setup: BenchSetup): ScenarioEntry {
  const { scenario } = setup;
  const {
    id,
    code,
    title,
    track,
    order,
    difficulty,
    recommendedAfter,
    sealed,
    seed,
    receiver,
    words,
    timeLimitSeconds,
  } = scenario;
  return {
    id,
    code,
    title,
    track,
    order,
    difficulty,
    recommendedAfter,
    sealed,
    par: openPar(scenario),
    timeLimitSeconds,
    seed,
    receiver,
    brief: words.brief,
    receiverName: setup.receiver.setName,
    curve: curveOf(setup),
    ...(parIsKnown(scenario) ? {} : { uncertified: true as const }),
    ...(scenario.language === undefined ? {} : { language: scenario.language }),
    ...(scenario.translations === undefined ? {} : { translations: textsOf(scenario.translations) }),
  };
}

function textsOf(translations: NonNullable<Scenario['translations']>): Readonly<Record<string, EntryText>> {
  return Object.fromEntries(
    Object.entries(translations).map(([tag, { title, words }]) => [tag, { title, brief: words.brief }]),
  );
}

/** The first response of the job: as it is found, with whatever has failed, and as the sheet wants it; of a sealed job nobody may see how it is found. */
function curveOf(setup: BenchSetup): CardCurve {
  const response = firstResponse(setup);
  const { receiver, deck } = designOf(setup);
  const { nominal } = createStatedResponse(receiver, deck, response);
  const wanted = { hz: nominal.hz, relative: relativeTo(nominal, response.specification) };
  if (setup.scenario.sealed) return drawCardCurve(wanted, wanted);
  return drawCardCurve(createTruth(setup, createFaultBook(setup)).of(initialState(setup), response.id), wanted);
}
