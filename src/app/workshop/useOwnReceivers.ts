/** The receivers of one's own that are kept in this browser, as the workshop lists them. */
import { useEffect, useState } from 'preact/hooks';
import { pageOwnReceivers } from '../../services/library/pageOwnReceivers.ts';
import type { BroughtReceiver, OwnReceivers } from '../../services/store/ownReceivers.ts';

export interface KeptReceiver {
  readonly id: string;
  readonly setName: string;
}

/** Empty until the shelf has been read, and where it cannot be. */
export const useOwnReceivers = (): readonly KeptReceiver[] => useShelved((shelf) => shelf.list());

/** Those that came with evening sheets. */
export const useBroughtReceivers = (): readonly BroughtReceiver[] => useShelved((shelf) => shelf.brought());

function useShelved<T>(listOf: (shelf: OwnReceivers) => Promise<readonly T[]>): readonly T[] {
  const [kept, setKept] = useState<readonly T[]>([]);
  useEffect(() => {
    let stop: (() => void) | null = null;
    let here = true;
    const look = async (): Promise<void> => {
      const shelf = await pageOwnReceivers();
      const all = await listOf(shelf);
      if (!here) return;
      setKept(all);
      stop ??= shelf.subscribe(() => void look().catch(() => {}));
    };
    // A shelf that cannot be opened has nothing on it.
    look().catch(() => {});
    return () => {
      here = false;
      stop?.();
    };
  }, []);
  return kept;
}
