/** Who takes what a file of `src` gives: its exported values, and the files that import each by name. Reads imports as the formatter writes them. */
import path from 'node:path';

export interface GivenValue {
  readonly file: string;
  readonly name: string;
  /** files that import it, also through a file that passes everything on */
  readonly takenBy: readonly string[];
  /** its own file uses it beside giving it away */
  readonly usedAtHome: boolean;
}

const GIVES = /^export (?:async )?(?:abstract )?(?:const|let|function\*?|class|enum) ([\w$]+)/gm;
const NAMED = /\b(?:import|export) (?:\w+, )?\{([^}]*)\} from '(\.[^']+)'/g;
/** All of a module at once: which names are meant is told by the text that follows. */
const WHOLE = /\bimport(?:\w*)(?:<typeof import)?\('(\.[^']+)'\)|\bimport \* as \w+ from '(\.[^']+)'/g;
const PASSES_ON = /^export \* from '(\.[^']+)'/gm;

/** `texts`: every file of code by its place; those under `src/` give. */
export function givenValues(texts: ReadonlyMap<string, string>): GivenValue[] {
  const takers = new Map<string, Set<string>>();
  const take = (target: string, name: string, by: string): void => {
    const key = `${target}#${name}`;
    takers.set(key, (takers.get(key) ?? new Set()).add(by));
  };
  const passing = new Map<string, string[]>();
  const wholeOf = new Map<string, string[]>();
  const push = (map: Map<string, string[]>, key: string, value: string): void => {
    map.set(key, [...(map.get(key) ?? []), value]);
  };
  for (const [file, text] of texts) {
    const placeOf = (from: string): string => path.posix.join(path.posix.dirname(file), from.replace(/\?.*$/, ''));
    for (const [, names, from] of text.matchAll(NAMED))
      for (const name of names!.split(','))
        if (name.trim() !== '' && !/^\s*type /.test(name)) take(placeOf(from!), name.trim().split(' as ')[0]!, file);
    for (const [, called, starred] of text.matchAll(WHOLE)) push(wholeOf, placeOf((called ?? starred)!), file);
    for (const [, from] of text.matchAll(PASSES_ON)) push(passing, placeOf(from!), file);
  }
  return [...texts].flatMap(([file, text]) => {
    if (!file.startsWith('src/')) return [];
    return [...text.matchAll(GIVES)].map(([, name]) => {
      const said = new RegExp(`(?<![\\w$])${name!.replaceAll('$', '\\$')}(?![\\w$])`, 'g');
      const through = [file, ...(passing.get(file) ?? [])];
      const takenBy = through.flatMap((at) => [
        ...(takers.get(`${at}#${name}`) ?? []),
        ...(wholeOf.get(at) ?? []).filter((by) => texts.get(by)!.match(said) !== null),
      ]);
      return { file, name: name!, takenBy, usedAtHome: text.match(said)!.length > 1 };
    });
  });
}
