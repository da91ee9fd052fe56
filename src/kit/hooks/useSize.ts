/**
 * Size of an element in whole CSS pixels, watched by one shared observer. The observer tells the first size too, in the frame in which the element is laid out and
 * before it is painted: asked for at once, it would have the browser lay out the page twice for one frame.
 */
import type { RefObject } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';

export interface Size {
  readonly width: number;
  readonly height: number;
}

export function useSize(ref: RefObject<HTMLElement | null>): Size {
  const [size, setSize] = useState<Size>(NOTHING);
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const measure = (): void => {
      const width = Math.round(element.clientWidth);
      const height = Math.round(element.clientHeight);
      setSize((old) => (old.width === width && old.height === height ? old : { width, height }));
    };
    return watch(element, measure);
  }, [ref]);
  return size;
}

const NOTHING: Size = { width: 0, height: 0 };
const measures = new WeakMap<Element, () => void>();
let observer: ResizeObserver | null = null;

function watch(element: Element, measure: () => void): () => void {
  observer ??= new ResizeObserver((entries) => {
    for (const entry of entries) measures.get(entry.target)?.();
  });
  measures.set(element, measure);
  observer.observe(element);
  return () => {
    observer?.unobserve(element);
    measures.delete(element);
  };
}
