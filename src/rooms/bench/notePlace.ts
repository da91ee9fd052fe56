/** Where a note of the bench stands: close to the hand, and over nothing that is to be seen or taken hold of meanwhile. Pure; everything in pixels of the window. */
import type { Rect } from '../../kit/px.ts';

export interface NoteGiven {
  /** of what the hand is on */
  readonly hand: Rect;
  /** what the note must not lie over besides: the curve, the parts that are lit */
  readonly clear: readonly Rect[];
  readonly note: { readonly width: number; readonly height: number };
  /** the part of the window that notes may stand in */
  readonly room: Rect;
}

const GAP = 10;

/** The upper left corner. Above the hand, else below it, beside it, or beside what has to stay clear: the nearest place that covers nothing; where there is none, the one that covers least. */
export function notePlace({ hand, clear, note, room }: NoteGiven): { readonly x: number; readonly y: number } {
  const within = (at: { x: number; y: number }): Rect => ({
    ...note,
    x: Math.max(room.x, Math.min(at.x, room.x + room.width - note.width)),
    y: Math.max(room.y, Math.min(at.y, room.y + room.height - note.height)),
  });
  const middle = { x: hand.x + hand.width / 2 - note.width / 2, y: hand.y + hand.height / 2 - note.height / 2 };
  const round = ({ x, y, width, height }: Rect, along: { x: number; y: number }): readonly Rect[] => [
    within({ x: along.x, y: y - note.height - GAP }),
    within({ x: along.x, y: y + height + GAP }),
    within({ x: x + width + GAP, y: along.y }),
    within({ x: x - note.width - GAP, y: along.y }),
  ];
  const kept = [hand, ...clear];
  const covered = (at: Rect): number => kept.reduce((sum, one) => sum + shared(at, one), 0);
  const apart = (at: Rect): number => Math.hypot(at.x - middle.x, at.y - middle.y);
  const byHand = round(hand, middle);
  const free = byHand.find((at) => covered(at) === 0);
  if (free !== undefined) return corner(free);
  const others = clear.flatMap((one) => round(one, middle));
  const best = [...byHand, ...others].reduce((a, b) => {
    const less = covered(b) - covered(a);
    return less < 0 || (less === 0 && apart(b) < apart(a)) ? b : a;
  });
  return corner(best);
}

const corner = ({ x, y }: Rect) => ({ x, y });

/** Square pixels that both cover. */
function shared(a: Rect, b: Rect): number {
  const width = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const height = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return width > 0 && height > 0 ? width * height : 0;
}
