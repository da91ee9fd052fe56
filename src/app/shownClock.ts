/** A clock that somebody else moves, with its timers, until it is let go: from then on it runs by the clock of the page. */
export interface ShownClock {
  now(): number;
  after(milliseconds: number, callback: () => void): void;
  /** moves on to a time; timers come due in their order. Nothing once it is let go */
  moveTo(milliseconds: number): void;
  letGo(): void;
}

export interface RealTime {
  readonly now: () => number;
  readonly after: (milliseconds: number, callback: () => void) => unknown;
}

export function createShownClock(real: RealTime): ShownClock {
  let nowMs = 0;
  /** the page's clock when it was let go */
  let sinceMs: number | null = null;
  let timers: { readonly atMs: number; readonly callback: () => void }[] = [];
  return {
    now: () => (sinceMs === null ? nowMs : nowMs + real.now() - sinceMs),
    after(milliseconds, callback) {
      if (sinceMs === null) timers.push({ atMs: nowMs + milliseconds, callback });
      else real.after(milliseconds, callback);
    },
    moveTo(milliseconds) {
      if (sinceMs !== null) return;
      for (;;) {
        const due = timers.filter(({ atMs }) => atMs <= milliseconds).sort((a, b) => a.atMs - b.atMs)[0];
        if (due === undefined) break;
        timers = timers.filter((timer) => timer !== due);
        nowMs = Math.max(nowMs, due.atMs);
        due.callback();
      }
      nowMs = Math.max(nowMs, milliseconds);
    },
    letGo() {
      if (sinceMs !== null) return;
      sinceMs = real.now();
      for (const { atMs, callback } of timers) real.after(Math.max(0, atMs - nowMs), callback);
      timers = [];
    },
  };
}
