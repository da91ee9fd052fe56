/** While an end is in the hand: the points that take it, ringed; with the keyboard only these can be reached. */

import { useLayoutEffect, useRef } from 'preact/hooks';
import type { LeadEnd } from '../../../bench/benchState.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import type { BenchLayout } from '../layout.ts';
import { nextEnd } from './leadAim.ts';
import type { Carry } from './leadCarry.ts';

export interface LeadTargetsProps {
  readonly carry: Carry;
  readonly layout: BenchLayout;
  readonly ends: ReadonlyMap<LeadEnd, { readonly x: number; readonly y: number }>;
  readonly from: LeadEnd | null;
  readonly names: (end: LeadEnd) => string;
  readonly onLook: (end: LeadEnd | null) => void;
  readonly onDrop: (end: LeadEnd | null) => void;
  readonly onCancel: () => void;
  /** the point whose ring or name lies there */
  readonly pointAt: (clientX: number, clientY: number) => LeadEnd | null;
}

/** stands for the tray in the walk from point to point */
const TRAY = '';

export function LeadTargets({ carry, layout, ends, from, names, onLook, onDrop, onCancel, pointAt }: LeadTargetsProps) {
  const { scene: sceneWords } = useWords();
  const buttons = useRef(new Map<LeadEnd, HTMLButtonElement>()).current;
  const walk = [...carry.legal, TRAY];
  const byKeys = carry.by === 'keys';
  // Before the next key can come.
  useLayoutEffect(() => {
    if (!byKeys) return;
    const first = from !== null && carry.legal.includes(from) ? from : (carry.legal[0] ?? TRAY);
    buttons.get(first)?.focus({ preventScroll: true });
  }, [carry]);
  useLayoutEffect(() => {
    if (!byKeys) return;
    const outside = (e: PointerEvent): void => {
      if (!(e.target instanceof Element) || e.target.closest('.lead-target') !== null) return;
      // A point that takes no such lead is tried as well, and the bench says why not.
      const end = e.target.closest('button, [data-slug]') === null ? pointAt(e.clientX, e.clientY) : null;
      if (end === null) onCancel();
      else onDrop(end);
    };
    window.addEventListener('pointerdown', outside, true);
    return () => window.removeEventListener('pointerdown', outside, true);
  }, [carry, onCancel, onDrop, pointAt]);

  const key = (e: KeyboardEvent, end: LeadEnd): void => {
    const forward = e.key === 'ArrowDown' || e.key === 'ArrowRight' || (e.key === 'Tab' && !e.shiftKey);
    const back = e.key === 'ArrowUp' || e.key === 'ArrowLeft' || (e.key === 'Tab' && e.shiftKey);
    if (e.key === 'Escape') onCancel();
    else if (e.key === 'Delete' || e.key === 'Backspace') onDrop(null);
    else if (forward || back) buttons.get(nextEnd(walk, end, forward ? 1 : -1)!)?.focus({ preventScroll: true });
    else return;
    e.preventDefault();
    e.stopPropagation();
  };
  const target = (end: LeadEnd, x: number, y: number) => (
    <button
      key={end}
      type="button"
      class={`lead-target${end === TRAY ? ' tray' : ''}${end === from ? ' here' : ''}`}
      style={{ left: `${x}px`, top: `${y}px` }}
      tabIndex={byKeys ? 0 : -1}
      aria-label={end === TRAY ? sceneWords.layDown : sceneWords.putOn(names(end))}
      ref={(element) => {
        if (element === null) buttons.delete(end);
        else buttons.set(end, element);
      }}
      onFocus={() => onLook(end === TRAY ? null : end)}
      onClick={() => onDrop(end === TRAY ? null : end)}
      onKeyDown={(e) => key(e, end)}
    >
      {end === TRAY ? (
        <span class="tray-words">{sceneWords.layDown}</span>
      ) : (
        <span class="target-ring" aria-hidden="true" />
      )}
    </button>
  );
  return (
    <fieldset class={`lead-targets by-${carry.by}`} aria-label={sceneWords.carryShort(carry.lead)}>
      {carry.legal.map((end) => {
        const at = ends.get(end)!;
        return target(end, at.x, at.y);
      })}
      {byKeys ? target(TRAY, layout.chassis.x + layout.chassis.width / 2, layout.chassis.y + 62) : null}
      {byKeys ? (
        <p
          class="carry-note"
          aria-hidden="true"
          style={{ left: `${layout.chassis.x + layout.chassis.width / 2}px`, top: `${layout.chassis.y + 14}px` }}
        >
          {carry.legal.length === 0 ? sceneWords.carryNowhere(carry.lead) : sceneWords.carryShort(carry.lead)}
        </p>
      ) : null}
    </fieldset>
  );
}
