/** Rust corners round the parts of the bench that the guide means, wherever they stand. They take no pointer. */
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { place, type Rect } from '../../../kit/px.ts';
import type { BenchPort } from '../../../present/ports.ts';

const ROOM = 6;
/** px: a point has no size of its own */
const LEAST = 26;

interface GuideLightProps {
  readonly port: BenchPort;
  readonly find: () => readonly HTMLElement[];
  /** told what is lit, the one to take hold of first */
  readonly onFound?: (parts: readonly HTMLElement[]) => void;
}

export function GuideLight({ port, find, onFound }: GuideLightProps) {
  const [rects, setRects] = useState<readonly Rect[]>([]);
  const last = useRef('');
  useLayoutEffect(() => {
    // A card grows by what is answered on it.
    const grown = new ResizeObserver(() => look());
    let watched: readonly HTMLElement[] = [];
    const look = (): void => {
      const bench = document.querySelector('main')?.getBoundingClientRect();
      if (bench === undefined) return;
      const parts = find();
      onFound?.(parts);
      if (parts.some((part, i) => part !== watched[i]) || parts.length !== watched.length) {
        grown.disconnect();
        for (const part of parts) grown.observe(part);
        watched = parts;
      }
      const now = parts.map((part) => around(drawn(part).getBoundingClientRect(), bench));
      const key = JSON.stringify(now);
      if (key === last.current) return;
      last.current = key;
      setRects(now);
    };
    look();
    const stop = port.subscribe(look);
    addEventListener('scroll', look, { capture: true, passive: true });
    addEventListener('resize', look);
    addEventListener('click', look);
    addEventListener('keyup', look);
    return () => {
      stop();
      grown.disconnect();
      removeEventListener('scroll', look, { capture: true });
      removeEventListener('resize', look);
      removeEventListener('click', look);
      removeEventListener('keyup', look);
    };
  }, [port, find, onFound]);
  return (
    <>
      {rects.map((rect, i) => (
        <span key={i} class="guide-light placed" style={place(rect)} aria-hidden="true" />
      ))}
    </>
  );
}

/** Of a lead the plug that is drawn: what a finger takes hold of is larger, and lies over its neighbours. */
function drawn(part: HTMLElement): Element {
  return part.querySelector('.lead-ring') ?? part;
}

function around(part: DOMRect, bench: DOMRect): Rect {
  const width = Math.max(LEAST, part.width) + 2 * ROOM;
  const height = Math.max(LEAST, part.height) + 2 * ROOM;
  // At the rim of the page the corners stand closer: they never make it longer.
  const left = Math.max(0, part.left + part.width / 2 - width / 2 - bench.left);
  const top = Math.max(0, part.top + part.height / 2 - height / 2 - bench.top);
  const right = Math.min(bench.width, part.left + part.width / 2 + width / 2 - bench.left);
  const bottom = Math.min(bench.height, part.top + part.height / 2 + height / 2 - bench.top);
  return {
    x: Math.round(left),
    y: Math.round(top),
    width: Math.round(right - left),
    height: Math.round(bottom - top),
  };
}
