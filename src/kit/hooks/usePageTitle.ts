/** The title of the window: what is open, the room, the product, so that tabs and history can be told apart. */
import { useEffect } from 'preact/hooks';
import { useFirstWords } from './useWords.ts';

/** From the particular to the general; the product is added. */
export function usePageTitle(...parts: readonly string[]): void {
  const { shell } = useFirstWords();
  const title = [...parts, shell.product].join(' \u00b7 ');
  useEffect(() => {
    document.title = title;
  }, [title]);
}
