/** From the draft of an evening to its file, plain or sealed. */
import { type ExamTerms, eveningText } from '../../files/evening.ts';
import { hashOf } from '../../files/hash.ts';
import type { ReceiverPair } from '../../files/readReceiverPair.ts';
import { examAttempt } from '../../files/runsFile.ts';
import type { Deals, EveningDraft } from '../../rooms/workshop/evening/eveningPort.ts';
import { isDealtAfresh } from '../../scenario/attempt.ts';
import { PAR_NOT_KNOWN } from '../../scenario/par.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { cryptoHere, sealSheet } from '../../services/handing/phraseSeal.ts';
import type { Library } from '../../services/library/library.ts';
import { pageOwnReceivers } from '../../services/library/pageOwnReceivers.ts';
import type { OwnReceivers } from '../../services/store/ownReceivers.ts';
import type { Words } from '../../words/words.ts';
import { readPlayable } from '../takeEvening.ts';
import { reasonsOf, surroundingsOf } from '../takeFiles.ts';

/** What is handed out is read once more as whoever opens it will: nobody is given a file that is refused. */
export async function fileOf(
  words: Words,
  library: Library,
  draft: EveningDraft,
  exam: ExamTerms | null = null,
  receivers: () => Promise<Pick<OwnReceivers, 'textsOf'>> = pageOwnReceivers,
): Promise<string | readonly string[]> {
  const scenarios: Scenario[] = [];
  const entries = library.entries();
  const shipped = new Set(entries.flatMap(({ own, receiver }) => (own === undefined ? [receiver] : [])));
  const brought = new Map<string, ReceiverPair>();
  for (const id of draft.scenarios) {
    const setup = await library.setup(id);
    if (setup === null) return [words.workshop.evening.gone(id)];
    if (!setup.ok) return reasonsOf(words, setup.problems);
    const { scenario } = setup.value;
    scenarios.push({ ...scenario, par: PAR_NOT_KNOWN });
    if (shipped.has(scenario.receiver)) continue;
    const hash = entries.find((entry) => entry.id === id)?.receiverHash;
    const texts = await (await receivers()).textsOf(scenario.receiver, hash);
    if (texts === null) return [words.workshop.evening.gone(scenario.receiver)];
    brought.set(scenario.receiver, texts);
  }
  const { title, author, minutes, order, minutesEach, passMark } = draft;
  const times = draft.scenarios.map((id) => minutesEach[id] ?? null);
  const sheet = {
    ...{ title: title.trim(), minutes, order, exam, scenarios },
    ...(author.trim() === '' ? {} : { author: author.trim() }),
    ...(times.every((one) => one === null) ? {} : { minutesEach: times }),
    ...(passMark === null ? {} : { passMark }),
  };
  const text = eveningText(sheet, [...brought.values()]);
  const file = `${fileName(title)}.json`;
  const read = await readPlayable(text, file, library, surroundingsOf(library));
  return read.ok ? text : reasonsOf(words, read.problems);
}

/** What each candidate's set of each scenario will be dealt from, at the first try. The sheet's text decides, so any change to it deals anew. */
export async function dealsOf(
  words: Words,
  library: Library,
  draft: EveningDraft,
  terms: ExamTerms,
  candidates: readonly string[],
): Promise<Deals | readonly string[]> {
  const text = await fileOf(words, library, draft, terms);
  if (typeof text !== 'string') return text;
  const sheet = hashOf(text);
  const setups = await Promise.all(draft.scenarios.map((id) => library.setup(id)));
  const afresh = setups.map((setup) => setup?.ok === true && isDealtAfresh(setup.value.scenario));
  return {
    rows: candidates.map((candidate) => ({
      candidate,
      numbers: draft.scenarios.map((id, i) => (afresh[i] ? examAttempt(sheet, candidate, id, 0) : null)),
    })),
  };
}

/** Letters and digits of the title, as far as a file system takes them anywhere. */
export function fileName(title: string): string {
  const plain = title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 40);
  return plain === '' ? 'evening' : `evening-${plain}`;
}

/** The same sheet, sealed by a phrase. */
export async function sealedFileOf(
  words: Words,
  library: Library,
  draft: EveningDraft,
  terms: ExamTerms,
  phrase: string,
): Promise<string | readonly string[]> {
  const subtle = cryptoHere();
  if (subtle === null) return [words.workshop.evening.exam.noCrypto];
  const text = await fileOf(words, library, draft, terms);
  if (typeof text !== 'string') return text;
  const author = draft.author.trim();
  const head = {
    format: 'haystack-sealed-evening' as const,
    version: 1 as const,
    title: draft.title.trim(),
    ...(author === '' ? {} : { author }),
    ...{ minutes: draft.minutes, count: draft.scenarios.length, candidates: terms.candidates },
  };
  return `${JSON.stringify(await sealSheet(subtle, head, text, phrase), null, 1)}\n`;
}

/** Of the file that a candidate hands in: a name in any script stays readable, so that two of them do not get one file name. */
export function runsFileName(title: string, candidate: string): string {
  const plain = candidate
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 40);
  return `${fileName(title)}-${plain === '' ? 'candidate' : plain}-runs.json`;
}
