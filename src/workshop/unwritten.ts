/** The four texts that a scenario cannot go without, and which of them a draft still lacks. */
import type { Draft } from './draft.ts';

export type TextPlace = '/title' | '/words/brief' | '/words/story' | '/words/lesson';

export interface Texts {
  readonly title: string;
  readonly brief: string;
  readonly story: string;
  readonly lesson: string;
}

const textsOf = ({ title, words: { brief, story, lesson } }: Draft): Texts => ({ title, brief, story, lesson });

const isBlank = (text: string): boolean => text.trim() === '';

/** In the order in which they are asked for. */
export function unwritten(draft: Draft): readonly TextPlace[] {
  const { title, brief, story, lesson } = textsOf(draft);
  const texts: readonly (readonly [TextPlace, string])[] = [
    ['/title', title],
    ['/words/brief', brief],
    ['/words/story', story],
    ['/words/lesson', lesson],
  ];
  return texts.filter(([, text]) => isBlank(text)).map(([place]) => place);
}

/** What is written stays; what is blank is as `plain` has it. */
export function withPlainTexts(draft: Draft, plain: Texts): Draft {
  const own = textsOf(draft);
  const put = (name: keyof Texts): string => (isBlank(own[name]) ? plain[name] : own[name]);
  return { ...draft, title: put('title'), words: { brief: put('brief'), story: put('story'), lesson: put('lesson') } };
}
