/**
 * What a hand does to a knob: drags up or down, shift or a second finger for a tenth, wheel, keys. Positions are those of a KnobScale. Where a knob has a notch, wheel and
 * arrows go by it, and shift makes of it an ordinary step.
 */
import { useEffect, useRef } from 'preact/hooks';
import { clamp } from '../../base/rounding.ts';
import { type Notch, notched } from '../../present/knobScale.ts';
import { WheelSteps, wheelTravel } from '../chassis/ringTurns.ts';

export interface Turning {
  /** highest position */
  readonly last: number;
  /** positions to an ordinary step; a fine drag and shift with a key move single positions */
  readonly coarse: number;
  /** what the wheel and the arrows go by from where the knob stands; null or left out: an ordinary step */
  notch?(): Notch | null;
  /** pixels of a drag for the whole range */
  readonly pixels: number;
  /** place now, may lie between two positions */
  place(): number;
  /** `held`: more is to come (a drag) */
  set(position: number, held: boolean): void;
  released?(): void;
  /** the drag goes sideways, right = more */
  readonly sideways?: boolean;
}

/** a wheel that clicks sends at least so much at once; less comes from a finger on a pad, and is gathered */
const NOTCH_PX = 40;

interface Hold {
  readonly pointer: number;
  readonly x: number;
  readonly y: number;
  place: number;
  lastX: number;
  lastY: number;
  sent: number;
  moved: boolean;
}

export function useTurning(turning: Turning) {
  const now = useRef(turning);
  now.current = turning;
  const hold = useRef<Hold | null>(null);
  const secondFinger = useSecondFinger(hold);
  const roll = useRef(new WheelSteps()).current;
  return useRef({
    /** whether the press in progress, or the one just ended, moved the knob */
    moved: () => hold.current?.moved ?? false,
    down(event: PointerEvent): void {
      if (event.button !== 0 || hold.current !== null) return;
      (event.currentTarget as Element).setPointerCapture(event.pointerId);
      const place = now.current.place();
      hold.current = {
        pointer: event.pointerId,
        x: event.clientX,
        y: event.clientY,
        place,
        lastX: event.clientX,
        lastY: event.clientY,
        sent: Math.round(place),
        moved: false,
      };
    },
    move(event: PointerEvent): void {
      const held = hold.current;
      if (held === null || event.pointerId !== held.pointer) return;
      if (!held.moved && Math.hypot(event.clientX - held.x, event.clientY - held.y) < 3) return;
      held.moved = true;
      const { last, coarse, pixels, set, sideways } = now.current;
      const fine = event.shiftKey || secondFinger();
      const travel = sideways ? event.clientX - held.lastX : held.lastY - event.clientY;
      held.lastX = event.clientX;
      held.lastY = event.clientY;
      held.place = clamp(held.place + (travel * last) / pixels / (fine ? 10 : 1), 0, last);
      const position = fine ? Math.round(held.place) : clamp(Math.round(held.place / coarse) * coarse, 0, last);
      if (position === held.sent) return;
      held.sent = position;
      set(position, true);
    },
    up(event: PointerEvent): void {
      const held = hold.current;
      if (held === null || event.pointerId !== held.pointer) return;
      hold.current = null;
      if (held.moved) {
        now.current.set(held.sent, false);
        now.current.released?.();
      }
    },
    wheel(event: WheelEvent): void {
      const travel = wheelTravel(event);
      if (event.ctrlKey || travel === 0) return;
      event.preventDefault();
      const steps = Math.abs(travel) >= NOTCH_PX || event.deltaMode !== 0 ? Math.sign(travel) : roll.take(travel, 0);
      if (steps !== 0) step(now.current, steps < 0 ? 1 : -1, event.shiftKey);
    },
    /** true when the key was one of the knob's */
    key(event: KeyboardEvent): boolean {
      const { last, coarse, set } = now.current;
      if (event.ctrlKey || event.altKey || event.metaKey) return false;
      const ways: Record<string, 1 | -1> = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1 };
      const way = ways[event.key];
      const pages = event.key === 'PageUp' ? 1 : event.key === 'PageDown' ? -1 : 0;
      if (way !== undefined) step(now.current, way, event.shiftKey);
      else if (pages !== 0) move(now.current, 10 * coarse * pages);
      else if (event.key === 'Home') set(0, false);
      else if (event.key === 'End') set(last, false);
      else return false;
      event.preventDefault();
      return true;
    },
  }).current;
}

/** One notch or step; finely, an ordinary step where there is a notch, else a single position. */
function step(turning: Turning, way: 1 | -1, finely: boolean): void {
  const notch = turning.notch?.() ?? null;
  if (notch === null) move(turning, way * (finely ? 1 : turning.coarse));
  else if (finely) move(turning, way * turning.coarse);
  else move(turning, notched(turning.place(), way, notch) - Math.round(turning.place()));
}

function move({ last, place, set }: Turning, by: number): void {
  const at = Math.round(place());
  const next = clamp(at + by, 0, last);
  if (next !== at) set(next, false);
}

/** Watches for a second finger anywhere while the knob is held. */
function useSecondFinger(hold: { readonly current: Hold | null }): () => boolean {
  const others = useRef(new Set<number>());
  useEffect(() => {
    const fingers = others.current;
    const down = (event: PointerEvent): void => {
      if (hold.current !== null && event.pointerType === 'touch' && event.pointerId !== hold.current.pointer)
        fingers.add(event.pointerId);
    };
    const up = (event: PointerEvent): void => void fingers.delete(event.pointerId);
    addEventListener('pointerdown', down, { capture: true, passive: true });
    addEventListener('pointerup', up, { capture: true, passive: true });
    addEventListener('pointercancel', up, { capture: true, passive: true });
    return () => {
      removeEventListener('pointerdown', down, { capture: true });
      removeEventListener('pointerup', up, { capture: true });
      removeEventListener('pointercancel', up, { capture: true });
    };
  }, [hold]);
  return () => others.current.size > 0;
}
