/** Whether between two states of a draft nothing but its slugs has moved, as in every frame while one is dragged. */
import type { Draft } from './draft.ts';

/** False where nothing has changed. */
export function onlySlugsMoved(before: Draft, now: Draft): boolean {
  return (
    before.start.slugs !== now.start.slugs &&
    alikeBut('start', before, now) &&
    alikeBut('slugs', before.start, now.start)
  );
}

/** Compared in place: it is asked several times a frame. */
function alikeBut<T extends object>(except: keyof T, a: T, b: T): boolean {
  for (const key in a) if (key !== except && !(key in b && Object.is(a[key], b[key]))) return false;
  for (const key in b) if (!(key in a)) return false;
  return true;
}
