/** Reads what an instructor laid beside the runs of a class: sheets, scenarios, and receivers as their two files. Each goes through the checks of whoever opens it on the course page. */
import { harmless } from '../base/harmless.ts';
import { bad, good, type Result } from '../base/result.ts';
import { deckNameIn } from '../files/library.ts';
import { type ReceiverPair, readReceiverPair } from '../files/readReceiverPair.ts';
import { saysFormat } from '../files/saysFormat.ts';
import { scenarioToFile } from '../files/scenarioFile.ts';
import { isSealedText, readSealedEvening } from '../files/sealedEvening.ts';
import type { Material } from '../judge/handedOut.ts';
import type { BroughtFile } from '../services/classroom/brought.ts';
import { cryptoHere, openSheet } from '../services/handing/phraseSeal.ts';
import type { Library } from '../services/library/library.ts';
import { readHanded } from '../services/library/ownReading.ts';
import type { Words } from '../words/words.ts';
import { type SealedMaterial, textOf } from './classPaper.ts';
import { isEveningText, readPlayable } from './takeEvening.ts';
import { reasonsOf, surroundingsOf } from './takeFiles.ts';

export interface ReadMaterial {
  readonly materials: readonly Material[];
  /** to be opened by their phrases */
  readonly sealed: readonly SealedMaterial[];
  /** in sentences */
  readonly refused: readonly string[];
}

const isDeck = (file: string): boolean => /\.cir$/i.test(file);
const isReceiver = (text: string): boolean => saysFormat(text, 'receiver');

/** `before`: what lies there already. */
export async function readMaterial(
  words: Words,
  library: Library,
  files: readonly BroughtFile[],
  before: readonly Material[],
): Promise<ReadMaterial> {
  const refused: string[] = [];
  const materials: Material[] = [];
  const sealed: SealedMaterial[] = [];
  const texts: { readonly file: string; readonly text: string }[] = [];
  const refuse = (file: string, reasons: readonly string[]): void => {
    // Most begin with the file and the place in it.
    const name = harmless(file);
    refused.push(...reasons.map((reason) => (reason.startsWith(name) ? reason : `${name}: ${reason}`)));
  };
  for (const file of files) {
    const text = await textOf(words, file);
    if (text.ok) texts.push({ file: file.name, text: text.value });
    else refuse(file.name, reasonsOf(words, text.problems));
  }
  const decks = texts.filter(({ file }) => isDeck(file));
  const receivers = texts.filter(({ file, text }) => !isDeck(file) && isReceiver(text));
  const used = new Set<string>();
  for (const { file, text } of receivers) {
    const deck = decks.find((one) => one.file === deckNameIn(text)) ?? (decks.length === 1 ? decks[0] : undefined);
    if (deck === undefined) {
      refuse(file, [words.classroom.deckMissing(deckNameIn(text))]);
      continue;
    }
    used.add(deck.file);
    const pair = { receiver: { file, text }, deck };
    const read = readReceiverPair(pair);
    if (!read.ok) refuse(file, reasonsOf(words, read.problems));
    else {
      const { id, setName } = read.value.receiver;
      materials.push({ title: harmless(setName), file, scenarios: [], receiver: { ...pair, id } });
    }
  }
  for (const { file } of decks) if (!used.has(file)) refuse(file, [words.classroom.receiverMissing]);
  const here = withReceivers(library, [...materials, ...before]);
  for (const { file, text } of texts) {
    if (isDeck(file) || isReceiver(text)) continue;
    if (isSealedText(text)) {
      const sheet = readSealedEvening(text, file);
      if (sheet.ok) sealed.push({ file, sheet: sheet.value });
      else refuse(file, reasonsOf(words, sheet.problems));
      continue;
    }
    const read = isEveningText(text) ? await ofSheet(text, file, here) : await ofScenario(text, file, here);
    if (read.ok) materials.push(read.value);
    else refuse(file, reasonsOf(words, read.problems));
  }
  return { materials, sealed, refused };
}

/** Opens a sealed sheet by its phrase; `reasons`, in sentences, where it cannot be opened or taken. */
export async function openMaterial(
  words: Words,
  library: Library,
  { file, sheet }: SealedMaterial,
  phrase: string,
  before: readonly Material[],
): Promise<{ readonly material: Material } | { readonly reasons: readonly string[] }> {
  const subtle = cryptoHere();
  if (subtle === null) return { reasons: [words.exam.noCrypto] };
  const text = await openSheet(subtle, sheet, phrase);
  if (text === null) return { reasons: [words.exam.wrongPhrase] };
  const read = await ofSheet(text, file, withReceivers(library, before));
  return read.ok ? { material: read.value } : { reasons: reasonsOf(words, read.problems) };
}

interface Here {
  readonly library: Library;
  readonly pairOf: (id: string) => ReceiverPair | null;
}

/** The library with the receivers that lie here beside its own. */
function withReceivers(library: Library, materials: readonly Material[]): Here {
  const pairs = new Map(materials.flatMap(({ receiver }) => (receiver === null ? [] : [[receiver.id, receiver]])));
  const shipped = new Set(surroundingsOf(library).receiverIds);
  const pairOf = (id: string): ReceiverPair | null => (shipped.has(id) ? null : (pairs.get(id) ?? null));
  return {
    pairOf,
    library: {
      ...library,
      async receiver(id, hash) {
        const pair = pairOf(id);
        return pair === null ? library.receiver(id, hash) : readReceiverPair(pair);
      },
    },
  };
}

async function ofSheet(text: string, file: string, { library }: Here): Promise<Result<Material>> {
  const around = surroundingsOf(library);
  const read = await readPlayable(text, file, library, around);
  if (!read.ok) return read;
  const { evening, designs } = read.value;
  const own = evening.scenarios.filter(({ id }) => !around.courseIds.has(id));
  // A sheet of the course's own jobs is held against the course.
  const scenarios = own.map((scenario) => ({
    ...{ id: scenario.id, text: JSON.stringify(scenarioToFile(scenario)) },
    receiver: designs.get(scenario.receiver)?.texts ?? null,
  }));
  const { minutesEach, passMark } = evening;
  const terms = {
    scenarios: evening.scenarios.map(({ id }) => id),
    ...(minutesEach === undefined ? {} : { minutesEach: [...minutesEach] }),
    ...(passMark === undefined ? {} : { passMark }),
  };
  return good({ title: harmless(evening.title), file, scenarios, receiver: null, terms });
}

async function ofScenario(text: string, file: string, { library, pairOf }: Here): Promise<Result<Material>> {
  const read = await readHanded(text, file, surroundingsOf(library));
  if (!read.ok) return bad(...read.problems);
  const { id, title, receiver } = read.value.scenario;
  return good({ title: harmless(title), file, scenarios: [{ id, text, receiver: pairOf(receiver) }], receiver: null });
}
