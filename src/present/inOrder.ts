/** A list of things that somebody puts in order. Pure. */

/** The same list with one of its items at another place; a place beyond the ends is the end. */
export function movedTo<T>(list: readonly T[], from: number, to: number): readonly T[] {
  const item = list[from];
  if (item === undefined) return list;
  const rest = list.filter((_, i) => i !== from);
  const at = Math.min(Math.max(to, 0), rest.length);
  return [...rest.slice(0, at), item, ...rest.slice(at)];
}

/** The place over which something is held: the row whose middle is nearest. */
export function nearestRow(rows: readonly { readonly top: number; readonly height: number }[], y: number): number {
  let best = 0;
  for (const [i, { top, height }] of rows.entries()) {
    const { top: t, height: h } = rows[best]!;
    if (Math.abs(top + height / 2 - y) < Math.abs(t + h / 2 - y)) best = i;
  }
  return best;
}
