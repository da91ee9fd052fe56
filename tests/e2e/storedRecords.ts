/** Looks into the page's database, and spoils it, from inside the page. */
import type { Page } from '@playwright/test';

type Shelf = 'open' | 'kept' | 'texts' | 'aside';

/** Everything that stands on a shelf. */
export function stored(page: Page, shelf: Shelf): Promise<Record<string, unknown>[]> {
  return page.evaluate(async (name) => {
    const of = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const base = await of(indexedDB.open('haystack'));
    const all = await of(base.transaction(name).objectStore(name).getAll());
    base.close();
    return all;
  }, shelf);
}

/** Puts records on a shelf as they are. */
export function scribble(page: Page, shelf: Shelf, records: readonly Record<string, unknown>[]): Promise<void> {
  return page.evaluate(
    async ({ name, all }) => {
      const base = await new Promise<IDBDatabase>((resolve) => {
        const request = indexedDB.open('haystack');
        request.onsuccess = () => resolve(request.result);
      });
      const change = base.transaction(name, 'readwrite');
      for (const record of all) change.objectStore(name).put(record);
      await new Promise((resolve) => {
        change.oncomplete = resolve;
      });
      base.close();
    },
    { name: shelf, all: records },
  );
}

/** From the next page on: while `full()` has been called, nothing more is written. */
export async function withDisk(
  page: Page,
): Promise<{ full(): Promise<void>; free(): Promise<void>; refusals(): Promise<number> }> {
  await page.addInitScript(() => {
    const { put, add } = IDBObjectStore.prototype;
    const guarded = (write: typeof put): typeof put =>
      function (this: IDBObjectStore, ...record) {
        const disk = window as unknown as { diskFull?: boolean; diskRefusals?: number };
        if (disk.diskFull) {
          disk.diskRefusals = (disk.diskRefusals ?? 0) + 1;
          throw new DOMException('no room', 'QuotaExceededError');
        }
        return write.apply(this, record);
      };
    IDBObjectStore.prototype.put = guarded(put);
    IDBObjectStore.prototype.add = guarded(add);
  });
  const set = (full: boolean): Promise<void> =>
    page.evaluate((is) => {
      (window as unknown as { diskFull: boolean }).diskFull = is;
    }, full);
  const refusals = (): Promise<number> =>
    page.evaluate(() => (window as unknown as { diskRefusals?: number }).diskRefusals ?? 0);
  return { full: () => set(true), free: () => set(false), refusals };
}
