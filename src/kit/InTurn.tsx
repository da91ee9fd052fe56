/** A part of a page that comes in a task of its own, after those whose turn is before: a whole bench at once would let nothing be heard for too long. */
import type { ComponentChildren } from 'preact';
import { useTurns } from './hooks/useTurns.ts';

/** `after`: how many turns others have first */
export function InTurn({ after, children }: { readonly after: number; readonly children: ComponentChildren }) {
  return useTurns(after, true) >= after ? children : null;
}
