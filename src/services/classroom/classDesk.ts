/**
 * The files of a class on the instructor's desk: which are here, which have been judged, and the work that is still to be done. It is there as long as the page is, and writes
 * nothing down: the files stay where they were brought from.
 */
import type { Result } from '../../base/result.ts';
import type { Judged } from '../../judge/judged.ts';
import { type BroughtFile, markOf } from './brought.ts';

export interface DeskFile extends BroughtFile {
  /** counts the files as they came, from 1 */
  readonly no: number;
  /** null: not judged yet */
  readonly judged: Judged | null;
}

/** Judges one file; rejects only when it is called off. */
export type JudgeFile = (file: BroughtFile, signal: AbortSignal) => Promise<Judged>;

export interface ClassDesk {
  /** the same list until something changes */
  files(): readonly DeskFile[];
  /** work is being done, or nobody has stopped it */
  isWorking(): boolean;
  /** the file in hand; null: none */
  inHand(): string | null;
  /** Puts files on the desk and begins; gives how many were here already: the same name, size and date. */
  take(files: readonly BroughtFile[]): number;
  /** has files judged once more, as those that what lies beside them may now tell more of */
  again(which: (judged: Judged) => boolean): void;
  stop(): void;
  goOn(): void;
  takeAway(no: number): void;
  clear(): void;
  /** told twice a second or so; returns what stops it */
  subscribe(listener: () => void): () => void;
}

/** As many as the pool has workers, and no more: whoever stops the work then waits for nobody. */
const AT_ONCE = 2;
const TOLD_EVERY_MS = 400;

export function createClassDesk(judge: JudgeFile): ClassDesk {
  let files: readonly DeskFile[] = [];
  let lastNo = 0;
  let stopped = false;
  const inHand = new Map<number, { readonly name: string; readonly off: AbortController }>();
  const listeners = new Set<() => void>();
  // What came in since the last telling: a list of thousands is not made anew for each file.
  const done = new Map<number, Judged>();
  let timer: ReturnType<typeof setTimeout> | null = null;

  const tell = (): void => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    if (done.size > 0)
      files = files.map((file) => (done.has(file.no) ? { ...file, judged: done.get(file.no)! } : file));
    done.clear();
    for (const listener of listeners) listener();
  };
  const tellSoon = (): void => {
    timer ??= setTimeout(tell, TOLD_EVERY_MS);
  };
  const next = (): DeskFile | undefined =>
    files.find(({ no, judged }) => judged === null && !done.has(no) && !inHand.has(no));
  const work = (): void => {
    while (!stopped && inHand.size < AT_ONCE) {
      const file = next();
      if (file === undefined) break;
      const off = new AbortController();
      inHand.set(file.no, { name: file.name, off });
      judge(file, off.signal).then(
        (judged) => {
          if (inHand.get(file.no)?.off !== off) return;
          inHand.delete(file.no);
          done.set(file.no, judged);
          work();
        },
        () => {
          if (inHand.get(file.no)?.off === off) inHand.delete(file.no);
          tellSoon();
        },
      );
    }
    if (inHand.size === 0) tell();
    else tellSoon();
  };
  const letGo = (no: number): void => {
    const held = inHand.get(no);
    inHand.delete(no);
    held?.off.abort();
  };

  return {
    files: () => files,
    isWorking: () => inHand.size > 0,
    inHand: () => [...inHand.values()][0]?.name ?? null,
    take(brought) {
      const here = new Set(files.map(markOf));
      const fresh = brought.filter((file) => {
        const mark = markOf(file);
        if (here.has(mark)) return false;
        here.add(mark);
        return true;
      });
      files = [...files, ...fresh.map((file) => ({ ...file, no: ++lastNo, judged: null }))];
      stopped = false;
      work();
      tell();
      return brought.length - fresh.length;
    },
    again(which) {
      // What is in hand was begun with what lay beside it before.
      for (const no of [...inHand.keys()]) letGo(no);
      for (const [no, judged] of done) if (which(judged)) done.delete(no);
      files = files.map((file) => (file.judged !== null && which(file.judged) ? { ...file, judged: null } : file));
      work();
      tell();
    },
    stop() {
      stopped = true;
      for (const no of [...inHand.keys()]) letGo(no);
      tell();
    },
    goOn() {
      stopped = false;
      work();
      tell();
    },
    takeAway(no) {
      letGo(no);
      done.delete(no);
      files = files.filter((file) => file.no !== no);
      work();
      tell();
    },
    clear() {
      for (const no of [...inHand.keys()]) letGo(no);
      done.clear();
      files = [];
      lastNo = 0;
      tell();
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** What reading a file takes from the world, so that a test can do without a browser. */
export interface FileReading {
  /** refuses what is too large before it is read */
  readonly text: (file: BroughtFile) => Promise<Result<string>>;
  readonly judge: (text: string, file: string, signal: AbortSignal) => Promise<Judged>;
}

/** What cannot be read is judged all the same: as unreadable, with its reasons. */
export function fileJudge({ text, judge }: FileReading): JudgeFile {
  return async (file, signal) => {
    if (file.problems !== undefined) return unreadable(file.problems);
    const read = await text(file);
    if (read.ok) return judge(read.value, file.name, signal);
    return unreadable(read.problems);
  };
}

export function unreadable(problems: Extract<Judged['finding'], { kind: 'unreadable' }>['problems']): Judged {
  return {
    ...{ learner: null, day: null, runId: null, scenario: null, rules: null, headSealed: false },
    ...{ outcome: 'unreadable', finding: { kind: 'unreadable', problems }, scenarioKnown: false },
    ...{ underToday: null, score: null, marks: null, acts: null },
  };
}
