/** The receivers of one's own that are kept in this browser, as the workshop lists them. */
import { useEffect, useState } from 'preact/hooks';
import { pageOwnReceivers } from '../../services/library/pageOwnReceivers.ts';

export interface KeptReceiver {
  readonly id: string;
  readonly setName: string;
}

/** Empty until the shelf has been read, and where it cannot be. */
export function useOwnReceivers(): readonly KeptReceiver[] {
  const [kept, setKept] = useState<readonly KeptReceiver[]>([]);
  useEffect(() => {
    let stop: (() => void) | null = null;
    let here = true;
    const look = async (): Promise<void> => {
      const shelf = await pageOwnReceivers();
      const all = await shelf.list();
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
