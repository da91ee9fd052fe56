/** Gathers problems of one file while checks run over it. */
import type { Problem } from '../base/result.ts';
import { pointer } from './schemaProblems.ts';

export type Path = readonly (string | number)[];
export type Complain = (path: Path, found: string, wanted: string) => void;

export function complaints(file: string): { readonly problems: Problem[]; readonly complain: Complain } {
  const problems: Problem[] = [];
  return {
    problems,
    complain: (path, found, wanted) => {
      problems.push({ file, place: pointer(path), found, wanted });
    },
  };
}

/** Complains about every value that stood earlier in the list already. */
export function complainOfRepeats(
  values: readonly (string | number)[],
  at: (index: number) => Path,
  complain: Complain,
): void {
  const seen = new Set<string | number>();
  values.forEach((value, index) => {
    if (seen.has(value)) complain(at(index), `${JSON.stringify(value)} a second time`, 'each once');
    seen.add(value);
  });
}

/** `one of "a", "b"` for messages; the list is cut where it grows long. */
export function oneOfThese(choices: readonly (string | number)[]): string {
  if (choices.length === 0) return 'nothing here: there is none to choose';
  const shown = choices.slice(0, 12).map((choice) => JSON.stringify(choice));
  return `one of ${shown.join(', ')}${choices.length > 12 ? ', ...' : ''}`;
}
