/** Several things in the making of which one may be open, each with its own undo, all kept in the browser as they change: what the desk of drafts and that of receivers share. */
import type { DraftShelf } from '../../services/store/draftShelf.ts';
import { begun, changed, type History, paused, redone, undone } from '../../workshop/history.ts';

export interface OnDesk<T> {
  readonly key: string;
  readonly history: History<T>;
}

export interface ShelvedDesk<T> {
  all(): readonly OnDesk<T>[];
  open(): OnDesk<T> | null;
  /** false: the browser refused to keep the last change */
  isKept(): boolean;
  change(next: T, mark?: string | null): void;
  /** what comes next is a step of its own */
  pause(): void;
  undo(): void;
  redo(): void;
  /** null: none is open; all stay */
  choose(key: string | null): void;
  /** opened and kept at once; the one of that key where it is there */
  add(key: string, now: T): void;
  /** opened, and kept only once it is changed; nobody is told */
  layOut(key: string, now: T): void;
  /** opened without a word to anybody */
  turnTo(key: string): void;
  remove(key: string): void;
  /** writes at once what waits to be written */
  flush(): void;
  subscribe(listener: () => void): () => void;
}

interface Given<T> {
  readonly shelf: DraftShelf;
  /** null: rubbish, which costs this one alone */
  readonly ofRecord: (record: unknown) => T | null;
  /** calls back when nothing has been changed for a moment */
  readonly soon: (write: () => void) => void;
  /** how those that come back from the shelf lie; else the one used last is last */
  readonly byOrder?: (a: T, b: T) => number;
}

/** The one that was used last is open. */
export function createShelvedDesk<T>({ shelf, ofRecord, soon, byOrder }: Given<T>): ShelvedDesk<T> {
  const listeners = new Set<() => void>();
  let things: readonly OnDesk<T>[] = shelf.read().flatMap(({ key, record }) => {
    const now = ofRecord(record);
    return now === null ? [] : [{ key, history: begun(now) }];
  });
  let openKey = things.at(-1)?.key ?? null;
  if (byOrder !== undefined) things = [...things].sort((a, b) => byOrder(a.history.now, b.history.now));
  let waiting: string | null = null;
  let kept = true;

  const tell = (): void => {
    for (const listener of [...listeners]) listener();
  };
  const at = (key: string | null): OnDesk<T> | null => things.find((one) => one.key === key) ?? null;
  const write = (): void => {
    const one = at(waiting);
    waiting = null;
    if (one === null) return;
    const before = kept;
    kept = shelf.write(one.key, one.history.now);
    if (kept !== before) tell();
  };
  const put = (change: (history: History<T>) => History<T>): void => {
    const one = at(openKey);
    if (one === null) return;
    const history = change(one.history);
    if (history === one.history) return;
    things = things.map((each) => (each.key === one.key ? { key: one.key, history } : each));
    if (waiting !== null && waiting !== one.key) write();
    waiting = one.key;
    soon(write);
    tell();
  };
  const layOut = (key: string, now: T): void => {
    if (at(key) === null) things = [...things, { key, history: begun(now) }];
    openKey = key;
  };

  return {
    all: () => things,
    open: () => at(openKey),
    isKept: () => kept,
    change: (next, mark = null) => put((history) => changed(history, next, mark)),
    pause() {
      things = things.map((one) => (one.key === openKey ? { ...one, history: paused(one.history) } : one));
    },
    undo: () => put(undone),
    redo: () => put(redone),
    choose(key) {
      if (key !== null && at(key) === null) return;
      write();
      openKey = key;
      tell();
    },
    add(key, now) {
      write();
      layOut(key, now);
      waiting = key;
      write();
      tell();
    },
    layOut,
    turnTo(key) {
      openKey = key;
    },
    remove(key) {
      if (waiting === key) waiting = null;
      shelf.remove(key);
      things = things.filter((one) => one.key !== key);
      if (openKey === key) openKey = null;
      tell();
    },
    flush: write,
    subscribe(listener) {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
  };
}
