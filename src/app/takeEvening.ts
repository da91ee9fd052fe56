/** Takes the sheet of an evening in: read and checked whole, then each scenario of its own put on the shelf, and the sheet beside them. All of it or nothing. */
import type { Phrase } from '../base/phrases.ts';
import { bad, good, type Problem, type Result } from '../base/result.ts';
import { checkEvening, type Evening, readEvening } from '../files/evening.ts';
import { hashOf } from '../files/hash.ts';
import type { LoadedReceiver } from '../files/library.ts';
import type { ReceiverPair } from '../files/readReceiverPair.ts';
import { saysFormat } from '../files/saysFormat.ts';
import { scenarioHash, scenarioToFile } from '../files/scenarioFile.ts';
import { readSealedEvening } from '../files/sealedEvening.ts';
import { withTextPlaces } from '../files/textPlaces.ts';
import { receiverHash } from '../run/serialise.ts';
import { readEndlessId } from '../scenario/endlessId.ts';
import { PAR_NOT_KNOWN } from '../scenario/par.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { Library } from '../services/library/library.ts';
import { type Surroundings, toShelf } from '../services/library/ownReading.ts';
import { pageOwnReceivers } from '../services/library/pageOwnReceivers.ts';
import type { OwnEvening } from '../services/store/ownEvening.ts';
import type { OwnExam } from '../services/store/ownExam.ts';
import type { OwnReceivers } from '../services/store/ownReceivers.ts';
import type { OwnScenario } from '../services/store/ownScenario.ts';
import type { OwnShelf } from '../services/store/ownShelf.ts';

export const isEveningText = (text: string): boolean => saysFormat(text, 'evening');

export interface TakenEvening {
  readonly evening: OwnEvening;
  readonly own: readonly OwnScenario[];
}

/** A receiver that scenarios of a sheet stand on. */
interface Design extends LoadedReceiver {
  /** as the sheet brought it along; left out: it comes with the page */
  readonly texts?: ReceiverPair;
}

interface Playable {
  readonly evening: Evening;
  readonly designs: ReadonlyMap<string, Design>;
}

/** Where the receivers go that a sheet brings along. */
type ReceiverShelf = () => Promise<Pick<OwnReceivers, 'bring'>>;

/** As far as it can be played here: on the receivers of this page and those that it brings, and beside the course. */
export async function readPlayable(
  text: string,
  file: string,
  library: Library,
  around: Surroundings,
): Promise<Result<Playable>> {
  const asked = new Set<string>();
  const evening = readEvening(text, file, (id) => {
    asked.add(id);
    return null;
  });
  if (!evening.ok) {
    const here = around.receiverIds.filter((id) => asked.has(id));
    return toldByReceivers(evening, text, file, library, here);
  }
  const { scenarios, receivers } = evening.value;
  const designs = new Map<string, Design>();
  for (const id of new Set(scenarios.map(({ receiver }) => receiver))) {
    const loaded = around.receiverIds.includes(id) ? await library.receiver(id) : null;
    if (loaded?.ok) designs.set(id, loaded.value);
  }
  const problems: Problem[] = [
    ...checkEvening(evening.value, (id) => designs.get(id) ?? null, around.receiverIds, file),
  ];
  const say = (place: string, found: Phrase, wanted: Phrase): void => {
    problems.push({ file, place, found, wanted });
  };
  for (const [i, one] of receivers.entries()) {
    const { id } = one.receiver;
    const shipped = around.receiverIds.includes(id) ? await library.receiver(id) : null;
    if (shipped === null) designs.set(id, one);
    else if (!shipped.ok || receiverHash(shipped.value) !== receiverHash(one))
      say(`/receivers/${i}/receiver/id`, ['receiverOfBench', id], ['receiverAsBench']);
  }
  for (const [i, scenario] of scenarios.entries()) {
    const place = `/scenarios/${i}`;
    if (readEndlessId(scenario.id) !== null) say(`${place}/id`, ['idOfCourse', scenario.id], ['idOfOwn']);
    if (scenario.attempt !== undefined) say(`${place}/attempt`, ['amount', scenario.attempt, ''], ['attempt']);
    if (around.courseIds.has(scenario.id) && !(await isOfCourse(library, scenario)))
      say(`${place}/id`, ['courseChanged', scenario.id], ['asCourse']);
  }
  if (problems.length > 0) return bad(...withTextPlaces(problems, file, text));
  return good({ evening: evening.value, designs });
}

/** What is no sheet, once more beside the receivers of this page that it asked for: they say how far a slug may stand off. */
async function toldByReceivers(
  refused: Result<never>,
  text: string,
  file: string,
  library: Library,
  here: readonly string[],
): Promise<Result<never>> {
  const known = new Map<string, LoadedReceiver>();
  for (const id of here) {
    const loaded = await library.receiver(id);
    if (loaded?.ok) known.set(id, loaded.value);
  }
  if (known.size === 0) return refused;
  const again = readEvening(text, file, (id) => known.get(id) ?? null);
  return again.ok ? refused : again;
}

