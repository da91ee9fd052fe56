/** The scenarios of the library that are nobody's own: the same list until the library says that it has changed, for a desk that is drawn with every frame. */
import { useEffect, useMemo, useReducer } from 'preact/hooks';
import type { ScenarioEntry } from '../../present/scenarioEntry.ts';
import type { Library } from '../../services/library/library.ts';

export function useCourseEntries(library: Library): readonly ScenarioEntry[] {
  const [changes, changed] = useReducer<number, void>((n) => n + 1, 0);
  useEffect(() => library.subscribe(() => changed()), [library]);
  return useMemo(() => library.entries().filter(({ own }) => own === undefined), [library, changes]);
}
