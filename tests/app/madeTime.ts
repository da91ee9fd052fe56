/** A clock with timers that go only as far as a test lets them. */
export interface MadeTime {
  readonly now: () => number;
  readonly after: (milliseconds: number, callback: () => void) => void;
  /** timers still to come */
  readonly ordered: () => number;
  /** lets time pass, timers coming due in their order */
  pass(milliseconds: number): void;
}

export function madeTime(): MadeTime {
  let nowMs = 0;
  let timers: { readonly atMs: number; readonly callback: () => void }[] = [];
  return {
    now: () => nowMs,
    after: (milliseconds, callback) => void timers.push({ atMs: nowMs + milliseconds, callback }),
    ordered: () => timers.length,
    pass(milliseconds) {
      const endMs = nowMs + milliseconds;
      for (;;) {
        const due = timers.filter(({ atMs }) => atMs <= endMs).sort((a, b) => a.atMs - b.atMs)[0];
        if (due === undefined) break;
        timers = timers.filter((timer) => timer !== due);
        nowMs = Math.max(nowMs, due.atMs);
        due.callback();
      }
      nowMs = endMs;
    },
  };
}
