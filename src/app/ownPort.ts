/** Feeds the course page's shelf of own scenarios: takes files in, has them certified beside the page, takes them off again. */
import type { CourseCard, CoursePort } from '../present/ports.ts';
import type { EveningGroup, OwnPort } from '../rooms/course/ownPort.ts';
import type { Library } from '../services/library/library.ts';
import type { Logbook } from '../services/store/logbook.ts';
import type { OwnEvening } from '../services/store/ownEvening.ts';
import type { OwnShelf } from '../services/store/ownShelf.ts';
import type { Words } from '../words/words.ts';

export interface OwnPortGiven {
  readonly library: Library;
  readonly shelf: OwnShelf;
  readonly logbook: Pick<Logbook, 'keptRuns'>;
  readonly course: CoursePort;
  /** what is wrong with a file takes more words than the first page has */
  readonly words: () => Promise<Words>;
  readonly toExam: (hash: string) => void;
}

export function createOwnPort({ library, shelf, logbook, course, words, toExam }: OwnPortGiven): OwnPort {
  // The readers of files, and the certifier, are not for the first page.
  const certify = async (): Promise<void> => {
    await shelf.ready;
    const shipped = new Set(library.entries().flatMap(({ own, receiver }) => (own === undefined ? [receiver] : [])));
    if (shelf.all().every(({ certificate, entry }) => certificate !== null && shipped.has(entry.receiver))) return;
    const { certifyShelf } = await import('./takeFiles.ts');
    await certifyShelf(library, shelf);
  };
  void certify().catch(() => {});
  const inEvenings = (): ReadonlySet<string> =>
    new Set([
      ...shelf.evenings().flatMap(({ scenarios }) => scenarios),
      ...shelf.exams().flatMap(({ opened }) => opened?.scenarios ?? []),
    ]);
  const groupOf = (evening: OwnEvening): EveningGroup => {
    const { hash, title, author, minutes, order, scenarios, addedAtMs, passMark = null, minutesEach } = evening;
    const cards = new Map([...course.cards(), ...course.own()].map((card) => [card.scenario.id, card]));
    const signed = new Set(
      logbook.keptRuns().flatMap((run) => ((run.signedAtMs ?? 0) >= addedAtMs ? [run.scenarioId] : [])),
    );
    let waitsFor: string | null = null;
    const items = scenarios.flatMap((id, i) => {
      const card = cards.get(id);
      if (card === undefined) return [];
      const own = { done: signed.has(id), after: waitsFor, minutes: minutesEach?.[i] ?? null };
      const item = { card: { ...card, early: false }, ...own };
      if (order === 'listed' && !item.done) waitsFor = card.scenario.code;
      return [item];
    });
    return { hash, title, author, minutes, passMark, items };
  };
  /** What stands on the shelf for this sheet alone goes with it; gives what puts it back. */
  const takeOff = async (scenarios: readonly string[]): Promise<() => Promise<void>> => {
    const others = inEvenings();
    const own = scenarios.filter((id) => !others.has(id));
    const gone = (await Promise.all(own.map((id) => shelf.remove(id)))).flat();
    return async () => {
      for (const one of gone) await shelf.put(one);
    };
  };
  const cards = (): readonly CourseCard[] => {
    const grouped = inEvenings();
    return course.own().filter(({ scenario }) => !grouped.has(scenario.id));
  };
  return {
    isEmpty: () => shelf.exams().length + shelf.evenings().length + cards().length === 0,
    exams: () =>
      shelf.exams().map(({ hash, title, minutes, count, opened }) => ({
        ...{ hash, title, minutes, count },
        state: opened === null ? 'sealed' : opened.handedIn ? 'handedIn' : 'goingOn',
      })),
    toExam,
    async removeExam(hash) {
      const exam = shelf.exams().find((one) => one.hash === hash);
      if (exam === undefined) return async () => {};
      await shelf.removeExam(hash);
      const putBack = await takeOff(exam.opened?.scenarios ?? []);
      return async () => {
        await putBack();
        await shelf.putExam(exam);
      };
    },
    evenings: () => shelf.evenings().map(groupOf),
    async removeEvening(hash) {
      const evening = shelf.evenings().find((one) => one.hash === hash);
      if (evening === undefined) return async () => {};
      await shelf.removeEvening(hash);
      const putBack = await takeOff(evening.scenarios);
      return async () => {
        await putBack();
        await shelf.putEvening(evening);
      };
    },
    cards,
    async bring(files) {
      const [{ takeFiles }, all] = await Promise.all([import('./takeFiles.ts'), words()]);
      const outcome = await takeFiles(all, library, shelf, files);
      void certify().catch(() => {});
      return outcome;
    },
    async remove(id) {
      const gone = await shelf.remove(id);
      return async () => {
        for (const one of gone) await shelf.put(one);
      };
    },
    async link(id) {
      const one = shelf.all().find((each) => each.id === id);
      if (one === undefined) return null;
      const { addressOf } = await import('./takeFiles.ts');
      return addressOf(library, one);
    },
    isStored: () => shelf.isStored(),
    subscribe: (listener) => course.subscribe(listener),
  };
}
