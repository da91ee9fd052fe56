/** The desk with the drafts on it: one is open, each has its own undo, and all are kept as they change. */
import type { DraftShelf } from '../../services/store/draftShelf.ts';
import { type Draft, newDraft } from '../../workshop/draft.ts';
import { draftOfRecord } from '../../workshop/draftRecord.ts';
import { createShelvedDesk, type OnDesk, type ShelvedDesk } from './shelvedDesk.ts';

export interface DraftDesk
  extends Pick<
    ShelvedDesk<Draft>,
    'isKept' | 'change' | 'pause' | 'undo' | 'redo' | 'choose' | 'remove' | 'flush' | 'subscribe'
  > {
  /** in the order of their places in a track as they came back, then as they were begun */
  drafts(): readonly OnDesk<Draft>[];
  open(): OnDesk<Draft>;
  /** `make` is given a number that no draft here has */
  add(make: (no: number) => Draft): void;
}

export interface DeskGiven {
  readonly shelf: DraftShelf;
  readonly newKey: () => string;
  /** for the first draft, and where the last one is thrown away */
  readonly receiver: () => string;
  /** calls back when nothing has been changed for a moment */
  readonly soon: (write: () => void) => void;
}

export function createDraftDesk({ shelf, newKey, receiver, soon }: DeskGiven): DraftDesk {
  const desk = createShelvedDesk({ shelf, ofRecord: draftOfRecord, soon, byOrder: (a, b) => a.order - b.order });
  const open = (): OnDesk<Draft> => {
    const last = desk.all().at(-1);
    if (desk.open() === null) {
      if (last !== undefined) desk.turnTo(last.key);
      // Nothing is kept of a draft that nobody has touched.
      else desk.layOut(newKey(), newDraft(receiver(), 1));
    }
    return desk.open()!;
  };
  /** some draft is always open */
  const opened =
    <A extends unknown[]>(act: (...given: A) => void) =>
    (...given: A): void => {
      open();
      act(...given);
    };

  return {
    ...desk,
    drafts() {
      open();
      return desk.all();
    },
    open,
    change: opened(desk.change),
    pause: opened(desk.pause),
    undo: opened(desk.undo),
    redo: opened(desk.redo),
    add(make) {
      const numbers = desk.all().map(({ history }) => Number(/(\d+)$/.exec(history.now.id)?.[1] ?? 0));
      desk.add(newKey(), make(Math.max(0, ...numbers) + 1));
    },
  };
}
