/** Receivers in the making, kept as they change like drafts of scenarios: several, each with its own undo. None need be open; what lies in the store as rubbish costs that one alone. */
import { type Making, makingOfRecord } from '../../making/makingRecord.ts';
import type { DraftShelf } from '../../services/store/draftShelf.ts';
import { createShelvedDesk, type ShelvedDesk } from './shelvedDesk.ts';

export interface ReceiverDesk extends Omit<ShelvedDesk<Making>, 'add' | 'layOut' | 'turnTo'> {
  /** the very same, already there, is opened instead of a second one */
  begin(making: Making): void;
}

export interface ReceiverDeskGiven {
  readonly shelf: DraftShelf;
  readonly newKey: () => string;
  /** calls back when changes have rested */
  readonly soon: (write: () => void) => void;
}

export function createReceiverDesk({ shelf, newKey, soon }: ReceiverDeskGiven): ReceiverDesk {
  const desk = createShelvedDesk({ shelf, ofRecord: makingOfRecord, soon });
  return {
    ...desk,
    begin(making) {
      const said = JSON.stringify(making);
      const same = desk.all().find(({ history }) => JSON.stringify(history.now) === said);
      desk.add(same?.key ?? newKey(), making);
    },
  };
}
