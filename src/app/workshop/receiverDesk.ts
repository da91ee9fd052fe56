/** Receivers in the making, kept as they change like drafts of scenarios: several, each with its own undo. None need be open; what lies in the store as rubbish costs that one alone. */
import { type Making, makingOfRecord } from '../../making/makingRecord.ts';
import type { DraftShelf } from '../../services/store/draftShelf.ts';
import { begun, changed, type History, paused, redone, undone } from '../../workshop/history.ts';

export interface OpenMaking {
  readonly key: string;
  readonly history: History<Making>;
}

export interface ReceiverDesk {
  /** in the order in which they were begun */
  all(): readonly OpenMaking[];
  open(): OpenMaking | null;
  /** false: the browser refused to keep the last change */
  isKept(): boolean;
  /** the very same, already there, is opened instead of a second one */
  begin(making: Making): void;
  change(next: Making, mark?: string | null): void;
  pause(): void;
  undo(): void;
  redo(): void;
  choose(key: string): void;
  /** none is open; all stay */
  close(): void;
  remove(key: string): void;
  flush(): void;
  subscribe(listener: () => void): () => void;
}

export interface ReceiverDeskParts {
  readonly shelf: DraftShelf;
  readonly newKey: () => string;
  /** calls back when changes have rested */
  readonly soon: (write: () => void) => void;
}

export function createReceiverDesk({ shelf, newKey, soon }: ReceiverDeskParts): ReceiverDesk {
  const listeners = new Set<() => void>();
  let makings: readonly OpenMaking[] = shelf.read().flatMap(({ key, record }) => {
    const making = makingOfRecord(record);
    return making === null ? [] : [{ key, history: begun(making) }];
  });
  let openKey: string | null = makings.at(-1)?.key ?? null;
  let waiting: string | null = null;
  let kept = true;
  const tell = (): void => {
    for (const listener of [...listeners]) listener();
  };
  const found = (key: string | null): OpenMaking | null => makings.find((one) => one.key === key) ?? null;
  const write = (): void => {
    const one = found(waiting);
    waiting = null;
    if (one === null) return;
    const before = kept;
    kept = shelf.write(one.key, one.history.now);
    if (kept !== before) tell();
  };
  const put = (change: (history: History<Making>) => History<Making>): void => {
    const one = found(openKey);
    if (one === null) return;
    const history = change(one.history);
    if (history === one.history) return;
    makings = makings.map((each) => (each.key === one.key ? { key: one.key, history } : each));
    if (waiting !== null && waiting !== one.key) write();
    waiting = one.key;
    soon(write);
    tell();
  };
  return {
    all: () => makings,
    open: () => found(openKey),
    isKept: () => kept,
    begin(making) {
      write();
      const said = JSON.stringify(making);
      const same = makings.find(({ history }) => JSON.stringify(history.now) === said);
      const key = same?.key ?? newKey();
      if (same === undefined) makings = [...makings, { key, history: begun(making) }];
      openKey = key;
      waiting = key;
      write();
      tell();
    },
    change: (next, mark = null) => put((history) => changed(history, next, mark)),
    pause() {
      makings = makings.map((one) => (one.key === openKey ? { ...one, history: paused(one.history) } : one));
    },
    undo: () => put(undone),
    redo: () => put(redone),
    choose(key) {
      if (found(key) === null) return;
      write();
      openKey = key;
      tell();
    },
    close() {
      write();
      openKey = null;
      tell();
    },
    remove(key) {
      if (waiting === key) waiting = null;
      shelf.remove(key);
      makings = makings.filter((one) => one.key !== key);
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
