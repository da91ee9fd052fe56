/** Reads own scenarios: from outside for the first time, and from the shelf whenever one is wanted. Nothing is believed either time. */
import type { Phrase } from '../../base/phrases.ts';
import { bad, good, type Problem, type Result } from '../../base/result.ts';
import type { BenchSetup } from '../../bench/setup.ts';
import { withPar } from '../../certify/certifiedPar.ts';
import { byTravel, checkScenario } from '../../files/checkScenario.ts';
import { oneOf } from '../../files/complaints.ts';
import { asFarAsKnown } from '../../files/known.ts';
import { type LoadedReceiver, loadScenario, readText } from '../../files/library.ts';
import { scenarioHash } from '../../files/scenarioFile.ts';
import { readScenario } from '../../files/scenarioSchema.ts';
import { shown } from '../../files/schemaProblems.ts';
import { withTextPlaces } from '../../files/textPlaces.ts';
import { entryOf } from '../../present/entryOf.ts';
import { receiverHash } from '../../run/serialise.ts';
import { isDealtAfresh } from '../../scenario/attempt.ts';
import { readEndlessId } from '../../scenario/endlessId.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { OwnScenario } from '../store/ownScenario.ts';
import { dealBeside } from './dealBeside.ts';
import type { FetchOptions, Library } from './library.ts';
import { onBench } from './onBench.ts';

export interface HandedScenario {
  readonly scenario: Scenario;
  readonly design: LoadedReceiver;
}

/** What a scenario from outside is checked against. */
export interface Surroundings {
  readonly library: Pick<Library, 'receiver'>;
  readonly receiverIds: readonly string[];
  /** ids of the course, which no other scenario may have */
  readonly courseIds: ReadonlySet<string>;
}

/** As `haystack check` reads it, and beside the course; every problem of the text where it is none. `on`: the hash of the very receiver, where it is known. */
export async function readHanded(
  text: string,
  file: string,
  around: Surroundings,
  on?: string,
): Promise<Result<HandedScenario>> {
  const { value, problems: own } = readText(text, file, readScenario);
  let problems: Problem[] = [...own];
  const say = (place: string, found: Phrase, wanted: Phrase): void => {
    problems.push({ file, place, found, wanted });
  };
  let design: LoadedReceiver | null = null;
  if (value !== null) {
    const named = known(() => value.receiver);
    const loaded = named === null ? null : await around.library.receiver(named, on);
    if (loaded?.ok) {
      design = loaded.value;
      problems = [...byTravel(own, loaded.value), ...checkScenario(value, loaded.value, file)];
    } else if (loaded !== null) problems.push(...loaded.problems);
    else if (named !== null) say('/receiver', ['named', named], oneOf(around.receiverIds));
    asFarAsKnown(() => {
      const { id } = value;
      if (around.courseIds.has(id) || readEndlessId(id) !== null) say('/id', ['idOfCourse', id], ['idOfOwn']);
    });
    asFarAsKnown(() => {
      if (value.attempt !== undefined) say('/attempt', shown(value.attempt), ['attempt']);
    });
  }
  if (problems.length > 0 || value === null || design === null) return bad(...withTextPlaces(problems, file, text));
  return good({ scenario: value, design });
}

function known<T>(read: () => T): T | null {
  let value: T | null = null;
  asFarAsKnown(() => {
    value = read();
  });
  return value;
}

/** As the shelf keeps it; the problems are those of a set that cannot be dealt. */
export async function toShelf(
  { scenario, design }: HandedScenario,
  text: string,
  addedAtMs: number,
): Promise<Result<OwnScenario>> {
  const setup = await onBench(design, scenario, null);
  if (!setup.ok) return setup;
  const entry = entryOf({ ...setup.value, scenario });
  return good({ hash: scenarioHash(scenario), id: scenario.id, text, addedAtMs, entry, certificate: null });
}

export async function ownSetup(
  own: OwnScenario,
  receivers: Pick<Library, 'receiver'>,
  { attempt, signal, deal = dealBeside }: FetchOptions,
): Promise<Result<BenchSetup> | null> {
  const loaded = await receivers.receiver(own.entry.receiver, own.receiverHash);
  if (loaded === null || !loaded.ok) return loaded;
  const file = `${own.id}.json`;
  const scenario = loadScenario({ file, text: own.text }, new Map([[own.entry.receiver, loaded.value]]));
  if (!scenario.ok) return scenario;
  if (attempt !== undefined && isDealtAfresh(scenario.value)) {
    const order = { design: loaded.value, scenario: scenario.value, attempt };
    return deal(order, signal === undefined ? {} : { signal });
  }
  const { certificate } = own;
  // Its par is that of the receiver that it was certified on.
  const stale = certificate?.receiverHash !== undefined && certificate.receiverHash !== receiverHash(loaded.value);
  return onBench(loaded.value, ownWithPar(scenario.value, stale ? { certificate: null } : own), null);
}

/** With the par of the certificate, as a shipped one. */
const ownWithPar = (scenario: Scenario, { certificate }: Pick<OwnScenario, 'certificate'>): Scenario =>
  withPar(scenario, certificate?.kind === 'certified' ? certificate.par : null);
