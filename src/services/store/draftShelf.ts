/** Drafts of scenarios, or of receivers, kept in this browser, each under a key of its own. What comes back is whatever lay there: whoever takes it looks at it closely. */

export interface KeptDraft {
  readonly key: string;
  readonly record: unknown;
}

export interface DraftShelf {
  /** the one used last comes last */
  read(): readonly KeptDraft[];
  /** false: it could not be kept */
  write(key: string, record: unknown): boolean;
  remove(key: string): void;
}

type DraftStorage = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

const KEY = /^[a-z0-9-]{1,40}$/;

/** `storage` is asked each time: a browser may refuse it at any moment. */
export function createDraftShelf(storage: () => DraftStorage, of: 'draft' | 'receiverDraft' = 'draft'): DraftShelf {
  const list = `haystack.${of}s`;
  const placeOf = (key: string): string => `haystack.${of}.${key}`;
  const keys = (): readonly string[] => {
    const listed: unknown = parsed(storage().getItem(list));
    return Array.isArray(listed) ? listed.filter((key): key is string => typeof key === 'string' && KEY.test(key)) : [];
  };
  return {
    read() {
      try {
        return keys().flatMap((key) => {
          const record = parsed(storage().getItem(placeOf(key)));
          return record === null ? [] : [{ key, record }];
        });
      } catch {
        return [];
      }
    },
    write(key, record) {
      try {
        storage().setItem(placeOf(key), JSON.stringify(record));
        // Another tab may have added one meanwhile.
        storage().setItem(list, JSON.stringify([...keys().filter((one) => one !== key), key]));
        return true;
      } catch {
        return false;
      }
    },
    remove(key) {
      try {
        storage().setItem(list, JSON.stringify(keys().filter((one) => one !== key)));
        storage().removeItem(placeOf(key));
      } catch {
        // No storage to be had.
      }
    },
  };
}

function parsed(text: string | null): unknown {
  try {
    return text === null ? null : JSON.parse(text);
  } catch {
    return null;
  }
}
