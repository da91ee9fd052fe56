/** The one redraw funnel: however much happens, listeners hear of it once in the next animation frame. */
import type { FrameLoop } from '../kit/frameLoop.ts';

export interface Frames {
  invalidate(): void;
  subscribe(listener: () => void): () => void;
}

export function createFrames(loop: FrameLoop): Frames {
  const listeners = new Set<() => void>();
  const flush = (): void => {
    for (const listener of [...listeners]) listener();
  };
  return {
    invalidate: () => loop.ask('tell', flush),
    subscribe(listener) {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
  };
}
