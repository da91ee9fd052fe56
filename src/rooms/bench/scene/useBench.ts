/** Reading the bench from components: a picked value that redraws only when it changes, and a listener for drawing by hand. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { BenchState } from '../../../bench/benchState.ts';
import type { BenchPort } from '../../../present/ports.ts';

/** `pick` must give the same object for the same state (or a plain value). */
export function useBench<T>(port: BenchPort, pick: (state: BenchState, port: BenchPort) => T): T {
  const value = pick(port.state(), port);
  const [, redraw] = useState(0);
  const shown = useRef(value);
  shown.current = value;
  const latest = useRef(pick);
  latest.current = pick;
  useEffect(() => {
    const look = (): void => {
      if (!Object.is(latest.current(port.state(), port), shown.current)) redraw((n) => n + 1);
    };
    // Something may have changed between drawing and listening.
    look();
    return port.subscribe(look);
  }, [port]);
  return value;
}

/** Calls `paint` now and after every change, outside the component's own redrawing. */
export function usePaint(port: BenchPort, paint: (state: BenchState) => void, again: readonly unknown[]): void {
  const latest = useRef(paint);
  latest.current = paint;
  useEffect(() => {
    latest.current(port.state());
    return port.subscribe(() => latest.current(port.state()));
  }, [port, ...again]);
}
