/** Shows the hand's own value at once while the bench hears of it at most 30 times a second. */
import { useEffect, useRef, useState } from 'preact/hooks';

const CATCH_UP_MS = 250;

/** `value` is what the bench says. Returns what to show, and how to hold on to a value and let it go. */
export function useHeld(value: number): { shown: number; hold(value: number): void; release(): void } {
  const [held, setHeld] = useState<number | null>(null);
  const letGo = useRef(false);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  useEffect(() => {
    if (letGo.current) setHeld(null);
  }, [value]);
  useEffect(() => () => clearTimeout(timer.current), []);
  return {
    shown: held ?? value,
    hold(next) {
      letGo.current = false;
      clearTimeout(timer.current);
      setHeld(next);
    },
    release() {
      letGo.current = true;
      // A refused value never comes back from the bench: the needle then falls to what the bench says.
      timer.current = setTimeout(() => setHeld(null), CATCH_UP_MS);
    },
  };
}
