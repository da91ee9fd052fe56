/**
 * What a live region says: the same words are told anew when they are said again, and what has been said is taken away after a while, so that nobody who reads through the
 * page later takes it for what is so now.
 */
import { useCallback, useEffect, useRef, useState } from 'preact/hooks';

/** a screen reader has long taken it up by then */
const SPOKEN_MS = 8000;

export interface Spoken {
  /** key of the element that holds the text */
  readonly no: number;
  readonly text: string;
}

export function useSpoken(): readonly [Spoken, (text: string) => void] {
  const [spoken, setSpoken] = useState<Spoken>({ no: 0, text: '' });
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  useEffect(() => () => clearTimeout(timer.current), []);
  const say = useCallback((text: string): void => {
    setSpoken(({ no }) => ({ no: no + 1, text }));
    clearTimeout(timer.current);
    if (text !== '') timer.current = setTimeout(() => setSpoken(({ no }) => ({ no, text: '' })), SPOKEN_MS);
  }, []);
  return [spoken, say];
}
