/** Feeds the course page's shelf of own scenarios: takes files in, has them certified beside the page, takes them off again. */
import type { CoursePort } from '../present/ports.ts';
import type { OwnPort } from '../rooms/course/ownPort.ts';
import type { Library } from '../services/library/library.ts';
import type { OwnShelf } from '../services/store/ownShelf.ts';
import type { Words } from '../words/words.ts';

export interface OwnPortParts {
  readonly library: Library;
  readonly shelf: OwnShelf;
  readonly course: CoursePort;
  /** what is wrong with a file takes more words than the first page has */
  readonly words: () => Promise<Words>;
}

export function createOwnPort({ library, shelf, course, words }: OwnPortParts): OwnPort {
  // The readers of files, and the certifier, are not for the first page.
  const certify = async (): Promise<void> => {
    await shelf.ready;
    if (shelf.all().every(({ certificate }) => certificate !== null)) return;
    const { certifyShelf } = await import('./takeFiles.ts');
    await certifyShelf(library, shelf);
  };
  void certify().catch(() => {});
  return {
    cards: () => course.own(),
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
