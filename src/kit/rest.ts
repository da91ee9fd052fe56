/** One timer for a whole row of changes: to set it anew at each of them costs more than to wake up once for nothing. */
export interface Rest {
  /** something has changed: `rested` is called when nothing has for so long */
  stir(): void;
  stop(): void;
}

export function createRest(restMs: number, rested: () => void): Rest {
  let stirredMs = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const look = (): void => {
    const leftMs = stirredMs + restMs - performance.now();
    timer = leftMs > 0 ? setTimeout(look, leftMs) : undefined;
    if (timer === undefined) rested();
  };
  return {
    stir() {
      stirredMs = performance.now();
      timer ??= setTimeout(look, restMs);
    },
    stop() {
      clearTimeout(timer);
      timer = undefined;
    },
  };
}
