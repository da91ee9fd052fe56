/**
 * What people write into a file for themselves: `$schema` at its head, a `note` in any object, and keys that begin with `x-`, for programs of their own. None of it is
 * read. An object whose keys are names (of slugs, say) has no notes: there the key is a name like any other.
 */

type Json = Readonly<Record<string, unknown>>;

/** The value without its notes. `maps`: keys of objects whose own keys are names. `notes`: where a `note` is one of these, and no key of the format. */
export function withoutNotes(value: unknown, maps: ReadonlySet<string>, notes: 'anywhere' | 'atHead'): unknown {
  const walk = (item: unknown, under: string, head: boolean): unknown => {
    if (Array.isArray(item)) return item.map((one) => walk(one, under, false));
    if (typeof item !== 'object' || item === null) return item;
    const kept = Object.entries(item as Json).filter(
      ([key, inside]) => maps.has(under) || !isNote(key, inside, head, notes),
    );
    return Object.fromEntries(kept.map(([key, inside]) => [key, walk(inside, key, false)]));
  };
  return walk(value, '', true);
}

function isNote(key: string, value: unknown, head: boolean, notes: 'anywhere' | 'atHead'): boolean {
  if (key.startsWith('x-')) return true;
  if (typeof value !== 'string') return false;
  return (key === 'note' && (head || notes === 'anywhere')) || (head && key === '$schema');
}
