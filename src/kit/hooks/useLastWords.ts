/** Words under something that settles: while it does, what was said last stays, for words that come and go with every turn jump and are read out each time. */
import { useRef } from 'preact/hooks';

/** Called with what it is said of, and what there is to say now or null while nothing can be told. Gives that, or what was said last of the same; null where that was of something else. */
export type LastWords = (about: number, said: string | null) => string | null;

export function createLastWords(): LastWords {
  let last: { readonly about: number; readonly said: string } | null = null;
  return (about, said) => {
    if (said !== null) {
      last = { about, said };
      return said;
    }
    return last?.about === about ? last.said : null;
  };
}

export function useLastWords(): LastWords {
  const kept = useRef<LastWords | null>(null);
  kept.current ??= createLastWords();
  return kept.current;
}
