/** Which of several languages suits a reader. Tags are those of BCP 47; they are looked up as RFC 4647, section 3.4 says: the wanted tag, shortened from its end. */

/** The language of a file that does not say. */
export const USUAL_LANGUAGE = 'en';

export function bestLanguage(wanted: string, offered: readonly string[]): string | null {
  const parts = wanted.toLowerCase().split('-');
  while (parts.length > 0) {
    const found = offered.find((tag) => tag.toLowerCase() === parts.join('-'));
    if (found !== undefined) return found;
    parts.pop();
    // What stands before a single letter means nothing without it.
    if (parts.at(-1)?.length === 1) parts.pop();
  }
  return null;
}

/** The first of the wanted languages that is spoken here, by the tag that it has here; where none is, the usual one. */
export function firstSpoken(wanted: readonly string[], spoken: readonly string[]): string {
  for (const tag of wanted) {
    const found = bestLanguage(tag, spoken);
    if (found !== null) return found;
  }
  return USUAL_LANGUAGE;
}

/** A text in `tag` needs no word about its language on a page in `page`. */
export function isOfPage(tag: string, page: string): boolean {
  return bestLanguage(page, [tag]) !== null;
}
