/** The shelf of instruments: slides sideways, and under it tabs that bring an instrument to the front, between an arrow for each way. */

import type { ComponentChildren } from 'preact';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { useWords } from '../../kit/hooks/useWords.ts';
import type { Rect } from '../../kit/px.ts';
import { place } from '../../kit/px.ts';
import { Short } from '../../kit/Short.tsx';
import type { BenchLayout } from './layout.ts';

export interface ShelfItem {
  readonly id: string;
  readonly no: string | number;
  readonly name: string;
  readonly content: ComponentChildren;
}

interface ShelfProps {
  readonly shelf: NonNullable<BenchLayout['shelf']>;
  readonly tabs: Rect;
  readonly items: readonly ShelfItem[];
  /** id of the instrument that stands in front at first */
  readonly first: string;
}

export function Shelf({ shelf, tabs, items, first }: ShelfProps) {
  const { panels: panelWords } = useWords();
  const scroller = useRef<HTMLDivElement>(null);
  const [seen, setSeen] = useState<ReadonlySet<string>>(new Set());
  const [edges, setEdges] = useState({ left: false, right: true });
  const rows = useMemo(() => intoRows(items, shelf.rows), [items, shelf.rows]);

  useEffect(() => {
    const element = scroller.current;
    if (element === null) return;
    // No picture of the shelf is wanted before it stands where the work begins.
    element.scrollLeft = leftOf(element, first);
    const whole = new IntersectionObserver(
      (entries) =>
        setSeen((old) => {
          const next = new Set(old);
          for (const entry of entries) {
            const id = (entry.target as HTMLElement).dataset.item!;
            const share = entry.intersectionRect.width / Math.min(entry.boundingClientRect.width, element.clientWidth);
            if (share > 0.7) next.add(id);
            else next.delete(id);
          }
          return next;
        }),
      { root: element, threshold: [0, 0.2, 0.4, 0.6, 0.7, 0.8, 1] },
    );
    for (const item of element.querySelectorAll('[data-item]')) whole.observe(item);
    const edge = (): void =>
      setEdges((old) => {
        const left = element.scrollLeft > 8;
        const right = element.scrollLeft < element.scrollWidth - element.clientWidth - 8;
        return old.left === left && old.right === right ? old : { left, right };
      });
    edge();
    element.addEventListener('scroll', edge, { passive: true });
    return () => {
      whole.disconnect();
      element.removeEventListener('scroll', edge);
    };
  }, [first, rows]);

  const slide = (by: number): void => {
    const element = scroller.current;
    element?.scrollBy({ left: by * element.clientWidth * 0.7, behavior: gently() });
  };
  const bring = (id: string): void => {
    const element = scroller.current;
    if (element === null) return;
    element.scrollTo({ left: leftOf(element, id), behavior: gently() });
    element.querySelector<HTMLElement>(`[data-item="${id}"] h2`)?.focus({ preventScroll: true });
  };
  return (
    <>
      <div class="shelf-window placed" style={place(shelf)}>
        <div class="shelf-slide" ref={scroller}>
          {rows.map((row) => (
            <div class="shelf-row" key={row[0]!.id}>
              {row.map((item) => (
                <div class="shelf-item" key={item.id} data-item={item.id}>
                  {item.content}
                </div>
              ))}
            </div>
          ))}
        </div>
      </div>
      <nav class="shelf-tabs placed" style={place(tabs)} aria-label={panelWords.shelf}>
        <Arrow d="M16 8l-8 8l8 8" name={panelWords.slideLeft} end={!edges.left} onClick={() => slide(-1)} />
        {items.map((item) => (
          <button type="button" key={item.id} class={seen.has(item.id) ? 'open' : ''} onClick={() => bring(item.id)}>
            <span class={seen.has(item.id) ? 'disc' : 'disc hollow'} aria-hidden="true">
              {item.no}
            </span>
            <Short>{item.name}</Short>
          </button>
        ))}
        <Arrow d="M8 8l8 8l-8 8" name={panelWords.slideRight} end={!edges.right} onClick={() => slide(1)} />
      </nav>
    </>
  );
}

interface ArrowProps {
  readonly d: string;
  readonly name: string;
  /** the shelf goes no further this way */
  readonly end: boolean;
  readonly onClick: () => void;
}

/** It stays where it is at the end of the shelf, so that neither the tabs nor the focus jump. */
function Arrow({ d, name, end, onClick }: ArrowProps) {
  return (
    <button type="button" class="shelf-arrow" aria-label={name} aria-disabled={end} onClick={onClick}>
      <svg width="24" height="32" aria-hidden="true" class="ink">
        <path d={d} fill="none" stroke="var(--ink)" stroke-width="2.4" stroke-linecap="round" stroke-linejoin="round" />
      </svg>
    </button>
  );
}

/** How far the shelf has slid when this instrument stands at its left end. */
function leftOf(shelf: HTMLElement, id: string): number {
  const item = shelf.querySelector<HTMLElement>(`[data-item="${id}"]`);
  if (item === null) return 0;
  return shelf.scrollLeft + item.getBoundingClientRect().left - shelf.getBoundingClientRect().left - EDGE;
}

/** so that the frame of the instrument is seen */
const EDGE = 2;

function gently(): ScrollBehavior {
  return matchMedia('(prefers-reduced-motion: reduce)').matches ? 'auto' : 'smooth';
}

/** One row, or two of about equal length with the order kept from top to bottom, left to right. */
function intoRows(items: readonly ShelfItem[], rows: 1 | 2): readonly (readonly ShelfItem[])[] {
  if (rows === 1) return [items];
  const half = Math.ceil(items.length / 2);
  return [items.slice(0, half), items.slice(half)];
}
