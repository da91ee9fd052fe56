/**
 * Which language the page speaks: the first of those that the browser asks for of which there is a folder, else English; the made-up one of tests where the address
 * asks for it (`?words=pseudo`, `?words=pseudo-rtl`). English comes with the page, every other language when it is wanted.
 */
import { firstSpoken, USUAL_LANGUAGE } from '../base/languages.ts';
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

// A folder is called by its tag, and its files have their words as what they give by default: nothing else names it.
const FIRST = import.meta.glob<FirstWords>(['../words/*/first.ts', '!../words/en/first.ts'], { import: 'default' });
const ALL = import.meta.glob<Words>(['../words/*/index.ts', '!../words/en/index.ts'], { import: 'default' });
const HANDBOOKS = import.meta.glob<HandbookWords>(['../words/*/handbook/index.ts', '!../words/en/handbook/index.ts'], {
  import: 'default',
});

/** `search`: of the page's address; `wanted`: tags of BCP 47 as the browser has them, the most wanted first. */
export async function languageOf(search: string, wanted: readonly string[]): Promise<Language> {
  const asked = new URLSearchParams(search).get('words');
  if (asked === 'pseudo' || asked === 'pseudo-rtl') return madeUp(asked === 'pseudo-rtl');
  const tags = Object.keys(FIRST).map((place) => place.split('/').at(-2)!);
  const tag = firstSpoken(wanted, [USUAL_LANGUAGE, ...tags]);
  if (tag === USUAL_LANGUAGE) return english;
  return {
    first: await FIRST[`../words/${tag}/first.ts`]!(),
    all: () => ALL[`../words/${tag}/index.ts`]!(),
    // Until somebody has put it into words, the handbook is in English.
    handbook: HANDBOOKS[`../words/${tag}/handbook/index.ts`] ?? english.handbook,
  };
}

async function madeUp(rightToLeft: boolean): Promise<Language> {
  const { pseudoHandbook, pseudoWords } = await import('../words/pseudo.ts');
  return {
    first: pseudoWords<FirstWords>(english.first, rightToLeft),
    all: async () => pseudoWords<Words>(await english.all(), rightToLeft),
    handbook: async () => pseudoHandbook(await english.handbook()),
  };
}
