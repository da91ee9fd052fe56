/** What the papers have in common: their head, lines to write on, boxes to tick, the frame of cautions, the figure. */
import type { ComponentChildren } from 'preact';
import { useMemo } from 'preact/hooks';
import { liveSign } from '../../kit/chassis/chassisParts.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Ink, Mark } from '../../kit/theme/art.tsx';
import type { SheetFigures } from '../../present/sheetFigures.ts';
import { paperFigure } from './paperFigure.ts';
import './caution.css';

interface PaperProps {
  readonly name: string;
  readonly sub: string;
  readonly title: ComponentChildren;
  readonly foot: string;
  readonly children: ComponentChildren;
}

export function Paper({ name, sub, title, foot, children }: PaperProps) {
  const { shell } = useWords();
  return (
    <article class="paper-page" aria-label={name}>
      <header class="paper-head">
        <p class="paper-mark">
          <Mark />
          <span>{shell.product}</span>
        </p>
        <p class="paper-kind">
          <b>{name}</b>
          <br />
          {sub}
        </p>
      </header>
      <h2 class="paper-title">{title}</h2>
      {children}
      <footer class="paper-foot">{foot}</footer>
    </article>
  );
}

/** Something to be written in by hand. */
export function Blank({
  name,
  wide = false,
  short = false,
  unit,
}: {
  readonly name: string;
  readonly wide?: boolean;
  /** several stand in a row */
  readonly short?: boolean;
  readonly unit?: string;
}) {
  return (
    <span class={wide ? 'blank wide' : short ? 'blank short' : 'blank'}>
      <span>{name}</span>
      <i />
      {unit === undefined ? null : <span>{unit}</span>}
    </span>
  );
}

export const TickBox = () => <span class="tick-box" />;

export function PaperCaution({ lead, children }: { readonly lead: string; readonly children: ComponentChildren }) {
  return (
    <aside class="paper-caution">
      <div>
        <Ink svg={LIVE_SIGN} width={44} height={38} />
        <p>
          <b>{lead}</b> {children}
        </p>
      </div>
    </aside>
  );
}

/** In black, and without a ground: a printer may leave grounds out, and lines stay. */
const LIVE_SIGN = liveSign(22, 19, 1.12, { ground: 'none', edge: '#000', bolt: '#000' });

interface FigureProps {
  readonly figures: SheetFigures;
  readonly label: string;
  readonly width: number;
  readonly height: number;
  readonly style: 'wanted' | 'dotted';
}

/** Drawn at one size and scaled to its place, for nothing of a printed page can be measured beforehand. */
export function PaperFigure({ figures, label, width, height, style }: FigureProps) {
  const { rack } = useWords();
  const unit = rack.unit(figures.response.setUp.centreHz);
  const svg = useMemo(
    () => paperFigure({ figures, width, height, perUnit: unit === 'kHz' ? 1e3 : 1e6, style }),
    [figures, width, height, unit, style],
  );
  return (
    <figure class="paper-figure">
      <Ink svg={svg} width={width} height={height} label={label} />
      <figcaption>{unit}</figcaption>
    </figure>
  );
}
