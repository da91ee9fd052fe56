/**
 * Puts receivers, decks and scenarios together from texts. Whoever has the texts (a bundler in the page, the file system on the command line, a test)
 * hands them over with their paths; nothing here reads anything by itself.
 */
import type { Phrase } from '../base/phrases.ts';
import { bad, good, type Problem, type Result } from '../base/result.ts';
import { buildNetwork } from '../physics/buildNetwork.ts';
import type { Deck } from '../physics/deck.ts';
import { readDeck } from '../physics/readDeck.ts';
import type { Receiver } from '../receiver/receiver.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { checkReceiver } from './checkReceiver.ts';
import { byTravel, checkScenario } from './checkScenario.ts';
import { oneOf } from './complaints.ts';
import { asFarAsKnown, eachKnown, type Reading, resultOf } from './known.ts';
import { PIECE_LIMITS, readJson } from './parseJson.ts';
import { readReceiver } from './receiverSchema.ts';
import { readScenario } from './scenarioSchema.ts';
import { shown } from './schemaProblems.ts';
import { withTextPlaces } from './textPlaces.ts';

/** A text and the name by which problems speak of it. */
export interface NamedText {
  readonly file: string;
  readonly text: string;
}

export interface LoadedReceiver {
  readonly receiver: Receiver;
  readonly deck: Deck;
}

export interface ScenarioFolder {
  /** by receiver id */
  readonly receivers: ReadonlyMap<string, LoadedReceiver>;
  /** in the order of the course: by track, then by order */
  readonly scenarios: readonly Scenario[];
}

/** A receiver with its deck, or the problems of both texts. */
export function loadReceiver(receiverText: NamedText, deckText: NamedText): Result<LoadedReceiver> {
  const { file, text } = receiverText;
  const receiver = readText(text, file, readReceiver);
  const deck = readDeck(deckText.text, deckText.file);
  const problems = [...receiver.problems];
  if (deck.ok) {
    if (receiver.value !== null) problems.push(...checkReceiver(receiver.value, deck.value, file));
    const network = buildNetwork(deck.value, deckText.file);
    if (!network.ok) problems.push(...network.problems);
  } else problems.push(...deck.problems);
  if (problems.length > 0 || receiver.value === null || !deck.ok) return bad(...withTextPlaces(problems, file, text));
  return good({ receiver: receiver.value, deck: deck.value });
}

/** A scenario that fits one of the receivers, or its problems. */
export function loadScenario(
  scenarioText: NamedText,
  receivers: ReadonlyMap<string, LoadedReceiver>,
): Result<Scenario> {
  return resultOf(scenarioAsKnown(scenarioText, receivers));
}

function scenarioAsKnown({ file, text }: NamedText, receivers: ReadonlyMap<string, LoadedReceiver>): Reading<Scenario> {
  const { value, problems: own } = readText(text, file, readScenario);
  let problems = [...own];
  asFarAsKnown(() => {
    if (value === null) return;
    const loaded = receivers.get(value.receiver);
    if (loaded !== undefined) problems = [...byTravel(own, loaded), ...checkScenario(value, loaded, file)];
    else
      problems.push({
        ...{ file, place: '/receiver' },
        found: ['named', value.receiver],
        wanted: oneOf([...receivers.keys()]),
      });
  });
  return { value, problems: withTextPlaces(problems, file, text) };
}

/** A scenario that is whole in itself, from its text. */
export function scenarioFrom(text: string, file: string): Result<Scenario> {
  const { value, problems } = readText(text, file, readScenario);
  return resultOf({ value, problems: withTextPlaces(problems, file, text) });
}

/** From text to as much of a file as is known, and every problem of it. */
export function readText<T>(text: string, file: string, read: (json: unknown, file: string) => Reading<T>): Reading<T> {
  const json = readJson(text, file, PIECE_LIMITS);
  if (json.value === null && json.problems.length > 0) return { value: null, problems: json.problems };
  const inside = read(json.value, file);
  return { value: inside.value, problems: [...json.problems, ...inside.problems] };
}

/**
 * The whole of a scenarios folder: texts by path, where a path ends in `receivers/<id>/receiver.json`, `receivers/<id>/<deck>.cir` or
 * `<track>/<id>.json`. Other files (the published schemas, words for people) are left alone.
 */
