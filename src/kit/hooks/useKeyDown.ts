/** A key heard anywhere on the page. */
import { useLayoutEffect, useRef } from 'preact/hooks';

/**
 * It hears from the moment that its part of the page can be seen, and always as that part was last drawn: an ordinary effect comes after the picture, and a key that was
 * pressed in between would be lost or taken for what the page showed before.
 */
export function useKeyDown(hear: (event: KeyboardEvent) => void): void {
  const latest = useRef(hear);
  useLayoutEffect(() => {
    latest.current = hear;
  });
  useLayoutEffect(() => {
    const key = (event: KeyboardEvent): void => latest.current(event);
    addEventListener('keydown', key);
    return () => removeEventListener('keydown', key);
  }, []);
}
