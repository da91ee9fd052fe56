/** Which language the page speaks: English, or the made-up one of tests where the address asks for it (`?words=pseudo`, `?words=pseudo-rtl`). */
import { first } from '../words/en/first.ts';
import type { HandbookWords } from '../words/handbook.ts';
import type { FirstWords, Words } from '../words/words.ts';

export interface Language {
  readonly first: FirstWords;
  /** brought along by the rooms that need more than the first page does */
  all(): Promise<Words>;
  /** the pages of the handbook, which only their own room needs */
  handbook(): Promise<HandbookWords>;
}

const english: Language = {
  first,
  all: async () => (await import('../words/en/index.ts')).en,
  handbook: async () => (await import('../words/en/handbook/index.ts')).handbook,
};

export async function languageOf(search: string): Promise<Language> {
  const asked = new URLSearchParams(search).get('words');
  if (asked !== 'pseudo' && asked !== 'pseudo-rtl') return english;
  const { pseudoHandbook, pseudoWords } = await import('../words/pseudo.ts');
  const rightToLeft = asked === 'pseudo-rtl';
  return {
    first: pseudoWords<FirstWords>(english.first, rightToLeft),
    all: async () => pseudoWords<Words>(await english.all(), rightToLeft),
    handbook: async () => pseudoHandbook(await english.handbook()),
  };
}