export function loadScenarioFolder(texts: Readonly<Record<string, string>>): Result<ScenarioFolder> {
  const problems: Problem[] = [];
  const receivers = new Map<string, LoadedReceiver>();
  const shelf: { readonly file: string; readonly receiver: Receiver }[] = [];
  for (const [file, text] of sorted(texts, /(^|\/)receivers\/[^/]+\/receiver\.json$/)) {
    const folder = file.slice(0, file.lastIndexOf('/'));
    const deckFile = `${folder}/${deckNameIn(text)}`;
    const deck = texts[deckFile];
    if (deck === undefined) {
      problems.push({ file: deckFile, place: '', found: ['noSuchFile'], wanted: ['deckNamedBy', file] });
      continue;
    }
    const loaded = loadReceiver({ file, text }, { file: deckFile, text: deck });
    if (!loaded.ok) {
      problems.push(...loaded.problems);
      continue;
    }
    const { receiver } = loaded.value;
    shelf.push({ file, receiver });
    receivers.set(receiver.id, loaded.value);
  }
  for (const problem of shelfProblems(shelf))
    problems.push(...withTextPlaces([problem], problem.file, texts[problem.file] ?? ''));

  const scenarios: { readonly file: string; readonly scenario: Scenario }[] = [];
  for (const [file, text] of sorted(texts, /(^|\/)(?!receivers\/|schema\/)[^/]+\/[^/]+\.json$/)) {
    if (/(^|\/)receivers\//.test(file)) continue;
    const loaded = scenarioAsKnown({ file, text }, receivers);
    if (loaded.value !== null) scenarios.push({ file, scenario: loaded.value });
    problems.push(...loaded.problems);
  }
  for (const problem of courseProblems(scenarios))
    problems.push(...withTextPlaces([problem], problem.file, texts[problem.file] ?? ''));
  if (problems.length > 0) return bad(...problems);
  const course = scenarios.map((s) => s.scenario).sort((a, b) => compare(a.track, b.track) || a.order - b.order);
  return good({ receivers, scenarios: course });
}

/** What must hold between the receivers of a folder: each is named as the folder that it lies in, or as its file, and each name is there once. */
export function shelfProblems(all: readonly { readonly file: string; readonly receiver: Receiver }[]): Problem[] {
  const problems: Problem[] = [];
  const seen = new Set<string>();
  eachKnown(
    () => all,
    ({ file, receiver: { id } }) => {
      const name: Phrase = ['named', id];
      if (!file.endsWith(`${id}/receiver.json`) && file.split('/').at(-1) !== `${id}.json`)
        problems.push({ file, place: '/id', found: name, wanted: ['folderName'] });
      if (seen.has(id)) problems.push({ file, place: '/id', found: ['twice', { phrase: name }], wanted: ['eachOnce'] });
      seen.add(id);
    },
  );
  return problems;
}

/** What must hold between the scenarios of a folder. `elsewhere`: ids of scenarios that may be named and do not lie in it. */
export function courseProblems(
  all: readonly { readonly file: string; readonly scenario: Scenario }[],
  elsewhere: ReadonlySet<string> = new Set(),
): Problem[] {
  const problems: Problem[] = [];
  const order = new Map<string, Scenario>();
  eachKnown(
    () => all,
    ({ scenario }) => {
      order.set(scenario.id, scenario);
    },
  );
  const seen = new Set<string>();
  for (const { file, scenario } of all) {
    const say = (place: string, found: Phrase, wanted: Phrase): void => {
      problems.push({ file, place, found, wanted });
    };
    const once = (place: string, phrase: Phrase): void => {
      const mark = JSON.stringify([place, phrase]);
      if (seen.has(mark)) say(place, ['twice', { phrase }], ['eachOnce']);
      seen.add(mark);
    };
    asFarAsKnown(() => {
      const { id, track } = scenario;
      if (!`/${file}`.endsWith(`/${track}/${id}.json`))
        say('', ['idInTrack', id, track], ['fileNamed', `${track}/${id}.json`]);
    });
    asFarAsKnown(() => once('/id', ['named', scenario.id]));
    asFarAsKnown(() => once('/code', ['named', scenario.code]));
    asFarAsKnown(() => once('/order', ['orderIn', scenario.order, scenario.track]));
    asFarAsKnown(() => {
      if (scenario.attempt !== undefined) say('/attempt', shown(scenario.attempt), ['attempt']);
    });
    asFarAsKnown(() => {
      eachKnown(
        () => scenario.recommendedAfter,
        (before, i) => {
          const { id } = scenario;
          // That is told of the file by itself.
          if (before === id) return;
          const other = order.get(before);
          if (other === undefined && elsewhere.has(before)) return;
          if (other === undefined) {
            const others = [...order.keys()].filter((one) => one !== id);
            say(`/recommendedAfter/${i}`, ['named', before], oneOf(others));
          } else if (other.track === scenario.track && other.order >= scenario.order) {
            say(`/recommendedAfter/${i}`, ['laterScenario', before], ['lowerOrder']);
          } else if (comesAfter(order, other, id))
            say(`/recommendedAfter/${i}`, ['comesAfterThis', before], ['noRound']);
        },
      );
    });
  }
  return problems;
}

/** Whether a scenario is to be done after the one called `id`, at once or by way of others. */
function comesAfter(all: ReadonlyMap<string, Scenario>, from: Scenario, id: string): boolean {
  const seen = new Set<string>();
  const waiting = [from.id];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (next === id) return true;
    if (seen.has(next)) continue;
    seen.add(next);
    const name = next;
    eachKnown(
      () => all.get(name)?.recommendedAfter ?? [],
      (before) => void waiting.push(before),
    );
  }
  return false;
}

/** The deck's name, from a receiver text that may be broken in other ways: its own problems are told when it is read. */
export function deckNameIn(text: string): string {
  return /"deck"\s*:\s*"([a-z0-9_-]+\.cir)"/.exec(text.slice(0, 100_000))?.[1] ?? 'network.cir';
}

function sorted(texts: Readonly<Record<string, string>>, pattern: RegExp): [string, string][] {
  return Object.entries(texts)
    .filter(([path]) => pattern.test(path))
    .sort(([a], [b]) => compare(a, b));
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
