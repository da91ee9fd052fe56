/** Takes files of scenarios in: read and checked like any file from outside, drawn for their cards, put on the shelf, and certified when there is time. */
import { CERTIFYING } from '../base/engine.ts';
import { harmless } from '../base/harmless.ts';
import { good, type Problem, type Result } from '../base/result.ts';
import type { Certification } from '../certify/certificate.ts';
import { problemSentence } from '../describe/problem.ts';
import type { LoadedReceiver } from '../files/library.ts';
import { isSealedText } from '../files/sealedEvening.ts';
import type { RefusedFile, TakenFiles } from '../rooms/course/ownPort.ts';
import { receiverHash } from '../run/serialise.ts';
import { LINK_CHARS, linkOf } from '../services/handing/scenarioLink.ts';
import { JobFailed, type JobOptions, type Jobs } from '../services/jobs/jobPool.ts';
import { pageJobs } from '../services/jobs/pageJobs.ts';
import type { Library } from '../services/library/library.ts';
import { type HandedScenario, readHanded, type Surroundings, toShelf } from '../services/library/ownReading.ts';
import type { OwnCertificate, OwnScenario } from '../services/store/ownScenario.ts';
import type { OwnShelf } from '../services/store/ownShelf.ts';
import type { Words } from '../words/words.ts';
import { textOf } from './classPaper.ts';
import { routeHash } from './routes.ts';
import { isEveningText, takeEvening, takeSealed } from './takeEvening.ts';

const MOST_FILES = 40;
const MOST_REASONS = 60;

export async function takeFiles(
  words: Words,
  library: Library,
  shelf: OwnShelf,
  files: readonly File[],
): Promise<TakenFiles> {
  const taken: string[] = [];
  const refused: RefusedFile[] = [];
  for (const blob of files.slice(0, MOST_FILES)) {
    const text = await textOf(words, { name: blob.name, blob });
    const outcome = text.ok ? await takeAny(library, shelf, text.value, blob.name) : text;
    if (outcome.ok) taken.push(outcome.value);
    else refused.push({ file: harmless(blob.name), reasons: reasonsOf(words, outcome.problems) });
  }
  if (files.length > MOST_FILES)
    refused.push({ file: '', reasons: [words.course.own.tooMany(files.length, MOST_FILES)] });
  return { taken, refused };
}

/** Gives the title of what was taken. */
async function takeAny(library: Library, shelf: OwnShelf, text: string, file: string): Promise<Result<string>> {
  if (isSealedText(text)) {
    const exam = await takeSealed(text, file, shelf);
    return exam.ok ? good(exam.value.title) : exam;
  }
  if (isEveningText(text)) {
    const evening = await takeEvening(text, file, library, shelf, surroundingsOf(library));
    return evening.ok ? good(evening.value.evening.title) : evening;
  }
  const own = await takeText(library, shelf, text, file);
  return own.ok ? good(own.value.entry.title) : own;
}

/** From the text of a scenario to the shelf. `proved`: what the certifier of this page said of this very scenario a moment ago, and on what; null: nothing. */
export async function takeText(
  library: Library,
  shelf: OwnShelf,
  text: string,
  file: string,
  proved: Proved | null = null,
) {
  const read = await readHanded(text, file, surroundingsOf(library));
  if (!read.ok) return read;
  const own = await toShelf(read.value, text, Date.now());
  if (!own.ok) return own;
  const kept = keepsCertificate(own.value, shelf);
  const same = proved !== null && receiverHash(proved.design) === receiverHash(read.value.design);
  await shelf.put(same ? { ...kept, certificate: ownCertificate(proved) } : kept);
  return own;
}

/** What came of certifying, and the receiver that it was done on. */
export interface Proved {
  readonly outcome: Certification;
  readonly design: LoadedReceiver;
}

