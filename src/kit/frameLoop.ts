/**
 * The page's one animation frame. Whoever wants a frame asks here; however many ask, the browser is asked once, and not at all while nobody does.
 *
 * A frame goes in three strokes: acts that a moving hand has gathered are done, what changed is solved and told, then whatever is painted by hand is painted.
 * What is asked for a later stroke while an earlier one runs comes in the same frame; anything else in the next.
 */

const STROKES = ['act', 'tell', 'paint'] as const;
export type Stroke = (typeof STROKES)[number];
/** `nowMs` is the frame's own time: the same for everybody in it, on the clock of `performance.now()` */
export type FrameStep = (nowMs: number) => void;

export interface FrameLoop {
  /** once, in the next frame; asked again before that, it is still once */
  ask(stroke: Stroke, step: FrameStep): void;
  drop(step: FrameStep): void;
}

export function createFrameLoop(request: (callback: FrameStep) => unknown): FrameLoop {
  const wanted: Readonly<Record<Stroke, Set<FrameStep>>> = { act: new Set(), tell: new Set(), paint: new Set() };
  let asked = false;
  let current = -1;

  const askBrowser = (): void => {
    if (asked) return;
    asked = true;
    request(frame);
  };
  const frame = (nowMs: number): void => {
    asked = false;
    try {
      for (current = 0; current < STROKES.length; current++) {
        const steps = wanted[STROKES[current]!];
        for (const step of [...steps]) {
          // One step may have dropped another.
          if (steps.delete(step)) step(nowMs);
        }
      }
    } finally {
      // A step that failed takes its own stroke with it, never the frames to come.
      current = -1;
      if (STROKES.some((stroke) => wanted[stroke].size > 0)) askBrowser();
    }
  };
  return {
    ask(stroke, step) {
      wanted[stroke].add(step);
      if (current < 0) askBrowser();
    },
    drop(step) {
      for (const stroke of STROKES) wanted[stroke].delete(step);
    },
  };
}

/** The loop of this page. The browser's own function refuses to be called as a method of another object. */
export const pageFrames: FrameLoop = createFrameLoop((callback) => requestAnimationFrame(callback));
