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
import { checkScenario } from './checkScenario.ts';
import { oneOf } from './complaints.ts';
import { parseJson } from './parseJson.ts';
import { parseReceiver } from './receiverSchema.ts';
import { parseScenario } from './scenarioSchema.ts';
import { shown } from './schemaProblems.ts';

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
  const json = parseJson(receiverText.text, receiverText.file);
  const receiver = json.ok ? parseReceiver(json.value, receiverText.file) : json;
  const deck = readDeck(deckText.text, deckText.file);
  const problems: Problem[] = [];
  if (!receiver.ok) problems.push(...receiver.problems);
  if (!deck.ok) problems.push(...deck.problems);
  if (!receiver.ok || !deck.ok) return bad(...problems);
  problems.push(...checkReceiver(receiver.value, deck.value, receiverText.file));
  const network = buildNetwork(deck.value, deckText.file);
  if (!network.ok) problems.push(...network.problems);
  return problems.length === 0 ? good({ receiver: receiver.value, deck: deck.value }) : bad(...problems);
}

/** A scenario that fits one of the receivers, or its problems. */
export function loadScenario(
  scenarioText: NamedText,
  receivers: ReadonlyMap<string, LoadedReceiver>,
): Result<Scenario> {
  const { file } = scenarioText;
  const json = parseJson(scenarioText.text, file);
  const scenario = json.ok ? parseScenario(json.value, file) : json;
  if (!scenario.ok) return scenario;
  const loaded = receivers.get(scenario.value.receiver);
  if (loaded === undefined) {
    return bad({
      file,
      place: '/receiver',
      found: ['named', scenario.value.receiver],
      wanted: oneOf([...receivers.keys()]),
    });
  }
  const problems = checkScenario(scenario.value, loaded, file);
  return problems.length === 0 ? scenario : bad(...problems);
}

/**
 * The whole of a scenarios folder: texts by path, where a path ends in `receivers/<id>/receiver.json`, `receivers/<id>/<deck>.cir` or
 * `<track>/<id>.json`. Other files (the published schemas, words for people) are left alone.
 */
export function loadScenarioFolder(texts: Readonly<Record<string, string>>): Result<ScenarioFolder> {
  const problems: Problem[] = [];
  const receivers = new Map<string, LoadedReceiver>();
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
    const { id } = loaded.value.receiver;
    if (!folder.endsWith(`/${id}`)) problems.push({ file, place: '/id', found: ['named', id], wanted: ['folderName'] });
    receivers.set(id, loaded.value);
  }

  const scenarios: { readonly file: string; readonly scenario: Scenario }[] = [];
  for (const [file, text] of sorted(texts, /(^|\/)(?!receivers\/|schema\/)[^/]+\/[^/]+\.json$/)) {
    if (/(^|\/)receivers\//.test(file)) continue;
    const loaded = loadScenario({ file, text }, receivers);
    if (loaded.ok) scenarios.push({ file, scenario: loaded.value });
    else problems.push(...loaded.problems);
  }
  problems.push(...courseProblems(scenarios));
  if (problems.length > 0) return bad(...problems);
  const course = scenarios.map((s) => s.scenario).sort((a, b) => compare(a.track, b.track) || a.order - b.order);
  return good({ receivers, scenarios: course });
}

/** What must hold between the scenarios of a folder. `elsewhere`: ids of scenarios that may be named and do not lie in it. */
export function courseProblems(
  all: readonly { readonly file: string; readonly scenario: Scenario }[],
  elsewhere: ReadonlySet<string> = new Set(),
): Problem[] {
  const problems: Problem[] = [];
  const order = new Map(all.map(({ scenario }) => [scenario.id, scenario]));
  const seen = new Set<string>();
  for (const { file, scenario } of all) {
    const say = (place: string, found: Phrase, wanted: Phrase): void => {
      problems.push({ file, place, found, wanted });
    };
    const { id, code, track } = scenario;
    if (!file.endsWith(`${track}/${id}.json`)) say('', ['idInTrack', id, track], ['fileNamed', `${track}/${id}.json`]);
    const marks: readonly (readonly [string, Phrase])[] = [
      ['/id', ['named', id]],
      ['/code', ['named', code]],
      ['/order', ['orderIn', scenario.order, track]],
    ];
    for (const [place, phrase] of marks) {
      const mark = JSON.stringify([place, phrase]);
      if (seen.has(mark)) say(place, ['twice', { phrase }], ['eachOnce']);
      seen.add(mark);
    }
    if (scenario.attempt !== undefined) say('/attempt', shown(scenario.attempt), ['attempt']);
    scenario.recommendedAfter.forEach((before, i) => {
      const other = order.get(before);
      if (other === undefined && elsewhere.has(before)) return;
      if (other === undefined) say(`/recommendedAfter/${i}`, ['named', before], oneOf([...order.keys()]));
      else if (other.track === track && other.order >= scenario.order) {
        say(`/recommendedAfter/${i}`, ['laterScenario', before], ['lowerOrder']);
      }
    });
  }
  return problems;
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
