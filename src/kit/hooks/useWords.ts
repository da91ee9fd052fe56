/** The words of the page, handed down to every part of it: those of the first page everywhere, the whole in rooms that brought it with them. */
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { FirstWords, Words } from '../../words/words.ts';

export const WordsContext = createContext<FirstWords | Words | null>(null);

export function useFirstWords(): FirstWords {
  const words = useContext(WordsContext);
  if (words === null) throw new Error('nobody has handed down any words');
  return words;
}

export function useWords(): Words {
  const words = useFirstWords();
  if (!('report' in words)) throw new Error('this room was not given all the words');
  return words as Words;
}
