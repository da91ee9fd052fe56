/** The pieces that pages are put together from, as components: ink drawings, frames, buttons, header, fractions. */
import type { ComponentChildren, CSSProperties, Ref } from 'preact';
import { useId, useMemo, useRef } from 'preact/hooks';
import type { Approach } from '../../present/ports.ts';
import { approached } from '../approached.ts';
import { C, rect, shadow } from './ink.ts';
import { mark, panel, sheetPaper } from './pieces.ts';
import './theme.css';
import './fonts.css';
import { useSize } from '../hooks/useSize.ts';

export * from './figures.ts';
export * from './pieces.ts';

export interface InkProps {
  readonly svg: string;
  readonly width: number;
  readonly height: number;
  /** default `0 0 width height` */
  readonly viewBox?: string;
  /** what the drawing says; without it the drawing is hidden from screen readers */
  readonly label?: string;
  readonly class?: string;
  readonly style?: CSSProperties;
}

/** Puts a drawing made of strings into the page. Ids in it get a prefix of this instance, so that two equal drawings never share a clip. */
export function Ink({ svg, width, height, viewBox, label, class: cls, style }: InkProps) {
  const scope = useId();
  const html = useMemo(() => svg.replace(/(\bid="|url\(#)/g, (open) => `${open}${scope}`), [svg, scope]);
  return (
    <svg
      class={cls === undefined ? 'ink' : `ink ${cls}`}
      width={width}
      height={height}
      viewBox={viewBox ?? `0 0 ${width} ${height}`}
      {...(style === undefined ? {} : { style })}
      {...(label === undefined ? { 'aria-hidden': 'true' } : { role: 'img', 'aria-label': label })}
      focusable="false"
      // The drawing code writes the markup itself and escapes every word in it (ink.ts, T).
      dangerouslySetInnerHTML={{ __html: html }}
    />
  );
}

export type FrameKind = 'panel' | 'sheet' | 'card' | 'locked' | 'button' | 'primary' | 'field';

const FRAMES: Readonly<Record<FrameKind, (w: number, h: number, seed: number) => string>> = {
  panel: (w, h, seed) => panel(0, 0, w, h, { seed }),
  sheet: (w, h) => sheetPaper(0, 0, w, h),
  card: (w, h, seed) => shadow(0, 0, w, h, { s: 5 }) + rect(0, 0, w, h, { fill: C.sheet, sw: 1.4, seed }),
  locked: (w, h) =>
    `<rect width="${w}" height="${h}" fill="none" stroke="${C.ink2}" stroke-width="1.2" stroke-dasharray="4 4"/>`,
  button: (w, h) => shadow(0, 0, w, h, { s: 4, gap: 2.7 }) + plate(w, h, C.sheet),
  primary: (w, h) => shadow(0, 0, w, h, { s: 4, gap: 2.7 }) + plate(w, h, C.ink),
  field: (w, h) => plate(w, h, C.paper),
};

const plate = (w: number, h: number, fill: string): string =>
  `<rect width="${w}" height="${h}" fill="${fill}" stroke="${C.ink}" stroke-width="1.5"/>`;

/** An ink frame that fills its positioned parent and is drawn anew only when the size changes. */
export function Frame({ kind, seed = 1 }: { readonly kind: FrameKind; readonly seed?: number }) {
  const ref = useRef<HTMLSpanElement>(null);
  const { width, height } = useSize(ref);
  const svg = useMemo(() => (width > 0 ? FRAMES[kind](width, height, seed) : ''), [kind, width, height, seed]);
  return (
    <span class="frame" data-kind={kind} ref={ref} aria-hidden="true">
      {svg === '' ? null : <Ink svg={svg} width={width} height={height} />}
    </span>
  );
}

export interface FitProps {
  /** draws for the size that the place has; must be pure */
  readonly draw: (width: number, height: number) => string;
  /** the drawing is made anew when this or the size changes */
  readonly of: unknown;
  readonly label?: string;
  readonly class?: string;
}

/** A drawing that takes the size of its place: the stylesheet says how large. */
/** px; while a page is laid out a place may have less, too little for the frame of any drawing */
const LEAST_ROOM = 2;

export function Fit({ draw, of, label, class: cls }: FitProps) {
  const ref = useRef<HTMLDivElement>(null);
  const { width, height } = useSize(ref);
  const svg = useMemo(() => (Math.min(width, height) >= LEAST_ROOM ? draw(width, height) : ''), [of, width, height]);
  return (
    <div class={cls === undefined ? 'fit' : `fit ${cls}`} ref={ref}>
      {svg === '' ? null : <Ink svg={svg} width={width} height={height} {...(label === undefined ? {} : { label })} />}
    </div>
  );
}

export interface RoomLink {
  readonly name: string;
  readonly current: boolean;
  readonly go: () => void;
}

/** The rooms that can be entered now; the one we are in is underlined in rust. */
export function Rooms({ name, links }: { readonly name: string; readonly links: readonly RoomLink[] }) {
  return (
    <nav class="rooms" aria-label={name}>
      <ul>
        {links.map((link) => (
          <li key={link.name}>
            <button type="button" onClick={link.go} {...(link.current ? { 'aria-current': 'page' as const } : {})}>
              {link.name}
            </button>
          </li>
        ))}
      </ul>
    </nav>
  );
}

export interface ButtonProps {
  readonly children: ComponentChildren;
  readonly onClick: () => void;
  readonly primary?: boolean;
  readonly disabled?: boolean;
  /** there is nothing for it to do now; unlike a disabled one it keeps the focus of whoever has pressed it until there was no more */
  readonly idle?: boolean;
  /** a fuller name for screen readers than the words on the button */
  readonly label?: string;
  readonly class?: string;
  readonly pressed?: boolean;
  readonly innerRef?: Ref<HTMLButtonElement>;
  /** hears that it is about to be pressed */
  readonly approach?: Approach;
}

/** 44 px or more high; one primary button a page. */
export function Button({
  children,
  onClick,
  primary = false,
  disabled = false,
  idle = false,
  label,
  class: cls,
  pressed,
  innerRef,
  approach,
}: ButtonProps) {
  return (
    <button
      type="button"
      class={`button${primary ? ' primary' : ''}${cls === undefined ? '' : ` ${cls}`}`}
      disabled={disabled}
      onClick={idle ? undefined : onClick}
      {...(idle ? { 'aria-disabled': true } : {})}
      {...(label === undefined ? {} : { 'aria-label': label })}
      {...(pressed === undefined ? {} : { 'aria-pressed': pressed })}
      {...(innerRef === undefined ? {} : { ref: innerRef })}
      {...(approach === undefined ? {} : approached(approach))}
    >
      <Frame kind={primary ? 'primary' : 'button'} />
      <span class="button-words">{children}</span>
    </button>
  );
}

/** The mark alone, 42 x 32 times `scale`. */
export function Mark({ scale = 1 }: { readonly scale?: number }) {
  const svg = useMemo(() => mark(1, 0, 1), []);
  return <Ink svg={svg} width={44 * scale} height={32 * scale} viewBox="0 0 44 32" class="mark" />;
}

export interface HeaderProps {
  /** name of the product, beside the mark */
  readonly product: string;
  readonly onHome?: () => void;
  readonly children?: ComponentChildren;
  readonly right?: ComponentChildren;
}

/** Header: mark and word, an upright rule, what the page puts in the middle, what stands at the right, the double rule below. */
export function Header({ product, onHome, children, right }: HeaderProps) {
  const brand = (
    <>
      <Mark scale={1.05} />
      <span class="brand-words">{product}</span>
    </>
  );
  return (
    <header class="header">
      {onHome === undefined ? (
        <div class="brand">{brand}</div>
      ) : (
        <button type="button" class="brand" onClick={onHome}>
          {brand}
        </button>
      )}
      <span class="header-rule" aria-hidden="true" />
      <div class="header-middle">{children}</div>
      {right === undefined ? null : <div class="header-right">{right}</div>}
    </header>
  );
}

/** Words with their fractions set apart: "1 3/8" keeps a clear gap and never breaks. */
export function Frac({ children }: { readonly children: string }) {
  const parts = children.split(/(\d+ )?(\d+\/\d+)/);
  const out: ComponentChildren[] = [];
  for (let i = 0; i < parts.length; i += 3) {
    if (parts[i]) out.push(parts[i]);
    const fraction = parts[i + 2];
    if (fraction !== undefined) {
      const whole = parts[i + 1];
      out.push(<span class="frac">{whole === undefined ? fraction : `${whole.trim()}\u00a0${fraction}`}</span>);
    }
  }
  return <>{out}</>;
}
