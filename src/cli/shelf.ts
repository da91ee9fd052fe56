/** The receivers and scenarios that lie in the project's own scenarios/ folder, found by their ids. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { bad, good, type Result } from '../base/result.ts';
import type { BenchSetup } from '../bench/setup.ts';
import { benchSetup } from '../certify/benchSetup.ts';
import { parIn, withPar } from '../certify/certifiedPar.ts';
import { endlessScenario } from '../certify/endless.ts';
import { type KnownSet, knownSetIn } from '../certify/knownSet.ts';
import { readCertificate } from '../files/certificateSchema.ts';
import { checkScenario } from '../files/checkScenario.ts';
import type { CertifiedDifficulty } from '../files/difficultyBands.ts';
import {
  deckNameIn,
  type LoadedReceiver,
  loadReceiver,
  readText as readJsonText,
  scenarioFrom,
} from '../files/library.ts';
import { type ReceiverPair, readNewReceiver } from '../files/readReceiverPair.ts';
import { readReceiver } from '../files/receiverSchema.ts';
import { withTextPlaces } from '../files/textPlaces.ts';
import { readEndlessId } from '../scenario/endlessId.ts';
import type { Par } from '../scenario/par.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { PROJECT, readText } from './files.ts';
import { type Terminal, worded } from './terminal.ts';

const SCENARIOS = path.join(PROJECT, 'scenarios');
const RECEIVERS = path.join(SCENARIOS, 'receivers');

/** The receiver that a scenario names. `inside` is where in `file` the scenario stands; `beside`: receivers that come with it, before those of the project. */
export function namedReceiver(
  terminal: Terminal,
  scenario: Scenario,
  file: string,
  inside: '' | '/scenario',
  beside: ReadonlyMap<string, LoadedReceiver> = new Map(),
): Result<LoadedReceiver> {
  const own = beside.get(scenario.receiver);
  return own ? good(own) : shelvedReceiver(terminal, scenario.receiver, file, `${inside}/receiver`);
}

/** The same, where the two fit. */
export function fittingReceiver(
  terminal: Terminal,
  scenario: Scenario,
  file: string,
  inside: '' | '/scenario',
  beside?: ReadonlyMap<string, LoadedReceiver>,
): Result<LoadedReceiver> {
  const loaded = namedReceiver(terminal, scenario, file, inside, beside);
  if (!loaded.ok) return loaded;
  const problems = checkScenario(scenario, loaded.value, file);
  return problems.length === 0
    ? loaded
    : bad(...problems.map((problem) => ({ ...problem, place: `${inside}${problem.place}` })));
}

/** The bench with the set that a scenario puts on it. `known`: null has the set dealt whatever its certificate says. */
export function fittingSetup(
  terminal: Terminal,
  scenario: Scenario,
  file: string,
  inside: '' | '/scenario',
  known: KnownSet | null = shelvedSet(scenario.id),
  beside?: ReadonlyMap<string, LoadedReceiver>,
): Result<BenchSetup> {
  const loaded = fittingReceiver(terminal, scenario, file, inside, beside);
  if (!loaded.ok) return loaded;
  const setup = benchSetup(loaded.value, scenario, known, file);
  return setup.ok ? setup : bad(...setup.problems.map((p) => ({ ...p, place: `${inside}${p.place}` })));
}

/** The set of a scenario's certificate in the project; null where there is none. */
export function shelvedSet(id: string): KnownSet | null {
  const name = certificateFile(id);
  return /^[a-z0-9-]+$/.test(id) && existsSync(name) ? knownSetIn(readFileSync(name, 'utf8')) : null;
}

/** Par of a scenario's certificate in the project; null where there is none. */
export function shelvedPar(id: string): Par | null {
  const name = certificateFile(id);
  return /^[a-z0-9-]+$/.test(id) && existsSync(name) ? parIn(readFileSync(name, 'utf8')) : null;
}

/** What a scenario's certificate in the project says; null where there is none that can be read. */
export function shelvedCertificate(id: string): CertifiedDifficulty | null {
  const name = certificateFile(id);
  if (!/^[a-z0-9-]+$/.test(id) || !existsSync(name)) return null;
  const { value, problems } = readJsonText(readFileSync(name, 'utf8'), name, readCertificate);
  return problems.length === 0 ? value : null;
}

