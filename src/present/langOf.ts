/** What language a file's texts are marked with on the page. Pure. */
import { isOfPage, USUAL_LANGUAGE } from '../base/languages.ts';
import type { FirstWords } from '../words/words.ts';

/** The `lang` of elements that show texts of this file; undefined where the page's own holds for them. */
export function langOf(
  words: FirstWords,
  { language = USUAL_LANGUAGE }: { readonly language?: string },
): string | undefined {
  return isOfPage(language, words.language) ? undefined : language;
}
