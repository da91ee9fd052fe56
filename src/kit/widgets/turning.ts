/** What a hand does to a knob: drags up or down, shift or a second finger for a tenth, wheel, keys. Positions are those of a KnobScale. */
import { useEffect, useRef } from 'preact/hooks';
import { clamp } from '../../base/rounding.ts';

export interface Turning {
  /** highest position */
  readonly last: number;
  /** positions to an ordinary step; a fine drag and shift with a key move single positions */
  readonly coarse: number;
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
      if (event.ctrlKey || event.deltaY === 0) return;
      event.preventDefault();
      step(now.current, (event.deltaY < 0 ? 1 : -1) * (event.shiftKey ? 1 : now.current.coarse));
    },
    /** true when the key was one of the knob's */
    key(event: KeyboardEvent): boolean {
      const { last, coarse, set } = now.current;
      if (event.ctrlKey || event.altKey || event.metaKey) return false;
      const one = event.shiftKey ? 1 : coarse;
      const moves: Record<string, number> = {
        ArrowUp: one,
        ArrowRight: one,
        ArrowDown: -one,
        ArrowLeft: -one,
        PageUp: 10 * coarse,
        PageDown: -10 * coarse,
      };
      const move = moves[event.key];
      if (move !== undefined) step(now.current, move);
      else if (event.key === 'Home') set(0, false);
      else if (event.key === 'End') set(last, false);
      else return false;
      event.preventDefault();
      return true;
    },
  }).current;
}

function step({ last, place, set }: Turning, by: number): void {
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