/** The scenarios of a sheet that are not of the course, put on the shelf: all of them or none. */
async function shelveOwn(
  { scenarios }: Evening,
  designs: ReadonlyMap<string, Design>,
  shelf: OwnShelf,
  around: Surroundings,
  receivers: ReceiverShelf,
): Promise<Result<readonly OwnScenario[]>> {
  const now = Date.now();
  const own: OwnScenario[] = [];
  const brought = new Set<ReceiverPair>();
  for (const scenario of scenarios.filter(({ id }) => !around.courseIds.has(id))) {
    const design = designs.get(scenario.receiver)!;
    const one = await toShelf({ scenario, design }, fileTextOf(scenario), now + own.length);
    if (!one.ok) return one;
    if (design.texts !== undefined) brought.add(design.texts);
    const placed = { ...one.value, ...(design.texts === undefined ? {} : { receiverHash: receiverHash(design) }) };
    const before = shelf.all().find(({ hash, receiverHash: on }) => hash === placed.hash && on === placed.receiverHash);
    own.push(before === undefined ? placed : { ...placed, certificate: before.certificate });
  }
  for (const texts of brought) {
    const kept = await (await receivers()).bring(texts);
    if (!kept.ok) return kept;
  }
  for (const one of own) await shelf.put(one);
  return good(own);
}

/** An exam that the phrase has opened: the sheet inside is taken like any other, and the time in all begins. */
export async function openExam(
  exam: OwnExam,
  text: string,
  candidate: string,
  library: Library,
  shelf: OwnShelf,
  around: Surroundings,
  receivers: ReceiverShelf = pageOwnReceivers,
): Promise<Result<OwnExam>> {
  const file = `${exam.title}.json`;
  const read = await readPlayable(text, file, library, around);
  if (!read.ok) return read;
  const { evening, designs } = read.value;
  const { exam: terms, order, scenarios, minutesEach, passMark } = evening;
  if (terms === null) return bad({ file, place: '/exam', found: ['nothing'], wanted: ['valueFor', 'exam'] });
  const own = await shelveOwn(evening, designs, shelf, around, receivers);
  if (!own.ok) return own;
  const opened = {
    ...{ candidate, openedAtMs: Date.now(), sheet: hashOf(text), order, attempts: terms.attempts },
    ...{ results: terms.results, minutesEach: minutesEach ?? null, passMark: passMark ?? null },
    ...{ ownDeal: terms.ownDeal, scenarios: scenarios.map(({ id }) => id), handedIn: false },
  };
  const begun = { ...exam, opened };
  await shelf.putExam(begun);
  return good(begun);
}

/** A sealed sheet is put on the shelf as it is. */
export async function takeSealed(text: string, file: string, shelf: OwnShelf): Promise<Result<OwnExam>> {
  const read = readSealedEvening(text, file);
  if (!read.ok) return read;
  const hash = hashOf(text);
  const { title, author, minutes, count, candidates } = read.value;
  const exam: OwnExam = {
    ...{ hash, title, author: author ?? null, minutes, count, candidates, text },
    ...{ addedAtMs: Date.now(), opened: null },
  };
  // Opening the file once more opens no exam anew.
  const before = shelf.exams().find((one) => one.hash === hash);
  if (before === undefined) await shelf.putExam(exam);
  return good(before ?? exam);
}

export async function takeEvening(
  text: string,
  file: string,
  library: Library,
  shelf: OwnShelf,
  around: Surroundings,
  receivers: ReceiverShelf = pageOwnReceivers,
): Promise<Result<TakenEvening>> {
  const read = await readPlayable(text, file, library, around);
  if (!read.ok) return read;
  const { evening, designs } = read.value;
  const own = await shelveOwn(evening, designs, shelf, around, receivers);
  if (!own.ok) return own;
  const taken: OwnEvening = {
    ...{ hash: hashOf(text), title: evening.title, author: evening.author ?? null, order: evening.order },
    ...{ minutesEach: evening.minutesEach, passMark: evening.passMark },
    ...{ minutes: evening.minutes, scenarios: evening.scenarios.map(({ id }) => id), addedAtMs: Date.now() },
  };
  await shelf.putEvening(taken);
  return good({ evening: taken, own: own.value });
}

const fileTextOf = (scenario: Scenario): string => JSON.stringify(scenarioToFile(scenario));

/** Whether it is, word for word, the course's own. Par and layout do not count: the course has its par from a certificate. */
async function isOfCourse(library: Library, scenario: Scenario): Promise<boolean> {
  const course = await library.setup(scenario.id);
  if (!course?.ok) return false;
  const plain = (one: Scenario): string => scenarioHash({ ...one, par: PAR_NOT_KNOWN });
  return plain(course.value.scenario) === plain(scenario);
}
