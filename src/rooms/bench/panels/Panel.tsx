/** An instrument: wash and frame in ink, numbered title, what stands in the title row, and where there is too little room two or more sides. */

import type { ComponentChildren } from 'preact';
import { useId, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Disc } from '../../../kit/PlateTitle.tsx';
import type { Rect } from '../../../kit/px.ts';
import { place, px } from '../../../kit/px.ts';
import { Short } from '../../../kit/Short.tsx';
import { Frame } from '../../../kit/theme/art.tsx';
import '../../../kit/tabs/tabs.css';
import './panels.css';

export interface PanelProps {
  readonly id: string;
  readonly no: string | number;
  readonly title: string;
  /** absent on the shelf, where panels stand in a row */
  readonly rect?: Rect | null;
  readonly width?: number;
  /** right part of the title row */
  readonly extra?: ComponentChildren;
  readonly children: ComponentChildren;
  readonly class?: string;
}

export function Panel({ id, no, title, rect, width, extra, children, class: cls }: PanelProps) {
  return (
    <section
      id={id}
      class={`panel${cls === undefined ? '' : ` ${cls}`}${rect ? ' placed' : ''}`}
      aria-labelledby={`${id}-title`}
      style={rect ? place(rect) : width === undefined ? {} : { width: px(width) }}
    >
      <Frame kind="panel" />
      <div class="panel-head">
        <Disc>{no}</Disc>
        <h2 id={`${id}-title`} class="h short" title={title} tabIndex={-1}>
          {title}
        </h2>
        {extra === undefined ? null : <div class="panel-extra">{extra}</div>}
      </div>
      <div class="panel-body">{children}</div>
    </section>
  );
}

export interface Side {
  readonly id?: string;
  readonly name: string;
  /** of the whole panel while this side is in front; left out: the panel's own */
  readonly title?: string;
  readonly content: () => ComponentChildren;
}

/** A panel with several sides: tabs in its title row, or one corner to turn it over where the row is short. */
export function SidedPanel({
  sides,
  start = 0,
  corner = false,
  front = null,
  ...panel
}: Omit<PanelProps, 'children' | 'extra'> & {
  readonly sides: readonly Side[];
  readonly start?: number;
  readonly corner?: boolean;
  /** turned to the front by what is done elsewhere, until somebody turns the panel himself meanwhile; `key`: by what. null: by nothing */
  readonly front?: { readonly side: string; readonly key: string } | null;
}) {
  const { panels: panelWords } = useWords();
  const [open, setOpen] = useState(start);
  const scope = useId();
  const tabs = useRef<HTMLDivElement>(null);
  const byHand = useRef(false);
  useLayoutEffect(() => {
    if (front !== null && !byHand.current) setOpen(sides.findIndex(({ id }) => id === front.side));
  }, [front?.key]);
  const turn = (side: number): void => {
    if (front !== null) byHand.current = true;
    setOpen(side);
  };
  const at = Math.min(open, sides.length - 1);
  const title = sides[at]!.title ?? panel.title;
  if (corner) {
    const next = (at + 1) % sides.length;
    return (
      <Panel
        {...panel}
        extra={
          <button
            type="button"
            class="tab corner"
            aria-label={panelWords.turnOver(sides[next]!.name)}
            onClick={() => setOpen(next)}
          >
            <Short>{`${sides[next]!.name} \u203a`}</Short>
          </button>
        }
      >
        {sides[at]!.content()}
      </Panel>
    );
  }
  const key = (event: KeyboardEvent): void => {
    const move = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    if (move === 0) return;
    event.preventDefault();
    const next = (at + move + sides.length) % sides.length;
    turn(next);
    (tabs.current?.children[next] as HTMLElement | undefined)?.focus();
  };
  return (
    <Panel
      {...panel}
      title={title}
      extra={
        <div
          class="tabs side-tabs"
          role="tablist"
          aria-label={panelWords.sides(panel.title)}
          ref={tabs}
          onKeyDown={key}
        >
          {sides.map((side, i) => (
            <button
              key={side.name}
              type="button"
              role="tab"
              id={`${scope}-tab-${i}`}
              data-side={side.id}
              aria-selected={i === at}
              aria-controls={`${scope}-side`}
              tabIndex={i === at ? 0 : -1}
              onClick={() => turn(i)}
            >
              <Short>{side.name}</Short>
            </button>
          ))}
        </div>
      }
    >
      <div class="side" role="tabpanel" id={`${scope}-side`} aria-labelledby={`${scope}-tab-${at}`}>
        {sides[at]!.content()}
      </div>
    </Panel>
  );
}
