/** Words of a file, marked with their language where it is not that of the page, so that they are read aloud and hyphenated rightly. */
import type { ComponentChildren } from 'preact';
import { langOf } from '../present/langOf.ts';
import { useFirstWords } from './hooks/useWords.ts';

export interface ToldProps {
  readonly of: { readonly language?: string };
  readonly children: ComponentChildren;
}

export function Told({ of, children }: ToldProps) {
  const lang = langOf(useFirstWords(), of);
  return lang === undefined ? children : <span lang={lang}>{children}</span>;
}
