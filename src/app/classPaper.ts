/** The desk of the class room and the notes on it, as this page has them: there from the first visit to the room for as long as the page is open. */
import type { SealedEvening } from '../files/sealedEvening.ts';
import type { Material } from '../judge/handedOut.ts';
import { notRead, sizeProblem, textOfBytes } from '../judge/readBytes.ts';
import type { BroughtFile, BroughtSitting } from '../services/classroom/brought.ts';
import { type ClassDesk, createClassDesk, fileJudge, unreadable } from '../services/classroom/classDesk.ts';
import { type ClassNotes, createClassNotes } from '../services/classroom/classNotes.ts';
import { JobFailed } from '../services/jobs/jobPool.ts';
import { pageJobs } from '../services/jobs/pageJobs.ts';
import type { Words } from '../words/words.ts';

export interface ClassPaper {
  readonly desk: ClassDesk;
  readonly notes: ClassNotes;
  /** what lies beside the runs as handed out */
  materials(): readonly Material[];
  /** sheets that lie here unopened */
  sealed(): readonly SealedMaterial[];
  laySealed(sheets: readonly SealedMaterial[]): void;
  /** files that were the runs of an exam */
  sittings(): readonly BroughtSitting[];
  seat(brought: readonly BroughtSitting[]): void;
  /** takes runs and exams off the desk */
  clear(): void;
  /** judges anew what it may tell more of */
  lay(materials: readonly Material[]): void;
}

/** A sheet under a seal, until its phrase is typed. */
export interface SealedMaterial {
  readonly file: string;
  readonly sheet: SealedEvening;
}

let paper: ClassPaper | null = null;

/** `words`: what is wrong with a file is told in these. */
export function classPaper(words: Words): ClassPaper {
  paper ??= createPaper(words);
  return paper;
}

function createPaper(words: Words): ClassPaper {
  let materials: readonly Material[] = [];
  let sittings: readonly BroughtSitting[] = [];
  let sealed: readonly SealedMaterial[] = [];
  const desk = createClassDesk(
    fileJudge({
      text: (file) => textOf(words, file),
      async judge(text, file, signal) {
        try {
          // All of them would be copied to the worker with each run.
          const all = materials.flatMap(({ scenarios }) => scenarios);
          const handedOut = all.filter(({ id }) => text.includes(JSON.stringify(id)));
          return await pageJobs().run('judge', { text, file, handedOut }, { signal });
        } catch (error) {
          if (!(error instanceof JobFailed) || error.failure === 'calledOff') throw error;
          const { stops, goes } = words.textFiles;
          return unreadable([{ file, place: '', found: ['said', stops(error.message)], wanted: ['said', goes] }]);
        }
      },
    }),
  );
  return {
    desk,
    notes: createClassNotes(() => localStorage),
    materials: () => materials,
    sealed: () => sealed,
    laySealed(sheets) {
      sealed = sheets;
    },
    sittings: () => sittings,
    seat(brought) {
      const isAnew = (one: BroughtSitting): boolean =>
        brought.some(({ folder, candidate }) => one.folder === folder && one.candidate === candidate);
      sittings = [...sittings.filter((one) => !isAnew(one)), ...brought];
    },
    clear() {
      sittings = [];
      desk.clear();
    },
    lay(laid) {
      const ids = new Set([...materials, ...laid].flatMap(({ scenarios }) => scenarios.map(({ id }) => id)));
      materials = laid;
      desk.again(({ scenario }) => scenario !== null && ids.has(scenario.id));
    },
  };
}

const decoded = (bytes: Uint8Array): string => new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);

export async function textOf(words: Words, { name, blob }: BroughtFile) {
  const tooLarge = sizeProblem(words, blob.size, name);
  if (tooLarge !== null) return tooLarge;
  try {
    return textOfBytes(words, new Uint8Array(await blob.arrayBuffer()), name, decoded);
  } catch (error) {
    // It was moved or taken away since it was brought.
    return notRead(words, error instanceof Error ? error.name : String(error), name);
  }
}
