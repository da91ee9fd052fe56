/** A trade word in a text: pointed at, focused or tapped it opens a slip that says what it means, with a small live figure where that helps. Nothing waits for it. */
import type { ComponentChildren } from 'preact';
import { useEffect, useId, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { handbookHash } from '../../present/handbook/address.ts';
import { TERMS, type TermId, termOf } from '../../present/handbook/terms.ts';
import { useWords } from '../hooks/useWords.ts';
import { px } from '../px.ts';
import { TermFigure } from './TermFigure.tsx';
import './term.css';

/** Before a slip opens under a pointer that only passes, and before it closes while the pointer is on its way to it. */
const HOVER_MS = 300;
const LEAVE_MS = 250;
const GAP_PX = 9;

type SlipState = 'shut' | 'glanced' | 'entered';

/** One slip at a time: the next one to open shuts the last. */
let closeLast: (() => void) | null = null;

export interface TermProps {
  readonly id: string;
  readonly children: ComponentChildren;
}

export function Term({ id, children }: TermProps) {
  const term = termOf(id);
  return term === null ? children : <KnownTerm id={term}>{children}</KnownTerm>;
}

function KnownTerm({ id, children }: { readonly id: TermId; readonly children: ComponentChildren }) {
  const [state, setState] = useState<SlipState>('shut');
  const open = state !== 'shut';
  const word = useRef<HTMLAnchorElement>(null);
  const slip = useRef<HTMLSpanElement>(null);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const slipId = useId();
  /** What was asked for by a key or a press outlasts a pointer that comes and goes. */
  const soon = (next: 'shut' | 'glanced', ms: number): void => {
    clearTimeout(timer.current);
    timer.current = setTimeout(() => setState((now) => (now === 'entered' ? now : next)), ms);
  };
  const hold = (): void => clearTimeout(timer.current);
  useEffect(() => hold, []);
  useLayoutEffect(() => {
    if (!open) return;
    const box = slip.current!;
    box.showPopover();
    placeBeside(box, word.current!);
    const close = (): void => setState('shut');
    closeLast?.();
    closeLast = close;
    const follow = (): void => placeBeside(box, word.current!);
    const key = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape') return;
      event.stopPropagation();
      if (box.contains(document.activeElement)) word.current?.focus();
      close();
    };
    const press = (event: PointerEvent): void => {
      const at = event.target as Node;
      if (!box.contains(at) && word.current?.contains(at) !== true) close();
    };
    addEventListener('keydown', key, true);
    addEventListener('pointerdown', press, true);
    addEventListener('scroll', follow, true);
    addEventListener('resize', close);
    return () => {
      if (closeLast === close) closeLast = null;
      removeEventListener('keydown', key, true);
      removeEventListener('pointerdown', press, true);
      removeEventListener('scroll', follow, true);
      removeEventListener('resize', close);
    };
  }, [open]);
  const show = (): void => {
    hold();
    setState('entered');
  };
  const left = (event: FocusEvent): void => {
    const to = event.relatedTarget as Node | null;
    if (slip.current?.contains(to) !== true && to !== word.current) setState('shut');
  };
  return (
    <span
      class="term"
      onPointerEnter={(event) => {
        if (event.pointerType !== 'touch') soon('glanced', HOVER_MS);
      }}
      onPointerLeave={(event) => {
        if (event.pointerType !== 'touch') soon('shut', LEAVE_MS);
      }}
      onFocusOut={left}
    >
      {/* biome-ignore lint/a11y/useSemanticElements: a word in a line of text, which breaks with it; opened aside it leads to its page */}
      <a
        ref={word}
        href={handbookHash(TERMS[id].page)}
        role="button"
        class="term-word"
        aria-expanded={open}
        {...(open ? { 'aria-describedby': slipId } : {})}
        onClick={(event) => {
          if (event.ctrlKey || event.metaKey || event.shiftKey) return;
          event.preventDefault();
          show();
        }}
        onKeyDown={(event) => {
          if (event.key !== ' ') return;
          event.preventDefault();
          show();
        }}
        onFocus={() => {
          if (word.current?.matches(':focus-visible')) setState((now) => (now === 'shut' ? 'glanced' : now));
        }}
      >
        {children}
      </a>
      {open ? (
        <span ref={slip} id={slipId} class="term-slip" popover="manual" onPointerEnter={hold}>
          <TermText id={id} entered={state === 'entered'} />
        </span>
      ) : null}
    </span>
  );
}

/** Tab goes into a slip that was opened on purpose; past one that only shows itself it goes on to what is next on the page. */
function TermText({ id, entered }: { readonly id: TermId; readonly entered: boolean }) {
  const words = useWords();
  const { term, means } = words.glossary.terms[id];
  const { page, figure } = TERMS[id];
  return (
    <>
      <span class="term-head">
        <b>{term}</b>
        {page === null ? null : (
          <a href={handbookHash(page)} tabIndex={entered ? 0 : -1}>
            {words.glossary.more}
          </a>
        )}
      </span>
      <span class="term-means">{means}</span>
      {figure === undefined ? null : <TermFigure term={term} tabbable={entered} {...figure} />}
    </>
  );
}

/** Under its word, or over it where there is more room; never beside the window. */
function placeBeside(slip: HTMLElement, word: HTMLElement): void {
  const at = word.getBoundingClientRect();
  const { offsetWidth: width, offsetHeight: height } = slip;
  const edge = 8;
  // Inside the sheet of its text where that is wide enough, so that it covers no neighbour.
  const sheet = word.closest('article, section.paper, details')?.getBoundingClientRect();
  const inside = sheet !== undefined && sheet.width >= width;
  const [from, to] = inside ? [sheet.left, sheet.right - width] : [edge, innerWidth - width - edge];
  const across = Math.min(Math.max(from, at.left - 12), to);
  const below = at.bottom + GAP_PX;
  const fits = below + height <= innerHeight - edge;
  slip.style.left = px(Math.max(edge, across));
  slip.style.top = px(fits ? below : Math.max(edge, at.top - GAP_PX - height));
}
