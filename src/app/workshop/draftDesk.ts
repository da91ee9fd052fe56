/** The desk with the drafts on it: one is open, each has its own undo, and all are kept as they change. */
import type { DraftShelf } from '../../services/store/draftShelf.ts';
import { type Draft, newDraft } from '../../workshop/draft.ts';
import { draftOfRecord } from '../../workshop/draftRecord.ts';
import { begun, changed, type History, paused, redone, undone } from '../../workshop/history.ts';

export interface OpenDraft {
  readonly key: string;
  readonly history: History<Draft>;
}

export interface DraftDesk {
  /** in the order in which they were begun */
  drafts(): readonly OpenDraft[];
  open(): OpenDraft;
  /** false: the browser refused to keep the last change */
  isKept(): boolean;
  change(next: Draft, mark?: string | null): void;
  /** what comes next is a step of its own */
  pause(): void;
  undo(): void;
  redo(): void;
  choose(key: string): void;
  /** `make` is given a number that no draft here has */
  add(make: (no: number) => Draft): void;
  remove(key: string): void;
  /** writes at once what waits to be written */
  flush(): void;
  subscribe(listener: () => void): () => void;
}

export interface DeskParts {
  readonly shelf: DraftShelf;
  readonly newKey: () => string;
  /** for the first draft, and where the last one is thrown away */
  readonly receiver: () => string;
  /** calls back when nothing has been changed for a moment */
  readonly soon: (write: () => void) => void;
}

export function createDraftDesk({ shelf, newKey, receiver, soon }: DeskParts): DraftDesk {
  const listeners = new Set<() => void>();
  let drafts: readonly OpenDraft[] = shelf.read().flatMap(({ key, record }) => {
    const draft = draftOfRecord(record);
    return draft === null ? [] : [{ key, history: begun(draft) }];
  });
  let openKey = drafts.at(-1)?.key ?? '';
  let waiting: string | null = null;
  let kept = true;
  drafts = [...drafts].sort((a, b) => a.history.now.order - b.history.now.order);

  const tell = (): void => {
    for (const listener of [...listeners]) listener();
  };
  const write = (): void => {
    if (waiting === null) return;
    const draft = drafts.find((one) => one.key === waiting);
    waiting = null;
    if (draft === undefined) return;
    const before = kept;
    kept = shelf.write(draft.key, draft.history.now);
    if (kept !== before) tell();
  };
  const put = (key: string, history: History<Draft>): void => {
    const stood = drafts.find((one) => one.key === key)?.history;
    if (stood === history) return;
    drafts = drafts.map((one) => (one.key === key ? { key, history } : one));
    if (waiting !== null && waiting !== key) write();
    waiting = key;
    soon(write);
    tell();
  };
  const add = (make: (no: number) => Draft): void => {
    const numbers = drafts.map(({ history }) => Number(/(\d+)$/.exec(history.now.id)?.[1] ?? 0));
    const draft = make(Math.max(0, ...numbers) + 1);
    const key = newKey();
    drafts = [...drafts, { key, history: begun(draft) }];
    openKey = key;
    write();
    waiting = key;
    write();
    tell();
  };
  const open = (): OpenDraft => {
    const found = drafts.find(({ key }) => key === openKey) ?? drafts.at(-1);
    if (found !== undefined) return found;
    // Nothing is kept of a draft that nobody has touched.
    const first = { key: newKey(), history: begun(newDraft(receiver(), 1)) };
    drafts = [first];
    openKey = first.key;
    return first;
  };

  return {
    drafts: () => {
      open();
      return drafts;
    },
    open,
    isKept: () => kept,
    change: (next, mark = null) => put(open().key, changed(open().history, next, mark)),
    pause() {
      const { key, history } = open();
      drafts = drafts.map((one) => (one.key === key ? { key, history: paused(history) } : one));
    },
    undo: () => put(open().key, undone(open().history)),
    redo: () => put(open().key, redone(open().history)),
    choose(key) {
      if (!drafts.some((one) => one.key === key)) return;
      write();
      openKey = key;
      tell();
    },
    add,
    remove(key) {
      if (waiting === key) waiting = null;
      shelf.remove(key);
      drafts = drafts.filter((one) => one.key !== key);
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