/** Ids of the scenarios that lie in the project, by the names of their files. */
export function shelvedIds(): ReadonlySet<string> {
  const tracks = readdirSync(SCENARIOS, { withFileTypes: true }).filter((entry) => entry.isDirectory());
  const names = tracks.flatMap((track) => readdirSync(path.join(SCENARIOS, track.name)));
  return new Set(names.flatMap((name) => (name.endsWith('.json') ? [name.slice(0, -'.json'.length)] : [])));
}

/** Where the certificate of a scenario lies. */
export const certificateFile = (id: string): string => path.join(PROJECT, 'certificates', `${id}.json`);

export const receiverPlace = (id: string): string => path.join(RECEIVERS, id, 'receiver.json');

/** An id is letters, digits and hyphens by the scenario's own check; whatever else comes here is no receiver of ours. */
export const hasReceiver = (id: string): boolean => /^[a-z0-9-]+$/.test(id) && existsSync(receiverPlace(id));

/** Ids of the receivers that lie in the project. */
export const shelvedReceiverIds = (): readonly string[] => (existsSync(RECEIVERS) ? readdirSync(RECEIVERS).sort() : []);

/** A receiver of the project. `file` and `place` say who asks for it, should it not be there. */
export function shelvedReceiver(terminal: Terminal, id: string, file: string, place: string): Result<LoadedReceiver> {
  if (hasReceiver(id)) return receiverFromFile(terminal, receiverPlace(id));
  const ids = shelvedReceiverIds();
  const { noReceivers, receivers, noReceiver } = terminal.words.cli.files;
  const wanted = ids.length === 0 ? noReceivers : receivers(ids);
  return bad(worded({ file, place, found: noReceiver(id), wanted }));
}

/** A receiver file with the deck that lies beside it. */
function receiverFromFile(terminal: Terminal, name: string): Result<LoadedReceiver> {
  const pair = pairFromFile(terminal, name);
  return pair.ok ? loadReceiver(pair.value.receiver, pair.value.deck) : pair;
}

/** The same of one's own, whose own sheet somebody must be able to follow. */
export function newReceiverFromFile(terminal: Terminal, name: string): Result<LoadedReceiver> {
  const pair = pairFromFile(terminal, name);
  return pair.ok ? readNewReceiver(pair.value) : pair;
}

/** The two texts of a receiver: its file, and the deck beside it that the file names. */
export function pairFromFile(terminal: Terminal, name: string): Result<ReceiverPair> {
  const text = readText(terminal, name);
  if (!text.ok) return text;
  const deckName = path.join(path.dirname(name), deckNameIn(text.value));
  const deck = readText(terminal, deckName);
  if (!deck.ok) {
    const receiver = readJsonText(text.value, name, readReceiver);
    return bad(...withTextPlaces(receiver.problems, name, text.value), ...deck.problems);
  }
  return good({ receiver: { file: name, text: text.value }, deck: { file: deckName, text: deck.value } });
}

/** A scenario as it lies in the project; null when there is none of that id. */
export function shelvedScenario(terminal: Terminal, id: string): Result<Scenario | null> {
  if (!/^[a-z0-9-]+$/.test(id)) return { ok: true, value: null };
  for (const track of readdirSync(SCENARIOS, { withFileTypes: true })) {
    const name = path.join(SCENARIOS, track.name, `${id}.json`);
    if (track.isDirectory() && existsSync(name)) return scenarioIn(terminal, name);
  }
  return readEndlessId(id) === null ? { ok: true, value: null } : endlessMade(terminal, id);
}

/** A scenario of the endless track is made anew from its name. */
function endlessMade(terminal: Terminal, id: string): Result<Scenario | null> {
  const receivers = new Map<string, LoadedReceiver>();
  for (const name of readdirSync(RECEIVERS)) {
    const loaded = receiverFromFile(terminal, path.join(RECEIVERS, name, 'receiver.json'));
    if (!loaded.ok) return loaded;
    receivers.set(name, loaded.value);
  }
  return { ok: true, value: endlessScenario(receivers, id) };
}

export function scenarioIn(terminal: Terminal, name: string): Result<Scenario> {
  const text = readText(terminal, name);
  if (!text.ok) return text;
  const scenario = scenarioFrom(text.value, name);
  return scenario.ok ? good(withPar(scenario.value, shelvedPar(scenario.value.id))) : scenario;
}
