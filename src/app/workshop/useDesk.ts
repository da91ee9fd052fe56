/** A desk of things in the making, in the browser and in its room: where it keeps them, drawn anew as it changes, written before the page goes. */
import { useEffect, useReducer } from 'preact/hooks';
import { createDraftShelf, type DraftShelf } from '../../services/store/draftShelf.ts';
import { freshId } from '../../services/store/freshId.ts';
import type { ShelvedDesk } from './shelvedDesk.ts';

const WRITE_AFTER_MS = 300;

export interface DeskPlace {
  readonly shelf: DraftShelf;
  readonly newKey: () => string;
  readonly soon: (write: () => void) => void;
}

export function deskPlace(of: 'draft' | 'receiverDraft'): DeskPlace {
  let timer: ReturnType<typeof setTimeout> | undefined;
  return {
    shelf: createDraftShelf(() => localStorage, of),
    newKey: freshId,
    soon(write) {
      clearTimeout(timer);
      timer = setTimeout(write, WRITE_AFTER_MS);
    },
  };
}

export function useDesk(desk: Pick<ShelvedDesk<unknown>, 'subscribe' | 'flush'>): void {
  const [, redraw] = useReducer<number, void>((n) => n + 1, 0);
  useEffect(() => desk.subscribe(() => redraw()), [desk]);
  useEffect(() => {
    addEventListener('pagehide', desk.flush);
    return () => {
      removeEventListener('pagehide', desk.flush);
      desk.flush();
    };
  }, [desk]);
}
