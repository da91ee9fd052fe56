/** A small canvas for what turns under the hand, painted once in a frame in which what it shows is another. */
import { useCallback, useEffect, useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import { pageFrames } from '../../../kit/frameLoop.ts';
import { useResolution } from '../../../kit/hooks/useResolution.ts';
import type { Rect } from '../../../kit/px.ts';

export interface Turning {
  /** where everything stands; painted again only where this text is another than the last */
  readonly stands: string;
  readonly paint: (context: CanvasRenderingContext2D) => void;
}

/**
 * `box` is the part of the drawing that the canvas covers, in the drawing's own units, of which `scale` make a CSS pixel. `look` says how it stands now. Call
 * `follow` when it may have changed.
 */
export function useTurningCanvas(
  { x, y, width, height }: Rect,
  scale: number,
  look: () => Turning,
  again: readonly unknown[],
) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const resolution = useResolution();
  const latest = useRef(look);
  latest.current = look;
  const stood = useRef('');
  const paint = useMemo(
    () => (): void => {
      const context = canvas.current?.getContext('2d');
      if (context == null) return;
      const { stands, paint: paintIt } = latest.current();
      if (stands === stood.current) return;
      stood.current = stands;
      const { canvas: glass } = context;
      context.setTransform(1, 0, 0, 1, 0, 0);
      context.clearRect(0, 0, glass.width, glass.height);
      const across = glass.width / width;
      const down = glass.height / height;
      context.setTransform(across, 0, 0, down, -x * across, -y * down);
      paintIt(context);
    },
    [x, y, width, height],
  );
  // Before the page is shown: a new drawing is never blank.
  useLayoutEffect(() => {
    const glass = canvas.current;
    if (glass === null) return;
    const across = Math.round(width * scale * resolution);
    const down = Math.round(height * scale * resolution);
    // A size that is set wipes the canvas, though it be the same.
    if (glass.width !== across) glass.width = across;
    if (glass.height !== down) glass.height = down;
    stood.current = '';
    paint();
  }, [paint, scale, resolution, ...again]);
  useEffect(() => () => pageFrames.drop(paint), [paint]);
  const follow = useCallback(() => pageFrames.ask('paint', paint), [paint]);
  return { canvas, follow };
}
