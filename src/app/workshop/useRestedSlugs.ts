/** The open draft for what need not follow a slug while it is dragged: as it stood before its slugs began to move, and as it stands once they rest. Any other change is there at once. */
import { useEffect, useReducer, useRef } from 'preact/hooks';
import type { Draft } from '../../workshop/draft.ts';
import { onlySlugsMoved } from '../../workshop/slugsMoved.ts';

const REST_MS = 200;

export function useRestedSlugs(draft: Draft): Draft {
  const given = useRef(draft);
  const newest = useRef(draft);
  const movedMs = useRef(0);
  const [, drawAgain] = useReducer<number, void>((n) => n + 1, 0);
  if (newest.current !== draft) movedMs.current = performance.now();
  newest.current = draft;
  const lags = onlySlugsMoved(given.current, draft);
  if (!lags) given.current = draft;
  useEffect(() => {
    if (!lags) return;
    let timer: ReturnType<typeof setTimeout>;
    const look = (): void => {
      const leftMs = movedMs.current + REST_MS - performance.now();
      if (leftMs <= 0) {
        given.current = newest.current;
        drawAgain();
      }
      timer = setTimeout(look, leftMs > 0 ? leftMs : REST_MS);
    };
    timer = setTimeout(look, REST_MS);
    return () => clearTimeout(timer);
  }, [lags]);
  return given.current;
}
