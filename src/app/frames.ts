/** The one redraw funnel: however much happens, listeners hear of it once in the next animation frame. */

export interface Frames {
  invalidate(): void;
  subscribe(listener: () => void): () => void;
}

export function createFrames(request: (callback: () => void) => unknown): Frames {
  const listeners = new Set<() => void>();
  let waiting = false;
  const flush = (): void => {
    waiting = false;
    for (const listener of [...listeners]) listener();
  };
  return {
    invalidate() {
      if (waiting) return;
      waiting = true;
      request(flush);
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
  };
}
