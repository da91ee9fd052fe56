/** Work in pieces, so that the page never stands still for long: how many of `count` pieces have had their turn. */
import { useLayoutEffect, useState } from 'preact/hooks';

/** Nothing has its turn before `ready`. Between two turns the browser may paint and hear what is pressed, but nobody waits for it to. */
export function useTurns(count: number, ready: boolean): number {
  const [done, setDone] = useState(0);
  useLayoutEffect(() => {
    if (!ready || done >= count) return;
    const timer = setTimeout(() => setDone(done + 1));
    return () => clearTimeout(timer);
  }, [done, count, ready]);
  return done;
}
