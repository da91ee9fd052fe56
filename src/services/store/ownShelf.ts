/**
 * The shelf of scenarios that the user has opened from files: each as its text, with what its card shows. It is a database of its own, apart from the logbook, and never leaves
 * this machine. Where there is no database, what is opened lasts as long as the page.
 */
import type { OwnEvening } from './ownEvening.ts';
import type { OwnExam } from './ownExam.ts';
import type { OwnScenario } from './ownScenario.ts';
import type { TabChannel } from './tabChannel.ts';

export interface OwnShelf {
  /** never rejects */
  readonly ready: Promise<void>;
  /** of each id the one that was opened last, in the order of opening */
  all(): readonly OwnScenario[];
  /** false: it is kept in memory only */
  put(one: OwnScenario): Promise<boolean>;
  /** takes every version of an id away, and gives them back */
  remove(id: string): Promise<readonly OwnScenario[]>;
  evenings(): readonly OwnEvening[];
  putEvening(one: OwnEvening): Promise<boolean>;
  removeEvening(hash: string): Promise<void>;
  exams(): readonly OwnExam[];
  putExam(one: OwnExam): Promise<boolean>;
  removeExam(hash: string): Promise<void>;
  /** false: what was opened is lost with the page */
  isStored(): boolean;
  subscribe(listener: () => void): () => void;
}

export interface OwnShelfGiven {
  readonly name: string;
  readonly channel: TabChannel | null;
}

const CHANGED = 'the own shelf has changed';

export function openOwnShelf({ name, channel }: OwnShelfGiven): OwnShelf {
  const records = new Map<string, OwnScenario>();
  const sheets = new Map<string, OwnEvening>();
  const papers = new Map<string, OwnExam>();
  const listeners = new Set<() => void>();
  let base: import('./ownDatabase.ts').OwnDatabase | null = null;
  let stored = true;
  const tell = (): void => {
    for (const listener of [...listeners]) listener();
  };
  const look = async (): Promise<void> => {
    if (base === null) return;
    const found = await Promise.all([base.all(), base.evenings(), base.exams()]).catch(() => null);
    if (found === null) return;
    records.clear();
    sheets.clear();
    papers.clear();
    for (const one of found[0]) records.set(one.hash, one);
    for (const one of found[1]) sheets.set(one.hash, one);
    for (const one of found[2]) papers.set(one.hash, one);
    tell();
  };
  const start = async (): Promise<void> => {
    try {
      const { openOwnDatabase } = await import('./ownDatabase.ts');
      base = await openOwnDatabase(name);
      await look();
    } catch {
      stored = false;
    }
  };
  const ready = start();
  channel?.listen((message) => {
    if (message === CHANGED) void ready.then(look);
  });
  const write = async (job: (there: import('./ownDatabase.ts').OwnDatabase) => Promise<void>): Promise<boolean> => {
    try {
      if (base === null) return false;
      await job(base);
      channel?.post(CHANGED);
      return true;
    } catch {
      stored = false;
      tell();
      return false;
    }
  };
  return {
    ready,
    all() {
      const latest = new Map<string, OwnScenario>();
      for (const one of inOrder(records.values())) {
        latest.delete(one.id);
        latest.set(one.id, one);
      }
      return [...latest.values()];
    },
    async put(one) {
      await ready;
      records.set(one.hash, one);
      tell();
      return write((there) => there.put(one));
    },
    async remove(id) {
      await ready;
      const gone = inOrder(records.values()).filter((one) => one.id === id);
      for (const { hash } of gone) records.delete(hash);
      tell();
      await write((there) => there.remove(gone.map(({ hash }) => hash)));
      return gone;
    },
    evenings: () => [...sheets.values()].sort((a, b) => a.addedAtMs - b.addedAtMs),
    async putEvening(one) {
      await ready;
      sheets.set(one.hash, one);
      tell();
      return write((there) => there.putEvening(one));
    },
    async removeEvening(hash) {
      await ready;
      sheets.delete(hash);
      tell();
      await write((there) => there.removeEvening(hash));
    },
    exams: () => [...papers.values()].sort((a, b) => a.addedAtMs - b.addedAtMs),
    async putExam(one) {
      await ready;
      papers.set(one.hash, one);
      tell();
      return write((there) => there.putExam(one));
    },
    async removeExam(hash) {
      await ready;
      papers.delete(hash);
      tell();
      await write((there) => there.removeExam(hash));
    },
    isStored: () => stored,
    subscribe(listener) {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
  };
}

const inOrder = (records: Iterable<OwnScenario>): readonly OwnScenario[] =>
  [...records].sort((a, b) => a.addedAtMs - b.addedAtMs);
