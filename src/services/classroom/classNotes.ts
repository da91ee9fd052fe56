/** An instructor's notes, kept in this browser and nowhere else: one on the class, and one on each run that has one. */

export interface ClassNotes {
  /** '' where there is none */
  of(key: string): string;
  /** false: it could not be kept, and is lost with the page */
  write(key: string, text: string): boolean;
}

export const NOTE_CHARS = 2000;
/** The key of the note on the class as a whole; runs have a hash or a name of their own. */
export const CLASS_NOTE = 'class';
const PLACE = 'haystack-class-notes';
/** The oldest go where there are more. */
const MOST_NOTES = 2000;

/** `storage` is asked each time: a browser may refuse it at any moment. */
export function createClassNotes(storage: () => Pick<Storage, 'getItem' | 'setItem'>): ClassNotes {
  let notes = read(storage);
  return {
    of: (key) => notes.get(key) ?? '',
    write(key, text) {
      // Another tab may have written meanwhile.
      notes = new Map([...notes, ...read(storage)]);
      notes.delete(key);
      const kept = text.slice(0, NOTE_CHARS);
      if (kept.trim() !== '') notes.set(key, kept);
      const all = [...notes].slice(-MOST_NOTES);
      notes = new Map(all);
      try {
        storage().setItem(PLACE, JSON.stringify(all));
        return true;
      } catch {
        return false;
      }
    },
  };
}

function read(storage: () => Pick<Storage, 'getItem'>): Map<string, string> {
  try {
    const found: unknown = JSON.parse(storage().getItem(PLACE) ?? '[]');
    if (!Array.isArray(found)) return new Map();
    return new Map(
      found.filter(
        (one): one is [string, string] =>
          Array.isArray(one) && one.length === 2 && one.every((part) => typeof part === 'string'),
      ),
    );
  } catch {
    return new Map();
  }
}
