/** Gathers problems of one file while checks run over it. */
import type { Phrase, Unit } from '../base/phrases.ts';
import type { Problem } from '../base/result.ts';
import { pointer, shown } from './schemaProblems.ts';

export type Path = readonly (string | number)[];
export type Complain = (path: Path, found: Phrase, wanted: Phrase) => void;

export function complaints(file: string): { readonly problems: Problem[]; readonly complain: Complain } {
  const problems: Problem[] = [];
  return {
    problems,
    complain: (path, found, wanted) => {
      problems.push({ file, place: pointer(path), found, wanted });
    },
  };
}

/** Of a list of choices, in a message. */
export function oneOf(choices: readonly (string | number)[], unit: Unit = ''): Phrase {
  return ['oneOf', choices, unit];
}

/** Complains about every value that stood earlier in the list already. */
export function complainOfRepeats(
  values: readonly (string | number | undefined)[],
  at: (index: number) => Path,
  complain: Complain,
  unit: Unit = '',
): void {
  const seen = new Set<string | number>();
  values.forEach((value, index) => {
    // What is not known repeats nothing.
    if (value === undefined) return;
    if (seen.has(value)) complain(at(index), ['twice', { phrase: shown(value, unit) }], ['eachOnce']);
    seen.add(value);
  });
}
