/**
 * The desk's port for panels that show nothing of how the slugs stand. While a slug is dragged the draft changes with every frame, and to draw lists and forms anew each time would
 * take the frame that the tube needs. They get the port as it was before the drag, and the newest when the hand has let go and rests, or before it can do anything to them: at a press, a key or the focus.
 */
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { onlySlugsMoved } from '../../../workshop/slugsMoved.ts';
import type { WorkshopPort } from './workshopPort.ts';

const ENDS = ['pointerup', 'pointercancel', 'blur'] as const;
const TOUCHES = ['pointerdown', 'keydown', 'focusin', 'dragenter'] as const;

/** What a panel shows besides the draft: it is drawn at once where one of these has changed. */
export type Shown = (port: WorkshopPort) => readonly unknown[];

const NOTHING_ELSE: Shown = () => [];

/** `restMs`: how long the hand rests first. Panels with different ones are drawn in frames of their own: a hand that turns back has all of them behind it in one. */
export function useRestedPort(port: WorkshopPort, restMs: number, shown = NOTHING_ELSE): WorkshopPort {
  const given = useRef(port);
  const newest = useRef(port);
  const movedMs = useRef(0);
  const [, drawAgain] = useState(0);
  if (newest.current.draft !== port.draft) movedMs.current = performance.now();
  newest.current = port;
  const lags = lagsBehind(given.current, port, shown);
  if (!lags) given.current = port;
  const held = useHeld();
  useLayoutEffect(() => {
    if (!lags) return;
    let timer: ReturnType<typeof setTimeout>;
    const catchUp = (): void => {
      if (given.current === newest.current) return;
      given.current = newest.current;
      drawAgain((n) => n + 1);
    };
    // One timer for a whole drag, which looks how long the hand has rested: to set it anew in each frame costs more than to wake up for nothing.
    const look = (): void => {
      const leftMs = movedMs.current + restMs - performance.now();
      // A hand that holds a slug still has not let go of it, and may turn on at any moment.
      if (leftMs <= 0 && !held.current) catchUp();
      timer = setTimeout(look, leftMs > 0 ? leftMs : restMs);
    };
    const letGo = (): void => {
      movedMs.current = performance.now();
      clearTimeout(timer);
      timer = setTimeout(look, restMs);
    };
    timer = setTimeout(look, restMs);
    for (const end of ENDS) addEventListener(end, letGo, true);
    for (const touch of TOUCHES) addEventListener(touch, catchUp, true);
    return () => {
      clearTimeout(timer);
      for (const end of ENDS) removeEventListener(end, letGo, true);
      for (const touch of TOUCHES) removeEventListener(touch, catchUp, true);
    };
  }, [lags]);
  return given.current;
}

function lagsBehind(before: WorkshopPort, now: WorkshopPort, shown: Shown): boolean {
  if (before.draft === now.draft || before.openKey !== now.openKey) return false;
  if (before.standing !== now.standing || before.refused !== now.refused || before.isKept !== now.isKept) return false;
  if (before.drafts.length !== now.drafts.length) return false;
  const [was, is] = [shown(before), shown(now)];
  return is.every((one, i) => Object.is(one, was[i])) && onlySlugsMoved(before.draft, now.draft);
}

/** Whether a hand holds something on the page. */
function useHeld(): { readonly current: boolean } {
  const held = useRef(false);
  useLayoutEffect(() => {
    const press = (): void => {
      held.current = true;
    };
    const letGo = (): void => {
      held.current = false;
    };
    addEventListener('pointerdown', press, true);
    for (const end of ENDS) addEventListener(end, letGo, true);
    return () => {
      removeEventListener('pointerdown', press, true);
      for (const end of ENDS) removeEventListener(end, letGo, true);
    };
  }, []);
  return held;
}
