/** Rust corners round the parts of the bench that the guide means, wherever they stand. They take no pointer. */
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { place, type Rect } from '../../../kit/px.ts';
import type { BenchPort } from '../../../present/ports.ts';

const ROOM = 6;
/** of a tab, which has the next one close beside it */
const TAB_ROOM = 0;
/** px: a point has no size of its own */
const LEAST = 26;
const AGAIN_MS = 250;
/** A turning slug tells of itself in every frame, and where things stand can only be asked by laying out the page. */
const TOLD_MS = 100;

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

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
    let later: ReturnType<typeof setTimeout> | undefined;
    let watched: readonly HTMLElement[] = [];
    let told: ReturnType<typeof setTimeout> | undefined;
    const look = (): void => {
      clearTimeout(told);
      told = undefined;
      const bench = document.querySelector('main')?.getBoundingClientRect();
      if (bench === undefined) return;
      const parts = find();
      onFound?.(parts);
      clearTimeout(later);
      // A card comes of itself when the hand has rested.
      if (parts.length === 0) later = setTimeout(look, AGAIN_MS);
      if (parts.some((part, i) => part !== watched[i]) || parts.length !== watched.length) {
        grown.disconnect();
        for (const part of parts) grown.observe(part);
        watched = parts;
      }
      const now = parts.map((part) => around(withName(part), part.matches('[role=tab]') ? TAB_ROOM : ROOM, bench));
      const key = JSON.stringify(now);
      if (key === last.current) return;
      last.current = key;
      setRects(now);
    };
    look();
    const stop = port.subscribe(() => {
      told ??= setTimeout(look, TOLD_MS);
    });
    addEventListener('scroll', look, { capture: true, passive: true });
    addEventListener('resize', look);
    addEventListener('click', look);
    addEventListener('keyup', look);
    return () => {
      stop();
      clearTimeout(later);
      clearTimeout(told);
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

/** A point or a jack with its name: corners round the one alone would lie on the other. */
function withName(part: HTMLElement): Box {
  const own = roomy(drawn(part).getBoundingClientRect());
  const name = part.matches('.jack-spot') ? part.nextElementSibling : part.querySelector('.point-name');
  if (name === null) return own;
  const also = name.getBoundingClientRect();
  return {
    left: Math.min(own.left, also.left),
    top: Math.min(own.top, also.top),
    right: Math.max(own.right, also.right),
    bottom: Math.max(own.bottom, also.bottom),
  };
}

function roomy({ left, top, width, height }: DOMRect): Box {
  const [x, y] = [Math.max(0, LEAST - width) / 2, Math.max(0, LEAST - height) / 2];
  return { left: left - x, top: top - y, right: left + width + x, bottom: top + height + y };
}

/** At the rim of the page the corners stand closer: they never make it longer. */
function around(part: Box, room: number, bench: DOMRect): Rect {
  const left = Math.max(0, part.left - room - bench.left);
  const top = Math.max(0, part.top - room - bench.top);
  const right = Math.min(bench.width, part.right + room - bench.left);
  const bottom = Math.min(bench.height, part.bottom + room - bench.top);
  return {
    x: Math.round(left),
    y: Math.round(top),
    width: Math.round(right - left),
    height: Math.round(bottom - top),
  };
}
