/** Reads one thing from the bench and redraws only when that thing changes. Every reader hears of the same frame: one redraw funnel. */
import { useLayoutEffect, useReducer, useRef } from 'preact/hooks';
import type { BenchPort } from '../../present/ports.ts';

export type Port = Pick<BenchPort, 'subscribe'>;

/** `select` must give the same value while nothing that it reads has changed (a primitive, or a part of the state). */
export function usePort<T>(port: Port, select: () => T): T {
  const [, redraw] = useReducer<number, void>((n) => n + 1, 0);
  const value = select();
  const seen = useRef({ value, select });
  seen.current = { value, select };
  useLayoutEffect(
    () =>
      port.subscribe(() => {
        if (!Object.is(seen.current.select(), seen.current.value)) redraw();
      }),
    [port],
  );
  return value;
}

/** The same for a list or record made anew at each look: compared part by part. */
export function usePortEntries<T extends object>(port: Port, select: () => T): T {
  const kept = useRef<T | null>(null);
  return usePort(port, () => {
    const next = select();
    if (kept.current !== null && sameEntries(kept.current, next)) return kept.current;
    kept.current = next;
    return next;
  });
}

function sameEntries(a: object, b: object): boolean {
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  return keys.every((key) => Object.is(a[key as keyof typeof a], b[key as keyof typeof b]));
}
