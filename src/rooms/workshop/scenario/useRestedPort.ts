/**
 * The desk's port for panels that show nothing of how the slugs stand. While a slug is dragged the draft changes with every frame, and to draw lists and forms anew each time would
 * take the frame that the tube needs. They get the port as it was before the drag, and the newest when the hand has let go and rests, or before it can do anything to them: at a press, a key or the focus.
 */
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { WorkshopPort } from './workshopPort.ts';

const ENDS = ['pointerup', 'pointercancel', 'blur'] as const;
const TOUCHES = ['pointerdown', 'keydown', 'focusin', 'dragenter'] as const;

/** `restMs`: how long the hand rests first. Panels with different ones are drawn in frames of their own: a hand that turns back has all of them behind it in one. */
export function useRestedPort(port: WorkshopPort, restMs: number): WorkshopPort {
  const given = useRef(port);
  const newest = useRef(port);
  const [, drawAgain] = useState(0);
  newest.current = port;
  const lags = onlySlugsMoved(given.current, port);
  if (!lags) given.current = port;
  const held = useRef(false);
  useLayoutEffect(() => {
    const press = (): void => {
      held.current = true;
    };
    const letGo = (): void => {
      held.current = false;
      if (given.current !== newest.current) drawAgain((n) => n + 1);
    };
    addEventListener('pointerdown', press, true);
    for (const end of ENDS) addEventListener(end, letGo, true);
    return () => {
      removeEventListener('pointerdown', press, true);
      for (const end of ENDS) removeEventListener(end, letGo, true);
    };
  }, []);
  useLayoutEffect(() => {
    if (!lags) return;
    const catchUp = (): void => {
      if (given.current === newest.current) return;
      given.current = newest.current;
      drawAgain((n) => n + 1);
    };
    const rested = (): void => {
      // A hand that holds a slug still has not let go of it, and may turn on at any moment.
      if (!held.current) catchUp();
    };
    const timer = setTimeout(rested, restMs);
    for (const touch of TOUCHES) addEventListener(touch, catchUp, true);
    return () => {
      clearTimeout(timer);
      for (const touch of TOUCHES) removeEventListener(touch, catchUp, true);
    };
  });
  return given.current;
}

function onlySlugsMoved(before: WorkshopPort, now: WorkshopPort): boolean {
  if (before.draft === now.draft || before.openKey !== now.openKey) return false;
  if (before.standing !== now.standing || before.refused !== now.refused || before.isKept !== now.isKept) return false;
  if (before.drafts.length !== now.drafts.length) return false;
  const { start: startBefore, ...draftBefore } = before.draft;
  const { start: startNow, ...draftNow } = now.draft;
  const { slugs: _, ...othersBefore } = startBefore;
  const { slugs: __, ...othersNow } = startNow;
  return sameKeys(draftBefore, draftNow) && sameKeys(othersBefore, othersNow);
}

function sameKeys(a: object, b: object): boolean {
  const [ofA, ofB] = [Object.entries(a), Object.entries(b)];
  const inB = new Map(ofB);
  return ofA.length === ofB.length && ofA.every(([key, value]) => inB.has(key) && Object.is(inB.get(key), value));
}