const ownCertificate = ({ outcome, design }: Proved): OwnCertificate => {
  const on = { engine: CERTIFYING, receiverHash: receiverHash(design) };
  return outcome.ok ? { kind: 'certified', ...on, par: outcome.certificate.par } : { kind: 'refused', ...on };
};

export function surroundingsOf(library: Pick<Library, 'entries' | 'receiver'>): Surroundings {
  const shipped = library.entries().filter(({ own }) => own === undefined);
  return {
    library,
    receiverIds: [...new Set(shipped.map(({ receiver }) => receiver))].sort(),
    courseIds: new Set(shipped.map(({ id }) => id)),
  };
}

/** The very same scenario, opened once more, is as certified as it was. */
function keepsCertificate(one: OwnScenario, shelf: OwnShelf): OwnScenario {
  const before = shelf.all().find(({ hash }) => hash === one.hash);
  return before === undefined ? one : { ...one, certificate: before.certificate };
}

export function reasonsOf(words: Words, problems: readonly Problem[]): readonly string[] {
  return problems.slice(0, MOST_REASONS).map((problem) => harmless(problemSentence(words, problem)));
}

/** The page's own address with the scenario in it. */
export async function addressOf(library: Library, { id, text, receiverHash: on }: OwnScenario) {
  const read = await readHanded(text, `${id}.json`, surroundingsOf(library), on);
  if (!read.ok) return null;
  const data = await linkOf(read.value.scenario);
  const address = `${location.href.split('#')[0]}${routeHash({ page: 'open', data })}`;
  return { address, long: address.length > LINK_CHARS };
}

/** On the very design that it was read with, for a worker knows no receiver of the user's own. null: it cannot be tried now. */
export async function certifyHanded(
  { scenario, design }: HandedScenario,
  jobs: Pick<Jobs, 'run'> = pageJobs(),
  options: JobOptions = {},
): Promise<OwnCertificate | null> {
  const outcome = await jobs.run('certify', { scenario, design }, options).catch((error: unknown) => {
    if (error instanceof JobFailed) return null;
    throw error;
  });
  return outcome === null ? null : ownCertificate({ outcome, design });
}

/** A receiver of one's own that has been drawn anew under its old name: what was certified on the old one is certified no more. */
export async function forgetStale(
  library: Pick<Library, 'entries' | 'receiver'>,
  shelf: Pick<OwnShelf, 'all' | 'put'>,
): Promise<void> {
  const shipped = new Set(surroundingsOf(library).receiverIds);
  for (const one of shelf.all()) {
    const { certificate, entry } = one;
    if (certificate === null || shipped.has(entry.receiver)) continue;
    const loaded = await library.receiver(entry.receiver, one.receiverHash);
    if (loaded?.ok && certificate.receiverHash === receiverHash(loaded.value)) continue;
    // It may have been taken off, or certified anew, meanwhile.
    if (shelf.all().some((now) => now === one)) await shelf.put({ ...one, certificate: null });
  }
}

let certifying = false;

/** One after the other, beside the page; what cannot be certified now is tried again at the next visit. */
export async function certifyShelf(
  library: Pick<Library, 'entries' | 'receiver'>,
  shelf: Pick<OwnShelf, 'all' | 'put'>,
  jobs: Pick<Jobs, 'run'> = pageJobs(),
): Promise<void> {
  if (certifying) return;
  certifying = true;
  try {
    await forgetStale(library, shelf);
    const tried = new Set<string>();
    for (;;) {
      const one = shelf.all().find(({ certificate, hash }) => certificate === null && !tried.has(hash));
      if (one === undefined) return;
      tried.add(one.hash);
      const read = await readHanded(one.text, `${one.id}.json`, surroundingsOf(library), one.receiverHash);
      if (!read.ok) continue;
      const certificate = await certifyHanded(read.value, jobs);
      // It may have been taken off meanwhile.
      if (certificate === null || !shelf.all().some(({ hash }) => hash === one.hash)) continue;
      await shelf.put({ ...one, certificate });
    }
  } finally {
    certifying = false;
  }
}
